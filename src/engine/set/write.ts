import { isRecord } from '../fields/introspect.ts';

/** The text of a description file: two spaces, keys in the order they were read, everything kept. */
export const writeText = (written: unknown): string => `${JSON.stringify(written, null, 2)}\n`;

export type Path = readonly (string | number)[];

const FORBIDDEN = new Set(['__proto__', 'prototype', 'constructor']);

/**
 * A copy of a written description with one value changed; undefined removes the key.
 * @throws RangeError for a key that would reach an object's prototype.
 */
export function withValueAt<T>(written: T, path: Path, value: unknown): T {
  if (path.length === 0) return value as T;
  const [key, ...rest] = path;
  if (FORBIDDEN.has(String(key))) throw new RangeError(`the key "${key}" cannot be used`);
  if (Array.isArray(written)) {
    const copy = written.slice();
    if (rest.length === 0 && value === undefined) copy.splice(Number(key), 1);
    else copy[Number(key)] = withValueAt(copy[Number(key)], rest, value);
    return copy as T;
  }
  const copy: Record<string, unknown> = isRecord(written) ? { ...written } : {};
  if (rest.length === 0 && value === undefined) delete copy[String(key)];
  else copy[String(key)] = withValueAt(copy[String(key)], rest, value);
  return copy as T;
}

/** The value at a path, or undefined. */
export function valueAtPath(written: unknown, path: Path): unknown {
  let value: unknown = written;
  for (const key of path) {
    if (Array.isArray(value)) value = value[Number(key)];
    else if (isRecord(value) && Object.hasOwn(value, String(key))) value = value[String(key)];
    else return undefined;
  }
  return value;
}

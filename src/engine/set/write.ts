import { isRecord } from '../fields/introspect.ts';
import type { Path } from '../kinds/adjustment.ts';

/**
 * The text of a description file: two spaces, keys in the order they were read, everything kept.
 * @param written a description as written
 * @returns JSON text that ends in a line feed
 */
export const writeText = (written: unknown): string => `${JSON.stringify(written, null, 2)}\n`;

const FORBIDDEN = new Set(['__proto__', 'prototype', 'constructor']);

/**
 * A copy of a written description with one value changed; undefined removes the key.
 * @param written a description as written; it is left as it is
 * @param path keys and places in lists
 * @param value what is to stand there, as written
 * @returns a copy that shares what did not change
 * @throws RangeError for a key that would reach an object's prototype.
 */
export function withValueAt<T>(written: T, path: Path, value: unknown): T {
  if (path.length === 0) return value as T;
  const [key, ...rest] = path;
  if (FORBIDDEN.has(String(key))) throw new RangeError(`the key "${key}" cannot be used`);
  // A place in a list that is not there yet begins one.
  const list = written === undefined && typeof key === 'number' ? [] : written;
  if (Array.isArray(list)) {
    const copy = list.slice();
    if (rest.length === 0 && value === undefined) copy.splice(Number(key), 1);
    else copy[Number(key)] = withValueAt(copy[Number(key)], rest, value);
    return copy as T;
  }
  const copy: Record<string, unknown> = isRecord(written) ? { ...written } : {};
  if (rest.length === 0 && value === undefined) delete copy[String(key)];
  else copy[String(key)] = withValueAt(copy[String(key)], rest, value);
  return copy as T;
}

/**
 * The value at a path, or undefined.
 * @param written a description as written
 * @param path keys and places in lists
 * @returns what stands there
 */
export function valueAtPath(written: unknown, path: Path): unknown {
  let value: unknown = written;
  for (const key of path) {
    if (Array.isArray(value)) value = value[Number(key)];
    else if (isRecord(value) && Object.hasOwn(value, String(key))) value = value[String(key)];
    else return undefined;
  }
  return value;
}

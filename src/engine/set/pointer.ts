import { isRecord } from '../fields/introspect.ts';
import type { Path } from '../kinds/adjustment.ts';

/**
 * The path that a JSON pointer (RFC 6901) names in a written description.
 * @param pointer as "/coils/0/turns"
 * @param written a description as written
 * @returns keys and places in lists; undefined where nothing stands there
 */
export function pathAt(pointer: string, written: unknown): Path | undefined {
  const [before, ...keys] = pointer.split('/').map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
  if (before !== '' || keys.length === 0) return undefined;
  let value = written;
  const path: (string | number)[] = [];
  for (const key of keys) {
    if (Array.isArray(value)) {
      if (!/^(?:0|[1-9]\d*)$/.test(key) || Number(key) >= value.length) return undefined;
      path.push(Number(key));
      value = value[Number(key)];
    } else if (isRecord(value) && Object.hasOwn(value, key)) {
      path.push(key);
      value = value[key];
    } else return undefined;
  }
  return path;
}

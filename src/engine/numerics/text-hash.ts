/**
 * 32 bits from a text, the same everywhere (FNV-1a by Fowler, Noll and Vo, over UTF-16 units).
 * @param text of any length
 * @param start changes every answer; default 0
 * @returns a whole number from 0 to 2³² − 1
 */
export function textHash(text: string, start = 0): number {
  let hash = 0x811c9dc5 ^ start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** @returns the places in a result where a number is none, or infinite, or a text speaks of one; at most ten */
function unsoundPlaces(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`];
  if (ArrayBuffer.isView(value)) {
    const at = (value as Float64Array).findIndex?.((x) => !Number.isFinite(x)) ?? -1;
    return at < 0 ? [] : [`${path}[${at}]`];
  }
  if (typeof value !== 'object' || value === null || value instanceof Date) return [];
  const found: string[] = [];
  for (const [key, inner] of Object.entries(value)) {
    found.push(...unsoundPlaces(inner, `${path}.${key}`));
    if (found.length >= 10) break;
  }
  return found;
}

/** @throws Error where a result holds what is no number */
export function mustBeSound(value: unknown, what: string): void {
  const places = unsoundPlaces(value);
  if (places.length > 0) throw new Error(`${what} is no number at ${places.join(', ')}`);
}

const NO_WORDS = /undefined|\[object|NaN/;

/**
 * @param given what the sentences are of and may quote
 * @throws Error where what is wrong is not said, or not with words for its reader
 */
export function mustSay(sentences: readonly string[], given: string): void {
  if (sentences.length === 0) throw new Error('refused without a problem');
  for (const one of sentences)
    if (one.trim() === '' || (NO_WORDS.test(one) && !NO_WORDS.test(given))) throw new Error(`says “${one}”`);
}

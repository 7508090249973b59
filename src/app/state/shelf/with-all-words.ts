/**
 * Those in which every word of a text is, in any case; without a word all of them.
 * @param searchedOf what of one is searched.
 */
export function withAllWords<One>(all: readonly One[], text: string, searchedOf: (one: One) => string): readonly One[] {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return all;
  return all.filter((one) => {
    const searched = searchedOf(one).toLowerCase();
    return words.every((word) => searched.includes(word));
  });
}

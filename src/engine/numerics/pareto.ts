/**
 * Those of a list that no other is as good as in every score and better in one, the highest first score first, equal
 * ones by the next score, and by their order in the list.
 * @param scored each with the same number of scores, more being better; NaN is no score
 * @returns a new list
 */
export function paretoBest<T extends { readonly scores: readonly number[] }>(scored: readonly T[]): T[] {
  const inOrder = scored
    .map((one, place) => ({ one, place }))
    .sort((a, b) => firstDifference(b.one.scores, a.one.scores) || a.place - b.place);
  const best: T[] = [];
  // Whatever is better in everything stands before; of those before, one that stays is as good as any that does not.
  for (const { one } of inOrder) if (!best.some((other) => isBetter(other.scores, one.scores))) best.push(one);
  return best;
}

function firstDifference(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((score, i) => score !== b[i]);
  return k < 0 ? 0 : a[k] > b[k] ? 1 : -1;
}

const isBetter = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((score, i) => score >= b[i]) && a.some((score, i) => score > b[i]);

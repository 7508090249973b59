/** What a set cannot be built or followed with is left out: its neighbours tell. */
export function attempt<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (refusal) {
    if (refusal instanceof RangeError) return undefined;
    throw refusal;
  }
}

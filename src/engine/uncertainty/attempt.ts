/** Undefined for a set that cannot be built or followed: the other evaluations are used without it. */
export function attempt<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (refusal) {
    if (refusal instanceof RangeError) return undefined;
    throw refusal;
  }
}

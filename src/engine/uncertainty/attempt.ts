/** Undefined where something cannot be built or followed, which is a RangeError; any other error is thrown. */
export function attempt<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (refusal) {
    if (refusal instanceof RangeError) return undefined;
    throw refusal;
  }
}

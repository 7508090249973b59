/**
 * Resistance of a winding comes out within this share: a wire's diameter is held to about 2 %, and the meter to 2 %; and the
 * meter's own leads, Ω. Common practice, no source.
 */
const SHARE = 0.08;
const LEADS = 0.3;

/** What an ordinary meter shows of a good winding of this direct-current resistance, Ω. */
export const resistanceOnMeter = (resistance: number) => ({
  value: resistance,
  low: resistance * (1 - SHARE),
  high: resistance * (1 + SHARE) + LEADS,
});

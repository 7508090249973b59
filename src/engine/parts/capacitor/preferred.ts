/** E24 values of one decade, IEC 60063; see reference/capacitors.json. */
export const E24 = [
  1, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.7, 3, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1,
] as const;

export interface PreferredValue {
  readonly nearest: number;
  /** Largest preferred value not above, smallest not below. */
  readonly below: number;
  readonly above: number;
  /** nearest/wanted − 1. */
  readonly error: number;
}

/**
 * Nearest preferred value, by ratio. E12 is every second of E24, E6 every fourth.
 * @param value above 0, in any unit. @throws RangeError otherwise.
 */
export function preferredValue(value: number, series: 'E6' | 'E12' | 'E24' = 'E24'): PreferredValue {
  if (!(value > 0) || !Number.isFinite(value)) throw new RangeError(`value must be above 0, got ${value}`);
  const step = { E6: 4, E12: 2, E24: 1 }[series];
  const decade = Math.floor(Math.log10(value));
  const values = [decade - 1, decade, decade + 1].flatMap((k) =>
    // Written as a decimal so that 4.7 nF is 4.7e-9 to the last bit.
    E24.filter((_, i) => i % step === 0).map((v) => Number(`${v}e${k}`)),
  );
  const close = 1e-9;
  const below = values.filter((v) => v <= value * (1 + close)).at(-1)!;
  const above = values.find((v) => v >= value * (1 - close))!;
  const nearest = value / below <= above / value ? below : above;
  return { nearest, below, above, error: nearest / value - 1 };
}

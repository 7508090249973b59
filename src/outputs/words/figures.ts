import { formatNumber, formatQuantity } from '../../engine/units/format.ts';

/** Figures as the sheets print them: the same in every language. */

/** A length of a part. */
export const mm = (metres: number): string => formatQuantity(metres, 'length', 3);

/** A frequency in kHz, without its unit. */
export const kHz = (frequency: number): string => formatNumber(frequency / 1e3, 5);

/** A resistance as a meter shows it: never in milliohms. */
export const ohms = (r: number): string =>
  Math.abs(r) < 1 ? `${formatNumber(r, 2)} Ω` : formatQuantity(r, 'resistance', 2);

/** A length of wire as one would cut it: up to the next 10 cm. */
export const cutLength = (metres: number): string => `${(Math.ceil(metres * 10 - 1e-6) / 10).toFixed(1)} m`;

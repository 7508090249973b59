import { formatNumber, formatQuantity } from '../../engine/units/format.ts';

/** Figures as people read them: the same in every language. */

/** A length of a part. */
export const mm = (metres: number): string => formatQuantity(metres, 'length', 3);

/** A frequency in kHz, without its unit. */
export const kHz = (frequency: number): string => formatNumber(frequency / 1e3, 5);

/** A frequency in whole kHz, without its unit. */
export const wholeKHz = (frequency: number): string => formatNumber(Math.round(frequency / 1e3), 5);
/** "531–1602 kHz". @param lowest Hz @param highest Hz */
export const bandSpan = (lowest: number, highest: number): string =>
  `${wholeKHz(lowest)}–${wholeKHz(highest)}\u00a0kHz`;

/** A frequency in kHz as on an axis, without its unit: a tenth only where it matters. */
export const axisKHz = (frequency: number): string => {
  const k = frequency / 1e3;
  return Math.abs(k - Math.round(k)) < 0.05 || k >= 100 ? Math.round(k).toFixed(0) : formatNumber(k, 3);
};

/** A bandwidth, the same wherever it stands. */
export const bandwidthText = (width: number): string => `${(width / 1e3).toFixed(width < 1e5 ? 1 : 0)} kHz`;

/** An audio frequency as on an axis, without its unit: 500, 2k. */
export const axisHertz = (frequency: number): string => (frequency >= 1000 ? `${frequency / 1000}k` : `${frequency}`);

/** Whole decibels, without their unit: −23. */
export const wholeDB = (level: number): string => {
  if (!Number.isFinite(level)) return level > 0 ? '∞' : level < 0 ? '−∞' : '—';
  const r = Math.round(level);
  return r < 0 ? `−${-r}` : `${r}`;
};

/** A resistance as a builder's meter shows it: two figures, never in milliohms, nothing finer than a tenth of an ohm. */
export const ohms = (r: number): string =>
  r < 0.05
    ? 'under 0.1 Ω'
    : r < 1
      ? `${formatNumber(Math.round(r * 10) / 10, 1)} Ω`
      : formatQuantity(r, 'resistance', 2);

/** A length of wire as one would cut it: up to the next 10 cm. */
export const cutLength = (metres: number): string => `${(Math.ceil(metres * 10 - 1e-6) / 10).toFixed(1)} m`;

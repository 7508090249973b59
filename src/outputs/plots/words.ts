import { capital, formatNumber } from '../../engine/units/format.ts';

/** 693 kHz; a tenth only where it tells. */
export const khz = (f: number): string => `${khzFigure(f)} kHz`;
export const khzFigure = (f: number): string => {
  const k = f / 1e3;
  return Math.abs(k - Math.round(k)) < 0.05 || k >= 100 ? Math.round(k).toFixed(0) : formatNumber(k, 3);
};
/** Width of a band: one decimal below 100 kHz. */
export const khzWidth = (f: number): string => `${(f / 1e3).toFixed(f < 1e5 ? 1 : 0)} kHz`;

/** −23 dB, whole ones. */
export const db = (x: number): string => `${dbFigure(x)} dB`;
export const dbFigure = (x: number): string => {
  if (!Number.isFinite(x)) return x > 0 ? '∞' : x < 0 ? '−∞' : '—';
  const r = Math.round(x);
  return r < 0 ? `−${-r}` : `${r}`;
};
export const minus = (words: string): string => words.replace(/^-/, '−');

/** A sentence from a clause. */
export const sentence = (clause: string): string => `${capital(clause)}.`;

/** No signal at all is drawn as far down as anything is. */
const NOTHING = -200;
export const drawable = (level: number): number => (level > NOTHING ? Math.min(level, -NOTHING) : NOTHING);

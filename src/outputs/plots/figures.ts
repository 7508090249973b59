import { formatNumber } from '../../engine/units/format.ts';

/** 693, for 693 kHz; a tenth only where it matters. */
export const khzFigure = (f: number): string => {
  const k = f / 1e3;
  return Math.abs(k - Math.round(k)) < 0.05 || k >= 100 ? Math.round(k).toFixed(0) : formatNumber(k, 3);
};

/** −23: whole decibels. */
export const dbFigure = (x: number): string => {
  if (!Number.isFinite(x)) return x > 0 ? '∞' : x < 0 ? '−∞' : '—';
  const r = Math.round(x);
  return r < 0 ? `−${-r}` : `${r}`;
};
export const minus = (words: string): string => words.replace(/^-/, '−');

/** No signal at all is drawn as far down as anything is. */
const NOTHING = -200;
export const drawable = (level: number): number => (level > NOTHING ? Math.min(level, -NOTHING) : NOTHING);

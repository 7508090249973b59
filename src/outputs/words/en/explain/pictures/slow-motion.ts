import { formatNumber } from '../../../../../engine/units/format.ts';

/** Slow motion by so many times. */
export function slowMotion(times: number): string {
  const show = (value: number) =>
    formatNumber(value >= 100 ? Math.round(value / 10) * 10 : value, value >= 100 ? 4 : 2);
  return times >= 0.95e6
    ? `slowed down ${show(times / 1e6)} million times`
    : `slowed down ${show(times / 1e3)} thousand times`;
}

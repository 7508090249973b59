import { formatNumber, quantityText } from '../../engine/units/format.ts';
import type { QuantityKind } from '../../engine/units/parse.ts';
import { wholeDB } from './figures.ts';

/** Low and high end, SI. */
type Range = readonly [low: number, high: number];

/** A range wider than this share on either side is known to two digits, else to three. */
const NARROW = 0.05;
/** Ends further apart than this each have a unit of their own. */
const FAR = 1000;

const digitsOf = ([low, high]: Range): number => (high - low > NARROW * Math.abs(high + low) ? 2 : 3);

const figure = (value: number, digits: number): string =>
  formatNumber(Number.isFinite(value) ? Number(value.toPrecision(digits)) : value, digits);

/** How many of the unit that a value is written in make one of SI. */
function unitOf(value: number, kind: QuantityKind, digits: number): { readonly factor: number; readonly unit: string } {
  const rounded = Number(value.toPrecision(digits));
  const { figure, unit } = quantityText(rounded, kind, 12);
  const written = Number(figure.replace('−', '-'));
  return { factor: rounded === 0 || !Number.isFinite(written) ? 1 : written / rounded, unit };
}

/** "98–254": a range of a number without unit. */
export const numberSpan = (range: Range): string => range.map((end) => figure(end, digitsOf(range))).join('–');

/** "110–970 mV": a range in one unit, the en dash between; "2 nW–30 mW" where the ends lie far apart. */
export function spanText(range: Range, kind: QuantityKind): string {
  const digits = digitsOf(range);
  const [low, high] = range;
  if (low > 0 && Number.isFinite(high) && high / low > FAR)
    return range.map((end) => inUnit(end, unitOf(end, kind, digits), digits)).join('–');
  return inUnit(range, unitOf(Number.isFinite(high) ? high : low, kind, digits), digits);
}

/** "(410–1000)": a range behind its value, in the unit that the value is written in. @param digits of the value */
export function spanBeside(value: number, range: Range, kind: QuantityKind, digits = 3): string {
  return `(${inUnit(range, { ...unitOf(value, kind, digits), unit: '' }, digitsOf(range))})`;
}

const asOnMeter = (r: number): string => formatNumber(r < 1 ? Math.round(r * 10) / 10 : r, r < 1 ? 1 : 2);

/** "(1.0–1.4)": the range of a resistance behind it, Ω, in its unit and as fine as `ohms` has it. */
export const ohmsBeside = (value: number, range: Range): string =>
  value < 10 ? `(${range.map(asOnMeter).join('–')})` : spanBeside(value, range, 'resistance');

/** "33–51", "−5 to 12": levels in whole decibels, without their unit. A dash beside a minus would be read as one. */
export const levelSpan = ([low, high]: Range): string =>
  `${wholeDB(low)}${Math.min(low, high) < -0.5 ? ' to ' : '–'}${wholeDB(high)}`;

function inUnit(
  value: number | Range,
  { factor, unit }: { readonly factor: number; readonly unit: string },
  digits: number,
): string {
  const ends: readonly number[] = typeof value === 'number' ? [value] : value;
  const written = ends.map((end) => figure(end * factor, digits)).join('–');
  return unit === '' ? written : `${written}\u00a0${unit}`;
}

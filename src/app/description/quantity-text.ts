import {
  formatNumber,
  formatQuantity,
  type Gauge,
  gaugeDiameter,
  leadingNumber,
  nearestGauge,
  parseQuantity,
  type QuantityKind,
  readGauge,
  sectionsOf,
} from '../../engine/index.ts';

/** The wire gauge a text is written in, if any. */
export const gaugeOf = (text: unknown): Gauge | undefined =>
  typeof text === 'string' ? readGauge(text)?.gauge : undefined;

/** The unit as typed, with the space before it: " mm", "°". */
function unitOf(text: unknown): string | undefined {
  const read = typeof text === 'string' ? leadingNumber(sectionsOf(text)?.one ?? text) : undefined;
  return read?.ok && read.rest !== '' ? read.rest : undefined;
}

/**
 * How many of the unit as typed make up an SI value.
 * @returns undefined for units that are not a plain factor (none typed, decibels of a field strength).
 */
export function factorOf(text: unknown, kind: QuantityKind): number | undefined {
  const unit = unitOf(text);
  if (unit === undefined || (kind === 'field strength' && /^\s*dB/.test(unit))) return undefined;
  const one = parseQuantity(`1${unit}`, kind);
  const nothing = parseQuantity(`0${unit}`, kind);
  return one.ok && nothing.ok ? one.value - nothing.value : undefined;
}

/** A plain decimal number of at most so many digits, without trailing noughts. */
const plain = (value: number, digits: number): string => {
  const text = formatNumber(value, digits).replace('−', '-');
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};

/**
 * A new SI value in the unit the builder used before: "63 mm" and 0.07 give "70 mm"; a gauge stays a gauge.
 * @param before what was written, or undefined.
 */
export function rewrite(before: unknown, value: number, kind: QuantityKind, digits = 3): string {
  const gauge = gaugeOf(before);
  if (gauge) return `${nearestGauge(gauge, value).number} ${gauge}`;
  if (kind === 'latitude' || kind === 'longitude' || kind === 'bearing') return `${plain(value, digits + 3)}°`;
  const unit = unitOf(before);
  if (unit !== undefined && /^\s*dB/.test(unit) && kind === 'field strength')
    return `${plain(Math.round(200 * Math.log10(value / 1e-6)) / 10, digits)}${unit}`;
  const factor = factorOf(before, kind);
  const nothing = unit === undefined ? undefined : parseQuantity(`0${unit}`, kind);
  if (factor && nothing?.ok) return `${plain((value - nothing.value) / factor, digits)}${unit}`;
  return tidy(formatQuantity(value, kind, digits));
}

/** "8.00 m" → "8 m". */
export const tidy = (text: string): string => text.replace(/(\.\d*?)0+(?=\D|$)/, '$1').replace(/\.(?=\D|$)/, '');

/** Sizes of a gauge that fall in a range, thickest first. */
export function gaugeNumbers(gauge: Gauge, [thin, thick]: readonly [number, number]): number[] {
  const numbers = Array.from({ length: 49 }, (_, n) => n);
  return numbers.filter((n) => {
    const size = gaugeDiameter(gauge, n);
    return size !== undefined && size >= thin * 0.999 && size <= thick * 1.001;
  });
}

import { QUANTITY_KINDS, type QuantityKind } from './parse.ts';
import { ZERO_CELSIUS } from './quantities.ts';

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e-15, 'f'],
  [1e-12, 'p'],
  [1e-9, 'n'],
  [1e-6, 'µ'],
  [1e-3, 'm'],
  [1, ''],
  [1e3, 'k'],
  [1e6, 'M'],
  [1e9, 'G'],
];

/**
 * Significant digits as a builder reads them: no exponent, no trailing noise.
 * @param value any number
 * @param digits significant digits; default 3
 * @returns e.g. "4.56", "0.0321", "1 230".
 */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return value > 0 ? '∞' : value < 0 ? '−∞' : '—';
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(12, Math.max(0, digits - 1 - magnitude));
  const rounded = Math.abs(value) >= 10 ** digits ? Math.round(value) : Number(value.toPrecision(digits));
  const text = rounded.toFixed(decimals);
  return (text.includes('.') ? text.replace(/\.?0+$/, '') : text).replace('-', '−');
}

/** A quantity as it is read: its number and its unit. */
export interface QuantityText {
  readonly figure: string;
  readonly unit: string;
}

const withPrefix = (value: number, unit: string, digits: number, from = 1e-15, to = 1e9): QuantityText => {
  if (value === 0 || !Number.isFinite(value)) return { figure: formatNumber(value), unit };
  const size = Math.abs(Number(value.toPrecision(digits)));
  let scale = PREFIXES.find(([factor]) => factor >= from)!;
  for (const prefix of PREFIXES)
    if (prefix[0] >= from && prefix[0] <= to && size >= prefix[0] * 0.9999999) scale = prefix;
  return { figure: formatNumber(value / scale[0], digits), unit: `${scale[1]}${unit}` };
};

/**
 * An SI value in the unit a builder would use, number and unit apart.
 * @param value in the SI unit of its kind
 * @param kind what it is a quantity of
 * @param digits significant digits; default 3
 * @returns "365" and "pF"; "—" and no unit for what is no number
 */
export function quantityText(value: number, kind: QuantityKind, digits = 3): QuantityText {
  if (Number.isNaN(value)) return { figure: '—', unit: '' };
  const plain = (x: number, unit: string): QuantityText => ({ figure: formatNumber(x, digits), unit });
  switch (kind) {
    case 'length':
      return Math.abs(value) >= 1000
        ? withPrefix(value, 'm', digits, 1, 1e3)
        : Math.abs(value) >= 1
          ? plain(value, 'm')
          : plain(value * 1e3, 'mm');
    case 'capacitance':
      return withPrefix(value, 'F', digits, 1e-12, 1e-6);
    case 'temperature':
      return plain(value - ZERO_CELSIUS, '°C');
    case 'angle':
    case 'latitude':
    case 'longitude':
    case 'bearing':
      return plain(value, '°');
    case 'ratio':
      return plain(value * 100, '%');
    case 'level': {
      const tenths = Math.round(value * 10) / 10;
      const figure =
        tenths !== 0 && Math.abs(value) < 9.95
          ? tenths.toFixed(1).replace('-', '−')
          : formatNumber(Math.round(value), 4);
      return { figure: `${value > 0 ? '+' : ''}${figure}`, unit: 'dB' };
    }
    case 'mass':
      return value < 1 ? plain(value * 1e3, 'g') : plain(value, 'kg');
    case 'resistivity':
    case 'conductance':
    case 'conductivity':
    case 'field strength':
    case 'power':
    case 'voltage':
    case 'current':
    case 'time':
    case 'inductance':
    case 'resistance':
    case 'frequency':
      return withPrefix(value, QUANTITY_KINDS[kind].unit, digits);
  }
}

/**
 * Print an SI value in the unit a builder would use: 365 pF, 180 µH, 549 kHz, 63 mm.
 * @param value in the SI unit of its kind
 * @param kind what it is a quantity of
 * @param digits significant digits.
 * @returns the number and its unit, as "365 pF"
 */
export function formatQuantity(value: number, kind: QuantityKind, digits = 3): string {
  const { figure, unit } = quantityText(value, kind, digits);
  return unit === '' || unit === '°' ? `${figure}${unit}` : `${figure} ${unit}`;
}

/**
 * "a, b and c".
 * @param words any number of words
 * @returns them as one text; empty for none
 */
export const inSeries = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;

/**
 * With a capital letter first.
 * @param words any text
 * @returns the same with its first letter capital
 */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

import { bearingOfPoint } from './compass.ts';
import { coordinateDegrees } from './coordinate.ts';
import { gaugeDiameter, readGauge } from './gauge.ts';
import { LONGEST_NUMBER, leadingNumber, plainText, wholeNumber } from './number.ts';
import { ZERO_CELSIUS } from './quantities.ts';
import type { QuantityKind } from './quantity-kind.ts';
import type { QuantityHint } from './refusal.ts';

export type { QuantityKind } from './quantity-kind.ts';

interface KindInfo {
  /** SI unit as printed. */
  readonly unit: string;
  /** Written unit → SI factor. Case matters: "m" is milli, "M" mega. */
  readonly units: Readonly<Record<string, number>>;
  /** Units that people mean in two ways, and how to write either: they are refused. */
  readonly unclear?: Readonly<Record<string, readonly [string, string]>>;
  /** Units to offer in a hint, with a plausible number. */
  readonly examples: readonly string[];
}

const scaled = (symbols: readonly string[], prefixes: string): Record<string, number> => {
  const factors: Record<string, number> = {
    p: 1e-12,
    n: 1e-9,
    µ: 1e-6,
    μ: 1e-6,
    u: 1e-6,
    m: 1e-3,
    c: 1e-2,
    '': 1,
    k: 1e3,
    M: 1e6,
    G: 1e9,
  };
  const table: Record<string, number> = {};
  for (const prefix of ['', ...prefixes]) for (const symbol of symbols) table[prefix + symbol] = factors[prefix];
  return table;
};

/** Every kind of quantity: its SI unit, the units it may be written in, and the range that is possible. */
export const QUANTITY_KINDS: Readonly<Record<QuantityKind, KindInfo>> = {
  length: {
    unit: 'm',
    examples: ['63 mm', '2 1/2 in', '28 SWG'],
    units: {
      ...scaled(['m'], 'nµμumck'),
      metre: 1,
      metres: 1,
      meter: 1,
      meters: 1,
      in: 0.0254,
      inch: 0.0254,
      inches: 0.0254,
      '"': 0.0254,
      '″': 0.0254,
      ft: 0.3048,
      foot: 0.3048,
      feet: 0.3048,
      "'": 0.3048,
      '′': 0.3048,
      thou: 2.54e-5,
      mil: 2.54e-5,
      yd: 0.9144,
      yards: 0.9144,
      mile: 1609.344,
      miles: 1609.344,
      mi: 1609.344,
    },
  },
  capacitance: {
    unit: 'F',
    examples: ['500 pF', '0.0005 µF', '1 nF'],
    units: { ...scaled(['F', 'f'], 'pnµμum'), µµF: 1e-12, μμF: 1e-12, uuF: 1e-12, mmfd: 1e-12, pfd: 1e-12, mfd: 1e-6 },
    unclear: { MF: ['µF', 'mF'] },
  },
  inductance: {
    unit: 'H',
    examples: ['180 µH', '2.2 mH'],
    units: scaled(['H'], 'pnµμumkMG'),
  },
  resistance: {
    unit: 'Ω',
    examples: ['2 kΩ', '47 ohm', '4k7'],
    units: {
      ...scaled(['Ω', 'Ω', 'ohm', 'ohms', 'Ohm'], 'pnµμumkMG'),
      R: 1,
      k: 1e3,
      K: 1e3,
      M: 1e6,
      megohm: 1e6,
      kilohm: 1e3,
    },
  },
  frequency: {
    unit: 'Hz',
    examples: ['198 kHz', '1.2 MHz'],
    units: { ...scaled(['Hz', 'hz'], 'pnµμumkMG'), khz: 1e3, mhz: 1e6, KHz: 1e3, 'kc/s': 1e3, 'Mc/s': 1e6 },
  },
  voltage: { unit: 'V', examples: ['6.3 V', '20 mV'], units: scaled(['V'], 'pnµμumkMG') },
  current: { unit: 'A', examples: ['1 µA', '0.3 A'], units: scaled(['A'], 'pnµμumkMG') },
  power: { unit: 'W', examples: ['150 kW', '1 nW'], units: scaled(['W'], 'pnµμumkMG') },
  time: {
    unit: 's',
    examples: ['2 ms', '10 s'],
    units: { ...scaled(['s'], 'pnµμumkMG'), min: 60, h: 3600, hours: 3600 },
  },
  temperature: { unit: 'K', examples: ['20 °C', '300 K'], units: { K: 1 } },
  angle: {
    unit: '°',
    examples: ['40°', '30 deg'],
    units: { '°': 1, deg: 1, degree: 1, degrees: 1, rad: 180 / Math.PI },
  },
  latitude: { unit: '°', examples: ['51.2 N', '51°12′N', '-33.5°'], units: { '°': 1, deg: 1, degrees: 1 } },
  longitude: { unit: '°', examples: ['4.5 W', '4°30′W', '12.5°'], units: { '°': 1, deg: 1, degrees: 1 } },
  bearing: { unit: '°', examples: ['45°', 'NE', 'north-east'], units: { '°': 1, deg: 1, degree: 1, degrees: 1 } },
  'field strength': {
    unit: 'V/m',
    examples: ['5 mV/m', '66 dBµV/m'],
    units: scaled(['V/m'], 'pnµμumkMG'),
  },
  resistivity: {
    unit: 'Ω·m',
    examples: ['100 Ω·m', '50 ohm m'],
    units: {
      ...scaled(['Ω·m', 'Ω·m', 'Ωm', 'Ω m', 'ohm m', 'ohm-m', 'ohm·m', 'ohm metre', 'ohm metres'], 'pnµμumkMG'),
      Ω·cm: 0.01,
      Ωcm: 0.01,
      'ohm cm': 0.01,
      'ohm-cm': 0.01,
    },
  },
  conductivity: {
    unit: 'S/m',
    examples: ['5 mS/m', '4 S/m'],
    units: scaled(['S/m'], 'pnµμumkMG'),
  },
  conductance: { unit: 'S', examples: ['20 µS'], units: scaled(['S'], 'pnµμumkMG') },
  ratio: { unit: '', examples: ['30 %', '0.3'], units: { '%': 0.01, 'per cent': 0.01, '': 1 } },
  level: { unit: 'dB', examples: ['30 dB', '-6 dB'], units: { dB: 1 } },
  mass: {
    unit: 'kg',
    examples: ['120 g'],
    units: { kg: 1, g: 1e-3, oz: 0.028349523125, lb: 0.45359237 },
  },
};

/** A quantity in its SI unit, or why the text is none. */
export type ParsedQuantity =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly hint: QuantityHint };

/** So many equal sections in parallel: 2 × 365 pF. */
const SECTIONS = /^([1-9]\d?)\s*[x×*]\s*((?:\d|[.,]\d).*)$/i;

/**
 * Equal sections in parallel, as "2 × 365 pF".
 * @param text what somebody wrote
 * @returns how many, 1 to 99, and what one of them is, as written; undefined for what is not written so
 */
export function sectionsOf(text: string): { readonly count: number; readonly one: string } | undefined {
  const [, count, one] = SECTIONS.exec(plainText(text)) ?? [];
  return count === undefined ? undefined : { count: Number(count), one };
}

/** Values as marked on parts: 4k7, 2M2, 47R. */
const RESISTOR_MARK = /^(\d+)([kKMR])(\d+)?$/;

/**
 * Read a quantity as people write it; its number by `leadingNumber`, in any locale's form and never as another number.
 * The letters of a unit may be of any case where that leaves one unit ("75 MM"), a wire has its gauge ("26 SWG", "#26"),
 * a coordinate its letter ("51°12′N"), a capacitor its sections in parallel ("2 × 365 pF").
 * @param input text with a unit, or a plain number taken as SI.
 * @param kind what it must be of; a bare number in text is refused unless the kind has no unit.
 * @returns the SI value, or what was expected and a hint. Never NaN, never infinite.
 */
export function parseQuantity(input: unknown, kind: QuantityKind): ParsedQuantity {
  const info = QUANTITY_KINDS[kind];
  const refuse = (hint: QuantityHint): ParsedQuantity => ({ ok: false, hint });
  if (typeof input === 'number') {
    return Number.isFinite(input) ? { ok: true, value: input } : refuse({ code: 'not-finite' });
  }
  if (typeof input !== 'string') return refuse({ code: 'write-example', kind });
  if (input.length > LONGEST_NUMBER) return refuse({ code: 'too-long' });
  const text = plainText(input);
  if (text === '') return refuse({ code: 'empty' });

  const size = readGauge(text);
  if (size) {
    const { gauge } = size;
    if (kind !== 'length') return refuse({ code: 'gauge-is-a-length', gauge, kind });
    const value = gaugeDiameter(gauge, size.number);
    return value === undefined ? refuse({ code: 'gauge-range', gauge }) : { ok: true, value };
  }
  if (kind === 'latitude' || kind === 'longitude') {
    const value = wholeNumber(text) === undefined ? coordinateDegrees(text, kind) : undefined;
    if (value !== undefined) return { ok: true, value };
  }
  const point = kind === 'bearing' ? bearingOfPoint(text) : undefined;
  if (point !== undefined) return { ok: true, value: point };
  const sections = kind === 'capacitance' ? sectionsOf(text) : undefined;
  if (sections) {
    const one = parseQuantity(sections.one, kind);
    return one.ok ? { ok: true, value: sections.count * one.value } : one;
  }
  const mark = kind === 'resistance' ? RESISTOR_MARK.exec(text) : null;
  if (mark) {
    const factor = { k: 1e3, K: 1e3, M: 1e6, R: 1 }[mark[2]]!;
    return { ok: true, value: Number(`${mark[1]}.${mark[3] ?? 0}`) * factor };
  }

  const number = leadingNumber(text);
  if (!number.ok) return refuse(number.hint ?? { code: 'begin-with-number', kind });
  const { value } = number;
  const rest = number.rest.trim();
  const scaled = readUnit(value, rest, kind);
  if (scaled !== undefined && (!Number.isFinite(scaled) || (scaled === 0 && value !== 0 && kind !== 'temperature')))
    return refuse({ code: 'too-large-or-small' });
  if (scaled !== undefined) return { ok: true, value: scaled };
  if (rest === '') return refuse({ code: 'add-a-unit', kind });
  const unclear = info.unclear?.[rest];
  if (unclear)
    return refuse({
      code: 'unit-unclear',
      unit: rest,
      number: text.slice(0, text.length - rest.length).trim(),
      units: unclear,
    });
  const other = (Object.keys(QUANTITY_KINDS) as QuantityKind[]).find(
    (k) => k !== kind && readUnit(value, rest, k) !== undefined,
  );
  if (other) return refuse({ code: 'unit-of-another-kind', unit: rest, other, kind });
  return refuse({ code: 'unit-not-known', unit: rest, kind });
}

function readUnit(value: number, unit: string, kind: QuantityKind): number | undefined {
  if (kind === 'temperature') {
    if (/^(°\s*C|degC|C)$/i.test(unit)) return value + ZERO_CELSIUS;
    if (/^(°\s*F|degF|F)$/i.test(unit)) return (value - 32) / 1.8 + ZERO_CELSIUS;
  }
  if (kind === 'field strength' && /^dB\s*[(]?[µμu]V\/m[)]?$/i.test(unit)) return 1e-6 * 10 ** (value / 20);
  const factor = unitFactor(unit, kind);
  return factor === undefined ? undefined : value * factor;
}

/** As the table has the unit; else in letters of any case and without the spaces in it, where that can be one only. */
function unitFactor(unit: string, kind: QuantityKind): number | undefined {
  const { units, unclear = {} } = QUANTITY_KINDS[kind];
  if (Object.hasOwn(units, unit)) return units[unit];
  const plain = unit.replace(/\s+/g, '');
  if (plain === '' || Object.hasOwn(unclear, plain)) return undefined;
  const sameLetters = Object.keys(units).filter(
    (known) =>
      known.replace(/\s+/g, '').toLowerCase() === plain.toLowerCase() &&
      // A small m is never mega.
      !(known.startsWith('M') && plain.startsWith('m')),
  );
  const sameStart = sameLetters.filter((known) => known[0] === plain[0]);
  for (const candidates of [sameLetters, sameStart]) {
    const factors = new Set(candidates.map((known) => units[known]));
    if (factors.size === 1) return [...factors][0];
  }
  return undefined;
}

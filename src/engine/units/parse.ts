import { type Gauge, gaugeDiameter } from './gauge.ts';
import { LONGEST_NUMBER, leadingNumber, plainText } from './number.ts';
import { ZERO_CELSIUS } from './quantities.ts';
import type { QuantityKind } from './quantity-kind.ts';
import type { QuantityHint } from './refusal.ts';

export type { QuantityKind } from './quantity-kind.ts';

interface KindInfo {
  /** SI unit as printed. */
  readonly unit: string;
  /** Written unit → SI factor. Case matters: "m" is milli, "M" mega. */
  readonly units: Readonly<Record<string, number>>;
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

const WIRE_GAUGE = /^(?:(\d+)\s*(swg|awg)|(swg|awg)\s*(\d+))$/i;
/** Values as marked on parts: 4k7, 2M2, 47R. */
const RESISTOR_MARK = /^(\d+)([kKMR])(\d+)?$/;

/**
 * Read a quantity as people write it; its number by `leadingNumber`, in any locale's form and never as another number.
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

  const gauge = WIRE_GAUGE.exec(text);
  if (gauge) {
    const name = (gauge[2] ?? gauge[3]).toUpperCase() as Gauge;
    if (kind !== 'length') return refuse({ code: 'gauge-is-a-length', gauge: name, kind });
    const value = gaugeDiameter(name, Number(gauge[1] ?? gauge[4]));
    return value === undefined ? refuse({ code: 'gauge-range', gauge: name }) : { ok: true, value };
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
  const found = readUnit(value, rest, kind);
  if (found !== undefined && (!Number.isFinite(found) || (found === 0 && value !== 0 && kind !== 'temperature')))
    return refuse({ code: 'too-large-or-small' });
  if (found !== undefined) return { ok: true, value: found };
  if (rest === '') return refuse({ code: 'add-a-unit', kind });
  const sameLetters = Object.keys(info.units).find((u) => u !== '' && u.toLowerCase() === rest.toLowerCase());
  if (sameLetters)
    return refuse({
      code: 'write-unit-as',
      number: text.slice(0, text.length - rest.length).trim(),
      unit: sameLetters,
    });
  const other = (Object.keys(QUANTITY_KINDS) as QuantityKind[]).find(
    (k) => k !== kind && readUnit(value, rest, k) !== undefined,
  );
  if (other) return refuse({ code: 'unit-of-another-kind', unit: rest, other, kind });
  return refuse({ code: 'unit-not-known', unit: rest, kind });
}

function readUnit(value: number, unit: string, kind: QuantityKind): number | undefined {
  if (kind === 'temperature') {
    if (/^(°\s*C|degC|C)$/.test(unit)) return value + ZERO_CELSIUS;
    if (/^(°\s*F|degF)$/.test(unit)) return (value - 32) / 1.8 + ZERO_CELSIUS;
  }
  if (kind === 'field strength' && /^dB\s*[(]?[µμu]V\/m[)]?$/.test(unit)) return 1e-6 * 10 ** (value / 20);
  const { units } = QUANTITY_KINDS[kind];
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  return factor === undefined ? undefined : value * factor;
}

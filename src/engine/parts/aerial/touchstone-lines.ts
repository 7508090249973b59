import type { TouchstoneProblemFacts } from '../../facts/touchstone-problems.ts';
import {
  add,
  type Complex,
  divide,
  magnitude,
  ONE,
  polar,
  reciprocal,
  scale,
  subtract,
} from '../../numerics/complex.ts';
import type { Coded } from '../../units/coded.ts';
import type { Ohms } from '../../units/quantities.ts';
import type { PortShape, RawNetwork } from './touchstone-network.ts';

/** Takes up what is wrong with a line; which line that is the reader of the file knows. */
export type Wrong = (fact: Coded<TouchstoneProblemFacts>) => void;

const UNITS: Readonly<Record<string, number>> = { HZ: 1, KHZ: 1e3, MHZ: 1e6, GHZ: 1e9 };
const PARAMETERS = ['S', 'Z', 'Y', 'G', 'H'];
const FORMATS = ['MA', 'DB', 'RI'];
const COMMA = /^[+-]?\d+,\d+(e[+-]?\d+)?$/i;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** What the option line says: unit of frequency, Hz; parameter; format; reference resistance, Ω. */
export interface TouchstoneOptions {
  unit: number;
  parameter: string;
  format: string;
  reference: Ohms;
}

/** Where nothing is said. */
export const usualOptions = (): TouchstoneOptions => ({ unit: 1e9, parameter: 'S', format: 'MA', reference: 50 });

/** The option line, from "#" on. @param single of a file that has one port. */
export function readOptions(line: string, single: boolean, wrong: Wrong): TouchstoneOptions {
  const options = usualOptions();
  const words = line.slice(1).trim().toUpperCase().split(/\s+/).filter(Boolean);
  for (let i = 0; i < words.length; i++) {
    const word = words[i];
    if (Object.hasOwn(UNITS, word)) options.unit = UNITS[word];
    else if (FORMATS.includes(word)) options.format = word;
    else if (PARAMETERS.includes(word)) {
      options.parameter = word;
      if (word === 'G' || word === 'H')
        wrong({ code: single ? 'two-port-parameter' : 'parameter-not-read', parameter: word });
    } else if (word === 'R') {
      i++;
      const r = numberIn(words[i] ?? '');
      if (r > 0 && Number.isFinite(r)) options.reference = r;
      else wrong({ code: 'option-resistance', given: shortened(words[i] ?? '') });
    } else wrong({ code: 'option-not-known', given: shortened(word) });
  }
  return options;
}

/** Resistances after "[Reference]", at most so many; undefined for what is none. */
export function readReferences(value: string, most: number, wrong: Wrong): Ohms[] | undefined {
  const numbers = value.split(/\s+/).map(numberIn);
  if (numbers.length <= most && numbers.every((r) => r > 0 && Number.isFinite(r))) return numbers;
  wrong({ code: 'reference-resistance', given: shortened(value) });
  return undefined;
}

/** How many numbers a row may have: with noise data, where the ports are not known, or whole or half matrices. */
function lengthsOf(ports: 1 | 2 | undefined, shape: PortShape): readonly number[] {
  if (ports === 1) return [3];
  if (ports === 2) return shape === 'full' ? [9, 5] : [7];
  return [3, 9];
}

/** A frequency and its numbers as written; undefined for what is none. */
export function readRow(
  line: string,
  unit: number,
  ports: 1 | 2 | undefined,
  shape: PortShape,
  wrong: Wrong,
): readonly number[] | undefined {
  const words = line.split(/\s+/);
  const bad = words.find((word) => !(NUMBER.test(word) && Number.isFinite(Number(word))));
  if (bad !== undefined) {
    wrong({ code: COMMA.test(bad) ? 'decimal-comma' : 'numbers', given: shortened(bad) });
    return undefined;
  }
  const lengths = lengthsOf(ports, shape);
  if (!lengths.includes(words.length)) {
    const counted = words.length;
    if (ports === 1) wrong({ code: 'three-numbers', counted });
    else if (ports === 2) wrong({ code: 'nine-numbers', counted, least: lengths[0] });
    else wrong({ code: 'three-or-nine-numbers', counted });
    return undefined;
  }
  const row = words.map(Number);
  if (!(row[0] * unit >= 0 && Number.isFinite(row[0] * unit))) {
    wrong({ code: 'negative-frequency', value: row[0] });
    return undefined;
  }
  return row;
}

/** The pairs of numbers after the frequency. */
export function pairsOf(row: readonly number[], format: string): Complex[] {
  const values: Complex[] = [];
  for (let i = 1; i + 1 < row.length; i += 2) {
    const [first, second] = [row[i], row[i + 1]];
    values.push(
      format === 'RI'
        ? { re: first, im: second }
        : polar(format === 'DB' ? 10 ** (first / 20) : first, (second * Math.PI) / 180),
    );
  }
  return values;
}

/** Of a one-port value, Ω; undefined for an open circuit. */
export function impedanceOf(
  value: Complex,
  { parameter, version, references: [reference] }: RawNetwork,
): Complex | undefined {
  const z = toImpedance(value, parameter, version === '1' || parameter === 'S' ? reference : 1);
  return Number.isFinite(z.re) && Number.isFinite(z.im) ? z : undefined;
}

/** @param R what Z and Y are in units of; the reference of S. @returns infinite or NaN for an open circuit. */
function toImpedance(value: Complex, parameter: string, R: Ohms): Complex {
  if (parameter === 'Z') return scale(value, R);
  if (parameter === 'Y')
    return magnitude(value) > 0 ? scale(reciprocal(value), R) : { re: Number.POSITIVE_INFINITY, im: 0 };
  const below = subtract(ONE, value);
  return magnitude(below) > 1e-9 ? scale(divide(add(ONE, value), below), R) : { re: Number.POSITIVE_INFINITY, im: 0 };
}

/** A keyword with its spaces evened out. */
export const spaced = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, ' ');
/** A whole number; undefined for what is none. */
export const countOf = (value: string): number | undefined => (/^\d{1,9}$/.test(value) ? Number(value) : undefined);
/** Short enough to show, and no control characters. */
export const shortened = (value: string): string => value.slice(0, 40).replace(/\p{C}/gu, '?');
const numberIn = (word: string): number => (NUMBER.test(word) ? Number(word) : Number.NaN);

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
import type { ImpedancePoint } from './measured.ts';

/** Takes up what is wrong with a line; which line that is the reader of the file knows. */
export type Wrong = (fact: Coded<TouchstoneProblemFacts>) => void;

const UNITS: Readonly<Record<string, number>> = { HZ: 1, KHZ: 1e3, MHZ: 1e6, GHZ: 1e9 };
const PARAMETERS = ['S', 'Z', 'Y', 'G', 'H'];
const FORMATS = ['MA', 'DB', 'RI'];
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

/** The option line, from "#" on. */
export function readOptions(line: string, wrong: Wrong): TouchstoneOptions {
  const found = usualOptions();
  const words = line.slice(1).trim().toUpperCase().split(/\s+/).filter(Boolean);
  for (let i = 0; i < words.length; i++) {
    const word = words[i];
    if (Object.hasOwn(UNITS, word)) found.unit = UNITS[word];
    else if (FORMATS.includes(word)) found.format = word;
    else if (PARAMETERS.includes(word)) {
      found.parameter = word;
      if (word === 'G' || word === 'H') wrong({ code: 'two-port-parameter', parameter: word });
    } else if (word === 'R') {
      i++;
      const r = numberIn(words[i] ?? '');
      if (r > 0 && Number.isFinite(r)) found.reference = r;
      else wrong({ code: 'option-resistance', given: shortened(words[i] ?? '') });
    } else wrong({ code: 'option-not-known', given: shortened(word) });
  }
  return found;
}

/** The resistance after "[Reference]"; undefined for what is none. */
export function readReference(value: string, wrong: Wrong): Ohms | undefined {
  const given = value.split(/\s+/);
  const r = numberIn(given[0]);
  if (given.length === 1 && r > 0) return r;
  wrong({ code: 'reference-resistance', given: shortened(value) });
  return undefined;
}

/** A frequency and its two numbers as written; undefined for what is none. */
export function readRow(line: string, unit: number, wrong: Wrong): readonly [number, number, number] | undefined {
  const words = line.split(/\s+/);
  const bad = words.find((word) => !(NUMBER.test(word) && Number.isFinite(Number(word))));
  if (bad !== undefined) {
    wrong({ code: 'numbers', given: shortened(bad) });
    return undefined;
  }
  if (words.length !== 3) {
    wrong({ code: 'three-numbers', counted: words.length });
    return undefined;
  }
  const [f, first, second] = words.map(Number);
  if (!(f * unit >= 0 && Number.isFinite(f * unit))) {
    wrong({ code: 'negative-frequency', value: f });
    return undefined;
  }
  return [f, first, second];
}

/** @param inUnits Z and Y are in units of the reference. @returns undefined for an open circuit. */
export function impedancePoint(
  [f, first, second]: readonly [number, number, number],
  { unit, parameter, format, reference }: TouchstoneOptions,
  inUnits: boolean,
): ImpedancePoint | undefined {
  const value: Complex =
    format === 'RI'
      ? { re: first, im: second }
      : polar(format === 'DB' ? 10 ** (first / 20) : first, (second * Math.PI) / 180);
  const z = toImpedance(value, parameter, inUnits || parameter === 'S' ? reference : 1);
  if (!(Number.isFinite(z.re) && Number.isFinite(z.im))) return undefined;
  return { frequency: f * unit, resistance: z.re, reactance: z.im };
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

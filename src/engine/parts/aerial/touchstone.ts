import type { TouchstoneProblem, TouchstoneProblemFacts } from '../../facts/touchstone-problems.ts';
import { type Warning, warning } from '../../facts/warning.ts';
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

export type TouchstoneRead =
  | {
      readonly ok: true;
      readonly points: readonly ImpedancePoint[];
      readonly version: '1' | '2.0' | '2.1';
      readonly reference: Ohms;
      readonly warnings: readonly Warning[];
    }
  | { readonly ok: false; readonly problems: readonly TouchstoneProblem[] };

const UNITS: Readonly<Record<string, number>> = { HZ: 1, KHZ: 1e3, MHZ: 1e6, GHZ: 1e9 };
const PARAMETERS = ['S', 'Z', 'Y', 'G', 'H'];
const FORMATS = ['MA', 'DB', 'RI'];
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const MOST_PROBLEMS = 20;

interface Options {
  unit: number;
  parameter: string;
  format: string;
  reference: number;
}

/**
 * Read a one-port Touchstone file, version 1.x or 2.0 (Touchstone File Format Specification, IBIS Open Forum, 2002 and
 * 2009): S, Z or Y, as magnitude and angle, decibels and angle, or real and imaginary. In version 1 Z and Y are in units of
 * the reference resistance, in version 2 they are ohms and siemens.
 * @param text of the whole file. @returns impedances in hertz and ohms, or every problem with its line (the first twenty).
 */
export function readTouchstone(text: string): TouchstoneRead {
  const problems: TouchstoneProblem[] = [];
  let more = 0;
  const problem = (line: number, fact: Coded<TouchstoneProblemFacts>) => {
    if (problems.length < MOST_PROBLEMS) problems.push({ line, ...fact });
    else more++;
  };
  const warnings: Warning[] = [];
  const points: ImpedancePoint[] = [];
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  let version: '1' | '2.0' | '2.1' = '1';
  let options: Options | undefined;
  let started = false;
  let ports: number | undefined;
  let frequencies: number | undefined;
  let reading = false;
  let ended = false;
  let information = false;
  let wantsReference = false;
  let skipped = 0;
  let previous = -1;
  let rows = 0;

  for (let n = 1; n <= lines.length && !ended; n++) {
    const line = lines[n - 1].split('!', 1)[0].trim();
    if (line === '') continue;
    const keyword = /^\[([^\]]*)\]\s*(.*)$/.exec(line);
    if (information) {
      information = !(keyword && spaced(keyword[1]) === 'end information');
      continue;
    }
    if (keyword) {
      const [name, value] = [spaced(keyword[1]), keyword[2].trim()];
      wantsReference = false;
      if (version === '1' && name !== 'version') {
        problem(n, { code: 'version-2-keyword', keyword: brief(keyword[1]) });
        continue;
      }
      switch (name) {
        case 'version':
          if (started) problem(n, { code: 'version-first' });
          if (value === '2.0' || value === '2.1') version = value;
          else problem(n, { code: 'version', given: brief(value) });
          if (value === '2.1') warnings.push(warning('aerial.touchstone-version', { version: '2.1' }));
          break;
        case 'number of ports':
          ports = whole(value);
          if (ports !== 1) problem(n, { code: 'one-port', given: brief(value) });
          break;
        case 'number of frequencies':
          frequencies = whole(value);
          if (!(frequencies !== undefined && frequencies > 0))
            problem(n, { code: 'frequency-count', given: brief(value) });
          break;
        case 'reference':
          wantsReference = true;
          if (value !== '') readReference(value, n);
          break;
        case 'network data':
          reading = true;
          if (ports === undefined) problem(n, { code: 'keyword-missing-before-data', keyword: '[Number of Ports]' });
          if (frequencies === undefined)
            problem(n, { code: 'keyword-missing-before-data', keyword: '[Number of Frequencies]' });
          break;
        case 'begin information':
          information = true;
          break;
        case 'matrix format':
        case 'two-port data order':
        case 'two-port order':
          break;
        case 'noise data':
        case 'number of noise frequencies':
        case 'mixed-mode order':
          problem(n, { code: 'not-of-one-port', keyword: brief(keyword[1]) });
          break;
        case 'end':
          ended = true;
          break;
        default:
          problem(n, { code: 'keyword-not-known', keyword: brief(keyword[1]) });
      }
      started = true;
      continue;
    }
    if (line.startsWith('#')) {
      // Only the first option line counts.
      options ??= readOptions(line, n);
      started = true;
      continue;
    }
    started = true;
    if (wantsReference) {
      readReference(line, n);
      continue;
    }
    if (version !== '1' && !reading) {
      problem(n, { code: 'keyword-before-data', given: brief(line) });
      continue;
    }
    if (options === undefined) {
      if (version !== '1') problem(n, { code: 'option-line-before-data' });
      else warnings.push(warning('aerial.touchstone-no-option-line'));
      options = { unit: 1e9, parameter: 'S', format: 'MA', reference: 50 };
    }
    rows++;
    readPoint(line, n, options);
  }

  const end = lines.length;
  if (information) problem(end, { code: 'information-not-ended' });
  if (version !== '1') {
    if (!reading) problem(end, { code: 'keyword-missing', keyword: '[Network Data]' });
    if (!ended) problem(end, { code: 'cut-short' });
    if (reading && frequencies !== undefined && rows !== frequencies)
      problem(end, { code: 'frequencies-counted', announced: frequencies, counted: rows });
  }
  if (points.length === 0 && problems.length === 0) problem(end, { code: 'no-data' });
  if (more > 0) problems.push({ line: end, code: 'more', count: more });
  if (problems.length > 0) return { ok: false, problems };
  if (skipped > 0) warnings.push(warning('aerial.touchstone-open-points', { count: skipped }));
  if (points.some((p) => p.resistance < 0)) {
    warnings.push(warning('aerial.measured-negative-resistance'));
  }
  return { ok: true, points, version, reference: options?.reference ?? 50, warnings };

  function readReference(value: string, n: number): void {
    const given = value.split(/\s+/);
    wantsReference = false;
    const r = NUMBER.test(given[0]) ? Number(given[0]) : Number.NaN;
    if (!(given.length === 1 && r > 0)) problem(n, { code: 'reference-resistance', given: brief(value) });
    else if (options) options.reference = r;
    else problem(n, { code: 'option-line-before-reference' });
  }

  function readOptions(line: string, n: number): Options {
    const found: Options = { unit: 1e9, parameter: 'S', format: 'MA', reference: 50 };
    const words = line.slice(1).trim().toUpperCase().split(/\s+/).filter(Boolean);
    for (let i = 0; i < words.length; i++) {
      const word = words[i];
      if (Object.hasOwn(UNITS, word)) found.unit = UNITS[word];
      else if (FORMATS.includes(word)) found.format = word;
      else if (PARAMETERS.includes(word)) {
        found.parameter = word;
        if (word === 'G' || word === 'H') problem(n, { code: 'two-port-parameter', parameter: word });
      } else if (word === 'R') {
        i++;
        const r = NUMBER.test(words[i] ?? '') ? Number(words[i]) : Number.NaN;
        if (r > 0 && Number.isFinite(r)) found.reference = r;
        else problem(n, { code: 'option-resistance', given: brief(words[i] ?? '') });
      } else problem(n, { code: 'option-not-known', given: brief(word) });
    }
    return found;
  }

  function readPoint(line: string, n: number, { unit, parameter, format, reference }: Options): void {
    const words = line.split(/\s+/);
    const wrong = words.find((word) => !(NUMBER.test(word) && Number.isFinite(Number(word))));
    if (wrong !== undefined) {
      problem(n, { code: 'numbers', given: brief(wrong) });
      return;
    }
    if (words.length !== 3) {
      problem(n, { code: 'three-numbers', counted: words.length });
      return;
    }
    const [f, first, second] = words.map(Number);
    const frequency = f * unit;
    if (!(frequency >= 0 && Number.isFinite(frequency))) {
      problem(n, { code: 'negative-frequency', value: f });
      return;
    }
    if (!(frequency > previous)) problem(n, { code: 'frequency-not-rising', value: f });
    previous = frequency;
    const value: Complex =
      format === 'RI'
        ? { re: first, im: second }
        : polar(format === 'DB' ? 10 ** (first / 20) : first, (second * Math.PI) / 180);
    const z = toImpedance(value, parameter, version === '1' || parameter === 'S' ? reference : 1);
    if (!(Number.isFinite(z.re) && Number.isFinite(z.im))) skipped++;
    // Nothing is received at 0 Hz, and a table of impedance has no use for it.
    else if (frequency > 0) points.push({ frequency, resistance: z.re, reactance: z.im });
  }
}

/** @param R what Z and Y are in units of; the reference of S. @returns infinite or NaN for an open circuit. */
function toImpedance(value: Complex, parameter: string, R: Ohms): Complex {
  if (parameter === 'Z') return scale(value, R);
  if (parameter === 'Y')
    return magnitude(value) > 0 ? scale(reciprocal(value), R) : { re: Number.POSITIVE_INFINITY, im: 0 };
  const below = subtract(ONE, value);
  return magnitude(below) > 1e-9 ? scale(divide(add(ONE, value), below), R) : { re: Number.POSITIVE_INFINITY, im: 0 };
}

const spaced = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, ' ');
const whole = (value: string): number | undefined => (/^\d{1,9}$/.test(value) ? Number(value) : undefined);
/** Short enough to show, and no control characters. */
const brief = (value: string): string => value.slice(0, 40).replace(/\p{C}/gu, '?');

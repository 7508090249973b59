import type { TouchstoneProblem } from '../../facts/touchstone-problems.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import type { Complex } from '../../numerics/complex.ts';
import type { Ohms } from '../../units/quantities.ts';
import { analyserTable } from './analyser-table.ts';
import type { ImpedancePoint } from './measured.ts';
import {
  countOf,
  impedanceOf,
  pairsOf,
  readOptions,
  readReferences,
  readRow,
  shortened,
  spaced,
  type TouchstoneOptions,
  usualOptions,
  type Wrong,
} from './touchstone-lines.ts';
import { type PortOrder, type PortShape, type RawNetwork, scatteringOf } from './touchstone-network.ts';

/** An aerial as a network analyser measured it, or why the file is none. */
export type TouchstoneRead =
  | {
      readonly ok: true;
      readonly points: readonly ImpedancePoint[];
      readonly version: '1' | '2.0' | '2.1';
      readonly reference: Ohms;
      readonly warnings: readonly Warning[];
    }
  | { readonly ok: false; readonly problems: readonly TouchstoneProblem[] };

/** One or two ports as a network analyser measured them, or why the file is none. */
export type NetworkRead =
  | {
      readonly ok: true;
      readonly ports: 1 | 2;
      /** S11 of one port; S11, S12, S21, S22 of two. */
      readonly points: readonly ScatteringPoint[];
      readonly version: '1' | '2.0' | '2.1';
      readonly reference: Ohms;
      readonly warnings: readonly Warning[];
    }
  | { readonly ok: false; readonly problems: readonly TouchstoneProblem[] };

/** Scattering parameters at one frequency, row by row. */
export interface ScatteringPoint {
  /** Hz. */
  readonly frequency: number;
  readonly s: readonly Complex[];
}

const MOST_PROBLEMS = 20;

/**
 * Read a one-port Touchstone file, version 1.x or 2.0 (Touchstone File Format Specification, IBIS Open Forum, 2002 and
 * 2009): S, Z or Y, as magnitude and angle, decibels and angle, or real and imaginary. In version 1 Z and Y are in units of
 * the reference resistance, in version 2 they are ohms and siemens.
 * @param text of the whole file. @returns impedances in hertz and ohms, or every problem with its line (the first twenty).
 */
export function readTouchstone(text: string): TouchstoneRead {
  const { problems, raw, warnings, line } = readWhole(text, 1);
  if (problems.length > 0) return { ok: false, problems };
  const points: ImpedancePoint[] = [];
  let open = 0;
  for (const { frequency, values } of raw.rows) {
    const z = impedanceOf(values[0], raw);
    if (z === undefined) open++;
    // Nothing is received at 0 Hz, and a table of impedance has no use for it.
    else if (frequency > 0) points.push({ frequency, resistance: z.re, reactance: z.im });
  }
  if (points.length === 0) return { ok: false, problems: [{ line, code: 'no-data' }] };
  if (open > 0) warnings.push(warning('aerial.touchstone-open-points', { count: open }));
  if (points.some((p) => p.resistance < 0)) warnings.push(warning('aerial.measured-negative-resistance'));
  return { ok: true, points, version: raw.version, reference: raw.references[0], warnings };
}

/**
 * Read a Touchstone file of one or two ports as scattering parameters; the forms of `readTouchstone`, and of two ports the
 * order that version 1 has (S11 S21 S12 S22) or version 2 states, whole, upper or lower matrices, and noise data passed
 * over.
 * @param text of the whole file. @returns S parameters by frequency, Hz, or every problem with its line (the first twenty).
 */
export function readNetwork(text: string): NetworkRead {
  const { problems, raw, warnings } = readWhole(text, undefined);
  if (problems.length > 0) return { ok: false, problems };
  const points = raw.rows
    .filter((row) => row.frequency > 0)
    .map(({ frequency, values }) => ({ frequency, s: scatteringOf(values, raw) }));
  const broken = points.findIndex(({ s }) => s.some((x) => !(Number.isFinite(x.re) && Number.isFinite(x.im))));
  if (broken >= 0) return { ok: false, problems: [{ line: raw.rows[broken].line, code: 'no-scattering' }] };
  return { ok: true, ports: raw.ports, points, version: raw.version, reference: raw.references[0], warnings };
}

/** Control characters that no text has. */
const isBinary = (text: string): boolean => {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 9 || (code > 13 && code < 27)) return true;
  }
  return false;
};

function readWhole(text: string, ports: 1 | undefined) {
  const reader = new Reader(ports);
  if (isBinary(text.slice(0, 4096))) return reader.refuse({ code: 'binary' });
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const table = analyserTable(lines);
  if (table.isTable && !table.lines) return reader.refuse({ code: 'table-columns' });
  for (const line of (table.isTable && table.lines) || lines) reader.read(line.split('!', 1)[0].trim());
  return reader.end();
}

/** What has been read of a file so far. */
class Reader {
  private readonly problems: TouchstoneProblem[] = [];
  private more = 0;
  private readonly warnings: Warning[] = [];
  private readonly rows: RawNetwork['rows'][number][] = [];
  private line = 0;
  private version: '1' | '2.0' | '2.1' = '1';
  private options: TouchstoneOptions | undefined;
  /** Only one port is wanted. */
  private readonly single: boolean;
  private ports: 1 | 2 | undefined;
  private order: PortOrder = '21_12';
  private shape: PortShape = 'full';
  private frequencies: number | undefined;
  /** Something other than a comment has been read. */
  private hasStarted = false;
  /** Of version 2: within the data, within information to be passed over, or past the end. */
  private isInData = false;
  private isInInformation = false;
  private isInNoise = false;
  private hasEnded = false;
  private references: Ohms[] | undefined;
  private wantsReference = false;
  private counted = 0;
  private lastFrequency = -1;

  constructor(ports: 1 | undefined) {
    this.single = ports === 1;
    this.ports = ports;
  }

  /** The next line, without its comment. */
  read(line: string): void {
    this.line++;
    if (this.hasEnded || line === '') return;
    const keyword = /^\[([^\]]*)\]\s*(.*)$/.exec(line);
    if (this.isInInformation) {
      this.isInInformation = !(keyword && spaced(keyword[1]) === 'end information');
      return;
    }
    if (keyword) this.readKeyword(keyword[1], keyword[2].trim());
    else if (this.isInNoise) return;
    else if (line.startsWith('#')) {
      // Only the first option line counts.
      this.options ??= readOptions(line, this.single, this.wrong);
      this.hasStarted = true;
    } else {
      this.hasStarted = true;
      if (this.wantsReference) this.takeReference(line);
      else this.readData(line);
    }
  }

  /** Nothing but this is wrong. */
  refuse(fact: Parameters<Wrong>[0]) {
    this.line = 1;
    this.wrong(fact);
    return this.result();
  }

  /** @returns all of it, once the last line has been read. */
  end() {
    const { problems, rows, version, wrong } = this;
    if (this.isInInformation) wrong({ code: 'information-not-ended' });
    if (version !== '1') {
      if (!this.isInData) wrong({ code: 'keyword-missing', keyword: '[Network Data]' });
      if (!this.hasEnded) wrong({ code: 'cut-short' });
      if (this.isInData && this.frequencies !== undefined && this.counted !== this.frequencies)
        wrong({ code: 'frequencies-counted', announced: this.frequencies, counted: this.counted });
    }
    if (rows.length === 0 && problems.length === 0) wrong({ code: 'no-data' });
    if (this.more > 0) problems.push({ line: this.line, code: 'more', count: this.more });
    return this.result();
  }

  private result() {
    const { parameter, reference } = this.options ?? usualOptions();
    const ports = this.ports ?? 1;
    const raw: RawNetwork = {
      ports,
      parameter,
      order: this.order,
      shape: this.shape,
      version: this.version,
      references: this.references ?? [reference, reference],
      rows: this.rows,
    };
    return { problems: this.problems, raw, warnings: this.warnings, line: this.line };
  }

  private readonly wrong: Wrong = (fact) => {
    if (this.problems.length < MOST_PROBLEMS) this.problems.push({ line: this.line, ...fact });
    else this.more++;
  };

  private readKeyword(written: string, value: string): void {
    const { wrong } = this;
    const name = spaced(written);
    this.wantsReference = false;
    if (this.version === '1' && name !== 'version') {
      wrong({ code: 'version-2-keyword', keyword: shortened(written) });
      return;
    }
    switch (name) {
      case 'version':
        this.takeVersion(value);
        break;
      case 'number of ports':
        this.takePorts(value);
        break;
      case 'number of frequencies':
        this.frequencies = countOf(value);
        if (!(this.frequencies !== undefined && this.frequencies > 0))
          wrong({ code: 'frequency-count', given: shortened(value) });
        break;
      case 'reference':
        this.wantsReference = true;
        if (value !== '') this.takeReference(value);
        break;
      case 'network data':
        this.isInData = true;
        if (!this.portsGiven) wrong({ code: 'keyword-missing-before-data', keyword: '[Number of Ports]' });
        if (this.frequencies === undefined)
          wrong({ code: 'keyword-missing-before-data', keyword: '[Number of Frequencies]' });
        break;
      case 'begin information':
        this.isInInformation = true;
        break;
      case 'matrix format':
        this.shape = (['full', 'upper', 'lower'] as const).find((shape) => shape === spaced(value)) ?? this.shape;
        break;
      case 'two-port data order':
      case 'two-port order':
        this.order = value === '12_21' ? '12_21' : '21_12';
        break;
      case 'noise data':
        this.isInNoise = true;
        this.onlyOfTwo(written);
        break;
      case 'number of noise frequencies':
      case 'mixed-mode order':
        this.onlyOfTwo(written);
        break;
      case 'end':
        this.hasEnded = true;
        break;
      default:
        wrong({ code: 'keyword-not-known', keyword: shortened(written) });
    }
    this.hasStarted = true;
  }

  private takeVersion(value: string): void {
    if (this.hasStarted) this.wrong({ code: 'version-first' });
    if (value === '2.0' || value === '2.1') this.version = value;
    else this.wrong({ code: 'version', given: shortened(value) });
    if (value === '2.1') this.warnings.push(warning('aerial.touchstone-version', { version: '2.1' }));
  }

  private takePorts(value: string): void {
    const ports = countOf(value);
    if (this.single) {
      if (ports !== 1) this.wrong({ code: 'one-port', given: shortened(value) });
    } else if (ports === 1 || ports === 2) this.ports = ports;
    else this.wrong({ code: 'ports', given: shortened(value) });
    this.portsGiven = true;
  }

  private portsGiven = false;

  private onlyOfTwo(keyword: string): void {
    if (this.ports === 1) this.wrong({ code: 'not-of-one-port', keyword: shortened(keyword) });
  }

  /** Resistances after "[Reference]", one a port, on its line or the next ones. */
  private takeReference(value: string): void {
    const ports = this.ports ?? 1;
    this.wantsReference = false;
    const references = readReferences(value, ports - (this.references?.length ?? 0), this.wrong);
    if (references === undefined) return;
    if (!this.options) {
      this.wrong({ code: 'option-line-before-reference' });
      return;
    }
    this.references = [...(this.references ?? []), ...references];
    this.wantsReference = this.references.length < ports;
    if (!this.wantsReference && this.references.some((r) => r !== this.references?.[0]))
      this.wrong({ code: 'references-differ' });
  }

  private readData(line: string): void {
    const { wrong, version } = this;
    if (version !== '1' && !this.isInData) {
      wrong({ code: 'keyword-before-data', given: shortened(line) });
      return;
    }
    if (this.options === undefined) {
      if (version !== '1') wrong({ code: 'option-line-before-data' });
      else this.warnings.push(warning('aerial.touchstone-no-option-line'));
      this.options = usualOptions();
    }
    this.counted++;
    const row = readRow(line, this.options.unit, this.ports, this.shape, wrong);
    if (row === undefined) return;
    const frequency = row[0] * this.options.unit;
    if (row.length === NOISE && frequency <= this.lastFrequency && version === '1' && this.ports === 2) {
      this.isInNoise = true;
      return;
    }
    if (!this.single) this.ports ??= row.length === 3 ? 1 : 2;
    if (row.length === NOISE) {
      wrong({ code: 'nine-numbers', counted: row.length, least: 9 });
      return;
    }
    if (!(frequency > this.lastFrequency)) wrong({ code: 'frequency-not-rising', value: row[0] });
    this.lastFrequency = frequency;
    this.rows.push({ frequency, line: this.line, values: pairsOf(row, this.options.format) });
  }
}

/** Numbers in a row of noise data. */
const NOISE = 5;

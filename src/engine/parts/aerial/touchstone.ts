import type { TouchstoneProblem } from '../../facts/touchstone-problems.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import type { Ohms } from '../../units/quantities.ts';
import type { ImpedancePoint } from './measured.ts';
import {
  countOf,
  impedancePoint,
  readOptions,
  readReference,
  readRow,
  shortened,
  spaced,
  type TouchstoneOptions,
  usualOptions,
  type Wrong,
} from './touchstone-lines.ts';

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

const MOST_PROBLEMS = 20;

/**
 * Read a one-port Touchstone file, version 1.x or 2.0 (Touchstone File Format Specification, IBIS Open Forum, 2002 and
 * 2009): S, Z or Y, as magnitude and angle, decibels and angle, or real and imaginary. In version 1 Z and Y are in units of
 * the reference resistance, in version 2 they are ohms and siemens.
 * @param text of the whole file. @returns impedances in hertz and ohms, or every problem with its line (the first twenty).
 */
export function readTouchstone(text: string): TouchstoneRead {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const reader = new Reader();
  for (const line of lines) reader.read(line.split('!', 1)[0].trim());
  return reader.end();
}

/** What has been read of a file so far. */
class Reader {
  private readonly problems: TouchstoneProblem[] = [];
  private more = 0;
  private readonly warnings: Warning[] = [];
  private readonly points: ImpedancePoint[] = [];
  private line = 0;
  private version: '1' | '2.0' | '2.1' = '1';
  private options: TouchstoneOptions | undefined;
  private ports: number | undefined;
  private frequencies: number | undefined;
  /** Something other than a comment has been read. */
  private hasStarted = false;
  /** Of version 2: within the data, within information to be passed over, or past the end. */
  private isInData = false;
  private isInInformation = false;
  private hasEnded = false;
  private wantsReference = false;
  private rows = 0;
  private openPoints = 0;
  private lastFrequency = -1;

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
    else if (line.startsWith('#')) {
      // Only the first option line counts.
      this.options ??= readOptions(line, this.wrong);
      this.hasStarted = true;
    } else {
      this.hasStarted = true;
      if (this.wantsReference) this.takeReference(line);
      else this.readData(line);
    }
  }

  /** @returns all of it, once the last line has been read. */
  end(): TouchstoneRead {
    const { problems, points, warnings, version, options, wrong } = this;
    if (this.isInInformation) wrong({ code: 'information-not-ended' });
    if (version !== '1') {
      if (!this.isInData) wrong({ code: 'keyword-missing', keyword: '[Network Data]' });
      if (!this.hasEnded) wrong({ code: 'cut-short' });
      if (this.isInData && this.frequencies !== undefined && this.rows !== this.frequencies)
        wrong({ code: 'frequencies-counted', announced: this.frequencies, counted: this.rows });
    }
    if (points.length === 0 && problems.length === 0) wrong({ code: 'no-data' });
    if (this.more > 0) problems.push({ line: this.line, code: 'more', count: this.more });
    if (problems.length > 0) return { ok: false, problems };
    if (this.openPoints > 0) warnings.push(warning('aerial.touchstone-open-points', { count: this.openPoints }));
    if (points.some((p) => p.resistance < 0)) warnings.push(warning('aerial.measured-negative-resistance'));
    return { ok: true, points, version, reference: options?.reference ?? 50, warnings };
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
        this.ports = countOf(value);
        if (this.ports !== 1) wrong({ code: 'one-port', given: shortened(value) });
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
        if (this.ports === undefined) wrong({ code: 'keyword-missing-before-data', keyword: '[Number of Ports]' });
        if (this.frequencies === undefined)
          wrong({ code: 'keyword-missing-before-data', keyword: '[Number of Frequencies]' });
        break;
      case 'begin information':
        this.isInInformation = true;
        break;
      case 'matrix format':
      case 'two-port data order':
      case 'two-port order':
        break;
      case 'noise data':
      case 'number of noise frequencies':
      case 'mixed-mode order':
        wrong({ code: 'not-of-one-port', keyword: shortened(written) });
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

  private takeReference(value: string): void {
    this.wantsReference = false;
    const reference = readReference(value, this.wrong);
    if (reference === undefined) return;
    if (this.options) this.options.reference = reference;
    else this.wrong({ code: 'option-line-before-reference' });
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
    this.rows++;
    const row = readRow(line, this.options.unit, wrong);
    if (row === undefined) return;
    const frequency = row[0] * this.options.unit;
    if (!(frequency > this.lastFrequency)) wrong({ code: 'frequency-not-rising', value: row[0] });
    this.lastFrequency = frequency;
    const point = impedancePoint(row, this.options, version === '1');
    if (point === undefined) this.openPoints++;
    // Nothing is received at 0 Hz, and a table of impedance has no use for it.
    else if (frequency > 0) this.points.push(point);
  }
}

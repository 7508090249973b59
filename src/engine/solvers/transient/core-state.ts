import type { StateSpace } from '../modes/state-space.ts';
import type { StepCoefficients, StepRow } from './coefficients.ts';
import { type CurveDevice, curveOf, type Device } from './devices.ts';
import { type Oscillators, oscillators, type StationWave, sourceWeights } from './sources.ts';

/** A row's answer to the two waves and, under them, to the bias cells. */
export interface ReducedRow {
  readonly cr: Float64Array;
  readonly ci: Float64Array;
  /** Factor of each detector's current, that of its modes included. */
  readonly detectors: Float64Array;
  readonly cosine: number;
  readonly sine: number;
  readonly bias: number;
}

/** Sums over steps, for whoever sets them back to zero. */
export interface Sums {
  readonly wave: Float64Array;
  readonly current: Float64Array;
  /** v² of each watched row. */
  readonly square: Float64Array;
  /** v·i: watched row × detector. */
  readonly power: Float64Array;
}

/** Most rows that can be watched at once. */
export const MOST_WATCHED = 16;

/** β towards the two waves (cosine, sine). */
export type Drive = Readonly<Record<'cosineRe' | 'cosineIm' | 'sineRe' | 'sineIm', Float64Array>>;

/** What is stepped: modes, waves and detectors, everything made once. */
export interface CoreState {
  readonly k: StepCoefficients;
  readonly drive: Drive;
  readonly source: Oscillators;
  readonly curves: readonly CurveDevice[];
  /** Each detector's voltage, and what every detector's current makes of it, Ω: detector × detector. */
  readonly rows: readonly ReducedRow[];
  readonly R: Float64Array;
  /** Modes at the last step, all but what the current of that step adds. */
  readonly zr: Float64Array;
  readonly zi: Float64Array;
  readonly current: Float64Array;
  readonly volt: Float64Array;
  /** Voltages one step earlier. */
  readonly before: Float64Array;
  /** Two waves (cosine, sine) at the last step. */
  readonly wave: Float64Array;
  readonly sums: Sums;
  watched: readonly ReducedRow[];
  /** Room for one step. */
  readonly open: Float64Array;
  readonly work: Float64Array;
}

/** A state of rest, but for the waves, which are where the stations begin. */
export function coreState(
  k: StepCoefficients,
  emfs: StateSpace['emfs'],
  devices: readonly Device[],
  detectorRows: readonly StepRow[],
  stations: readonly StationWave[],
  h: number,
): CoreState {
  const D = devices.length;
  const rows = detectorRows.map((row) => reduceRow(k, emfs, row));
  const source = oscillators(stations, h);
  const first = source.at(0);
  return {
    k,
    drive: driveOf(k, emfs),
    source,
    curves: devices.map(curveOf),
    rows,
    R: Float64Array.from({ length: D * D }, (_, i) => rows[Math.floor(i / D)].detectors[i % D]),
    zr: new Float64Array(k.count),
    zi: new Float64Array(k.count),
    current: new Float64Array(D),
    volt: new Float64Array(D),
    before: new Float64Array(D),
    wave: Float64Array.of(first.re, first.im),
    sums: {
      wave: new Float64Array(2),
      current: new Float64Array(D),
      square: new Float64Array(MOST_WATCHED),
      power: new Float64Array(MOST_WATCHED * Math.max(D, 1)),
    },
    watched: [],
    open: new Float64Array(D),
    work: new Float64Array(D * (D + 4)),
  };
}

/** Each mode's drive: its factors of all emfs, weighted. */
function weighted({ count }: StepCoefficients, weights: readonly number[], factors: Float64Array): Float64Array {
  const E = weights.length;
  return Float64Array.from({ length: count }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < E; j++) sum += weights[j] * factors[i * E + j];
    return sum;
  });
}

/** Drives by the cosine and sine waves; what the cells do is constant and kept apart. */
function driveOf(k: StepCoefficients, emfs: StateSpace['emfs']): Drive {
  const weights = sourceWeights(emfs);
  const cosine = weights.map(({ re }) => re);
  const sine = weights.map(({ im }) => -im);
  return {
    cosineRe: weighted(k, cosine, k.beta.re),
    cosineIm: weighted(k, cosine, k.beta.im),
    sineRe: weighted(k, sine, k.beta.re),
    sineIm: weighted(k, sine, k.beta.im),
  };
}

/** A row of the step with the waves' and the cells' parts in it summed up. */
export function reduceRow(k: StepCoefficients, emfs: StateSpace['emfs'], row: StepRow): ReducedRow {
  const weights = sourceWeights(emfs);
  const volts = emfs.map((e) => e.volts ?? 0);
  const biasR = weighted(k, volts, k.restBeta.re);
  const biasI = weighted(k, volts, k.restBeta.im);
  let cosine = 0;
  let sine = 0;
  let bias = 0;
  for (let j = 0; j < emfs.length; j++) {
    cosine += row.emfs[j] * weights[j].re;
    sine -= row.emfs[j] * weights[j].im;
    bias += row.emfs[j] * volts[j];
  }
  const detectors = row.detectors.slice();
  const D = detectors.length;
  for (let i = 0; i < k.count; i++) {
    bias += row.c.re[i] * biasR[i] - row.c.im[i] * biasI[i];
    for (let j = 0; j < D; j++)
      detectors[j] += row.c.re[i] * k.gamma.re[i * D + j] - row.c.im[i] * k.gamma.im[i * D + j];
  }
  return { cr: row.c.re, ci: row.c.im, detectors, cosine, sine, bias };
}

import { wrightOmega } from '../../numerics/lambert.ts';
import { OMEGA_HIGHEST, OMEGA_LOWEST, OMEGA_PER_UNIT, omegaTable } from '../../numerics/omega-table.ts';
import type { StateSpace } from '../modes/state-space.ts';
import type { StepCoefficients, StepRow } from './coefficients.ts';
import { type CurveDevice, curveOf, type Device, lawOf, solveLoadLine, solveLoadPlane } from './devices.ts';
import { GROUP, oscillators, type StationWave, sourceWeights } from './sources.ts';

/** The stepping itself: modes, waves and detectors, nothing allocated as it goes. */
export interface Core {
  readonly k: StepCoefficients;
  /** Modes at the last step, all but what the current of that step adds. */
  readonly zr: Float64Array;
  readonly zi: Float64Array;
  readonly current: Float64Array;
  /** Two waves (cosine, sine) at the last step. */
  readonly wave: Float64Array;
  /** β towards the two waves. */
  readonly drive: Readonly<Record<'cosineRe' | 'cosineIm' | 'sineRe' | 'sineIm', Float64Array>>;
  /** Sums over the steps taken, for whoever sets them back to zero: waves, currents, and of each watched row v² and v·i. */
  readonly sums: Sums;
  /** A row's answer to the two waves and, under them, to the bias cells. */
  reduce(row: StepRow): Reduced;
  /** Whatever one of these rows does is summed at every step; at most one costs little. */
  watch(rows: readonly Reduced[]): void;
  advance(from: number, steps: number): void;
}
export interface Sums {
  readonly wave: Float64Array;
  readonly current: Float64Array;
  /** Watched row. */
  readonly square: Float64Array;
  /** Watched row × detector. */
  readonly power: Float64Array;
}
export interface Reduced {
  readonly cr: Float64Array;
  readonly ci: Float64Array;
  /** Factor of each detector's current, that of its modes included. */
  readonly detectors: Float64Array;
  readonly cosine: number;
  readonly sine: number;
  readonly bias: number;
}

const NO_LAW = { saturationCurrent: 1, slopeVoltage: 1, seriesResistance: 1, leakage: 0 };

export function makeCore(
  k: StepCoefficients,
  emfs: StateSpace['emfs'],
  devices: readonly Device[],
  detectorRows: readonly StepRow[],
  stations: readonly StationWave[],
  h: number,
): Core {
  const { real, count, m } = k;
  const E = emfs.length;
  const D = devices.length;
  const weights = sourceWeights(emfs);
  const volts = emfs.map((e) => e.volts ?? 0);
  const mr = m.re;
  const mi = m.im;
  const gr = k.gamma.re;
  // Drives by the cosine and sine waves; what the cells do is constant and kept apart.
  const fill = (f: (j: number) => number, from: Float64Array) =>
    Float64Array.from({ length: count }, (_, i) => {
      let s = 0;
      for (let j = 0; j < E; j++) s += f(j) * from[i * E + j];
      return s;
    });
  const bcr = fill((j) => weights[j].re, k.beta.re);
  const bci = fill((j) => weights[j].re, k.beta.im);
  const bsr = fill((j) => -weights[j].im, k.beta.re);
  const bsi = fill((j) => -weights[j].im, k.beta.im);
  const biasR = fill((j) => volts[j], k.restBeta.re);
  const biasI = fill((j) => volts[j], k.restBeta.im);
  const quadrature = bsr.some((v) => v !== 0) || bsi.some((v) => v !== 0) || weights.some((w) => w.im !== 0);
  const reduce = (row: StepRow): Reduced => {
    let cosine = 0;
    let sine = 0;
    let bias = 0;
    for (let j = 0; j < E; j++) {
      cosine += row.emfs[j] * weights[j].re;
      sine -= row.emfs[j] * weights[j].im;
      bias += row.emfs[j] * volts[j];
    }
    const detectors = row.detectors.slice();
    for (let i = 0; i < count; i++) {
      bias += row.c.re[i] * biasR[i] - row.c.im[i] * biasI[i];
      for (let j = 0; j < D; j++)
        detectors[j] += row.c.re[i] * k.gamma.re[i * D + j] - row.c.im[i] * k.gamma.im[i * D + j];
    }
    return { cr: row.c.re, ci: row.c.im, detectors, cosine, sine, bias };
  };
  const rows = detectorRows.map(reduce);
  const curves: CurveDevice[] = devices.map(curveOf);
  const zr = new Float64Array(count);
  const zi = new Float64Array(count);
  const current = new Float64Array(D);
  const volt = new Float64Array(D);
  const before = new Float64Array(D);
  const wave = new Float64Array(2);
  const R = new Float64Array(D * D);
  rows.forEach((r, a) => {
    for (let b = 0; b < D; b++) R[a * D + b] = r.detectors[b];
  });
  const open = new Float64Array(D);
  const work = new Float64Array(D * (D + 4));
  if (volts.some((v) => v !== 0)) settle();
  const source = oscillators(stations, h);
  const first = source.at(0);
  wave[0] = first.re;
  wave[1] = first.im;
  for (let a = 0; a < D; a++) before[a] = volt[a];

  /** The state that the cells alone hold, detectors conducting. */
  function settle(): void {
    const rest = new Float64Array(D * D);
    rows.forEach((r, a) => {
      open[a] = r.bias;
      for (let b = 0; b < D; b++) {
        let s = detectorRows[a].detectors[b];
        for (let i = 0; i < count; i++) s += r.cr[i] * k.restGamma.re[i * D + b] - r.ci[i] * k.restGamma.im[i * D + b];
        rest[a * D + b] = Math.min(s, a === b ? 0 : Number.POSITIVE_INFINITY);
      }
    });
    if (D === 1) volt[0] = solveLoadLine(curves[0], open[0], rest[0], 0);
    else if (D > 1) solveLoadPlane(curves, open, rest, volt, work);
    for (let b = 0; b < D; b++) current[b] = curves[b].current(volt[b]);
    for (let i = 0; i < count; i++) {
      for (let b = 0; b < D; b++) {
        zr[i] += (k.restGamma.re[i * D + b] - k.gamma.re[i * D + b]) * current[b];
        zi[i] += (k.restGamma.im[i * D + b] - k.gamma.im[i * D + b]) * current[b];
      }
    }
  }

  const lone = devices[0];
  // A lone junction behind a resistance has a closed answer, looked up: with v = p − ρ·i and leakage G across it,
  // i = (1 − G·ρ′)·(s/ρ′·ω(z) − Is) + G·p′, p′ = p/(1 + ρG), ρ′ = ρ/(1 + ρG).
  const law = D === 1 ? lawOf(lone) : undefined;
  const junction = law !== undefined;
  const { saturationCurrent: Is, slopeVoltage, seriesResistance, leakage } = law ?? NO_LAW;
  const rho0 = Math.max(seriesResistance - R[0], 1e-12);
  const share = 1 / (1 + rho0 * leakage);
  const rho = rho0 * share;
  const inverse = share / slopeVoltage;
  const shift = (rho * Is) / slopeVoltage + Math.log((rho * Is) / slopeVoltage);
  const part = 1 - leakage * rho;
  const ampere = (slopeVoltage / rho) * part;
  const back = Is * part;
  const leak = leakage * share;
  const table = omegaTable();
  const one = rows[0];
  let watched: readonly Reduced[] = [];
  const most = 16;
  const sums: Sums = {
    wave: new Float64Array(2),
    current: new Float64Array(D),
    square: new Float64Array(most),
    power: new Float64Array(most * Math.max(D, 1)),
  };
  const valueNow = (r: Reduced): number => {
    let v = r.bias + r.cosine * wave[0] + r.sine * wave[1];
    for (let a = 0; a < D; a++) v += r.detectors[a] * current[a];
    for (let j = 0; j < count; j++) v += r.cr[j] * zr[j] - r.ci[j] * zi[j];
    return v;
  };

  function advanceOne(from: number, steps: number): void {
    const { cr, ci } = one;
    const { cosine } = source;
    const direct = one.cosine;
    const bias = one.bias;
    const r0 = R[0];
    const seen = watched.length === 1 ? watched[0] : undefined;
    const sr = seen ? seen.cr : cr;
    const si = seen ? seen.ci : ci;
    const seenBias = seen ? seen.bias : 0;
    const seenWave = seen ? seen.cosine : 0;
    const seenCurrent = seen ? seen.detectors[0] : 0;
    let u0 = wave[0];
    let i0 = current[0];
    let v0 = volt[0];
    let sumU = 0;
    let sumI = 0;
    let square = 0;
    let power = 0;
    for (let s = 0; s < steps; s++) {
      const at = (from + s) % GROUP;
      if (at === 0) source.fill(from + s);
      const u1 = cosine[at];
      const su = u0 + u1;
      let p = direct * u1 + bias;
      let v = seenBias + seenWave * u1;
      for (let j = 0; j < real; j++) {
        const g = gr[j] * i0;
        const x = mr[j] * (zr[j] + g) + bcr[j] * su + g;
        zr[j] = x;
        p += cr[j] * x;
        v += sr[j] * x;
      }
      for (let j = real; j < count; j++) {
        const g = gr[j] * i0; // γ is 1 or 0 here
        const a = zr[j] + g;
        const b = zi[j];
        const x = mr[j] * a - mi[j] * b + bcr[j] * su + g;
        const y = mr[j] * b + mi[j] * a + bci[j] * su;
        zr[j] = x;
        zi[j] = y;
        p += cr[j] * x - ci[j] * y;
        v += sr[j] * x - si[j] * y;
      }
      if (junction) {
        const z = p * inverse + shift;
        let w: number;
        if (z > OMEGA_LOWEST && z < OMEGA_HIGHEST) {
          const q = (z - OMEGA_LOWEST) * OMEGA_PER_UNIT;
          const n = q | 0;
          const t = q - n;
          const f0 = table[2 * n];
          const d0 = table[2 * n + 1];
          const d1 = table[2 * n + 3];
          const e = table[2 * n + 2] - f0;
          w = f0 + t * (d0 + t * (3 * e - 2 * d0 - d1 + t * (d0 + d1 - 2 * e)));
        } else w = wrightOmega(z);
        i0 = ampere * w - back + leak * p;
      } else {
        v0 = solveLoadLine(curves[0], p, r0, v0);
        i0 = curves[0].current(v0);
      }
      u0 = u1;
      sumU += u1;
      sumI += i0;
      v += seenCurrent * i0;
      square += v * v;
      power += v * i0;
    }
    wave[0] = u0;
    current[0] = i0;
    volt[0] = v0;
    sums.wave[0] += sumU;
    sums.current[0] += sumI;
    sums.square[0] += square;
    sums.power[0] += power;
  }

  function advanceAny(from: number, steps: number): void {
    const { cosine, sine } = source;
    const gi = k.gamma.im;
    for (let s = 0; s < steps; s++) {
      const at = (from + s) % GROUP;
      if (at === 0) source.fill(from + s);
      const su = wave[0] + cosine[at];
      const sq = wave[1] + sine[at];
      wave[0] = cosine[at];
      wave[1] = sine[at];
      for (let a = 0; a < D; a++) open[a] = rows[a].cosine * wave[0] + rows[a].sine * wave[1] + rows[a].bias;
      for (let j = 0; j < count; j++) {
        let dr = 0;
        let di = 0;
        for (let a = 0; a < D; a++) {
          dr += gr[j * D + a] * current[a];
          di += gi[j * D + a] * current[a];
        }
        const a = zr[j] + dr;
        const b = zi[j] + di;
        zr[j] = mr[j] * a - mi[j] * b + bcr[j] * su + bsr[j] * sq + dr;
        zi[j] = j < real ? 0 : mr[j] * b + mi[j] * a + bci[j] * su + bsi[j] * sq + di;
        for (let c = 0; c < D; c++) open[c] += rows[c].cr[j] * zr[j] - rows[c].ci[j] * zi[j];
      }
      if (D === 1) volt[0] = solveLoadLine(curves[0], open[0], R[0], volt[0]);
      else {
        // Start where the voltages are heading, but not by more than a tenth of a volt.
        for (let a = 0; a < D; a++) {
          const step = Math.min(volt[a] - before[a], 0.1);
          before[a] = volt[a];
          volt[a] += step;
        }
        solveLoadPlane(curves, open, R, volt, work);
      }
      for (let a = 0; a < D; a++) current[a] = curves[a].current(volt[a]);
      sums.wave[0] += wave[0];
      sums.wave[1] += wave[1];
      for (let a = 0; a < D; a++) sums.current[a] += current[a];
      for (let q = 0; q < watched.length; q++) {
        const v = valueNow(watched[q]);
        sums.square[q] += v * v;
        for (let a = 0; a < D; a++) sums.power[q * D + a] += v * current[a];
      }
    }
  }

  return {
    k,
    zr,
    zi,
    current,
    wave,
    drive: { cosineRe: bcr, cosineIm: bci, sineRe: bsr, sineIm: bsi },
    sums,
    reduce,
    watch(list) {
      if (list.length > most) throw new RangeError(`at most ${most} voltages can be watched for their power`);
      watched = list;
    },
    advance: (from, steps) => (D === 1 && !quadrature && watched.length < 2 ? advanceOne : advanceAny)(from, steps),
  };
}

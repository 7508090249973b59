import { wrightOmega } from '../../numerics/lambert.ts';
import { OMEGA_HIGHEST, OMEGA_LOWEST, OMEGA_PER_UNIT, omegaTable } from '../../numerics/omega-table.ts';
import type { CoreState, ReducedRow } from './core-state.ts';
import { type JunctionLaw, solveLoadLine, solveLoadPlane } from './devices.ts';
import { GROUP } from './sources.ts';

/**
 * A lone junction behind a resistance has a closed answer, looked up: with v = p − ρ·i and leakage G across it,
 * i = (1 − G·ρ′)·(s/ρ′·ω(z) − Is) + G·p′, p′ = p/(1 + ρG), ρ′ = ρ/(1 + ρG).
 */
export interface SingleJunction {
  /** z = p·inverse + shift. */
  readonly inverse: number;
  readonly shift: number;
  /** i = ampere·ω(z) − back + leak·p. */
  readonly ampere: number;
  readonly back: number;
  readonly leak: number;
}

const NO_JUNCTION: SingleJunction = { inverse: 0, shift: 0, ampere: 0, back: 0, leak: 0 };

/** @param R what its current makes of its voltage, Ω: below 0. */
export function singleJunction(
  { saturationCurrent: Is, slopeVoltage, seriesResistance, leakage }: JunctionLaw,
  R: number,
): SingleJunction {
  const rho0 = Math.max(seriesResistance - R, 1e-12);
  const share = 1 / (1 + rho0 * leakage);
  const rho = rho0 * share;
  const part = 1 - leakage * rho;
  return {
    inverse: share / slopeVoltage,
    shift: (rho * Is) / slopeVoltage + Math.log((rho * Is) / slopeVoltage),
    ampere: (slopeVoltage / rho) * part,
    back: Is * part,
    leak: leakage * share,
  };
}

/** One wave, one detector and at most one watched row. @param closed its closed answer, if it has one. */
export function advanceOne(state: CoreState, closed: SingleJunction | undefined, from: number, steps: number): void {
  const { k, drive, source, rows, curves, R, zr, zi, wave, current, volt, watched, sums } = state;
  const { real, count } = k;
  const mr = k.m.re;
  const mi = k.m.im;
  const gr = k.gamma.re;
  const bcr = drive.cosineRe;
  const bci = drive.cosineIm;
  const { cr, ci, cosine: direct, bias } = rows[0];
  const { cosine } = source;
  const r0 = R[0];
  const curve = curves[0];
  const { inverse, shift, ampere, back, leak } = closed ?? NO_JUNCTION;
  const table = omegaTable();
  const probe = watched.length === 1 ? watched[0] : undefined;
  const sr = probe ? probe.cr : cr;
  const si = probe ? probe.ci : ci;
  const seenBias = probe ? probe.bias : 0;
  const seenWave = probe ? probe.cosine : 0;
  const seenCurrent = probe ? probe.detectors[0] : 0;
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
    if (closed) {
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
      v0 = solveLoadLine(curve, p, r0, v0);
      i0 = curve.current(v0);
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

/** Any number of waves, detectors and watched rows. */
export function advanceAny(state: CoreState, from: number, steps: number): void {
  const { k, drive, source, rows, curves, R, zr, zi, wave, current, volt, before, watched, sums, open, work } = state;
  const { real, count } = k;
  const D = rows.length;
  const mr = k.m.re;
  const mi = k.m.im;
  const gr = k.gamma.re;
  const gi = k.gamma.im;
  const { cosineRe: bcr, cosineIm: bci, sineRe: bsr, sineIm: bsi } = drive;
  const { cosine, sine } = source;
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
      const v = valueNow(state, watched[q]);
      sums.square[q] += v * v;
      for (let a = 0; a < D; a++) sums.power[q * D + a] += v * current[a];
    }
  }
}

function valueNow({ wave, current, zr, zi }: CoreState, r: ReducedRow): number {
  let v = r.bias + r.cosine * wave[0] + r.sine * wave[1];
  for (let a = 0; a < current.length; a++) v += r.detectors[a] * current[a];
  for (let j = 0; j < zr.length; j++) v += r.cr[j] * zr[j] - r.ci[j] * zi[j];
  return v;
}

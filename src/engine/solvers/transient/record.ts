import type { StepRow } from './coefficients.ts';
import type { ReducedRow } from './core-state.ts';
import type { Core } from './integrator.ts';

/** What is written down as time goes on. Voltages are of `node` over `over` (earth). */
export type Probe =
  | { readonly kind: 'voltage'; readonly node: string; readonly over?: string }
  /** Current of a coil, or through a detector from anode to cathode. */
  | { readonly kind: 'coil current'; readonly coil: string }
  | { readonly kind: 'detector current'; readonly detector?: number }
  | { readonly kind: 'detector voltage'; readonly detector?: number }
  /** Square of a voltage, and that voltage times a detector's current: their means give resistance and power. */
  | { readonly kind: 'square'; readonly node: string; readonly over?: string }
  | { readonly kind: 'power'; readonly node: string; readonly over?: string; readonly detector?: number };

export interface Recorder {
  /** Write one value per probe: means over `over` steps since the last, or the present when 0. */
  write(out: readonly Float64Array[], frame: number, over: number): void;
}

/** @param rowOf the row of a probe; undefined for a detector's current. */
export function makeRecorder(
  core: Core,
  probes: readonly Probe[],
  rowOf: (p: Probe) => StepRow | undefined,
  average: boolean,
): Recorder {
  const rows: (ReducedRow | undefined)[] = probes.map((p) => {
    const row = rowOf(p);
    return row && core.reduce(row);
  });
  const detector = probes.map((p) => ('detector' in p ? (p.detector ?? 0) : 0));
  const { k, zr, zi, current, wave, sums } = core;
  const { count, real, m } = k;
  const D = current.length;
  // Probes that look at the same two nodes share one watched row.
  const keys: string[] = [];
  const watched: ReducedRow[] = [];
  const slot = probes.map((p, i) => {
    if (!average || (p.kind !== 'square' && p.kind !== 'power')) return -1;
    const key = JSON.stringify([p.node, p.over]);
    if (!keys.includes(key)) {
      keys.push(key);
      watched.push(rows[i]!);
    }
    return keys.indexOf(key);
  });
  core.watch(watched);
  const sumR = new Float64Array(count);
  const sumI = new Float64Array(count);
  const heldR = new Float64Array(count);
  const heldI = new Float64Array(count);
  const heldCurrent = current.slice();
  const heldWave = wave.slice();
  const hold = () => {
    heldR.set(zr);
    heldI.set(zi);
    heldCurrent.set(current);
    heldWave.set(wave);
  };
  hold();

  /** Sum of each mode over the steps since `hold`, from its own recursion: (1 − m)·Σz = m·(z₀ − z₁) + Σ drive. */
  const modeSums = (over: number) => {
    const su = 2 * sums.wave[0] + heldWave[0] - wave[0];
    const sq = 2 * sums.wave[1] + heldWave[1] - wave[1];
    for (let j = 0; j < count; j++) {
      let g0r = 0;
      let g0i = 0;
      let g1r = 0;
      let g1i = 0;
      let sr = core.drive.cosineRe[j] * su + core.drive.sineRe[j] * sq;
      let si = core.drive.cosineIm[j] * su + core.drive.sineIm[j] * sq;
      for (let a = 0; a < D; a++) {
        const gr = k.gamma.re[j * D + a];
        const gi = k.gamma.im[j * D + a];
        g0r += gr * heldCurrent[a];
        g0i += gi * heldCurrent[a];
        g1r += gr * current[a];
        g1i += gi * current[a];
        sr += gr * 2 * sums.current[a];
        si += gi * 2 * sums.current[a];
      }
      sr += g0r - g1r;
      si += g0i - g1i;
      const [ar, ai] = [heldR[j] + g0r, heldI[j] + g0i];
      const [br, bi] = [zr[j] + g1r, zi[j] + g1i];
      const dr = ar - br;
      const di = ai - bi;
      sr += m.re[j] * dr - m.im[j] * di;
      si += m.re[j] * di + m.im[j] * dr;
      const er = 1 - m.re[j];
      const ei = -m.im[j];
      const e2 = er * er + ei * ei;
      if (e2 > 1e-16) {
        sumR[j] = (sr * er + si * ei) / e2;
        sumI[j] = j < real ? 0 : (si * er - sr * ei) / e2;
      } else {
        // A mode this slow runs straight from one end to the other.
        sumR[j] = ((ar + br) / 2) * over;
        sumI[j] = ((ai + bi) / 2) * over;
      }
      // The rows count a step's own current apart from the modes.
      for (let a = 0; a < D; a++) {
        sumR[j] -= k.gamma.re[j * D + a] * sums.current[a];
        sumI[j] -= k.gamma.im[j * D + a] * sums.current[a];
      }
    }
  };
  const value = (
    r: ReducedRow,
    x: Float64Array,
    y: Float64Array,
    i: Float64Array,
    w: Float64Array,
    n: number,
  ): number => {
    let v = r.bias * n + r.cosine * w[0] + r.sine * w[1];
    for (let a = 0; a < D; a++) v += r.detectors[a] * i[a];
    for (let j = 0; j < count; j++) v += r.cr[j] * x[j] - r.ci[j] * y[j];
    return v;
  };
  return {
    write(out, frame, over) {
      if (over > 0) modeSums(over);
      for (let i = 0; i < probes.length; i++) {
        if (out[i] === undefined) continue;
        const kind = probes[i].kind;
        const r = rows[i];
        let v: number;
        if (over > 0) {
          if (r === undefined) v = sums.current[detector[i]] / over;
          else if (kind === 'square') v = sums.square[slot[i]] / over;
          else if (kind === 'power') v = sums.power[slot[i] * D + detector[i]] / over;
          else v = value(r, sumR, sumI, sums.current, sums.wave, over) / over;
        } else if (r === undefined) v = current[detector[i]];
        else {
          v = value(r, zr, zi, current, wave, 1);
          if (kind === 'square') v *= v;
          if (kind === 'power') v *= current[detector[i]];
        }
        out[i][frame] = v;
      }
      if (over > 0) hold();
      sums.wave.fill(0);
      sums.current.fill(0);
      sums.square.fill(0);
      sums.power.fill(0);
    },
  };
}

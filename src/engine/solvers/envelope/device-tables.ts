import { logI0, ratioI1I0 } from '../../numerics/bessel-modified.ts';
import type { Complex } from '../../numerics/complex.ts';
import { solveInPlace } from '../../numerics/linear-solve.ts';
import { type CurveDevice, curveOf, type Device, lawOf } from '../transient/devices.ts';
import type { EnvelopeLaw, LawTable } from './device-law.ts';

/** A device in units of its s and Is, less what has become part of the network. */
export interface ReducedDevice {
  readonly law: EnvelopeLaw;
  /** Leakage taken out of a curve and to be put across the detector, S. */
  readonly leakage: number;
  /** Current over Is and conductance over Is/s at a voltage over s; undefined for a junction. */
  readonly curve?: (v: number) => [number, number];
}

/**
 * s, Is and off of a device. A junction has them; of a curve they are its `slopeVoltage` and `currentScale` where it
 * gives them, else taken from its slope at 0 V and the sharpest bend beside it.
 * @param most largest voltage that will stand across it backwards.
 */
export function reduceDevice(device: Device, most: number): ReducedDevice {
  const law = lawOf(device);
  if (law) {
    const { slopeVoltage, saturationCurrent, leakage } = law;
    return { law: { slope: slopeVoltage, current: saturationCurrent, off: 1, leakage }, leakage: 0 };
  }
  const curve = curveOf(device) as CurveDevice & { slopeVoltage?: number; currentScale?: number };
  const s = curve.slopeVoltage ?? 0.0285;
  const Is = curve.currentScale ?? Math.max(curve.conductance(0) * s, 1e-12);
  // Nearly all of the least slope on the blocking side is a plain resistance across the rest.
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= 40; k++) least = Math.min(least, curve.conductance((-most * k) / 40));
  const leakage = least * s < 1e-9 * Is ? 0 : 0.9 * least;
  const bare = (v: number) => (curve.current(v) - leakage * v) / Is;
  // Beyond the largest backward voltage the rest dies away slowly instead, so that its logarithm has no end.
  const floor = bare(-most);
  const margin = Math.max(0.02 * Math.abs(floor), floor >= 0 && floor < 1e-6 ? floor : 1e-3, 1e-7);
  const off = Math.max(margin - floor, 0);
  const tail = floor + off;
  return {
    law: { slope: s, current: Is, off, leakage },
    leakage,
    curve: (v) => {
      if (v * s > -most) {
        return [bare(v * s), Math.max(((curve.conductance(v * s) - leakage) * s) / Is, 1e-12)];
      }
      const e = tail * Math.exp((v + most / s) / 8);
      return [e - off, Math.max(e / 8, 1e-12)];
    },
  };
}

export interface TableOptions {
  /** Largest x = peak carrier/s to be met. */
  readonly highest: number;
  /** What the junction looks into at 2, 3, … times the carrier; none: the voltage stays a plain carrier. */
  readonly harmonics?: readonly Complex[];
  /** A curve that changes again at once: worked out at an eighth of the places, good to a decibel. Default false. */
  readonly rough?: boolean;
  /** Mean current that will not be exceeded, A. Default: what `highest` gives into 1 kΩ. */
  readonly mostCurrent?: number;
}

const BEND = 20;
const LOWEST = -16;
const FINE = 4;

/**
 * Work out `LawTable` for a device: at every (x, U) the mean voltage and the carrier's current, with all the harmonic
 * voltages that the current's pulses leave on the network (harmonic balance by Newton's method).
 */
export function lawTable({ law, curve }: ReducedDevice, options: TableOptions): LawTable {
  const { highest, harmonics = [] } = options;
  const x1 = Math.min(Math.max(highest, 4), 3000);
  const most = options.mostCurrent ?? (x1 * law.slope) / 1000;
  const top = Math.min(Math.max(Math.log(1 + most / law.current) + 1, 2), 34);
  const zeta = harmonics.map((z) => ({ re: (z.re * law.current) / law.slope, im: (z.im * law.current) / law.slope }));
  // With so little current a junction leaves no harmonics worth a hundred-thousandth.
  const zMost = Math.max(...zeta.map((z) => Math.hypot(z.re, z.im)), 1e-9);
  const lowest = curve ? LOWEST : Math.max(LOWEST, Math.min(Math.log(1e-5 / zMost), top - 4));
  // A curve may bend anywhere: its rows lie as close as they are read.
  const finer = curve ? 1 : FINE;
  const columns = curve ? (options.rough ? 16 : 48) : 32;
  const rows = Math.ceil((top - lowest) / (curve ? (options.rough ? 0.4 : 0.15) : 0.75)) + 1;
  const y1 = Math.sqrt(1 + x1 * x1) - 1;
  const last = y1 / (y1 + BEND);
  const step = (top - lowest) / (rows - 1);
  const coarse = new Float64Array(columns * rows * 3);
  const junction = curve ?? bareJunction;
  for (let c = 0; c < columns; c++) {
    const xi = (last * c) / (columns - 1);
    const y = (BEND * xi) / (1 - xi);
    const x = Math.max(Math.sqrt(y * (y + 2)), 1e-3);
    const balance = makeBalance(x, law.off, junction, zeta);
    for (let r = 0; r < rows; r++) balance(lowest + step * r, coarse, (c * rows + r) * 3);
  }
  const fineColumns = (columns - 1) * FINE + 1;
  const fineRows = (rows - 1) * finer + 1;
  const values = new Float64Array(fineColumns * fineRows * 6);
  for (let k = 0; k < 3; k++) refine(coarse, columns, rows, values, finer, k);
  return { bend: BEND, columns: fineColumns, rows: fineRows, last, lowest, perUnit: finer / step, values };
}

const bareJunction = (v: number): [number, number] => {
  const e = Math.exp(Math.min(v, 200));
  return [e - 1, e];
};

/** A solver for one x, to be called with U rising: each answer is the next one's start. */
function makeBalance(x: number, off: number, device: (v: number) => [number, number], all: readonly Complex[]) {
  // The n-th harmonic of a pulse is about exp(−n²/2x) of it.
  const zeta = all.slice(0, Math.ceil(2 + Math.sqrt(18 * x)));
  const N = zeta.length + 1; // highest harmonic; 1 for none
  const M = x < 30 ? 64 : x < 150 ? 128 : 256;
  const size = 1 + 2 * (N - 1);
  const cos = Float64Array.from({ length: M }, (_, j) => Math.cos((2 * Math.PI * j) / M));
  const sin = Float64Array.from({ length: M }, (_, j) => Math.sin((2 * Math.PI * j) / M));
  const L = logI0(x);
  const r1 = ratioI1I0(x);
  const current = new Float64Array(M);
  const slope = new Float64Array(M);
  const volts = new Float64Array(M);
  const unknown = new Float64Array(size);
  const Gr = new Float64Array(2 * N + 1);
  const Gi = new Float64Array(2 * N + 1);
  const cr = new Float64Array(N + 1);
  const ci = new Float64Array(N + 1);
  const J = new Float64Array(size * size);
  const F = new Float64Array(size);
  let started = false;

  const wave = (of: Float64Array, into: Float64Array) => {
    into.fill(of[0]);
    for (let n = 2; n <= N; n++) {
      const re = of[2 * n - 3];
      const im = of[2 * n - 2];
      for (let j = 0, k = 0; j < M; j++) {
        into[j] += re * cos[k] - im * sin[k];
        k += n;
        if (k >= M) k -= M;
      }
    }
  };
  const sample = () => {
    wave(unknown, volts);
    for (let j = 0; j < M; j++) [current[j], slope[j]] = device(volts[j] + x * cos[j]);
    for (let n = 0; n <= 2 * N; n++) {
      let [gr, gi, ir, ii] = [0, 0, 0, 0];
      for (let j = 0, k = 0; j < M; j++) {
        gr += slope[j] * cos[k];
        gi -= slope[j] * sin[k];
        ir += current[j] * cos[k];
        ii -= current[j] * sin[k];
        k += n;
        if (k >= M) k -= M;
      }
      Gr[n] = gr / M;
      Gi[n] = gi / M;
      if (n > N) continue;
      cr[n] = ((n === 0 ? 1 : 2) * ir) / M;
      ci[n] = ((n === 0 ? 1 : 2) * ii) / M;
    }
  };

  return (U: number, out: Float64Array, at: number): void => {
    if (!started) unknown[0] = U - L;
    for (let turn = 0; turn < 60; turn++) {
      sample();
      const mean = Math.max(cr[0] + off, 1e-30);
      F[0] = Math.log(mean) - U;
      J.fill(0);
      J[0] = Gr[0] / mean;
      for (let m = 2; m <= N; m++) {
        J[2 * m - 3] = Gr[m] / mean;
        J[2 * m - 2] = Gi[m] / mean;
      }
      for (let n = 2; n <= N; n++) {
        const z = zeta[n - 2];
        const row = (2 * n - 3) * size;
        F[2 * n - 3] = unknown[2 * n - 3] + z.re * cr[n] - z.im * ci[n];
        F[2 * n - 2] = unknown[2 * n - 2] + z.re * ci[n] + z.im * cr[n];
        const store = (column: number, re: number, im: number) => {
          J[row + column] += z.re * re - z.im * im;
          J[row + size + column] += z.re * im + z.im * re;
        };
        store(0, 2 * Gr[n], 2 * Gi[n]);
        for (let m = 2; m <= N; m++) {
          const d = n - m;
          const dr = Gr[Math.abs(d)];
          const di = d < 0 ? -Gi[-d] : Gi[d];
          const sr = Gr[n + m];
          const si = Gi[n + m];
          store(2 * m - 3, dr + sr, di + si);
          store(2 * m - 2, -(di - si), dr - sr); // times j
        }
        J[row + 2 * n - 3] += 1;
        J[row + size + 2 * n - 2] += 1;
      }
      solveInPlace(J, F);
      wave(F, volts);
      let largest = 0;
      for (let j = 0; j < M; j++) largest = Math.max(largest, Math.abs(volts[j]));
      const scale = largest > 2 ? 2 / largest : 1;
      for (let k = 0; k < size; k++) unknown[k] -= scale * F[k];
      if (largest < 1e-4) break; // its square is left
    }
    started = true;
    sample();
    const top = 2 * Math.exp(U) * r1;
    out[at] = unknown[0] - U + L;
    out[at + 1] = (2 * sumWith(current, cos)) / M / top;
    out[at + 2] = (-2 * sumWith(current, sin)) / M / top;
  };
}

function sumWith(a: Float64Array, b: Float64Array): number {
  let s = 0;
  for (let i = 0; i < a.length; i++) s += a[i] * b[i];
  return s;
}

/** Natural cubic splines along rows, `finer` places to one, then along columns, `FINE` to one; slopes from row to row. */
function refine(
  coarse: Float64Array,
  columns: number,
  rows: number,
  fine: Float64Array,
  finer: number,
  k: number,
): void {
  const fineColumns = (columns - 1) * FINE + 1;
  const fineRows = (rows - 1) * finer + 1;
  const half = new Float64Array(columns * fineRows * 2);
  for (let c = 0; c < columns; c++) {
    const { values, slopes } = spline(
      Float64Array.from({ length: rows }, (_, r) => coarse[(c * rows + r) * 3 + k]),
      finer,
    );
    for (let r = 0; r < fineRows; r++) {
      half[2 * (c * fineRows + r)] = values[r];
      half[2 * (c * fineRows + r) + 1] = slopes[r];
    }
  }
  for (let r = 0; r < fineRows; r++) {
    for (let part = 0; part < 2; part++) {
      const line = Float64Array.from({ length: columns }, (_, c) => half[2 * (c * fineRows + r) + part]);
      const { values } = spline(line, FINE);
      for (let c = 0; c < fineColumns; c++) fine[(c * fineRows + r) * 6 + 2 * k + part] = values[c];
    }
  }
}

/** A natural cubic spline through evenly spaced values, at `finer` places to one, and its slope per place. */
function spline(y: Float64Array, finer: number): { values: Float64Array; slopes: Float64Array } {
  const n = y.length;
  const m = new Float64Array(n); // second derivatives
  const c = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const d = 4 - c[i - 1];
    c[i] = 1 / d;
    m[i] = (6 * (y[i + 1] - 2 * y[i] + y[i - 1]) - m[i - 1]) / d;
  }
  for (let i = n - 2; i > 0; i--) m[i] -= c[i] * m[i + 1];
  const count = (n - 1) * finer + 1;
  const values = new Float64Array(count);
  const slopes = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const i = Math.min(Math.floor(k / finer), n - 2);
    const t = k / finer - i;
    const s = 1 - t;
    values[k] = s * y[i] + t * y[i + 1] + ((s ** 3 - s) * m[i] + (t ** 3 - t) * m[i + 1]) / 6;
    slopes[k] = (y[i + 1] - y[i] + ((1 - 3 * s * s) * m[i] + (3 * t * t - 1) * m[i + 1]) / 6) / finer;
  }
  return { values, slopes };
}

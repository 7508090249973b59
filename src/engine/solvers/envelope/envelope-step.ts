import { BESSEL_HIGHEST, BESSEL_PER_UNIT, besselTable } from '../../numerics/bessel-table.ts';
import { type Bank, MOST_MODES } from './bank.ts';
import type { EnvelopeLaw } from './device-law.ts';

/**
 * Stations far from the frame, each by its own level. They meet the others only in the detector, where the mean of
 * carriers in no fixed relation is a product: mean of exp(Σ xₖ·cos θₖ) = Π I0(xₖ).
 */
export interface Distant {
  /** How many are followed. */
  count: number;
  /** Open-circuit voltage at the junction over s, at the tick, station by station. */
  readonly open: Float64Array;
  /** Impedance the junction looks into at each station's frequency. */
  readonly kr: Float64Array;
  readonly ki: Float64Array;
  /** x of each: the solution, kept from tick to tick. */
  readonly x: Float64Array;
}

/** One block's worth of inputs and results, made once. */
export interface EnvelopeBlock {
  /** Source at every step, V, in the frame. */
  readonly sourceRe: Float64Array;
  readonly sourceIm: Float64Array;
  /** Open-circuit voltages of the distant stations over s, step by step in steps of `EVERY`: tick × station. */
  readonly distantOpen: Float64Array;
  /** Audio outputs, step by step. */
  readonly audio: readonly Float64Array[];
  /** Radio outputs (complex) and the carrier's current, if they are to be written down. */
  readonly radio?: readonly { readonly re: Float64Array; readonly im: Float64Array }[];
  readonly current?: { readonly re: Float64Array; readonly im: Float64Array };
}

/** Steps between two solutions of the distant stations. */
export const EVERY = 4;

export interface EnvelopeState {
  /** Last source, carrier's current and mean current. */
  sr: number;
  si: number;
  ir: number;
  ii: number;
  i0: number;
  x: number;
  u: number;
  /** ln of the distant stations' part in the detector: Σ ln I0. */
  distant: number;
  /** Mean voltage across the junction at the last step. */
  v: number;
  iterations: number;
  steps: number;
}

export const envelopeState = (): EnvelopeState => ({
  sr: 0,
  si: 0,
  ir: 0,
  ii: 0,
  i0: 0,
  x: 0,
  u: 0,
  distant: 0,
  v: 0,
  iterations: 0,
  steps: 0,
});

const TOLERANCE = 1e-3; // its square is left
/** x of a distant station up to which it is counted by the square law. */
const FAINT = 0.4;
const MOST_ITERATIONS = 60;

/**
 * Step the network and its detector from step `from` to `to` of a block. Network and detector are solved together:
 *   F1 = x·|1 + g·k| − |P|/s = 0,   F2 = ln I0(x) + D + S + v/s − q·(eᵘ − off) − u = 0,   g = (2Is/s)·eᵘ·r(x)/x·ρ
 * with P and v what would stand across the junction without this step's currents. Upward moves of u are taken in eᵘ,
 * downward in u: that never fails, where the plain Newton in mean voltage diverges in the nulls of a beat.
 * Distant stations are solved with the rest at every `EVERY`th step and stand still in between.
 */
export function envelopeSteps(
  radio: Bank,
  audio: Bank,
  law: EnvelopeLaw,
  distant: Distant,
  block: EnvelopeBlock,
  bias: number,
  outputBias: Float64Array,
  state: EnvelopeState,
  from: number,
  to: number,
): void {
  const { slope, current: Is, off, table, leakage = 0 } = law;
  const perSlope = 1 / slope;
  const c2 = (2 * Is) / slope;
  const { er, ei, w0r, w0i, w1r, w1i, n0r, n0i, n1r, n1i, cr, ci, zr, zi, count } = radio;
  const a = audio;
  const { er: aer, ei: aei, w0r: aw0r, w0i: aw0i, w1r: aw1r, w1i: aw1i, cr: acr, ci: aci, zr: azr, zi: azi } = a;
  const audioCount = a.count;
  const kr = radio.kr;
  const ki = radio.ki;
  const q = Math.max(a.kr, 0) * Is * perSlope;
  const audioFold0 = a.i0.re[0];
  const s0r = radio.s0.re[0];
  const s0i = radio.s0.im[0];
  const s1r = radio.s1.re[0];
  const s1i = radio.s1.im[0];
  const f0r = radio.i0.re[0];
  const f0i = radio.i0.im[0];
  const bessel = besselTable();
  const { sourceRe, sourceIm } = block;
  const outputs = block.audio;
  const { or: outRe, oi: outIm } = a;
  const outNow = a.i1.re;
  const outBefore = a.i0.re;
  const taken = Math.max(a.kr, 0); // of the mean voltage by a unit of mean current
  const far = distant.count;
  const { x: farX, open: farOpen, kr: farKr, ki: farKi } = distant;

  let { sr: pr, si: pi, ir, ii, i0, x, u, distant: S, iterations } = state;
  let v = state.v;
  let w = Math.exp(u);
  for (let n = from; n < to; n++) {
    // w follows u by factors; set right now and then.
    if ((n & 63) === 0) w = Math.exp(u);
    const sr = sourceRe[n];
    const si = sourceIm[n];
    let Pr = s1r * sr - s1i * si + s0r * pr - s0i * pi + f0r * ir - f0i * ii;
    let Pi = s1r * si + s1i * sr + s0r * pi + s0i * pr + f0r * ii + f0i * ir;
    for (let k = 0; k < count; k++) {
      const p = zr[k];
      const m = zi[k];
      const re =
        er[k] * p - ei[k] * m + n0r[k] * pr - n0i[k] * pi + n1r[k] * sr - n1i[k] * si + w0r[k] * ir - w0i[k] * ii;
      const im =
        er[k] * m + ei[k] * p + n0r[k] * pi + n0i[k] * pr + n1r[k] * si + n1i[k] * sr + w0r[k] * ii + w0i[k] * ir;
      zr[k] = re;
      zi[k] = im;
      Pr += cr[k] * re - ci[k] * im;
      Pi += cr[k] * im + ci[k] * re;
    }
    let open = bias + audioFold0 * i0;
    for (let k = 0; k < audioCount; k++) {
      const p = azr[k];
      const m = azi[k];
      const re = aer[k] * p - aei[k] * m + aw0r[k] * i0;
      const im = aer[k] * m + aei[k] * p + aw0i[k] * i0;
      azr[k] = re;
      azi[k] = im;
      open += acr[k] * re - aci[k] * im;
    }
    const amplitude = Math.sqrt(Pr * Pr + Pi * Pi) * perSlope;
    const direct = open * perSlope + q * off; // v/s + q·off, so that F2 = L + D + S + direct − q·eᵘ − u
    const due = far > 0 && n % EVERY === 0;
    let strong = 0;
    let faint = 0;
    if (due) {
      const row = (n / EVERY) * far;
      // The faint ones, ln I0 = x²/4 − x⁴/64, neither move the detector nor each other: by the last eᵘ.
      strong = 0;
      faint = 0;
      const half = 0.5 * c2 * w;
      for (let k = 0; k < far; k++) {
        const y = block.distantOpen[row + k];
        farOpen[k] = y;
        if (y > FAINT) {
          strongOnes[strong++] = k;
          continue;
        }
        const zr = 1 + half * farKr[k];
        const zi = half * farKi[k];
        const y2 = (y * y) / (zr * zr + zi * zi);
        farX[k] = Math.sqrt(y2);
        faint += y2 * (0.25 - y2 / 64);
      }
    }

    const highest = 1.5 * amplitude + 1e-9;
    if (x > highest) x = highest;
    let gr = 0;
    let gi = 0;
    let late = 1;
    for (let it = 0; it < MOST_ITERATIONS; it++) {
      let L: number;
      let r: number;
      if (x < BESSEL_HIGHEST) {
        const at = x * BESSEL_PER_UNIT;
        const j = at | 0;
        const t = at - j;
        const b = 4 * j;
        const e = bessel[b + 4] - bessel[b];
        const d0 = bessel[b + 1];
        const d1 = bessel[b + 5];
        L = bessel[b] + t * (d0 + t * (3 * e - 2 * d0 - d1 + t * (d0 + d1 - 2 * e)));
        const f = bessel[b + 6] - bessel[b + 2];
        const h0 = bessel[b + 3];
        const h1 = bessel[b + 7];
        r = bessel[b + 2] + t * (h0 + t * (3 * f - 2 * h0 - h1 + t * (h0 + h1 - 2 * f)));
      } else {
        const y = 1 / x;
        L = x - 0.5 * Math.log(2 * Math.PI * x) + y * (1 / 8 + y * (1 / 16 + (25 / 384) * y));
        r = 1 - y * (0.5 + y * (0.125 + y * (0.125 + (25 / 128) * y)));
      }
      const small = x < 0.03;
      const rx = small ? 0.5 - (x * x) / 16 : r / x;
      // d(r/x)/dx over (r/x)
      const bend = small ? -x / 4 : (1 - rx - rx - r * r) / r;
      let rhoR = 1;
      let rhoI = 0;
      let D = 0;
      let Dx = 0;
      let Du = 0;
      let rhoRx = 0;
      let rhoIx = 0;
      let rhoRu = 0;
      let rhoIu = 0;
      if (table !== undefined) {
        const values = table.values;
        const root = Math.sqrt(1 + x * x);
        const one = 1 / (root - 1 + table.bend);
        const perXi = (table.columns - 1) / table.last;
        let cx = (root - 1) * one * perXi;
        let slopeX = (table.bend * one * one * perXi * x) / root;
        if (!(cx < table.columns - 1.000001)) {
          cx = table.columns - 1.000001;
          slopeX = 0;
        }
        let cu = (u - table.lowest) * table.perUnit;
        let slopeU = table.perUnit;
        if (!(cu > 0)) {
          cu = 0;
          slopeU = 0;
        } else if (!(cu < table.rows - 1.000001)) {
          cu = table.rows - 1.000001;
          slopeU = 0;
        }
        const jx = cx | 0;
        const ju = cu | 0;
        const tx = cx - jx;
        const t = cu - ju;
        const s = 1 - t;
        // Cubic Hermite weights along U, of values and of slopes, and how they change.
        const a0 = s * s * (1 + 2 * t);
        const a1 = t * t * (3 - 2 * t);
        const b0 = t * s * s;
        const b1 = -t * t * s;
        const da = 6 * t * s;
        const db0 = s * (1 - 3 * t);
        const db1 = t * (3 * t - 2);
        const p = 6 * (jx * table.rows + ju);
        const q = p + 6 * table.rows;
        let y0 = a0 * values[p] + b0 * values[p + 1] + a1 * values[p + 6] + b1 * values[p + 7];
        let y1 = a0 * values[q] + b0 * values[q + 1] + a1 * values[q + 6] + b1 * values[q + 7];
        let z0 = da * (values[p + 6] - values[p]) + db0 * values[p + 1] + db1 * values[p + 7];
        let z1 = da * (values[q + 6] - values[q]) + db0 * values[q + 1] + db1 * values[q + 7];
        D = y0 + tx * (y1 - y0);
        Dx = (y1 - y0) * slopeX;
        Du = (z0 + tx * (z1 - z0)) * slopeU;
        y0 = a0 * values[p + 2] + b0 * values[p + 3] + a1 * values[p + 8] + b1 * values[p + 9];
        y1 = a0 * values[q + 2] + b0 * values[q + 3] + a1 * values[q + 8] + b1 * values[q + 9];
        z0 = da * (values[p + 8] - values[p + 2]) + db0 * values[p + 3] + db1 * values[p + 9];
        z1 = da * (values[q + 8] - values[q + 2]) + db0 * values[q + 3] + db1 * values[q + 9];
        rhoR = y0 + tx * (y1 - y0);
        rhoRx = (y1 - y0) * slopeX;
        rhoRu = (z0 + tx * (z1 - z0)) * slopeU;
        y0 = a0 * values[p + 4] + b0 * values[p + 5] + a1 * values[p + 10] + b1 * values[p + 11];
        y1 = a0 * values[q + 4] + b0 * values[q + 5] + a1 * values[q + 10] + b1 * values[q + 11];
        z0 = da * (values[p + 10] - values[p + 4]) + db0 * values[p + 5] + db1 * values[p + 11];
        z1 = da * (values[q + 10] - values[q + 4]) + db0 * values[q + 5] + db1 * values[q + 11];
        rhoI = y0 + tx * (y1 - y0);
        rhoIx = (y1 - y0) * slopeX;
        rhoIu = (z0 + tx * (z1 - z0)) * slopeU;
      }
      const g = c2 * w * rx;
      gr = g * rhoR;
      gi = g * rhoI;
      // Z = 1 + (g·ρ)(kr + j·ki)
      const Zr = 1 + gr * kr - gi * ki;
      const Zi = gr * ki + gi * kr;
      const m = Math.sqrt(Zr * Zr + Zi * Zi);
      // d|Z| by x and by u: Re(Z̄·dZ)/|Z|
      const perM = 1 / m;
      const hr = gr * kr - gi * ki;
      let mu = (Zr * hr + Zi * Zi) * perM;
      let mx = mu * bend;
      if (table !== undefined) {
        const tr = rhoRx * kr - rhoIx * ki;
        const ti = rhoRx * ki + rhoIx * kr;
        mx += g * (Zr * tr + Zi * ti) * perM;
        const vr = rhoRu * kr - rhoIu * ki;
        const vi = rhoRu * ki + rhoIu * kr;
        mu += g * (Zr * vr + Zi * vi) * perM;
      }
      const F1 = x * m - amplitude;
      const J11 = m + x * mx;
      const J12 = x * mu;
      const J21 = r - Dx;
      let J22 = -q * w - 1 - Du;
      let sum = L - D + direct - q * w - u;
      if (due) {
        // Arrow: each distant station's own equation, eliminated.
        sum += faint;
        for (let each = 0; each < strong; each++) {
          const k = strongOnes[each];
          const y = farX[k];
          const open_k = farOpen[k];
          let Lk: number;
          let rk: number;
          if (y < BESSEL_HIGHEST) {
            const at = y * BESSEL_PER_UNIT;
            const j = at | 0;
            const t = at - j;
            const b = 4 * j;
            const e = bessel[b + 4] - bessel[b];
            const d0 = bessel[b + 1];
            const d1 = bessel[b + 5];
            Lk = bessel[b] + t * (d0 + t * (3 * e - 2 * d0 - d1 + t * (d0 + d1 - 2 * e)));
            const f = bessel[b + 6] - bessel[b + 2];
            const h0 = bessel[b + 3];
            const h1 = bessel[b + 7];
            rk = bessel[b + 2] + t * (h0 + t * (3 * f - 2 * h0 - h1 + t * (h0 + h1 - 2 * f)));
          } else {
            const z = 1 / y;
            Lk = y - 0.5 * Math.log(2 * Math.PI * y) + z * (1 / 8 + z * (1 / 16 + (25 / 384) * z));
            rk = 1 - z * (0.5 + z * (0.125 + z * (0.125 + (25 / 128) * z)));
          }
          const tiny = y < 0.03;
          const ry = tiny ? 0.5 - (y * y) / 16 : rk / y;
          const by = tiny ? -y / 4 : (1 - ry - rk * rk - ry) / rk;
          const gk = c2 * w * ry;
          const yr = 1 + gk * farKr[k];
          const yi = gk * farKi[k];
          const my = Math.sqrt(yr * yr + yi * yi);
          const du = (yr * (yr - 1) + yi * yi) / my;
          const F = y * my - open_k;
          const j11 = my + y * du * by;
          const j12 = y * du;
          sum += Lk - (rk * F) / j11;
          J22 -= (rk * j12) / j11;
          distantF[k] = F / j11;
          distantJ[k] = j12 / j11;
        }
      } else sum += S;
      const perDet = -1 / (J11 * J22 - J12 * J21);
      let dx = (F1 * J22 - sum * J12) * perDet;
      let du = (J11 * sum - J21 * F1) * perDet;
      let scale = 1;
      if (du > 0.05) scale = Math.log1p(du) / du;
      else if (du > 0) scale = 1 - du * (0.5 - du * (1 / 3 - du * (0.25 - du * 0.2)));
      dx *= scale;
      du *= scale;
      let next = x + dx;
      const least = 0.1 * x;
      if (!(next > least)) next = least;
      if (next > highest) next = highest;
      let change = Math.abs(next - x) + Math.abs(du);
      // g belongs to the values before this step: brought up to date to first order.
      late = 1 + du + bend * (next - x);
      x = next;
      u += du;
      if (du < 0.25 && du > -0.25) {
        w *=
          1 +
          du *
            (1 +
              du *
                (0.5 + du * (1 / 6 + du * (1 / 24 + du * (1 / 120 + du * (1 / 720 + du * (1 / 5040 + du / 40320)))))));
      } else w = Math.exp(u);
      if (due) {
        for (let each = 0; each < strong; each++) {
          const k = strongOnes[each];
          const step = -scale * (distantF[k] + distantJ[k] * (scale > 0 ? du / scale : du));
          const y = farX[k];
          let to_y = y + step;
          const cap = 1.5 * farOpen[k] + 1e-9;
          if (!(to_y > 0.1 * y)) to_y = 0.1 * y;
          if (to_y > cap) to_y = cap;
          change += Math.abs(to_y - y);
          farX[k] = to_y;
        }
      }
      iterations++;
      if (!(change > TOLERANCE * (1 + x))) break;
    }
    if (due) {
      S = faint;
      for (let each = 0; each < strong; each++) S += logI0Of(farX[strongOnes[each]], bessel);
    }
    let Vr: number;
    let Vi: number;
    {
      gr *= late;
      gi *= late;
      const Zr = 1 + gr * kr - gi * ki;
      const Zi = gr * ki + gi * kr;
      const d = Zr * Zr + Zi * Zi;
      Vr = (Pr * Zr + Pi * Zi) / d;
      Vi = (Pi * Zr - Pr * Zi) / d;
      ir = gr * Vr - gi * Vi;
      ii = gr * Vi + gi * Vr;
    }
    const before = i0;
    i0 = Is * (w - off);
    v = open - taken * i0;
    for (let k = 0; k < count; k++) {
      zr[k] += w1r[k] * ir - w1i[k] * ii;
      zi[k] += w1r[k] * ii + w1i[k] * ir;
    }
    for (let k = 0; k < audioCount; k++) {
      azr[k] += aw1r[k] * i0;
      azi[k] += aw1i[k] * i0;
    }
    for (let o = 0; o < outputs.length; o++) {
      let y = outputBias[o] + outNow[o + 1] * i0 + outBefore[o + 1] * before;
      const at = o * MOST_MODES;
      for (let k = 0; k < audioCount; k++) y += outRe[at + k] * azr[k] - outIm[at + k] * azi[k];
      outputs[o][n] = y;
    }
    if (block.radio !== undefined) {
      for (let o = 0; o < block.radio.length; o++) {
        const to_o = block.radio[o];
        const at = o * MOST_MODES;
        const b = o + 1;
        let yr = radio.s1.re[b] * sr - radio.s1.im[b] * si + radio.s0.re[b] * pr - radio.s0.im[b] * pi;
        let yi = radio.s1.re[b] * si + radio.s1.im[b] * sr + radio.s0.re[b] * pi + radio.s0.im[b] * pr;
        yr += radio.i1.re[b] * ir - radio.i1.im[b] * ii;
        yi += radio.i1.re[b] * ii + radio.i1.im[b] * ir;
        for (let k = 0; k < count; k++) {
          yr += radio.or[at + k] * zr[k] - radio.oi[at + k] * zi[k];
          yi += radio.or[at + k] * zi[k] + radio.oi[at + k] * zr[k];
        }
        to_o.re[n] = yr;
        to_o.im[n] = yi;
      }
    }
    if (block.current !== undefined) {
      block.current.re[n] = ir + leakage * Vr;
      block.current.im[n] = ii + leakage * Vi;
    }
    pr = sr;
    pi = si;
  }
  state.steps += to - from;
  state.sr = pr;
  state.si = pi;
  state.ir = ir;
  state.ii = ii;
  state.i0 = i0;
  state.x = x;
  state.u = u;
  state.distant = S;
  state.v = v;
  state.iterations = iterations;
}

/** Most stations that can be distant at once. */
export const MOST_DISTANT = 64;
const strongOnes = new Int32Array(MOST_DISTANT);
const distantF = new Float64Array(MOST_DISTANT);
const distantJ = new Float64Array(MOST_DISTANT);

function logI0Of(x: number, bessel: Float64Array): number {
  if (x >= BESSEL_HIGHEST) {
    const y = 1 / x;
    return x - 0.5 * Math.log(2 * Math.PI * x) + y * (1 / 8 + y * (1 / 16 + (25 / 384) * y));
  }
  const at = x * BESSEL_PER_UNIT;
  const j = at | 0;
  const t = at - j;
  const b = 4 * j;
  const e = bessel[b + 4] - bessel[b];
  const d0 = bessel[b + 1];
  const d1 = bessel[b + 5];
  return bessel[b] + t * (d0 + t * (3 * e - 2 * d0 - d1 + t * (d0 + d1 - 2 * e)));
}

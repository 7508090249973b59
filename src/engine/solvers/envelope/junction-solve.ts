import { lookUpBessel } from '../../numerics/bessel-table.ts';
import { eliminateDistant, moveDistant } from './distant-solve.ts';
import type { Distant, EnvelopeState } from './envelope-state.ts';
import type { Junction } from './junction.ts';
import { lookUpLaw } from './law-lookup.ts';

const TOLERANCE = 1e-3; // its square is left
const MOST_ITERATIONS = 60;

/**
 * Solve junction and network together for one step, from where the state left off:
 *   F1 = x·|1 + g·k| − |P|/s = 0,   F2 = ln I0(x) + D + S + v/s − q·(eᵘ − off) − u = 0,   g = (2Is/s)·eᵘ·r(x)/x·ρ
 * with P and v what would stand across the junction without this step's currents. Upward moves of u are taken in eᵘ,
 * downward in u: that never fails, where the plain Newton in mean voltage diverges in the nulls of a beat.
 * @param isDue whether the distant stations are solved with it; otherwise they stand still.
 */
export function solveJunction(junction: Junction, distant: Distant, isDue: boolean, state: EnvelopeState): void {
  const { law, c2, q, kr, ki, bessel, at, lawAt } = junction;
  const { table } = law;
  const amplitude = Math.sqrt(state.openRe * state.openRe + state.openIm * state.openIm) * junction.perSlope;
  // v/s + q·off, so that F2 = L + D + S + direct − q·eᵘ − u
  const direct = state.openMean * junction.perSlope + q * law.off;
  const highest = 1.5 * amplitude + 1e-9;
  const { distant: S } = state;
  let { x, u, w, iterations } = state;
  if (x > highest) x = highest;
  let gr = 0;
  let gi = 0;
  let late = 1;
  for (let iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
    lookUpBessel(x, bessel, at);
    const L = at[0];
    const r = at[1];
    const small = x < 0.03;
    const rx = small ? 0.5 - (x * x) / 16 : r / x;
    // d(r/x)/dx over (r/x)
    const bend = small ? -x / 4 : (1 - rx - rx - r * r) / r;
    if (table !== undefined) {
      state.x = x;
      state.u = u;
      lookUpLaw(table, state, lawAt);
    }
    const g = c2 * w * rx;
    gr = g * lawAt.rhoR;
    gi = g * lawAt.rhoI;
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
      const tr = lawAt.rhoRx * kr - lawAt.rhoIx * ki;
      const ti = lawAt.rhoRx * ki + lawAt.rhoIx * kr;
      mx += g * (Zr * tr + Zi * ti) * perM;
      const vr = lawAt.rhoRu * kr - lawAt.rhoIu * ki;
      const vi = lawAt.rhoRu * ki + lawAt.rhoIu * kr;
      mu += g * (Zr * vr + Zi * vi) * perM;
    }
    const F1 = x * m - amplitude;
    const J11 = m + x * mx;
    const J12 = x * mu;
    const J21 = r - lawAt.Dx;
    let J22 = -q * w - 1 - lawAt.Du;
    let sum = L - lawAt.D + direct - q * w - u;
    if (isDue) {
      state.w = w;
      junction.sum = sum;
      junction.slope = J22;
      eliminateDistant(junction, distant, state);
      sum = junction.sum;
      J22 = junction.slope;
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
    w = du < 0.25 && du > -0.25 ? w * smallExp(du) : Math.exp(u);
    if (isDue) {
      junction.du = du;
      junction.scale = scale;
      junction.change = change;
      moveDistant(junction, distant);
      change = junction.change;
    }
    iterations++;
    if (!(change > TOLERANCE * (1 + x))) break;
  }
  state.x = x;
  state.u = u;
  state.w = w;
  state.iterations = iterations;
  carryCurrents(junction, state, gr * late, gi * late);
}

/** e^d for |d| below a quarter. */
const smallExp = (d: number): number =>
  1 + d * (1 + d * (0.5 + d * (1 / 6 + d * (1 / 24 + d * (1 / 120 + d * (1 / 720 + d * (1 / 5040 + d / 40320)))))));

/** The carrier across the junction, the currents of the step and the mean voltage. */
function carryCurrents(junction: Junction, state: EnvelopeState, gr: number, gi: number): void {
  const { kr, ki, law, meanDrop } = junction;
  const { openRe, openIm } = state;
  const Zr = 1 + gr * kr - gi * ki;
  const Zi = gr * ki + gi * kr;
  const d = Zr * Zr + Zi * Zi;
  const vr = (openRe * Zr + openIm * Zi) / d;
  const vi = (openIm * Zr - openRe * Zi) / d;
  state.vr = vr;
  state.vi = vi;
  state.ir = gr * vr - gi * vi;
  state.ii = gr * vi + gi * vr;
  state.i0Before = state.i0;
  state.i0 = law.current * (state.w - law.off);
  state.v = state.openMean - meanDrop * state.i0;
}

import { type Complex, magnitude } from '../../numerics/complex.ts';
import { solveInPlace } from '../../numerics/linear-solve.ts';
import { fromHarmonics, fromRealHarmonics, realSpectrum, type Samples, spectrum } from './audio-cycle.ts';
import { setEquations } from './balance-equations.ts';
import { beginAt, follow, onSlopes } from './balance-instants.ts';
import { type Balance, type BalanceState, type BalanceWork, balanceWork } from './balance-work.ts';

/** Movement, over what moves, from which on the balance is struck; of the audio, V, where nothing else counts. */
const SETTLED = 1e-4;
const NOTHING = 1e-15;

/**
 * Carrier envelope and audio voltage of one period of a steady tone: the device answers each instant by its averages,
 * the networks answer each harmonic by their impedances. Newton on the harmonics; at an instant where the step would
 * multiply the current, the next slopes are taken where no more flows than the last ones gave.
 * @param start carrier and direct phasors to begin with; may hold fewer harmonics. @param mostIterations bounds the work.
 */
export function balance(
  b: Balance,
  start: Pick<BalanceState, 'carrier' | 'direct'>,
  mostIterations = 40,
): BalanceState {
  const { averaged, K } = b;
  const work = balanceWork(K);
  begin(work, start);
  fromHarmonics(work.x, K, work.V);
  fromRealHarmonics(work.x, work.direct, K, work.v0);
  beginAt(averaged, work);
  let converged = false;
  let iterations = 0;
  while (!converged && iterations < mostIterations) {
    iterations++;
    setEquations(b, work);
    const moved = step(b, work);
    // What there is so far stands, and is said not to have settled.
    if (moved === 'unsolved') break;
    fromHarmonics(work.x, K, work.T);
    fromRealHarmonics(work.x, work.direct, K, work.t0);
    let isAll = true;
    for (let i = 0; i < work.N; i++) {
      const isThere = follow(averaged, work, i);
      onSlopes(work, i, isThere);
      isAll &&= isThere;
    }
    converged = isAll && moved === 'settled';
  }
  return stateOf(b, work, converged, iterations);
}

/** The unknowns where a state left them, what it does not hold at 0. */
function begin({ K, direct: D, x }: BalanceWork, start: Pick<BalanceState, 'carrier' | 'direct'>): void {
  x.fill(0);
  const from = (start.carrier.length - 1) / 2;
  for (let k = -Math.min(K, from); k <= Math.min(K, from); k++) {
    x[2 * (k + K)] = start.carrier[k + from].re;
    x[2 * (k + K) + 1] = start.carrier[k + from].im;
  }
  for (let k = 0; k <= Math.min(K, start.direct.length - 1); k++) {
    if (k === 0) x[D] = start.direct[0].re;
    else {
      x[D + 2 * k - 1] = start.direct[k].re;
      x[D + 2 * k] = start.direct[k].im;
    }
  }
}

/** Newton's step of the unknowns. @returns whether it was too small to count, or equations beyond what numbers can hold. */
function step({ bias }: Balance, { J, F, x, size, direct: D }: BalanceWork): 'moved' | 'settled' | 'unsolved' {
  try {
    solveInPlace(J, F);
  } catch (refusal) {
    if (refusal instanceof RangeError) return 'unsolved';
    throw refusal;
  }
  for (let k = 0; k < size; k++) if (!Number.isFinite(F[k])) return 'unsolved';
  let movedCarrier = 0;
  let largestCarrier = 0;
  let movedDirect = 0;
  let largestDirect = 0;
  for (let k = 0; k < size; k++) {
    x[k] += F[k];
    if (k < D) {
      movedCarrier = Math.max(movedCarrier, Math.abs(F[k]));
      largestCarrier = Math.max(largestCarrier, Math.abs(x[k]));
    } else {
      movedDirect = Math.max(movedDirect, Math.abs(F[k]));
      largestDirect = Math.max(largestDirect, Math.abs(k === D ? bias - x[k] : x[k]));
    }
  }
  if (!Number.isFinite(movedCarrier + movedDirect)) return 'unsolved';
  return movedCarrier < SETTLED * largestCarrier && movedDirect < SETTLED * largestDirect + NOTHING
    ? 'settled'
    : 'moved';
}

function least(values: Float64Array): number {
  let lowest = values[0];
  for (let i = 1; i < values.length; i++) lowest = Math.min(lowest, values[i]);
  return lowest;
}

function stateOf(
  { emf, source, load }: Balance,
  work: BalanceWork,
  converged: boolean,
  iterations: number,
): BalanceState {
  const { K, I1, I0, e, last1, last0, x, direct: D } = work;
  spectrum(I1.re, I1.im, K + 1, last1);
  realSpectrum(I0, K + 1, last0);
  const at = (s: Samples, k: number): Complex => ({ re: s.re[k + K + 1], im: s.im[k + K + 1] });
  const size = (s: Samples, k: number): number => magnitude(at(s, k));
  const first = size(last0, 1) * magnitude(load[Math.min(1, K)]);
  const side = Math.max(magnitude(emf[K + 1]), magnitude(emf[K - 1]));
  const leftOut = Math.max(
    first > 0 ? (size(last0, K + 1) * magnitude(load[K])) / first : 0,
    side > 0 ? (Math.max(size(last1, K + 1), size(last1, -K - 1)) * magnitude(source[2 * K])) / side : 0,
  );
  const carrier: Complex[] = [];
  const carrierCurrent: Complex[] = [];
  for (let k = -K; k <= K; k++) {
    carrier.push({ re: x[2 * (k + K)], im: x[2 * (k + K) + 1] });
    carrierCurrent.push(at(last1, k));
  }
  const direct: Complex[] = [{ re: x[D], im: 0 }];
  const meanCurrent: Complex[] = [at(last0, 0)];
  for (let k = 1; k <= K; k++) {
    direct.push({ re: x[D + 2 * k - 1], im: x[D + 2 * k] });
    meanCurrent.push(at(last0, k));
  }
  return {
    carrier,
    direct,
    carrierCurrent,
    meanCurrent,
    leastCurrent: least(I0),
    leastSlope: least(e),
    leftOut,
    converged,
    iterations,
  };
}

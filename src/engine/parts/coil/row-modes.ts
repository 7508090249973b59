import { besselRatios } from '../../numerics/bessel-ratio.ts';
import { type ComplexMatrix, complexMatrix, solveComplexInPlace } from '../../numerics/lu-complex.ts';

/**
 * Exact response of an endless straight row of equal round wires (radius a, distance s) at any skin depth.
 *
 * A layer of a coil is, seen from close by, such a row, and its loss has three parts that do not mix: the wires' own equal
 * currents; a field along the row; a field across it. Each wire answers the m-th circular harmonic of the field with
 * −J_{m+1}/J_{m−1}(ka) times it (a thin wire little, a thick one by expelling it), and each wire's answer acts on all the
 * others: Σ 1/n^{m+p} over the row. What results is the loss with the reaction of the neighbours, where squaring the
 * neighbours' undisturbed field overshoots by 60 % for turns nearly touching.
 *
 * In the limit of thin skin these modes give Medhurst's row for endless coils to 0.2 %.
 */
export interface RowResponse {
  /** Added inductance of the current mode, in units of μ₀/2π per metre; complex, its imaginary part is loss. */
  readonly current: ComplexMatrix;
  /** Dipole answer to a field along the row, over the field; −1 for a lone perfect wire. */
  readonly along: ComplexMatrix;
  /** The same for a field across the row. */
  readonly across: ComplexMatrix;
}

export interface RowModes {
  /** Response at x = a√(ωμ₀/ρ), left in `response` (entry 0 of each). */
  at(x: number): RowResponse;
  /** J₂/J₀ of the lone wire at the x last asked for. */
  readonly single: ComplexMatrix;
}

/** ζ(2), ζ(4) … as Σ 1/n^{2k}; the tail from 12 on by its integral is below 1e-14 for k ≥ 3. */
const ZETA_EVEN = Array.from({ length: 26 }, (_, k) => {
  if (k === 0) return -0.5;
  if (k === 1) return Math.PI ** 2 / 6;
  if (k === 2) return Math.PI ** 4 / 90;
  let sum = 0;
  for (let n = 40; n >= 1; n--) sum += n ** (-2 * k);
  return sum + 40.5 ** (1 - 2 * k) / (2 * k - 1);
});

/** 2·Σ_{n≥1} 1/n², the strength with which a row's dipoles act on one of them. */
export const ROW_SUM = Math.PI ** 2 / 3;

/** Harmonics kept: the row's answer converges like (a/gap)… ; enough for 1e-4 up to d/s = 0.95. */
const orders = (ds: number): number => (ds <= 0.35 ? 3 : ds <= 0.65 ? 5 : ds <= 0.85 ? 8 : 11);

/** @param u wire radius over the distance of the wires; above 0 and below 1/2. */
export function rowModes(u: number): RowModes {
  if (!(u > 0 && u < 0.5)) throw new RangeError(`wires of radius ${u} pitches do not fit side by side`);
  const M = orders(2 * u);
  const even = latticeMatrix(u, M, 0);
  const odd = latticeMatrix(u, M, 1);
  const source = Float64Array.from({ length: M }, (_, i) => {
    const p = 2 * (i + 1);
    return ((2 * ZETA_EVEN[i + 1]) / p) * u ** p;
  });
  const reach = Float64Array.from({ length: M }, (_, j) => 2 * ZETA_EVEN[j + 1] * u ** (2 * (j + 1)));
  const qr = new Float64Array(2 * M + 1);
  const qi = new Float64Array(2 * M + 1);
  const tr = new Float64Array(2 * M + 1);
  const ti = new Float64Array(2 * M + 1);
  const A = complexMatrix(M * M);
  const B = complexMatrix(M);
  const one = () => complexMatrix(1);
  const response: RowResponse = { current: one(), along: one(), across: one() };
  const single = one();

  /** Solve (1 ∓ T·G)·b = T·c for the harmonics of one parity. */
  const solve = (G: Float64Array, parity: 0 | 1, sign: 1 | -1, drive: (i: number) => number) => {
    for (let i = 0; i < M; i++) {
      const p = parity === 0 ? 2 * (i + 1) : 2 * i + 1;
      for (let j = 0; j < M; j++) {
        const g = sign * G[i * M + j];
        A.re[i * M + j] = (i === j ? 1 : 0) - tr[p] * g;
        A.im[i * M + j] = -ti[p] * g;
      }
      B.re[i] = tr[p] * drive(i);
      B.im[i] = ti[p] * drive(i);
    }
    solveComplexInPlace(A, M, B, 1);
  };

  return {
    single,
    at(x) {
      besselRatios(x, qr, qi);
      for (let m = 1; m <= 2 * M; m++) {
        tr[m] = qr[m] * qr[m - 1] - qi[m] * qi[m - 1];
        ti[m] = qr[m] * qi[m - 1] + qi[m] * qr[m - 1];
      }
      single.re[0] = tr[1];
      single.im[0] = ti[1];
      solve(even, 0, 1, (i) => source[i]);
      response.current.re[0] = dot(reach, B.re);
      response.current.im[0] = dot(reach, B.im);
      const first = (i: number) => (i === 0 ? 1 : 0);
      solve(odd, 1, -1, first);
      response.along.re[0] = B.re[0];
      response.along.im[0] = B.im[0];
      solve(odd, 1, 1, first);
      response.across.re[0] = B.re[0];
      response.across.im[0] = B.im[0];
      return response;
    },
  };
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
};

/** How harmonic m of every other wire in the row makes harmonic p at one: (−1)^m C(m+p−1, p) 2ζ(m+p) u^{m+p}. */
function latticeMatrix(u: number, M: number, parity: 0 | 1): Float64Array {
  const G = new Float64Array(M * M);
  for (let i = 0; i < M; i++) {
    for (let j = 0; j < M; j++) {
      const p = parity === 0 ? 2 * (i + 1) : 2 * i + 1;
      const m = parity === 0 ? 2 * (j + 1) : 2 * j + 1;
      let binomial = 1;
      for (let k = 1; k <= p; k++) binomial *= (m - 1 + k) / k;
      G[i * M + j] = (m % 2 === 0 ? 1 : -1) * binomial * 2 * ZETA_EVEN[(m + p) / 2] * u ** (m + p);
    }
  }
  return G;
}

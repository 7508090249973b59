/** A complex signal, or its harmonics. */
export interface Samples {
  readonly re: Float64Array;
  readonly im: Float64Array;
}
export const samples = (n: number): Samples => ({ re: new Float64Array(n), im: new Float64Array(n) });

/** Cosines and sines of a cycle cut in N: constants, kept because every station asks for them. */
const tables = new Map<number, { readonly cos: Float64Array; readonly sin: Float64Array }>();
function cycle(N: number) {
  let table = tables.get(N);
  if (!table) {
    table = {
      cos: Float64Array.from({ length: N }, (_, i) => Math.cos((2 * Math.PI * i) / N)),
      sin: Float64Array.from({ length: N }, (_, i) => Math.sin((2 * Math.PI * i) / N)),
    };
    tables.set(N, table);
  }
  return table;
}

/** Harmonics -H … H of a complex signal of N = 2^m instants into `s`, index k + H. */
export function spectrum(re: Float64Array, im: Float64Array, H: number, s: Samples): void {
  const N = re.length;
  const { cos, sin } = cycle(N);
  for (let k = 0; k <= H; k++) {
    let rc = 0;
    let rs = 0;
    let ic = 0;
    let is = 0;
    for (let i = 0; i < N; i++) {
      const j = (k * i) & (N - 1);
      rc += re[i] * cos[j];
      rs += re[i] * sin[j];
      ic += im[i] * cos[j];
      is += im[i] * sin[j];
    }
    s.re[H + k] = (rc + is) / N;
    s.im[H + k] = (ic - rs) / N;
    s.re[H - k] = (rc - is) / N;
    s.im[H - k] = (ic + rs) / N;
  }
}
/** The same of a real signal. */
export function realSpectrum(re: Float64Array, H: number, s: Samples): void {
  const N = re.length;
  const { cos, sin } = cycle(N);
  for (let k = 0; k <= H; k++) {
    let rc = 0;
    let rs = 0;
    for (let i = 0; i < N; i++) {
      const j = (k * i) & (N - 1);
      rc += re[i] * cos[j];
      rs += re[i] * sin[j];
    }
    s.re[H + k] = s.re[H - k] = rc / N;
    s.im[H + k] = -rs / N;
    s.im[H - k] = rs / N;
  }
}

/** A complex signal from its harmonics −K … K, re and im beside one another. */
export function fromHarmonics(harmonics: Float64Array, K: number, s: Samples): void {
  const N = s.re.length;
  const { cos, sin } = cycle(N);
  for (let i = 0; i < N; i++) {
    let re = 0;
    let im = 0;
    for (let k = -K; k <= K; k++) {
      const j = (k * i) & (N - 1);
      const p = harmonics[2 * (k + K)];
      const q = harmonics[2 * (k + K) + 1];
      re += p * cos[j] - q * sin[j];
      im += p * sin[j] + q * cos[j];
    }
    s.re[i] = re;
    s.im[i] = im;
  }
}

/** A real signal from its mean and, behind it, re and im of halves of its harmonics 1 … K; from `at` on. */
export function fromRealHarmonics(harmonics: Float64Array, at: number, K: number, into: Float64Array): void {
  const N = into.length;
  const { cos, sin } = cycle(N);
  for (let i = 0; i < N; i++) {
    let d = harmonics[at];
    for (let k = 1; k <= K; k++) {
      const j = (k * i) & (N - 1);
      d += 2 * (harmonics[at + 2 * k - 1] * cos[j] - harmonics[at + 2 * k] * sin[j]);
    }
    into[i] = d;
  }
}

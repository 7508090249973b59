import { logI0, ratioI1I0 } from './bessel-modified.ts';

export const BESSEL_PER_UNIT = 32;
export const BESSEL_HIGHEST = 64;

/**
 * ln I0(x), r = I1/I0 and their slopes per step (r and 1 − r/x − r², over `BESSEL_PER_UNIT`) at x = k/BESSEL_PER_UNIT,
 * four numbers a node, for cubic Hermite interpolation inside a solver's inner loop: good to 2e-9.
 */
export function besselTable(): Float64Array {
  shared ??= build();
  return shared;
}

let shared: Float64Array | undefined;

function build(): Float64Array {
  const nodes = BESSEL_HIGHEST * BESSEL_PER_UNIT + 2;
  const table = new Float64Array(4 * nodes);
  for (let k = 0; k < nodes; k++) {
    const x = k / BESSEL_PER_UNIT;
    const r = ratioI1I0(x);
    table[4 * k] = logI0(x);
    table[4 * k + 1] = r / BESSEL_PER_UNIT;
    table[4 * k + 2] = r;
    table[4 * k + 3] = (k === 0 ? 0.5 : 1 - r / x - r * r) / BESSEL_PER_UNIT;
  }
  return table;
}

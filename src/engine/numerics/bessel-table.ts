import { logI0, ratioI1I0 } from './bessel-modified.ts';

const BESSEL_PER_UNIT = 32;
const BESSEL_HIGHEST = 64;

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

/**
 * ln I0(x) and I1/I0 at x, 0 or above, into the first two of `into`: by the table, and beyond it by their asymptotic
 * series. @param table that of `besselTable`, looked up by the caller once.
 */
export function lookUpBessel(x: number, table: Float64Array, into: Float64Array): void {
  if (x >= BESSEL_HIGHEST) {
    const y = 1 / x;
    into[0] = x - 0.5 * Math.log(2 * Math.PI * x) + y * (1 / 8 + y * (1 / 16 + (25 / 384) * y));
    into[1] = 1 - y * (0.5 + y * (0.125 + y * (0.125 + (25 / 128) * y)));
    return;
  }
  const at = x * BESSEL_PER_UNIT;
  const j = at | 0;
  const t = at - j;
  const b = 4 * j;
  const e = table[b + 4] - table[b];
  const d0 = table[b + 1];
  const d1 = table[b + 5];
  into[0] = table[b] + t * (d0 + t * (3 * e - 2 * d0 - d1 + t * (d0 + d1 - 2 * e)));
  const f = table[b + 6] - table[b + 2];
  const h0 = table[b + 3];
  const h1 = table[b + 7];
  into[1] = table[b + 2] + t * (h0 + t * (3 * f - 2 * h0 - h1 + t * (h0 + h1 - 2 * f)));
}

/** Evaluations after which it ends whatever the tolerance. */
const MOST_EVALUATIONS = 200;
const GOLDEN = (3 - Math.sqrt(5)) / 2;

export interface Extremum {
  readonly x: number;
  readonly value: number;
}

/**
 * The least value of a function with one valley between two places, or at one of them.
 *
 * Parabolas through the three lowest points, golden section where they do not close in: R. P. Brent, Algorithms for
 * Minimization without Derivatives (1973), chapter 5. With several valleys it finds the bottom of one of them.
 * @param tolerance of x; below about 1e-8 of x a smooth function no longer tells its values apart. Default 1e-8 of the range.
 * @throws RangeError unless low ≤ high are finite and the tolerance is above 0, or where f is no number.
 */
export function minimum(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-8 * (high - low) || Number.MIN_VALUE,
): Extremum {
  if (!(low <= high && Number.isFinite(high - low) && tolerance > 0))
    throw new RangeError(
      `a minimum is looked for in a finite range within a tolerance above 0: ${low}, ${high}, ${tolerance}`,
    );
  const at = (x: number): number => {
    const y = f(x);
    if (Number.isNaN(y)) throw new RangeError(`the function whose extremum is wanted is no number at ${x}`);
    return y;
  };
  let [a, b] = [low, high];
  // x: lowest so far; w: the second; v: what w was before.
  let x = a + GOLDEN * (b - a);
  let [w, v] = [x, x];
  let fx = at(x);
  let [fw, fv] = [fx, fx];
  let [step, before] = [0, 0];
  for (let count = 1; count < MOST_EVALUATIONS; count++) {
    const middle = (a + b) / 2;
    const near = Number.EPSILON * Math.abs(x) + tolerance / 2;
    if (Math.abs(x - middle) <= 2 * near - (b - a) / 2) break;
    let golden = true;
    if (Math.abs(before) > near) {
      const r = (x - w) * (fx - fv);
      let q = (x - v) * (fx - fw);
      let p = (x - v) * q - (x - w) * r;
      q = 2 * (q - r);
      if (q > 0) p = -p;
      else q = -q;
      if (Math.abs(p) < Math.abs((q * before) / 2) && p > q * (a - x) && p < q * (b - x)) {
        golden = false;
        [before, step] = [step, p / q];
        const u = x + step;
        if (u - a < 2 * near || b - u < 2 * near) step = x < middle ? near : -near;
      }
    }
    if (golden) {
      before = (x < middle ? b : a) - x;
      step = GOLDEN * before;
    }
    const u = x + (Math.abs(step) >= near ? step : step > 0 ? near : -near);
    const fu = at(u);
    if (fu <= fx) {
      if (u < x) b = x;
      else a = x;
      [v, fv, w, fw, x, fx] = [w, fw, x, fx, u, fu];
    } else {
      if (u < x) a = u;
      else b = u;
      if (fu <= fw || w === x) [v, fv, w, fw] = [w, fw, u, fu];
      else if (fu <= fv || v === x || v === w) [v, fv] = [u, fu];
    }
  }
  // The valley may lean against an end.
  let best: Extremum = { x, value: fx };
  for (const end of [low, high]) {
    const value = at(end);
    if (value < best.value) best = { x: end, value };
  }
  return best;
}

/** The greatest value of a function with one hill between two places, or at one of them; otherwise as `minimum`. */
export function maximum(f: (x: number) => number, low: number, high: number, tolerance?: number): Extremum {
  const { x, value } = minimum((at) => -f(at), low, high, tolerance);
  return { x, value: -value };
}

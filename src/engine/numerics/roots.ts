/** Evaluations after which a root is as near as it gets: the bracket is then below 2^-60 of what it was. */
const MOST_EVALUATIONS = 200;

/**
 * A root of f between two places where its signs differ.
 *
 * Inverse quadratic interpolation where the last three points allow it, halving otherwise: T. R. Chandrupatla, Advances
 * in Engineering Software 28 (1997) 145. Whenever three steps have not halved the bracket the next one does, so that no
 * function takes more than three evaluations a bit.
 * @param tolerance width of the bracket at which it ends; default 0: to the last bits of the root.
 * @returns the end of the last bracket with the smaller |f|, after at most 200 evaluations.
 * @throws RangeError unless f(low) and f(high) are numbers of unlike sign (either may be 0), or where f is no number.
 */
export function root(f: (x: number) => number, low: number, high: number, tolerance = 0): number {
  const at = (x: number): number => {
    const y = f(x);
    if (Number.isNaN(y)) throw new RangeError(`the function whose root is wanted is no number at ${x}`);
    return y;
  };
  // a: newest; b: on the other side of the root; c: the one given up last.
  let [b, a] = [low, high];
  let [fb, fa] = [at(b), at(a)];
  if (fb === 0) return b;
  if (fa === 0) return a;
  if (fa > 0 === fb > 0) throw new RangeError(`no root between ${low} and ${high}: values ${fb} and ${fa}`);
  let [c, fc] = [b, fb];
  let step = 0.5;
  let halved = Math.abs(b - a);
  let since = 0;
  for (let count = 2; ; count++) {
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const width = Math.abs(b - a);
    const least = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    if (fa === 0 || !(width > 2 * least) || count >= MOST_EVALUATIONS) return fa === 0 ? a : best;
    step = count === 2 ? 0.5 : interpolated(a, fa, b, fb, c, fc);
    if (width <= halved / 2) [halved, since] = [width, 0];
    else if (++since >= 3) step = 0.5;
    const shortest = least / width;
    const x = a + Math.min(1 - shortest, Math.max(shortest, step)) * (b - a);
    const fx = at(x);
    if (fx > 0 === fa > 0) [c, fc] = [a, fa];
    else [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
  }
}

/** Where between a (0) and b (1) the parabola x(f) through three points meets f = 0; half way where it cannot be trusted. */
function interpolated(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi * phi < xi && (1 - phi) ** 2 < 1 - xi)) return 0.5;
  const t = (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
  return Number.isFinite(t) ? t : 0.5;
}

/** How to halve: the arithmetic mean, or the geometric one for quantities above 0 that span decades. */
export type Scale = 'linear' | 'logarithmic';

/**
 * Where something ceases to hold, by halving, for what is only true or false. It is taken to hold at `holding` and not
 * at `failing` (neither is asked), which may lie on either side.
 * @param near distance (linear) or ratio above 1 (logarithmic) of the two places at which it ends.
 * @returns the last place where it holds and the next where it does not; after 200 halvings at the latest.
 * @throws RangeError unless both are finite, and above 0 for logarithmic halving.
 */
export function boundary(
  holds: (x: number) => boolean,
  holding: number,
  failing: number,
  near: number,
  scale: Scale = 'linear',
): readonly [holding: number, failing: number] {
  const logarithmic = scale === 'logarithmic';
  if (!Number.isFinite(holding - failing) || (logarithmic && !(holding > 0 && failing > 0)))
    throw new RangeError(`cannot halve between ${holding} and ${failing} (${scale})`);
  let [inside, outside] = [holding, failing];
  const apart = (): boolean =>
    logarithmic ? Math.max(inside / outside, outside / inside) > near : Math.abs(outside - inside) > near;
  for (let count = 0; count < MOST_EVALUATIONS && apart(); count++) {
    const middle = logarithmic ? Math.sqrt(inside * outside) : (inside + outside) / 2;
    if (middle === inside || middle === outside) break;
    if (holds(middle)) inside = middle;
    else outside = middle;
  }
  return [inside, outside];
}

/**
 * The first whole number for which something holds, for what holds from there on; `low` itself is not asked and taken
 * to fail, `high` to hold.
 * @param holds what is asked of a whole number; once true, true from there on
 * @param low a whole number for which it fails
 * @param high a whole number for which it holds
 * @returns the first whole number above `low` for which it holds
 * @throws RangeError unless both are whole and low < high.
 */
export function firstWhole(holds: (n: number) => boolean, low: number, high: number): number {
  if (!(Number.isInteger(low) && Number.isInteger(high) && low < high))
    throw new RangeError(`whole numbers, the first below the second, expected: got ${low} and ${high}`);
  let [fails, fits] = [low, high];
  while (fits - fails > 1) {
    const middle = Math.floor((fails + fits) / 2);
    if (holds(middle)) fits = middle;
    else fails = middle;
  }
  return fits;
}

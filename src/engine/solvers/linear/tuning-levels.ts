import { add, type Complex, multiply, ONE, subtract } from '../../numerics/complex.ts';
import { impedanceAt, openAt, type PortRows } from './port-rows.ts';
import { type StraightQuotient, straightQuotient } from './straight-quotient.ts';

/** Ports in the order in which a set with tuning capacitors is looked at; the tuned circuit's, 1, is not needed here. */
const DETECTOR = 0;
const MAIN = 2;
const SECOND = 3;

/** A polynomial n + p·Y1 + q·Y2 + r·Y1·Y2 in the admittances of the main and the second tuning: re and im of n, p, q, r. */
type Polynomial = Float64Array;
const [BY_MAIN, BY_SECOND, BY_BOTH] = [2, 4, 6];

/** The voltage at the detector, over what is open: upper/(lower + g·loading), g the detector's conductance. */
interface Polynomials {
  readonly upper: Polynomial;
  readonly lower: Polynomial;
  readonly loading: Polynomial;
}

/**
 * By the rule for two loads: with V = open + Z·I and Iₖ = −Yₖ·Vₖ at both, a voltage x (open itself, or an impedance to
 * it) becomes x·Δ less what the two currents take, over Δ = (1 + z₁₁·Y1)(1 + z₂₂·Y2) − z₁₂²·Y1·Y2. Without a second
 * tuning its terms are 0.
 */
function polynomialsOf(rows: PortRows, ports: number): Polynomials {
  const value = (at: number): Complex => ({ re: rows[at], im: rows[at + 1] });
  const open = (port: number) => value(openAt(ports, port));
  const z = (port: number, other: number) => value(impedanceAt(ports, port, other));
  const [x, zd, z1, to1, open1] = [open(DETECTOR), z(DETECTOR, DETECTOR), z(MAIN, MAIN), z(DETECTOR, MAIN), open(MAIN)];
  const withOne = (v: Complex, zk: Complex, to: Complex, at: Complex): Complex =>
    subtract(multiply(v, zk), multiply(to, at));
  if (ports <= SECOND)
    return {
      upper: polynomial(x, withOne(x, z1, to1, open1)),
      lower: polynomial(ONE, z1),
      loading: polynomial(zd, withOne(zd, z1, to1, to1)),
    };
  const [z2, z12, to2, open2] = [z(SECOND, SECOND), z(MAIN, SECOND), z(DETECTOR, SECOND), open(SECOND)];
  const both = withOne(z1, z2, z12, z12);
  const whole = (v: Complex, at1: Complex, at2: Complex): Polynomial => {
    const currents = add(multiply(to1, withOne(at1, z2, z12, at2)), multiply(to2, withOne(at2, z1, z12, at1)));
    return polynomial(v, withOne(v, z1, to1, at1), withOne(v, z2, to2, at2), subtract(multiply(v, both), currents));
  };
  return {
    upper: whole(x, open1, open2),
    lower: polynomial(ONE, z1, z2, both),
    loading: whole(zd, to1, to2),
  };
}

function polynomial(n: Complex, p: Complex, q?: Complex, r?: Complex): Polynomial {
  const of = new Float64Array(8);
  of[0] = n.re;
  of[1] = n.im;
  of[BY_MAIN] = p.re;
  of[BY_MAIN + 1] = p.im;
  if (q === undefined || r === undefined) return of;
  of[BY_SECOND] = q.re;
  of[BY_SECOND + 1] = q.im;
  of[BY_BOTH] = r.re;
  of[BY_BOTH + 1] = r.im;
  return of;
}

/** The levels of one frequency, with the quotients last asked for: each is overwritten by the next of its kind. */
export interface TuningLevels {
  readonly of: Polynomials;
  /** `lower` and `loading` together, for the conductance g. */
  readonly loaded: Polynomial;
  g: number;
  readonly main: StraightQuotient;
  /** The second's admittance in `main`. */
  mainRe: number;
  mainIm: number;
  readonly second: StraightQuotient;
}

export const tuningLevels = (rows: PortRows, ports: number): TuningLevels => levelsWith(polynomialsOf(rows, ports));

const levelsWith = (of: Polynomials): TuningLevels => ({
  of,
  loaded: new Float64Array(8),
  g: Number.NaN,
  main: straightQuotient(),
  mainRe: Number.NaN,
  mainIm: Number.NaN,
  second: straightQuotient(),
});

/** The voltage as the main tuning is turned, the second (if there is one) standing at an admittance. */
export function byMain(levels: TuningLevels, g: number, yr: number, yi: number): StraightQuotient {
  const { main } = levels;
  if (g === levels.g && yr === levels.mainRe && yi === levels.mainIm) return main;
  load(levels, g);
  hold(levels.of.upper, BY_SECOND, BY_MAIN, yr, yi, main, 0);
  hold(levels.loaded, BY_SECOND, BY_MAIN, yr, yi, main, 4);
  levels.mainRe = yr;
  levels.mainIm = yi;
  return main;
}

/** The voltage as the second is turned, the main one standing. */
export function bySecond(levels: TuningLevels, g: number, yr: number, yi: number): StraightQuotient {
  const { second } = levels;
  load(levels, g);
  hold(levels.of.upper, BY_MAIN, BY_SECOND, yr, yi, second, 0);
  hold(levels.loaded, BY_MAIN, BY_SECOND, yr, yi, second, 4);
  return second;
}

function load(levels: TuningLevels, g: number): void {
  if (g === levels.g) return;
  const { lower, loading } = levels.of;
  for (let k = 0; k < 8; k++) levels.loaded[k] = lower[k] + g * loading[k];
  levels.g = g;
  levels.mainRe = Number.NaN;
}

/** What is left of a polynomial, a straight line, when one of its admittances stands. */
function hold(
  of: Polynomial,
  fixed: number,
  turned: number,
  yr: number,
  yi: number,
  into: StraightQuotient,
  at: number,
): void {
  into[at] = of[0] + of[fixed] * yr - of[fixed + 1] * yi;
  into[at + 1] = of[1] + of[fixed] * yi + of[fixed + 1] * yr;
  into[at + 2] = of[turned] + of[BY_BOTH] * yr - of[BY_BOTH + 1] * yi;
  into[at + 3] = of[turned + 1] + of[BY_BOTH] * yi + of[BY_BOTH + 1] * yr;
}

/**
 * Levels about a frequency, from those there and `apart` to both sides: without its tuning capacitors a set resonates
 * nowhere near as sharply, and each coefficient runs as a parabola. `move` says how far from the middle `levels` are.
 */
export interface LevelsAbout {
  readonly levels: TuningLevels;
  readonly middle: Polynomials;
  readonly slope: Polynomials;
  readonly bend: Polynomials;
}

const NAMES = ['upper', 'lower', 'loading'] as const;
const noPolynomials = (): Polynomials => ({
  upper: new Float64Array(8),
  lower: new Float64Array(8),
  loading: new Float64Array(8),
});

export function levelsAbout(below: TuningLevels, at: TuningLevels, above: TuningLevels, apart: number): LevelsAbout {
  const slope = noPolynomials();
  const bend = noPolynomials();
  for (const name of NAMES) {
    const [a, b, c] = [below.of[name], at.of[name], above.of[name]];
    for (let k = 0; k < 8; k++) {
      slope[name][k] = (c[k] - a[k]) / (2 * apart);
      bend[name][k] = (a[k] + c[k] - 2 * b[k]) / (2 * apart * apart);
    }
  }
  return { levels: levelsWith(noPolynomials()), middle: at.of, slope, bend };
}

export function moveLevels({ levels, middle, slope, bend }: LevelsAbout, off: number): void {
  for (const name of NAMES) {
    const [to, a, b, c] = [levels.of[name], middle[name], slope[name], bend[name]];
    for (let k = 0; k < 8; k++) to[k] = a[k] + off * (b[k] + off * c[k]);
  }
  levels.g = Number.NaN;
}

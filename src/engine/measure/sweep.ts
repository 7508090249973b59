import { add, type Complex, complex, divide, magnitude, multiply, ONE, scale, subtract } from '../numerics/complex.ts';
import type { ImpedanceReading } from './measurement.ts';
import type { Network } from './reading-fields.ts';
import { UnfitReadings } from './unfit.ts';

/** How a part stands in the fixture: at the port, between two ports, or from both of them to earth. */
export type Fixture = 'reflection' | 'series' | 'shunt';

/** One scattering parameter over frequency, and what it is of. */
export interface Sweep {
  readonly fixture: Fixture;
  /** Of the ports, Ω. */
  readonly reference: number;
  readonly points: readonly { readonly frequency: number; readonly s: Complex }[];
  /** Of each part of s, one standard deviation, from the sweep itself. */
  readonly noise: number;
  /** Share of the series or shunt element that S11 does not bear out, rms; 0 in reflection. */
  readonly disagreement: number;
}

/** Three measured standards, and the resistance of the third, Ω. */
export interface Standards {
  readonly open: Network;
  readonly short: Network;
  readonly load: Network;
  readonly loadResistance: number;
}

/** A sweep is thinned to this many points: more only take time. */
const MOST_POINTS = 401;
const LEAST_POINTS = 5;
const LEAST_NOISE = 1e-6;

/**
 * Noise of each part of s: from third differences, which a smooth curve hardly has; their median, so that a sharp
 * resonance does not count.
 */
function noiseOf(values: readonly Complex[]): number {
  const squares = values
    .slice(3)
    .map((s3, i) => {
      const [s0, s1, s2] = [values[i], values[i + 1], values[i + 2]];
      return (s3.re - 3 * s2.re + 3 * s1.re - s0.re) ** 2 + (s3.im - 3 * s2.im + 3 * s1.im - s0.im) ** 2;
    })
    .sort((a, b) => a - b);
  const median = squares[Math.floor(squares.length / 2)];
  // Of two parts with 20 variances each; a sum of two squares has its median at ln 2 of its mean.
  return Math.max(LEAST_NOISE, Math.sqrt(median / (40 * Math.LN2)));
}

/** S11 of a file between its frequencies; refused beyond them. */
function between(network: Network, frequency: number): Complex {
  const { points } = network;
  const at = points.findIndex((p) => p.frequency >= frequency);
  const [first, last] = [points[0].frequency, points[points.length - 1].frequency];
  if (at < 0 || frequency < first)
    throw new UnfitReadings({ code: 'analyser.standards-do-not-reach', frequency, lowest: first, highest: last });
  const [a, b] = [points[Math.max(at - 1, 0)], points[at]];
  const share = b.frequency > a.frequency ? (frequency - a.frequency) / (b.frequency - a.frequency) : 1;
  return add(scale(a.s[0], 1 - share), scale(b.s[0], share));
}

/**
 * Reflection with lead and fixture taken off: Z = Zload·(Γo − Γl)(Γx − Γs)/((Γl − Γs)(Γo − Γx)), for any linear fixture and
 * ideal open and short.
 */
function without(x: Complex, frequency: number, { open, short, load, loadResistance }: Standards, R: number): Complex {
  const [o, s, l] = [open, short, load].map((standard) => between(standard, frequency));
  const over = scale(multiply(subtract(o, l), subtract(x, s)), loadResistance);
  const under = multiply(subtract(l, s), subtract(o, x));
  // (Z − R)/(Z + R) of Z = over/under, also where the part is open.
  const whole = scale(under, R);
  return divide(subtract(over, whole), add(over, whole));
}

/**
 * The parameter that shows the part, thinned to at most 401 points.
 * @param network as read @param fixture how the part stands in it
 * @param standards of a reflection, to take the fixture off; their files must reach over the sweep
 * @throws UnfitReadings where the file has too few points or ports, or the standards do not reach
 */
export function sweepOf(network: Network, fixture: Fixture, standards?: Standards): Sweep {
  if (fixture !== 'reflection' && network.ports !== 2) throw new UnfitReadings({ code: 'analyser.two-ports' });
  if (!(network.points.length >= LEAST_POINTS))
    throw new UnfitReadings({ code: 'too-few-different', least: LEAST_POINTS, given: network.points.length });
  const R = network.reference;
  const step = Math.ceil(network.points.length / MOST_POINTS);
  const whole = network.points.map(({ frequency, s }) => {
    if (fixture !== 'reflection') return { frequency, s: scale(add(s[1], s[2]), 0.5) };
    return { frequency, s: standards ? without(s[0], frequency, standards, R) : s[0] };
  });
  const points = whole.filter((_, i) => i % step === 0);
  const sign = fixture === 'series' ? -1 : 1;
  const off =
    fixture === 'reflection'
      ? []
      : network.points.map(({ s }, i) => {
          const expected = scale(subtract(whole[i].s, ONE), sign);
          return magnitude(subtract(s[0], expected)) ** 2;
        });
  return {
    fixture,
    reference: R,
    points,
    noise: noiseOf(whole.map((p) => p.s)),
    disagreement: Math.sqrt(off.reduce((sum, x) => sum + x, 0) / Math.max(off.length, 1)),
  };
}

/** The parameter that an impedance shows in a fixture. */
export function parameterOf(z: Complex, fixture: Fixture, R: number): Complex {
  if (fixture === 'reflection') return divide(subtract(z, complex(R)), add(z, complex(R)));
  if (fixture === 'series') return divide(complex(2 * R), add(z, complex(2 * R)));
  return divide(z, add(z, complex(R / 2)));
}

/** The impedance that a parameter belongs to; infinite for an open circuit. */
function impedanceFrom(s: Complex, fixture: Fixture, R: number): Complex {
  if (fixture === 'reflection') return scale(divide(add(ONE, s), subtract(ONE, s)), R);
  if (fixture === 'series') return scale(divide(subtract(ONE, s), s), 2 * R);
  return scale(divide(s, subtract(ONE, s)), R / 2);
}

/**
 * Impedance over frequency, with the error that an error of the parameter makes of it: |Z + Z0|²/2Z0 in reflection,
 * |Z + 2Z0|²/2Z0 in series, |Z + Z0/2|²/(Z0/2) as shunt.
 * @param error of each part of the parameter, one standard deviation
 */
export const impedancesOf = ({ points, fixture, reference: R }: Sweep, error: number): ImpedanceReading[] =>
  points.flatMap(({ frequency, s }) => {
    const z = impedanceFrom(s, fixture, R);
    if (!(Number.isFinite(z.re) && Number.isFinite(z.im))) return [];
    const [besides, over] =
      fixture === 'reflection' ? [R, 2 * R] : fixture === 'series' ? [2 * R, 2 * R] : [R / 2, R / 2];
    const standardError = (magnitude(add(z, complex(besides))) ** 2 / over) * error;
    return [{ frequency, resistance: z.re, reactance: z.im, standardError }];
  });

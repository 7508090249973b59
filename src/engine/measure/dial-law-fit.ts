import { warning } from '../facts/warning.ts';
import { root } from '../numerics/roots.ts';
import { studentTails } from '../numerics/student-t.ts';
import type { VaneLaw } from '../parts/capacitor/law.ts';
import {
  type DialFit,
  type DialReading,
  type DialThrough,
  dialThrough,
  POINTER,
  suspectReadings,
  suspectWarnings,
} from './dial-fit.ts';
import { correlationsOf } from './figure-correlations.ts';
import type { Fitted } from './fitted.ts';
import { type DialCapacitor, shapeOfLaw } from './scale-of-capacitor.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

/** Laws that a dial may have, the commonest first. */
export const DIAL_LAWS = [
  'semicircular',
  'square-law',
  'straight-line frequency',
  'logarithmic',
] as const satisfies readonly VaneLaw[];

/** A law with what the readings say of it. */
export interface LawShare {
  readonly law: VaneLaw;
  readonly capacitor: DialCapacitor;
  /** How likely the readings make it, all laws being as likely before. */
  readonly share: number;
}

/** As `DialFit`, over every law that the capacitor may have. */
export interface DialLawFit extends DialFit {
  /** The likeliest first. */
  readonly laws: readonly LawShare[];
}

/** Fewer different stations show no bend. */
const LEAST = 4;
const PICO = 1e-12;
/** How often a reading is misread. Common practice, no source. */
const MISREAD = 0.05;
const [LOW, HIGH] = [0.05, 0.95];

/** ln Γ(k/2). */
function logGammaOfHalf(k: number): number {
  let sum = k % 2 === 1 ? Math.log(Math.PI) / 2 : 0;
  for (let i = k % 2 === 1 ? 1 : 2; i < k; i += 2) sum += Math.log(i / 2);
  return sum;
}

/**
 * Logarithm of how likely a law makes the readings, its two unknowns and the scatter being integrated over: the scatter is
 * known beforehand as a pointer is read, 1/L and strays are not; a misread position may be anywhere.
 */
function logLikelihood({ gram, sum, degrees, left }: DialThrough): number {
  const freedom = degrees + POINTER.degrees;
  return (
    logGammaOfHalf(freedom) -
    (degrees / 2) * Math.log(Math.PI) -
    (freedom / 2) * Math.log(sum + POINTER.degrees * POINTER.deviation ** 2) +
    Math.log(gram[0] * gram[3] - gram[1] * gram[2]) / 2 +
    left.length * Math.log(MISREAD)
  );
}

interface Part {
  readonly share: number;
  readonly middle: number;
  readonly deviation: number;
  readonly degrees: number;
}

/** Mean, standard deviation and 90 % range of what is one of several, each with Student's t about its middle. */
function mixture(parts: readonly Part[]): Fitted {
  const value = parts.reduce((sum, { share, middle }) => sum + share * middle, 0);
  const variance = parts.reduce(
    (sum, { share, middle, deviation }) => sum + share * (deviation ** 2 + (middle - value) ** 2),
    0,
  );
  const below = (x: number): number =>
    parts.reduce((sum, { share, middle, deviation, degrees }) => {
      const tail = studentTails((x - middle) / deviation, degrees) / 2;
      return sum + share * (x < middle ? tail : 1 - tail);
    }, 0);
  const far = parts.reduce((most, { middle, deviation }) => Math.max(most, Math.abs(middle - value) + deviation), 0);
  const quantile = (p: number): number => {
    let reach = far;
    while (below(value - reach) > p || below(value + reach) < p) reach *= 2;
    return root((x) => below(x) - p, value - reach, value + reach, 1e-9 * far);
  };
  return { value, standardError: Math.sqrt(variance), range: [quantile(LOW), quantile(HIGH)] };
}

/**
 * Inductance and strays from a dial whose capacitor's law nobody knows: a fit for each law, each counted by how likely it
 * makes the readings, so that the ranges hold what is not known of the law too.
 * @param readings at 4 or more different frequencies
 * @param ends of the capacitor, F
 * @param known laws to choose from; left out: all that vanes are cut to
 * @returns inductance (H) and strays (F) with errors over all laws, misread readings by the likeliest one, and how likely each law is
 * @throws UnfitReadings
 */
export function fitDialOfAnyLaw(
  readings: readonly DialReading[],
  { minimum, maximum, padder }: Omit<DialCapacitor, 'shape'>,
  known: readonly VaneLaw[] = DIAL_LAWS,
): DialLawFit {
  requireDifferent(
    readings.map((r) => r.frequency),
    LEAST,
  );
  const possible = known
    .filter((law) => minimum > 0 || law === 'semicircular' || law === 'square-law')
    .flatMap((law) => {
      const capacitor = { minimum, maximum, padder, shape: shapeOfLaw(law, minimum, maximum) };
      try {
        const fit = dialThrough(readings, capacitor);
        return [{ law, capacitor, fit, log: logLikelihood(fit) }];
      } catch (refusal) {
        if (!(refusal instanceof UnfitReadings)) throw refusal;
        return [];
      }
    })
    .sort((a, b) => b.log - a.log);
  if (possible.length === 0) throw new UnfitReadings({ code: 'dial.not-rising' });
  const [best] = possible;
  const whole = possible.reduce((sum, { log }) => sum + Math.exp(log - best.log), 0);
  const laws = possible.map(({ log, ...one }) => ({ ...one, share: Math.exp(log - best.log) / whole }));
  const over = (figure: (fit: DialThrough) => number, index: 0 | 3): Fitted =>
    mixture(
      laws.map(({ share, fit }) => ({
        share,
        middle: figure(fit),
        deviation: Math.sqrt(fit.variance * fit.gram[index]),
        degrees: fit.degrees,
      })),
    );
  const inverse = over(({ inverseL }) => inverseL, 0);
  const strays = over((fit) => fit.strays, 3);
  const L = 1 / inverse.value;
  const [low, high] = inverse.range;
  const suspects = suspectReadings(readings, best.capacitor, best.fit);
  const { gram } = best.fit;
  return {
    inductance: {
      value: L,
      standardError: L * L * inverse.standardError,
      range: [1 / high, low > 0 ? 1 / low : Number.POSITIVE_INFINITY],
    },
    strayCapacitance: {
      value: strays.value * PICO,
      standardError: strays.standardError * PICO,
      range: [strays.range[0] * PICO, strays.range[1] * PICO],
    },
    suspects,
    correlations: correlationsOf(['inductance', 'strayCapacitance'], [gram[0], -gram[1], -gram[2], gram[3]]),
    scatter: Math.sqrt(best.fit.variance),
    laws: laws.map(({ law, capacitor, share }) => ({ law, capacitor, share })),
    warnings: [
      warning('measure.law-chosen', {
        law: laws[0].law,
        share: laws[0].share,
        ...(laws.length > 1 && { other: laws[1].law, otherShare: laws[1].share }),
      }),
      ...suspectWarnings(readings, suspects),
    ],
  };
}

import { type Path, samePath } from '../kinds/adjustment.ts';
import { cholesky, solveTransposedUpper, solveUpper } from '../numerics/cholesky.ts';
import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import type { SetDescription } from '../set/description.ts';
import { NINETY } from '../uncertainty/spread.ts';
import { type Fitted, fittedLogarithm } from './fitted.ts';
import { chiSquarePoint } from './known-errors.ts';
import { type MeasurableFigure, measurableFigures, withoutMeasured } from './measurable.ts';
import type { PropertyId } from './properties.ts';
import { capacitorOf, positionOn } from './scale-of-capacitor.ts';

interface ObservedFigure {
  readonly property: PropertyId;
  readonly path: Path;
  /** Above 0. */
  readonly value: number;
  readonly standardError: number;
}

/** One thing that readings say of a set: a figure with its standard error, several of one fit, or a place on the dial. */
export type Observation =
  | ({ readonly of: 'figure' } & ObservedFigure)
  | {
      /** Figures of one fit. */
      readonly of: 'figures';
      readonly figures: readonly ObservedFigure[];
      /** Of their errors, row by row. */
      readonly correlations: Float64Array;
    }
  | {
      readonly of: 'dial';
      /** Of the measured inductance in the description. */
      readonly coil: Path;
      /** 0 open to 1 meshed. */
      readonly position: number;
      readonly frequency: number;
      /** Of the position. */
      readonly standardError: number;
    };

/** A figure of the set by its sizes and all readings together. */
export interface JointFigure {
  readonly property: PropertyId;
  readonly path: Path;
  readonly at?: number;
  /** By the sizes alone. */
  readonly before: Fitted;
  readonly after: Fitted;
}

/** All readings taken together. */
export interface Joint {
  readonly figures: readonly JointFigure[];
  /** Of the logarithms of the figures, row by row in their order. */
  readonly correlations: Float64Array;
  /** Sum of squares at the best values, and its 95 % point where description and readings agree. */
  readonly chiSquare: number;
  readonly highestOfAgreement: number;
  /** The figure that the readings move furthest, in standard deviations of what was known of it before. */
  readonly furthest?: { readonly property: PropertyId; readonly path: Path; readonly deviations: number };
}

/** How far sizes written in a description may be off, as one standard deviation of what follows from them. Common practice, no source. */
const WRITTEN_SIZES: Partial<Record<PropertyId, number>> = { 'coil.inductance': 0.05, 'tuning.maximum': 0.03 };
/** Soil changes with the weather of a season as well. */
const SOIL = 0.8;
/** An earth at radio frequency against the same with a low one, as a share of the whole. Common practice, no source. */
const RADIO_EARTH = 0.1;
const LEAST_DEVIATION = 1e-4;

/** Standard deviation of the logarithm of a figure before anything is measured. */
function priorDeviation({ property, calculated }: Pick<MeasurableFigure, 'property' | 'calculated'>): number {
  const [low, high] = calculated.range;
  const typical = low > 0 ? Math.log(high / low) / (2 * NINETY) : 1;
  const least = property === 'earth.resistance' ? SOIL : (WRITTEN_SIZES[property] ?? 0);
  return Math.max(LEAST_DEVIATION, Math.hypot(typical, least));
}

/**
 * A set's figures from its sizes and everything read of it, at once: the calculated figures with their spreads, and the
 * observations with their errors, weighed against each other. The order of the readings does not matter, and what
 * several readings say together (inductance and strays from the dial) keeps its correlations.
 * @param set as read; what its description has as measured is left aside, readings alone count
 * @param observations of readings
 * @returns every figure before and after with standard errors and 90 % ranges, and whether description and readings agree
 */
export function jointFigures(set: SetDescription, observations: readonly Observation[]): Joint {
  const known = measurableFigures(withoutMeasured(set)).filter(
    ({ property, calculated }) => property !== 'load.sensitivity' && calculated.value > 0,
  );
  const prior = known.map((figure) => ({
    middle: Math.log(figure.calculated.value),
    deviation: priorDeviation(figure),
  }));
  const indexOf = (path: Path): number => known.findIndex((figure) => samePath(figure.path, path));
  const tuning = (key: string): number => indexOf(['tuning', 'measured', key]);
  const ends = { minimum: tuning('minimum'), maximum: tuning('maximum'), stray: tuning('stray') };
  const capacitor = capacitorOf(set);
  const off = ({ path, value, standardError }: ObservedFigure) => {
    const i = indexOf(path);
    if (i < 0 || !(value > 0)) return undefined;
    return (theta: ArrayLike<number>) => ((theta[i] - Math.log(value)) * value) / standardError;
  };
  type Residuals = (theta: ArrayLike<number>) => Iterable<number>;
  /** Errors of one fit that go together: combinations of them that do not. */
  const residualsOf = ({ figures, correlations }: Extract<Observation, { of: 'figures' }>): Residuals => {
    const each = figures.map(off);
    const kept = [...each.keys()].filter((i) => each[i]);
    const n = kept.length;
    const R = cholesky(
      Float64Array.from({ length: n * n }, (_, k) => {
        return correlations[kept[Math.floor(k / n)] * figures.length + kept[k % n]];
      }),
      n,
      1e-12,
    );
    return (theta) => {
      const z = Float64Array.from(kept, (i) => each[i]!(theta));
      if (R) solveTransposedUpper(R, n, z, 1);
      return z;
    };
  };
  const residualOf = (one: Exclude<Observation, { of: 'figures' }>) => {
    if (one.of === 'figure') return off(one);
    const coil = indexOf(one.coil);
    if (!capacitor || coil < 0 || ends.maximum < 0 || ends.stray < 0) return undefined;
    const own = indexOf([...one.coil.slice(0, -1), 'selfCapacitance']);
    return (theta: ArrayLike<number>) => {
      const place = positionOn(one.frequency, {
        ...capacitor,
        L: Math.exp(theta[coil]),
        // All that is across the vanes: wiring, trimmer and the coil's own.
        stray: Math.exp(theta[ends.stray]) + set.tuning.trimmer + (own < 0 ? 0 : Math.exp(theta[own])),
        minimum: ends.minimum < 0 ? capacitor.minimum : Math.exp(theta[ends.minimum]),
        maximum: Math.exp(theta[ends.maximum]),
      });
      return (place - one.position) / one.standardError;
    };
  };
  const seen = observations.flatMap((one): Residuals | readonly never[] => {
    if (one.of === 'figures') return residualsOf(one);
    const residual = residualOf(one);
    return residual ? (theta) => [residual(theta)] : [];
  });
  // The resistance of aerial and earth holds that of the earth: what is read of either says something of the other.
  const [earth, whole] = [indexOf(['earth', 'measured', 'resistance']), indexOf(['aerial', 'measured', 'resistance'])];
  const own = earth < 0 || whole < 0 ? 0 : known[whole].calculated.value - known[earth].calculated.value;
  const ownShare = own > 0 ? own / known[whole].calculated.value : 0;
  const ownDeviation = Math.hypot(RADIO_EARTH, ownShare * (prior[whole]?.deviation ?? 0));
  if (own > 0) prior[whole].deviation = Math.hypot(ownDeviation, (1 - ownShare) * prior[earth].deviation);
  const offPrior = (theta: ArrayLike<number>, i: number): number =>
    own > 0 && i === whole
      ? (theta[i] - Math.log(own + Math.exp(theta[earth]))) / ownDeviation
      : (theta[i] - prior[i].middle) / prior[i].deviation;
  const residuals = (theta: ArrayLike<number>): number[] => [
    ...prior.map((_, i) => offPrior(theta, i)),
    ...seen.flatMap((of) => [...of(theta)]),
  ];
  const start = prior.map(({ middle }) => middle);
  const n = prior.length;
  // One for each of what was read, and for each figure of a fit.
  const count = residuals(start).length - n;
  const best = count > 0 ? leastSquares(residuals, start, { scales: start.map(() => 1) }).x : Float64Array.from(start);
  const covariance = covarianceAt(residuals, best, n);
  const deviations = Array.from({ length: n }, (_, i) => Math.sqrt(covariance[i * n + i]));
  const correlations = covariance.map((c, k) => c / (deviations[Math.floor(k / n)] * deviations[k % n]));
  const moved = prior.map(({ middle, deviation }, i) => (best[i] - middle) / deviation);
  const far = moved.reduce((a, m, i) => (Math.abs(m) > Math.abs(moved[a]) ? i : a), 0);
  return {
    figures: known.map(({ property, path, at }, i) => ({
      property,
      path,
      at,
      before: fittedLogarithm(prior[i].middle, prior[i].deviation, NINETY),
      after: fittedLogarithm(best[i], deviations[i], NINETY),
    })),
    correlations,
    chiSquare: residuals(best).reduce((s, r) => s + r * r, 0),
    highestOfAgreement: chiSquarePoint(count),
    furthest: n > 0 ? { property: known[far].property, path: known[far].path, deviations: moved[far] } : undefined,
  };
}

/** Covariance of the unknowns at the best values: the inverse of JᵀJ, every residual being in its own standard error. */
function covarianceAt(
  residuals: (theta: ArrayLike<number>) => readonly number[],
  at: Float64Array,
  n: number,
): Float64Array {
  const h = 1e-5;
  const columns = Array.from({ length: n }, (_, j) => {
    const [above, below] = [at.slice(), at.slice()];
    above[j] += h;
    below[j] -= h;
    const [high, low] = [residuals(above), residuals(below)];
    return high.map((r, i) => (r - low[i]) / (2 * h));
  });
  const normal = Float64Array.from({ length: n * n }, (_, k) => {
    const [a, b] = [columns[Math.floor(k / n)], columns[k % n]];
    return a.reduce((s, x, i) => s + x * b[i], 0);
  });
  const R = cholesky(normal, n, 1e-15);
  const inverse = Float64Array.from({ length: n * n }, (_, k) => (Math.floor(k / n) === k % n ? 1 : 0));
  if (!R) return inverse.map(() => Number.NaN);
  solveTransposedUpper(R, n, inverse, n);
  solveUpper(R, n, inverse, n);
  return inverse;
}

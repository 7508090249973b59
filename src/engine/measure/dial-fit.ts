import { type Warning, warning } from '../facts/warning.ts';
import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import { studentTails } from '../numerics/student-t.ts';
import { correlationsOf, type FigureCorrelation } from './figure-correlations.ts';
import { type Fitted, fitted, reachOf } from './fitted.ts';
import { capacitanceOn, type DialCapacitor, positionOn } from './scale-of-capacitor.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

export interface DialReading {
  /** 0 fully open, 1 fully meshed; a little outside is possible. */
  readonly position: number;
  /** Hz. */
  readonly frequency: number;
}

/** A reading left out: where it was read is a station of this frequency, by the other readings. */
export interface SuspectReading {
  readonly index: number;
  /** Hz; infinite where the position is beyond every frequency. */
  readonly frequencyThere: Fitted;
}

export interface DialFit {
  readonly inductance: Fitted;
  readonly strayCapacitance: Fitted;
  readonly suspects: readonly SuspectReading[];
  readonly correlations: readonly FigureCorrelation[];
  /** Of positions about the fit (one standard deviation). */
  readonly scatter: number;
  readonly warnings: readonly Warning[];
}

/** Below this a reading that does not fit cannot be told from one that does. */
const LEAST_TO_SUSPECT = 5;

/** A pointer is read to about 0.8 % of its scale; worth as much as four readings. */
export const POINTER = { deviation: 0.008, degrees: 4 };
/** Chance that a faultless set of readings has one left out, about. */
const FALSE_ALARM = 0.015;
const PICO = 1e-12;

/** A capacitor's dial as readings have it: what the fit leaves, and how sure it is where. */
interface Through {
  /** 1/H, and pF. */
  readonly inverseL: number;
  readonly strays: number;
  /** Of both, for unit variance of a reading. */
  readonly gram: ArrayLike<number>;
  readonly sum: number;
  /** By how much a reading is off. */
  readonly off: (reading: DialReading) => number;
  /** Variance of the fit's position there, for unit variance of a reading. */
  readonly lever: (frequency: number) => number;
}

/** Where the capacitance rises evenly the position is linear in 1/L and the strays. */
function lineThrough(readings: readonly DialReading[], { minimum, maximum }: DialCapacitor): Through {
  const rowOf = (frequency: number): readonly [number, number] => [
    1 / (2 * Math.PI * frequency) ** 2 / (maximum - minimum),
    -PICO / (maximum - minimum),
  ];
  const { x, gram, residuals } = linearLeastSquares(
    readings.flatMap((r) => rowOf(r.frequency)),
    readings.map((r) => r.position + minimum / (maximum - minimum)),
    2,
  );
  return {
    inverseL: x[0],
    strays: x[1],
    gram,
    sum: residuals.reduce((s, r) => s + r * r, 0),
    off: ({ position, frequency }) => {
      const [a, b] = rowOf(frequency);
      return position + minimum / (maximum - minimum) - a * x[0] - b * x[1];
    },
    lever: (frequency) => {
      const [a, b] = rowOf(frequency);
      return a * a * gram[0] + 2 * a * b * gram[1] + b * b * gram[3];
    },
  };
}

/** Any other law: from the line of capacitance over 1/f² to the least squares of the positions. */
function curveThrough(readings: readonly DialReading[], capacitor: DialCapacitor): Through {
  const { x: start } = linearLeastSquares(
    readings.flatMap(({ frequency }) => [1 / (2 * Math.PI * frequency) ** 2 / PICO, -1]),
    readings.map(({ position }) => capacitanceOn(position, capacitor) / PICO),
    2,
  );
  const placeOf = (frequency: number, inverseL: number, strays: number): number =>
    positionOn(frequency, { ...capacitor, L: 1 / inverseL, stray: strays * PICO });
  const scales = [Math.abs(start[0]), 10];
  const { x, gram, sumOfSquares } = leastSquares(
    ([inverseL, strays]) => readings.map(({ position, frequency }) => position - placeOf(frequency, inverseL, strays)),
    start,
    { scales },
  );
  return {
    inverseL: x[0],
    strays: x[1],
    gram,
    sum: sumOfSquares,
    off: ({ position, frequency }) => position - placeOf(frequency, x[0], x[1]),
    lever: (frequency) => {
      const [a, b] = scales.map((scale, j) => {
        const h = 1e-5 * scale;
        const moved = (by: number) => placeOf(frequency, x[0] + (j === 0 ? by : 0), x[1] + (j === 1 ? by : 0));
        return (moved(h) - moved(-h)) / (2 * h);
      });
      return a * a * gram[0] + 2 * a * b * gram[1] + b * b * gram[3];
    },
  };
}

const through = (readings: readonly DialReading[], capacitor: DialCapacitor): Through =>
  capacitor.shape || capacitor.padder !== undefined
    ? curveThrough(readings, capacitor)
    : lineThrough(readings, capacitor);

/** The reading that fits the others least, where that is no accident. */
function worstOf(readings: readonly DialReading[], capacitor: DialCapacitor): number | undefined {
  let worst = -1;
  let highest = 0;
  const degrees = readings.length - 3 + POINTER.degrees;
  readings.forEach((reading, i) => {
    const line = through(
      readings.filter((_, j) => j !== i),
      capacitor,
    );
    const variance = (line.sum + POINTER.degrees * POINTER.deviation ** 2) / degrees;
    const t = Math.abs(line.off(reading)) / Math.sqrt(variance * (1 + line.lever(reading.frequency)));
    if (t > highest) {
      highest = t;
      worst = i;
    }
  });
  return worst >= 0 && studentTails(highest, degrees) < FALSE_ALARM / readings.length ? worst : undefined;
}

/** Indexes of readings that do not fit the others: at most a quarter of them, two of fewer than eight. */
function suspectsOf(readings: readonly DialReading[], capacitor: DialCapacitor): number[] {
  const most = readings.length < 8 ? 2 : Math.floor(readings.length / 4);
  let kept = readings.map((_, i) => i);
  while (kept.length >= LEAST_TO_SUSPECT && readings.length - kept.length < most) {
    const different = (leave: number) => new Set(kept.filter((_, k) => k !== leave).map((i) => readings[i].frequency));
    if (kept.some((_, k) => different(k).size < 2)) break;
    const worst = worstOf(
      kept.map((i) => readings[i]),
      capacitor,
    );
    if (worst === undefined) break;
    kept = kept.filter((_, k) => k !== worst);
  }
  return readings.map((_, i) => i).filter((i) => !kept.includes(i));
}

/** A fit of one capacitor, as it is before its figures are made of it. */
export interface DialThrough extends Omit<Through, 'off'> {
  readonly degrees: number;
  readonly variance: number;
  /** Indexes of the readings left out. */
  readonly left: readonly number[];
}

/**
 * The least squares of positions, misread ones left out.
 * @param readings as `fitDial` takes them
 * @param capacitor with its law
 * @returns 1/L (1/H) and strays (pF) with their gram for unit variance
 * @throws UnfitReadings
 */
export function dialThrough(readings: readonly DialReading[], capacitor: DialCapacitor): DialThrough {
  requireDifferent(
    readings.map((r) => r.frequency),
    2,
  );
  const left = suspectsOf(readings, capacitor);
  const kept = readings.filter((_, i) => !left.includes(i));
  const fit = through(kept, capacitor);
  if (!(fit.inverseL > 0)) throw new UnfitReadings({ code: 'dial.not-rising' });
  const degrees = kept.length - 2;
  return { ...fit, left, degrees, variance: fit.sum / degrees };
}

const NEAR = 1e-4;

/** Readings left out, each with the frequency that its position belongs to. */
export function suspectReadings(
  readings: readonly DialReading[],
  capacitor: DialCapacitor,
  { inverseL, strays, variance, degrees, left, lever }: DialThrough,
): readonly SuspectReading[] {
  const reach = reachOf(degrees);
  return left.map((index) => {
    const { position } = readings[index];
    const capacitanceAt = (p: number): number => capacitanceOn(p, capacitor) + strays * PICO;
    const C = capacitanceAt(position);
    const frequency = C > 0 ? Math.sqrt(inverseL / C) / (2 * Math.PI) : Number.POSITIVE_INFINITY;
    // The capacitance at this position has the error of the position times its slope.
    const slope = (capacitanceAt(position + NEAR) - capacitanceAt(position - NEAR)) / (2 * NEAR);
    const relative = (Math.sqrt(variance * (1 + lever(frequency))) * slope) / (2 * C);
    return { index, frequencyThere: fitted(frequency, Number.isFinite(frequency) ? frequency * relative : 0, reach) };
  });
}

/** What is said of readings left out, or that none could be. */
export const suspectWarnings = (
  readings: readonly DialReading[],
  suspects: readonly SuspectReading[],
): readonly Warning[] =>
  readings.length < LEAST_TO_SUSPECT
    ? [warning('measure.too-few-to-suspect', { given: readings.length, least: LEAST_TO_SUSPECT })]
    : suspects.map(({ index, frequencyThere: { value, range } }) =>
        warning('measure.reading-misread', {
          index,
          frequency: readings[index].frequency,
          there: value,
          from: range[0],
          to: range[1],
        }),
      );

/**
 * Inductance and stray capacitance from where stations of known frequency were found on the dial; readings that do not
 * fit the others are left out, each with the frequency that its position belongs to.
 * @param readings at least 3, of at least 2 different frequencies
 * @param capacitor its ends, F, and how it runs between them
 * @returns inductance (H) and stray capacitance (F), each with its standard error and range, and the readings left out
 * @throws UnfitReadings
 */
export function fitDial(readings: readonly DialReading[], capacitor: DialCapacitor): DialFit {
  const fit = dialThrough(readings, capacitor);
  const { inverseL, strays, gram, degrees, variance } = fit;
  const reach = reachOf(degrees);
  const s = Math.sqrt(variance * gram[0]);
  const highest = inverseL - reach * s;
  const L = 1 / inverseL;
  const suspects = suspectReadings(readings, capacitor, fit);
  return {
    inductance: {
      value: L,
      standardError: L * L * s,
      range: [1 / (inverseL + reach * s), highest > 0 ? 1 / highest : Number.POSITIVE_INFINITY],
    },
    strayCapacitance: fitted(strays * PICO, Math.sqrt(variance * gram[3]) * PICO, reach),
    suspects,
    correlations: correlationsOf(
      ['inductance', 'strayCapacitance'],
      // The inductance falls as its inverse rises.
      [gram[0], -gram[1], -gram[2], gram[3]],
    ),
    scatter: Math.sqrt(variance),
    warnings: suspectWarnings(readings, suspects),
  };
}

import { type Warning, warning } from '../facts/warning.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import { studentTails } from '../numerics/student-t.ts';
import { correlationsOf, type FigureCorrelation } from './figure-correlations.ts';
import { type Fitted, fitted, reachOf } from './fitted.ts';
import { requireDifferent, UnfitReadings } from './unfit.ts';

export interface DialReading {
  /** 0 fully open, 1 fully meshed; a little outside is possible. */
  readonly position: number;
  /** Hz. */
  readonly frequency: number;
}

/** A semicircular capacitor: its capacitance rises evenly with the position. Farads. */
export interface DialCapacitor {
  readonly minimum: number;
  readonly maximum: number;
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

function lineThrough(readings: readonly DialReading[], { minimum, maximum }: DialCapacitor) {
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
    /** By how much a reading is off this line. */
    off: ({ position, frequency }: DialReading): number => {
      const [a, b] = rowOf(frequency);
      return position + minimum / (maximum - minimum) - a * x[0] - b * x[1];
    },
    /** Variance of the line's position there, for unit variance of a reading. */
    lever: (frequency: number): number => {
      const [a, b] = rowOf(frequency);
      return a * a * gram[0] + 2 * a * b * gram[1] + b * b * gram[3];
    },
  };
}

/** The reading that fits the others least, where that is no accident. */
function worstOf(readings: readonly DialReading[], capacitor: DialCapacitor): number | undefined {
  let worst = -1;
  let highest = 0;
  const degrees = readings.length - 3 + POINTER.degrees;
  readings.forEach((reading, i) => {
    const line = lineThrough(
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

/**
 * Inductance and stray capacitance from where stations of known frequency were found on the dial; readings that do not
 * fit the others are left out, each with the frequency that its position belongs to.
 * @param readings at least 3, of at least 2 different frequencies
 * @param capacitor least and greatest capacitance, F
 * @returns inductance (H) and stray capacitance (F), each with its standard error and range, and the readings left out
 * @throws UnfitReadings
 */
export function fitDial(readings: readonly DialReading[], capacitor: DialCapacitor): DialFit {
  requireDifferent(
    readings.map((r) => r.frequency),
    2,
  );
  const indexes = suspectsOf(readings, capacitor);
  const kept = readings.filter((_, i) => !indexes.includes(i));
  const { inverseL, strays, gram, sum } = lineThrough(kept, capacitor);
  if (!(inverseL > 0)) throw new UnfitReadings({ code: 'dial.not-rising' });
  const degrees = kept.length - 2;
  const variance = sum / degrees;
  const reach = reachOf(degrees);
  const s = Math.sqrt(variance * gram[0]);
  const highest = inverseL - reach * s;
  const L = 1 / inverseL;
  const suspects = indexes.map((index) => {
    const C = capacitor.minimum + readings[index].position * (capacitor.maximum - capacitor.minimum) + strays * PICO;
    const frequency = C > 0 ? 1 / (2 * Math.PI * Math.sqrt(L * C)) : Number.POSITIVE_INFINITY;
    // x of the line at this position has the error of the position over its slope.
    const lever = lineThrough(kept, capacitor).lever(frequency);
    const relative = (Math.sqrt(variance * (1 + lever)) * (capacitor.maximum - capacitor.minimum)) / (2 * C);
    return { index, frequencyThere: fitted(frequency, Number.isFinite(frequency) ? frequency * relative : 0, reach) };
  });
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
    warnings:
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
          ),
  };
}

import type { Warning } from '../facts/warning.ts';
import { type Path, samePath } from '../kinds/adjustment.ts';
import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from '../set/description.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';
import { type DifferenceCause, likelyCauses } from './causes.ts';
import { POINTER } from './dial-fit.ts';
import { type ExplainingSize, explainingSizes } from './explaining-sizes.ts';
import type { Fitted } from './fitted.ts';
import { hasEvenDial, type Joint, jointFigures, type Observation } from './joint.ts';
import {
  type Agreement,
  agreementOf,
  type MeasurableFigure,
  measurableFigures,
  withoutMeasured,
} from './measurable.ts';
import { MEASUREMENTS } from './measurements.ts';
import { type PropertyId, propertyOf } from './properties.ts';
import { isProperty, type TakenMeasurement } from './readings.ts';

/** A figure that a measurement gives, beside the calculated one. */
export interface FigureResult {
  /** As its kind calls it. */
  readonly name: string;
  readonly measured: Fitted;
  /** Left out for a number without a unit. */
  readonly quantity?: QuantityKind;
  /** What of the set it is; left out where it only informs. */
  readonly property?: PropertyId;
  /** Where its measured value goes in the description. */
  readonly path?: Path;
  readonly calculated?: Fitted;
  readonly agreement?: Agreement;
  readonly causes: readonly DifferenceCause[];
  /** One size each that would make the calculated figure the measured one, the least change first. */
  readonly sizes: readonly ExplainingSize[];
}

/** What one measurement gives. */
export interface MeasurementResult {
  readonly measurement: TakenMeasurement;
  readonly figures: readonly FigureResult[];
  readonly warnings: readonly Warning[];
}

/** What all readings of a file give, one by one and together. */
export interface ReadingsResult {
  readonly results: readonly MeasurementResult[];
  readonly joint: Joint;
}

/** The part that a property of a measurement is of; undefined where the set has no such part. */
function partOf(set: SetDescription, property: PropertyId, { coil, station }: TakenMeasurement): Path | undefined {
  const [part] = property.split('.');
  if (part === 'coil') {
    if (isLoop(set.aerial)) return coil === undefined ? ['aerial'] : undefined;
    const index = coil === undefined ? 0 : set.coils.findIndex(({ name }) => name === coil);
    return index >= 0 && index < set.coils.length ? ['coils', index] : undefined;
  }
  if (part !== 'station') return [part];
  const index = set.place.stations.findIndex(({ name }) => name === station);
  return index < 0 ? undefined : ['place', 'stations', index];
}

const keyOf = (property: PropertyId): string => property.split('.')[1];

/**
 * What readings say of a set: every figure with its error beside the calculated one, and all of them together.
 * @param set as read
 * @param measurements as read
 * @returns results in the order of the file, and the set's figures by all readings at once
 */
export function resultsOf(set: SetDescription, measurements: readonly TakenMeasurement[]): ReadingsResult {
  const bare = withoutMeasured(set);
  const known = measurableFigures(bare);
  const results = measurements.map((measurement) => resultOf(bare, known, measurement));
  return {
    results,
    joint: jointFigures(
      set,
      results.flatMap((result) => observationsOf(set, result)),
    ),
  };
}

function resultOf(
  set: SetDescription,
  known: readonly MeasurableFigure[],
  measurement: TakenMeasurement,
): MeasurementResult {
  const { fit, figure, kind } = measurement;
  const figures: FigureResult[] = [];
  const add = (name: string, measured: Fitted, quantity: QuantityKind | undefined, property?: PropertyId): void => {
    const part = property && partOf(set, property, measurement);
    const path = property && part && [...part, 'measured', keyOf(property)];
    const calculated = path && known.find((one) => samePath(one.path, path))?.calculated;
    const agreement = property && calculated && agreementOf(property, calculated, measured);
    figures.push({
      name,
      measured,
      quantity,
      property,
      path,
      calculated,
      agreement,
      causes: property && agreement ? likelyCauses(property, agreement) : [],
      sizes: path && calculated ? explainingSizes(set, path, measured) : [],
    });
  };
  if (figure) {
    const { property, value, standardError } = figure;
    add(
      keyOf(property),
      { value, standardError, range: [value - 1.645 * standardError, value + 1.645 * standardError] },
      propertyOf(property).quantity,
      property,
    );
  }
  if (fit && kind !== 'value')
    for (const [name, measured] of Object.entries(fit.figures)) {
      const { settles, quantity } = MEASUREMENTS[kind].yields[name];
      const isSettled = isProperty(settles) && !fit.settlesNot?.includes(name);
      add(name, measured, quantity, isSettled ? settles : undefined);
    }
  return { measurement, figures, warnings: fit?.warnings ?? [] };
}

interface DialValues {
  readonly readings: readonly { readonly position: number; readonly frequency: number }[];
}

/** Dial readings go in one by one, so that strays, coil and capacitor share what they say; of all else the figures. */
function observationsOf(set: SetDescription, { measurement, figures }: MeasurementResult): Observation[] {
  const { kind, fit, values } = measurement;
  const coil = figures.find(({ property }) => property === 'coil.inductance')?.path;
  if (kind === 'dial' && fit && coil && hasEvenDial(set)) {
    const { readings } = values as unknown as DialValues;
    const left = new Set(fit.suspects?.map(({ index }) => index));
    const kept = readings.filter((_, i) => !left.has(i));
    const degrees = kept.length - 2;
    const standardError = Math.sqrt(
      (degrees * (fit.scatter ?? 0) ** 2 + POINTER.degrees * POINTER.deviation ** 2) / (degrees + POINTER.degrees),
    );
    return kept.map(({ position, frequency }) => ({ of: 'dial', coil, position, frequency, standardError }));
  }
  return figures.flatMap(({ property, path, measured }): Observation[] =>
    property && path && measured.value > 0 && Number.isFinite(measured.standardError) && measured.standardError > 0
      ? [{ of: 'figure', property, path, value: measured.value, standardError: measured.standardError }]
      : [],
  );
}

/** A measured value as a description keeps it, SI. */
export interface UsedValue {
  readonly path: Path;
  readonly property: PropertyId;
  readonly value: number;
  /** As the description has it: a share of the value, or an amount. */
  readonly error: number;
  readonly at?: number;
  readonly method: string;
  readonly date?: string;
}

/** A figure is taken into the description when readings have narrowed it to less than this share of what was known. */
const NARROWED = 0.8;

/**
 * What the readings put into the description: every figure that they narrow, by all of them together.
 * @param options results of the readings
 * @returns measured values with their standard errors
 */
export function usedValues({ results, joint }: ReadingsResult): readonly UsedValue[] {
  const dates = results.flatMap(({ measurement }) => measurement.date ?? []);
  const direct = (path: Path) =>
    results
      .filter(({ figures }) => figures.some((one) => one.path && samePath(one.path, path)))
      .map((r) => r.measurement);
  const all = [...new Set(results.map(({ measurement }) => measurement.kind))].join(', ');
  const about = (path: Path) => {
    const own = direct(path);
    const kinds = [...new Set(own.map(({ kind }) => kind))].join(', ');
    return { method: kinds === '' ? all : kinds, date: own.find(({ date }) => date)?.date ?? dates[0] };
  };
  const jointly = joint.figures.flatMap(({ property, path, at, before, after }): UsedValue[] => {
    const isNarrower = after.standardError / after.value < NARROWED * (before.standardError / before.value);
    if (!isNarrower) return [];
    const error = propertyOf(property).isAmount ? after.standardError : after.standardError / after.value;
    return [{ path, property, value: after.value, error, ...(at !== undefined && { at }), ...about(path) }];
  });
  // What has no calculated figure to be weighed against goes in as it was read.
  const rest = results.flatMap(({ figures }) =>
    figures.flatMap(({ property, path, measured }): UsedValue[] => {
      if (!property || !path || joint.figures.some((one) => samePath(one.path, path))) return [];
      const error = propertyOf(property).isAmount ? measured.standardError : measured.standardError / measured.value;
      return [{ path, property, value: measured.value, error, ...about(path) }];
    }),
  );
  return [...jointly, ...rest];
}

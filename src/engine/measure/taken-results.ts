import { setCircuit } from '../built/set-circuit.ts';
import { type Warning, warning } from '../facts/warning.ts';
import { type Path, samePath } from '../kinds/adjustment.ts';
import { isLoop } from '../kinds/loops.ts';
import type { StationReception } from '../reception/path/types.ts';
import type { MeasuredCorrelation } from '../set/correlations.ts';
import type { SetDescription } from '../set/description.ts';
import { stationNamed } from '../set/want-problems.ts';
import { withValueAt } from '../set/write.ts';
import { hasRanges } from '../uncertainty/ranged-reception.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';
import { type DifferenceCause, likelyCauses } from './causes.ts';
import { POINTER } from './dial-fit.ts';
import { type ExplainingSize, explainingSizes } from './explaining-sizes.ts';
import { asKnown, type Fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { type Joint, jointFigures, type Observation } from './joint.ts';
import {
  type Agreement,
  agreementBetween,
  calculatedCoupling,
  calculatedFigure,
  type MeasurableFigure,
  measurableFigures,
  ranged,
  withoutMeasured,
} from './measurable.ts';
import { MEASUREMENTS } from './measurements.ts';
import { type PropertyId, propertyOf } from './properties.ts';
import { isProperty, type TakenMeasurement } from './readings.ts';
import { tunedCoil } from './tuned-coil.ts';

/** A figure that a measurement gives, beside the calculated one. */
export interface FigureResult {
  /** As its kind calls it. */
  readonly name: string;
  readonly measured: Fitted;
  /** Hz, of a Q: where it was measured, and where the calculated one beside it is for. */
  readonly at?: number;
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
function partOf(
  set: SetDescription,
  property: PropertyId,
  { kind, coil, station }: TakenMeasurement,
): Path | undefined {
  const [part] = property.split('.');
  if (part === 'coil') {
    if (isLoop(set.aerial)) return coil === undefined ? ['aerial'] : undefined;
    // A dial is of the coil that the capacitor tunes.
    const own = kind === 'dial' ? tunedCoil(set) : 0;
    const index = coil === undefined ? own : set.coils.findIndex(({ name }) => name === coil);
    return index >= 0 && index < set.coils.length ? ['coils', index] : undefined;
  }
  const { arrangement } = set;
  if (part === 'arrangement')
    return arrangement.kind === 'coupled' || arrangement.kind === 'two circuits' ? [part] : undefined;
  if (part !== 'station') return [part];
  const index = station === undefined ? undefined : stationNamed(set.place.stations, station);
  return index === undefined ? undefined : ['place', 'stations', index];
}

const keyOf = (property: PropertyId): string => property.split('.')[1];

/**
 * What readings say of a set: every figure with its error beside the calculated one, and all of them together.
 * @param set as read
 * @param measurements as read
 * @param stations as predicted for the set without what was measured of their fields; those with ranges are set beside
 *   readings of their field and loudness
 * @returns results in the order of the file, and the set's figures by all readings at once
 */
export function resultsOf(
  set: SetDescription,
  measurements: readonly TakenMeasurement[],
  stations: readonly StationReception[] = [],
): ReadingsResult {
  const bare = withoutMeasured(set);
  const known = measurableFigures(bare);
  const results = measurements.map((measurement) => resultOf(bare, known, stations, measurement));
  return {
    results,
    joint: jointFigures(
      set,
      results.flatMap((result) => observationsOf(known, result)),
    ),
  };
}

function resultOf(
  set: SetDescription,
  known: readonly MeasurableFigure[],
  stations: readonly StationReception[],
  measurement: TakenMeasurement,
): MeasurementResult {
  const { fit, figure, kind } = measurement;
  const figures: FigureResult[] = [];
  const beside = besides(set, stations, measurement);
  const warnings = [...(fit?.warnings ?? []), ...beside.warnings];
  const add = (name: string, measured: Fitted, quantity: QuantityKind | undefined, property?: PropertyId): void => {
    const part = property && partOf(set, property, measurement);
    const path = property && part && [...part, 'measured', keyOf(property)];
    const at = isQ(name) ? frequencyOfQ(measurement) : undefined;
    const calculated = (path && calculatedAt(set, known, path, at)) ?? beside.figures[name];
    const isAmount = property ? propertyOf(property).isAmount : quantity === 'level';
    const agreement = calculated && agreementBetween({ isAmount, quantity }, calculated, measured);
    figures.push({
      name,
      measured,
      ...(at !== undefined && { at }),
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
      if (isSettled && settles === 'tuning.stray') {
        add('acrossCapacitor', measured, quantity);
        add(name, withoutOthers(set, known, measured, partOf(set, 'coil.inductance', measurement)), quantity, settles);
      } else add(name, measured, quantity, isSettled ? settles : undefined);
    }
  const M = fit?.figures.mutualInductance;
  // With the coils not measured alone, their calculated inductances serve.
  if (M && beside.coils && !fit.figures.couplingCoefficient && M.range[0] > 0)
    add('couplingCoefficient', couplingBy(M, beside.coils), undefined, 'arrangement.coupling');
  return { measurement, figures, warnings };
}

const isQ = (name: string): boolean => name === 'q' || name === 'loadedQ' || name === 'dissipation';

/** Where a measured Q is for, Hz. */
function frequencyOfQ({ fit, values }: TakenMeasurement): number | undefined {
  if (!fit) return undefined;
  const { resonance, frequency } = fit.figures;
  const stated = values.frequency as number | undefined;
  return stated ?? fit.at ?? resonance?.value ?? frequency?.value;
}

/** The calculated figure, at the frequency where it was measured. */
function calculatedAt(
  set: SetDescription,
  known: readonly MeasurableFigure[],
  path: Path,
  at: number | undefined,
): Fitted | undefined {
  const usual = known.find((one) => samePath(one.path, path));
  if (!usual || at === undefined || usual.at === undefined) return usual?.calculated;
  return calculatedFigure(set, path, withValueAt(set, path, { value: usual.calculated.value, at }))?.calculated;
}

/** What figures of a measurement are set beside that no place of the description has, and why others are not. */
interface Besides {
  readonly figures: Readonly<Record<string, Fitted | undefined>>;
  /** Of two coils, their inductances. */
  readonly coils?: readonly [Fitted, Fitted];
  readonly warnings: readonly Warning[];
}

function besides(
  set: SetDescription,
  stations: readonly StationReception[],
  { kind, station: name }: TakenMeasurement,
): Besides {
  if (kind === 'mutual-inductance' || kind === 'double-hump') {
    const found = calculatedCoupling(setCircuit(set));
    return found
      ? { figures: { mutualInductance: found.mutualInductance }, coils: found.inductances, warnings: [] }
      : { figures: {}, warnings: [warning('measure.no-coupled-coils')] };
  }
  if (kind !== 'audibility' && kind !== 'field-strength') return { figures: {}, warnings: [] };
  const index = name === undefined ? undefined : stationNamed(set.place.stations, name);
  const station = stations.find((one) => one.index === index);
  const ranges = station && hasRanges(station) ? station.ranges : undefined;
  const of = (key: 'margin' | 'fieldStrength', isAmount: boolean): Fitted | undefined =>
    ranges?.[key] && station?.[key] !== undefined ? ranged(station[key], ranges[key], isAmount) : undefined;
  const figures = { levelAboveThreshold: of('margin', true), fieldStrength: of('fieldStrength', false) };
  const isBeside = kind === 'audibility' ? figures.levelAboveThreshold : figures.fieldStrength;
  return {
    figures,
    warnings: [
      ...(isBeside ? [] : [warning('measure.no-prediction', name === undefined ? {} : { station: name })]),
      ...(kind === 'audibility' ? [warning('measure.loudness-shared')] : []),
    ],
  };
}

/** k = M/√(L1·L2), the errors of all three in it. */
function couplingBy(M: Fitted, [a, b]: readonly [Fitted, Fitted]): Fitted {
  const share = ({ value, standardError }: Fitted): number => standardError / value;
  return fittedLogarithm(
    Math.log(M.value / Math.sqrt(a.value * b.value)),
    Math.hypot(share(M), share(a) / 2, share(b) / 2),
    reachOf(),
  );
}

/** Strays of a dial without what else is across the capacitor: its trimmer, and the coil's own capacitance as calculated. */
function withoutOthers(
  { tuning }: SetDescription,
  known: readonly MeasurableFigure[],
  { value, standardError, range: [low, high] }: Fitted,
  coil: Path | undefined,
): Fitted {
  const path = coil && [...coil, 'measured', 'selfCapacitance'];
  const own = path && known.find((one) => samePath(one.path, path))?.calculated;
  const less = tuning.trimmer + (own?.value ?? 0);
  const all = Math.hypot(standardError, own?.standardError ?? 0);
  const wider = standardError > 0 ? all / standardError : 1;
  return {
    value: value - less,
    standardError: all,
    range: [value - less - wider * (value - low), value - less + wider * (high - value)],
  };
}

interface DialValues {
  readonly readings: readonly { readonly position: number; readonly frequency: number }[];
}

/** Dial readings go in one by one, so that strays, coil and capacitor share what they say; of all else the figures. */
function observationsOf(
  known: readonly MeasurableFigure[],
  { measurement, figures }: MeasurementResult,
): Observation[] {
  const { kind, fit, values } = measurement;
  const coil = figures.find(({ property }) => property === 'coil.inductance')?.path;
  if (kind === 'dial' && fit?.dial?.isOfSet && coil) {
    const { readings } = values as unknown as DialValues;
    const left = new Set(fit.suspects?.map(({ index }) => index));
    const kept = readings.filter((_, i) => !left.has(i));
    const degrees = kept.length - 2;
    const whole = degrees + POINTER.degrees;
    // A scatter that few readings show is not sure itself: their range is Student's.
    const standardError =
      (reachOf(whole) / reachOf()) *
      Math.sqrt((degrees * (fit.scatter ?? 0) ** 2 + POINTER.degrees * POINTER.deviation ** 2) / whole);
    return kept.map(({ position, frequency }) => ({ of: 'dial', coil, position, frequency, standardError }));
  }
  const seen = figures.flatMap(({ name, property, path, measured, at, calculated }) => {
    if (!property || !path || !(measured.value > 0)) return [];
    if (!(Number.isFinite(measured.standardError) && measured.standardError > 0)) return [];
    // A Q is weighed where the calculated one is for: it runs with frequency as calculated.
    const usual = known.find((one) => samePath(one.path, path))?.calculated;
    const moved = at !== undefined && usual && calculated ? usual.value / calculated.value : 1;
    return [{ name, property, path, value: moved * measured.value, standardError: moved * asKnown(measured) }];
  });
  const between = (a: string, b: string): number =>
    fit?.correlations?.find(({ between: [c, d] }) => (a === c && b === d) || (a === d && b === c))?.correlation ?? 0;
  const correlations = Float64Array.from({ length: seen.length ** 2 }, (_, k) => {
    const [i, j] = [Math.floor(k / seen.length), k % seen.length];
    return i === j ? 1 : between(seen[i].name, seen[j].name);
  });
  return seen.length > 0 ? [{ of: 'figures', figures: seen, correlations }] : [];
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

/** Less is drawn as if each were by itself. */
export const LEAST_CORRELATION = 0.02;

/**
 * How the errors of the values that readings put into the description go together.
 * @param options results of the readings
 * @param used values that they put in
 * @returns one for each two that do
 */
export function usedCorrelations(
  { joint }: ReadingsResult,
  used: readonly UsedValue[],
): readonly MeasuredCorrelation[] {
  const n = joint.figures.length;
  const at = used.flatMap(({ path }) => {
    const i = joint.figures.findIndex((one) => samePath(one.path, path));
    return i < 0 ? [] : [{ path, i }];
  });
  return at.flatMap((first, k) =>
    at.slice(k + 1).flatMap((second): MeasuredCorrelation[] => {
      const correlation = joint.correlations[first.i * n + second.i];
      return Math.abs(correlation) >= LEAST_CORRELATION
        ? [{ first: first.path, second: second.path, correlation }]
        : [];
    }),
  );
}

/** A figure is taken into the description when readings have narrowed it to less than this share of what was known. */
const NARROWED = 0.8;
/** And one whose error goes together with that of such a figure: without it, what they are together would be lost. */
const TIED = 0.3;

/** The earth, and aerial and earth together. */
const OF_EARTH: ReadonlySet<PropertyId> = new Set(['earth.resistance', 'aerial.resistance']);

/**
 * What the readings put into the description: every figure that they narrow, or tie to such a one, by all of them together.
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
  const n = joint.figures.length;
  const isNarrower = joint.figures.map(
    ({ before, after }) => after.standardError / after.value < NARROWED * (before.standardError / before.value),
  );
  const isTied = (i: number): boolean =>
    isNarrower.some((is, j) => is && j !== i && Math.abs(joint.correlations[i * n + j]) >= TIED);
  const jointly = joint.figures.flatMap(({ property, path, at, before, after }, i): UsedValue[] => {
    if (!isNarrower[i] && !isTied(i)) return [];
    // Each follows from the other in the circuit as well: only what was read itself goes in.
    if (OF_EARTH.has(property) && direct(path).length === 0) return [];
    const error = propertyOf(property).isAmount ? after.standardError : after.standardError / after.value;
    // Read once, it goes in for the frequency at which it was read.
    const read = results.flatMap(({ figures }) => figures.filter((one) => one.path && samePath(one.path, path)));
    const { at: own, calculated } = read.length === 1 ? read[0] : {};
    const [value, where] =
      own !== undefined && calculated ? [(after.value * calculated.value) / before.value, own] : [after.value, at];
    return [{ path, property, value, error, ...(where !== undefined && { at: where }), ...about(path) }];
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

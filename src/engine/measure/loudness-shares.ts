import { type Path, samePath } from '../kinds/adjustment.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import type { StationReception } from '../reception/path/types.ts';
import type { MeasuredCorrelation } from '../set/correlations.ts';
import type { SetDescription } from '../set/description.ts';
import { stationNamed } from '../set/want-problems.ts';
import type { Measurable } from '../uncertainty/input.ts';
import { hasRanges, type RangedStation } from '../uncertainty/ranged-reception.ts';
import { NINETY } from '../uncertainty/spread.ts';
import { decibels, fromDecibels } from '../units/quantities.ts';
import { asKnown } from './fitted.ts';
import { measurableFigures, withoutMeasured } from './measurable.ts';
import type { PropertyId } from './properties.ts';
import type { TakenMeasurement } from './readings.ts';
import { LEAST_CORRELATION } from './taken-results.ts';

/** A figure that readings of loudness have a share in, as a description keeps it; SI. */
export interface LoudnessShare {
  readonly path: Path;
  readonly property: PropertyId;
  readonly value: number;
  /** Standard error: of the sensitivity in dB, of a field a share of it. */
  readonly error: number;
  /** Kinds of the readings that it follows from. */
  readonly kinds: readonly TakenMeasurement['kind'][];
}

/** All that readings of loudness have a share in. */
export interface LoudnessShares {
  readonly shares: readonly LoudnessShare[];
  /** Of their errors: the sum of field and phones is known better than either. */
  readonly correlations: readonly MeasuredCorrelation[];
}

const NOTHING: LoudnessShares = { shares: [], correlations: [] };

/** Where the sensitivity of phones stands. */
const SENSITIVITY: Path = ['load', 'measured', 'sensitivity'];
const fieldOf = (station: number): Path => ['place', 'stations', station, 'measured', 'fieldStrength'];
const NEPER = decibels(Math.E);

const indexOf = ({ place }: SetDescription, { station }: TakenMeasurement): number | undefined =>
  station === undefined ? undefined : stationNamed(place.stations, station);

const isLoudness = ({ kind }: TakenMeasurement): boolean => kind === 'audibility';

/** Half of what one thing makes of the level's 90 % range, as one standard deviation, dB. */
function deviationBy({ budget }: RangedStation, what: Measurable): number {
  const effect = budget.find((one) => one.what === what)?.effect;
  return effect ? (effect[1] - effect[0]) / (2 * NINETY) : 0;
}

const deviationIn = ([low, high]: readonly [number, number]): number => (high - low) / (2 * NINETY);

/** A reading of loudness beside its prediction. */
interface Heard {
  readonly station: RangedStation;
  /** Measured less predicted, dB, and the standard error of the reading. */
  readonly above: number;
  readonly error: number;
}

function heardOf(
  set: SetDescription,
  stations: readonly StationReception[],
  measurement: TakenMeasurement,
): Heard | undefined {
  const index = indexOf(set, measurement);
  const station = stations.find((one) => one.index === index);
  const level = measurement.fit?.figures.levelAboveThreshold;
  if (!level || !station || !hasRanges(station) || station.margin === undefined) return undefined;
  if (!station.ranges.margin || !station.ranges.fieldStrength) return undefined;
  return { station, above: level.value - station.margin, error: deviationIn(level.range) };
}

/**
 * What of a set readings of loudness say something of: the sensitivity of its phones, and the field of each such station.
 * @param set as read
 * @param measurements all that there are of it
 * @returns paths, and the kinds of readings that each follows from
 */
export function placesOfLoudness(
  set: SetDescription,
  measurements: readonly TakenMeasurement[],
): readonly Pick<LoudnessShare, 'path' | 'property' | 'kinds'>[] {
  const loud = measurements.filter((one) => isLoudness(one) && indexOf(set, one) !== undefined);
  if (loud.length === 0) return [];
  const kindsOf = (isOf: (one: TakenMeasurement) => boolean) => [
    ...new Set(measurements.filter(isOf).map((m) => m.kind)),
  ];
  const stations = [...new Set(loud.map((one) => indexOf(set, one)!))];
  return [
    ...(set.load.kind === 'amplifier'
      ? []
      : [
          {
            path: SENSITIVITY,
            property: 'load.sensitivity' as const,
            kinds: kindsOf((one) => isLoudness(one) || one.figure?.property === 'load.sensitivity'),
          },
        ]),
    ...stations.map((station) => ({
      path: fieldOf(station),
      property: 'station.fieldStrength' as const,
      kinds: kindsOf((one) => indexOf(set, one) === station && (isLoudness(one) || fieldIn(one) !== undefined)),
    })),
  ];
}

/** The field that a reading says by itself, V/m, and its standard error as a share. */
function fieldIn({ figure, fit }: TakenMeasurement): { readonly value: number; readonly error: number } | undefined {
  if (figure?.property === 'station.fieldStrength')
    return { value: figure.value, error: figure.standardError / figure.value };
  const field = fit?.figures.fieldStrength;
  return field && { value: field.value, error: asKnown(field) / field.value };
}

/** Sensitivity of the phones before any reading: as somebody stated or measured it, or as such phones have it; dB. */
function sensitivityOf(set: SetDescription): number | undefined {
  const { load } = set;
  const own = load.kind === 'amplifier' ? undefined : load.measured?.sensitivity;
  if (own && !own.method?.includes('audibility' satisfies TakenMeasurement['kind'])) return own.value;
  return measurableFigures(withoutMeasured(set)).find(({ path }) => samePath(path, SENSITIVITY))?.calculated.value;
}

/**
 * What readings of loudness say of the field of their stations and of the phones, together: each takes the share of the
 * difference that its own doubt has in the predicted level, and what has no place of its own (hearing, detector, aerial)
 * keeps the rest. Linear in dB, prior knowledge as the predictions have it; readings of the field or the sensitivity by
 * themselves count with their own errors.
 * @param set as read
 * @param measurements all that there are of it
 * @param stations as predicted with all other readings in the description, without what was measured of their fields
 * @returns nothing for stations that nothing is predicted of
 */
export function loudnessShares(
  set: SetDescription,
  measurements: readonly TakenMeasurement[],
  stations: readonly StationReception[],
): LoudnessShares {
  const places = placesOfLoudness(set, measurements);
  const heard = measurements.filter(isLoudness).flatMap((one) => heardOf(set, stations, one) ?? []);
  const sensitivity = sensitivityOf(set);
  if (heard.length === 0) return NOTHING;
  // Unknowns, dB: phones, what else is common to all stations (in its own deviations), then the field of each station.
  const of = [...new Set(heard.map(({ station }) => station))];
  const n = 2 + of.length;
  const rows: number[] = [];
  const target: number[] = [];
  const row = (shares: Readonly<Record<number, number>>, value: number, error: number): void => {
    for (let j = 0; j < n; j++) rows.push((shares[j] ?? 0) / error);
    target.push(value / error);
  };
  const hasPhones = sensitivity !== undefined && places.some(({ path }) => samePath(path, SENSITIVITY));
  const phones = hasPhones ? Math.max(...of.map((one) => deviationBy(one, 'phones'))) : 0;
  row({ 0: 1 }, 0, Math.max(LEAST, phones));
  row({ 1: 1 }, 0, 1);
  of.forEach((station, i) => {
    row({ [2 + i]: 1 }, 0, Math.max(LEAST, fieldDeviation(station)));
  });
  for (const { station, above, error } of heard) {
    const byField = deviationBy(station, 'field strength');
    const modulation = deviationBy(station, 'modulation');
    const whole = deviationIn(station.ranges.margin!);
    const rest = Math.sqrt(Math.max(0, whole ** 2 - byField ** 2 - phones ** 2 - modulation ** 2));
    const field = Math.max(LEAST, fieldDeviation(station));
    row({ 0: 1, 1: rest, [2 + of.indexOf(station)]: byField / field }, above, Math.hypot(error, modulation));
  }
  for (const one of measurements) {
    if (hasPhones && one.figure?.property === 'load.sensitivity')
      row({ 0: 1 }, one.figure.value - sensitivity, one.figure.standardError);
    const field = fieldIn(one);
    const i = of.findIndex(({ index }) => index === indexOf(set, one));
    if (field && i >= 0) row({ [2 + i]: 1 }, decibels(field.value / of[i].fieldStrength), NEPER * field.error);
  }
  const { x, gram } = linearLeastSquares(rows, target, n);
  const error = (j: number): number => Math.sqrt(gram[j * n + j]);
  const found = places.flatMap((place): { readonly unknown: number; readonly share: LoudnessShare }[] => {
    if (place.property === 'load.sensitivity')
      return phones > 0 && hasPhones
        ? [{ unknown: 0, share: { ...place, value: sensitivity + x[0], error: error(0) } }]
        : [];
    const i = of.findIndex(({ index }) => samePath(fieldOf(index), place.path));
    if (i < 0) return [];
    const value = of[i].fieldStrength * fromDecibels(x[2 + i]);
    return [{ unknown: 2 + i, share: { ...place, value, error: error(2 + i) / NEPER } }];
  });
  return {
    shares: found.map(({ share }) => share),
    correlations: found.flatMap((first, k) =>
      found.slice(k + 1).flatMap((second): MeasuredCorrelation[] => {
        const covariance = gram[first.unknown * n + second.unknown];
        const correlation = covariance / (error(first.unknown) * error(second.unknown));
        return Math.abs(correlation) >= LEAST_CORRELATION
          ? [{ first: first.share.path, second: second.share.path, correlation }]
          : [];
      }),
    ),
  };
}

/** Standard deviation of what is certain, dB. */
const LEAST = 1e-3;

const fieldDeviation = ({ ranges }: RangedStation): number => {
  const [low, high] = ranges.fieldStrength!;
  return decibels(high / low) / (2 * NINETY);
};

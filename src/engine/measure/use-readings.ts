import { isRecord } from '../fields/introspect.ts';
import { type Path, samePath } from '../kinds/adjustment.ts';
import type { StationReception } from '../reception/path/types.ts';
import { readCorrelations, writtenCorrelations } from '../set/correlations.ts';
import type { SetDescription, WrittenDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { stationNamed } from '../set/want-problems.ts';
import { valueAtPath, withValueAt } from '../set/write.ts';
import { formatQuantity } from '../units/format.ts';
import { loudnessShares, placesOfLoudness } from './loudness-shares.ts';
import { propertyOf } from './properties.ts';
import { type ReadingsProblem, readMeasurements, type TakenMeasurement } from './readings.ts';
import { type ReadingsResult, resultsOf, type UsedValue, usedCorrelations, usedValues } from './taken-results.ts';

/** A description with readings in it, and what they say. */
export interface WithReadings {
  readonly ok: true;
  readonly written: WrittenDescription;
  readonly result: ReadingsResult;
  /** The measured values that were put in. */
  readonly used: readonly UsedValue[];
}

type Correlation = NonNullable<WrittenDescription['correlations']>[number];

/** Properties whose measured value says at which frequency. */
const TAKES_FREQUENCY: ReadonlySet<string> = new Set([
  'coil.inductance',
  'coil.q',
  'aerial.resistance',
  'aerial.effectiveHeight',
]);

/** A measured value as people write it. */
function writtenValue({ property, value, error, at, method, date }: UsedValue): object {
  const { quantity, isAmount } = propertyOf(property);
  return {
    value: quantity ? formatQuantity(value, quantity, 5) : Number(value.toPrecision(5)),
    error: formatQuantity(error, isAmount && quantity ? quantity : 'ratio', 3),
    ...(at !== undefined && TAKES_FREQUENCY.has(property) ? { at: formatQuantity(at, 'frequency', 5) } : {}),
    method,
    ...(date === undefined ? {} : { date }),
  };
}

/**
 * A description without one measured value: the calculated one counts again.
 * @param written the description as written
 * @param path where the measured value stands
 * @returns a copy; a list of measured values that is empty then goes too
 */
export function withoutMeasuredValue(written: unknown, path: Path): unknown {
  const bare = withValueAt(written, path, undefined);
  const part = path.slice(0, -1);
  const rest = valueAtPath(bare, part);
  return isRecord(rest) && Object.keys(rest).length === 0 ? withValueAt(bare, part, undefined) : bare;
}

/** Which of the readings are not among those before; the same reading once more is new. */
function areNew(readings: readonly unknown[], before: readonly unknown[]): readonly boolean[] {
  const left = before.map((one) => JSON.stringify(one));
  return readings.map((one) => {
    const place = left.indexOf(JSON.stringify(one));
    if (place >= 0) left.splice(place, 1);
    return place < 0;
  });
}

/** Measured values that readings put in go with them: those that still say the method of the readings. */
function withoutUsed(written: WrittenDescription, used: readonly UsedValue[]): WrittenDescription {
  return used.reduce((base, { path, method }) => {
    const there = valueAtPath(base, path);
    return isRecord(there) && there.method === method ? (withoutMeasuredValue(base, path) as WrittenDescription) : base;
  }, written);
}

/**
 * What a person wrote of how errors go together: all but what readings say, or said, of the same two figures. It goes with
 * a figure that is no longer there, and with one that readings have just put in place of a person's own.
 */
function othersTogether(
  written: WrittenDescription,
  used: readonly UsedValue[],
  usedBefore: readonly UsedValue[],
): readonly Correlation[] {
  const all = written.correlations ?? [];
  const places = readCorrelations(all);
  const isAmong = (values: readonly UsedValue[], path: Path): boolean => values.some((one) => samePath(one.path, path));
  return all.filter((_, i) => {
    const pair = [places[i].first, places[i].second];
    const isOfReadings = pair.every((path) => isAmong(used, path) || isAmong(usedBefore, path));
    return (
      !isOfReadings &&
      pair.every(
        (path) => valueAtPath(written, path) !== undefined && (isAmong(usedBefore, path) || !isAmong(used, path)),
      )
    );
  });
}

/** What readings put in: what they narrow by themselves, and what those of loudness share with them and how that goes together. */
function allUsed(
  set: SetDescription,
  measurements: readonly TakenMeasurement[],
  result: ReadingsResult,
  stations: readonly StationReception[],
) {
  const loudness = loudnessShares(set, measurements, stations);
  const shares = loudness.shares.map(
    ({ kinds, ...share }): UsedValue => ({ ...share, ...howRead(measurements, kinds) }),
  );
  return {
    values: [...usedValues(result).filter(({ path }) => !shares.some((one) => samePath(one.path, path))), ...shares],
    correlations: loudness.correlations,
  };
}

const howRead = (measurements: readonly TakenMeasurement[], kinds: readonly TakenMeasurement['kind'][]) => ({
  method: kinds.join(', '),
  date: measurements.find(({ kind, date }) => date !== undefined && kinds.includes(kind))?.date,
});

/** What readings put in when they were used: of those of loudness the places, since what was predicted then is not kept. */
const usedFormerly = (set: SetDescription, measurements: readonly TakenMeasurement[]): readonly UsedValue[] => [
  ...usedValues(resultsOf(set, measurements)),
  ...placesOfLoudness(set, measurements).map(
    ({ kinds, ...place }): UsedValue => ({
      ...place,
      value: Number.NaN,
      error: Number.NaN,
      ...howRead(measurements, kinds),
    }),
  ),
];

/** Stations that readings of field and loudness are of, by their place in the list. */
function stationsRead(set: SetDescription, readings: readonly unknown[]): readonly number[] {
  const indices = readings.flatMap((one) => {
    if (!isRecord(one) || typeof one.station !== 'string') return [];
    return one.kind === 'audibility' || one.kind === 'field-strength'
      ? (stationNamed(set.place.stations, one.station) ?? [])
      : [];
  });
  return [...new Set(indices)];
}

/**
 * What is predicted of the stations that readings of field and loudness are of: by the set with all other readings in, and
 * without what was measured of any field or, by loudness, of the phones.
 * @param set as read from the description
 * @param written the description as written
 * @param readings all that it is to keep, as written
 * @param predict receives these stations of a set, by their place in the list, with ranges
 * @returns as `withReadings` takes them; nothing where no reading is of a station
 */
export function predictedForReadings(
  set: SetDescription,
  written: WrittenDescription,
  readings: readonly unknown[],
  predict: (set: SetDescription, stations: readonly number[]) => readonly StationReception[],
): readonly StationReception[] {
  const indices = stationsRead(set, readings);
  if (indices.length === 0) return [];
  const others = withReadings(
    set,
    written,
    readings.filter((one) => !(isRecord(one) && one.kind === 'audibility')),
  );
  const base = indices.reduce(
    (description: unknown, i) =>
      withoutMeasuredValue(description, ['place', 'stations', i, 'measured', 'fieldStrength']),
    others.ok ? others.written : written,
  );
  const read = readValue(base);
  return read.ok ? predict(read.set, indices) : [];
}

/**
 * A description that keeps these readings, with the measured values that they give all together. What readings it kept
 * before put in and these do not is taken out, so that a reading left out leaves no trace. A measured value that was
 * taken out of the description stays out until a new reading gives it, or the same readings are put in again.
 * @param set as read from the description
 * @param written the description as written
 * @param readings all that it is to keep, as written; an empty list takes all of them out
 * @param stations as `predictedForReadings` gives them; without them readings of loudness change nothing
 * @returns the description, or every problem of the readings
 */
export function withReadings(
  set: SetDescription,
  written: WrittenDescription,
  readings: readonly unknown[],
  stations: readonly StationReception[] = [],
): WithReadings | { readonly ok: false; readonly problems: readonly ReadingsProblem[] } {
  const now = readMeasurements(readings, set);
  if (!now.ok) return now;
  const former = written.readings ?? [];
  const before = readMeasurements(former, set);
  const usedBefore = before.ok ? usedFormerly(set, before.measurements) : [];
  const result = resultsOf(set, now.measurements, stations);
  const isNew = areNew(readings, former);
  const areTheSame = readings.length === former.length && !isNew.includes(true);
  const given = [
    ...result.results.flatMap(({ figures }, i) =>
      isNew[i] ? figures.flatMap(({ path }) => (path ? [path] : [])) : [],
    ),
    ...placesOfLoudness(
      set,
      now.measurements.filter((_, i) => isNew[i]),
    ).map(({ path }) => path),
  ];
  const isTakenOut = ({ path }: UsedValue): boolean =>
    !areTheSame &&
    valueAtPath(written, path) === undefined &&
    usedBefore.some((one) => samePath(one.path, path)) &&
    !given.some((one) => samePath(one, path));
  const all = allUsed(set, now.measurements, result, stations);
  const used = all.values.filter((one) => !isTakenOut(one));
  const isUsed = (path: Path): boolean => used.some((one) => samePath(one.path, path));
  const gone = usedBefore.filter(({ path }) => !isUsed(path));
  const base = used.reduce(
    (base, one) => withValueAt(base, one.path, writtenValue(one)) as WrittenDescription,
    withoutUsed(written, gone),
  );
  const correlations = [
    ...othersTogether(base, used, usedBefore),
    ...writtenCorrelations([
      ...usedCorrelations(result, used),
      ...all.correlations.filter(({ first, second }) => isUsed(first) && isUsed(second)),
    ]),
  ];
  const withList = withValueAt(base, ['readings'], readings.length > 0 ? readings : undefined);
  return {
    ok: true,
    written: withValueAt(
      withList,
      ['correlations'],
      correlations.length > 0 ? correlations : undefined,
    ) as WrittenDescription,
    result,
    used,
  };
}

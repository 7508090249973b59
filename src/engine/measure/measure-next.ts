import { type Path, samePath } from '../kinds/adjustment.ts';
import { correlationBetween, readCorrelations } from '../set/correlations.ts';
import type { SetDescription } from '../set/description.ts';
import type { BudgetItem } from '../uncertainty/budget.ts';
import type { Measurable } from '../uncertainty/input.ts';
import { NINETY } from '../uncertainty/spread.ts';
import { type Joint, jointFigures, type Observation } from './joint.ts';
import { varianceOf } from './known-errors.ts';
import { measurableFigures } from './measurable.ts';
import type { Equipment } from './measurement.ts';
import { capacitorOf, positionOn } from './scale-of-capacitor.ts';
import { tunedWinding } from './tuned-coil.ts';

/** A measurement by what it takes, not by how it is worked out. */
export type Method =
  | 'dial'
  | 'earth-electrodes'
  | 'width'
  | 'detector'
  | 'audibility'
  | 'aerial-substitution'
  | 'field-strength'
  | 'effective-height'
  | 'mutual-inductance';

/** By how much a measurement narrows an answer. */
export interface Narrowing {
  /** What it narrows: the level of the station at the ear (dB), or where it is found on the dial (share of the scale). */
  readonly narrows: 'level' | 'dial';
  /** Width of the 90 % range now, and expected after it. */
  readonly before: number;
  readonly after: number;
}

/** A measurement worth making next. */
export interface NextMeasurement extends Narrowing {
  readonly method: Method;
  readonly equipment: readonly Equipment[];
}

interface Way {
  readonly method: Method;
  readonly equipment: readonly Equipment[];
  /** Error left, as a share of what was not known. */
  readonly left: number;
}

/** How each thing that makes the range of the level is measured. */
const WAYS: Readonly<Partial<Record<Measurable, Way>>> = {
  'field strength': {
    method: 'field-strength',
    equipment: ['set', 'voltmeter', 'signal generator', 'dummy aerial'],
    left: 0.3,
  },
  'effective height': {
    method: 'effective-height',
    equipment: ['set', 'voltmeter', 'signal generator', 'dummy aerial'],
    left: 0.4,
  },
  aerial: { method: 'aerial-substitution', equipment: ['set', 'ears', 'known capacitors'], left: 0.3 },
  earth: { method: 'earth-electrodes', equipment: ['ohmmeter', 'auxiliary earths'], left: 0.15 },
  coil: { method: 'width', equipment: ['signal generator', 'voltmeter'], left: 0.25 },
  detector: {
    method: 'detector',
    equipment: ['battery', 'voltmeter', 'ammeter', 'known resistors'],
    left: 0.2,
  },
  coupling: { method: 'mutual-inductance', equipment: ['inductance meter'], left: 0.4 },
  phones: { method: 'audibility', equipment: ['ears', 'known resistors'], left: 0.3 },
};

/** What equipment asks, beside the set and ears. Common practice, no source. */
const COST: Readonly<Partial<Record<Equipment, number>>> = {
  set: 0,
  ears: 0,
  station: 0,
  battery: 0.3,
  'known resistors': 0.3,
  'known capacitors': 0.5,
  'dummy aerial': 0.3,
  ohmmeter: 1,
  voltmeter: 1,
  ammeter: 1,
  'auxiliary earths': 1,
};
const OTHER_COST = 3;
/** Everybody's time. */
const TIME = 1;
const costOf = (equipment: readonly Equipment[]): number =>
  TIME + equipment.reduce((sum, one) => sum + (COST[one] ?? OTHER_COST), 0);

/** Less than this share of the range gained is not worth a measurement. */
const LEAST = 0.03;

/** The station whose answer is to be narrowed: as a ranged reception has it, or its frequency (Hz) for the dial alone. */
export interface WantedStation {
  readonly frequency: number;
  /** 90 %, dB. */
  readonly ranges?: { readonly soundPressureLevel?: readonly [number, number] };
  readonly budget?: readonly BudgetItem[];
}

/**
 * The measurements that would narrow the answer most for the least equipment.
 * @param set as read
 * @param station with the 90 % range of its level at the ear and what makes it; without them the dial alone
 * @returns best first, each with the width of the range now and expected
 */
export function nextMeasurements(set: SetDescription, station: WantedStation): readonly NextMeasurement[] {
  const found = [
    ...levelMeasurements(station).filter(({ method }) => method !== 'audibility' || !isShunted(set)),
    ...dialMeasurement(set, station.frequency),
  ];
  const worth = ({ before, after, equipment }: NextMeasurement): number => (1 - after / before) / costOf(equipment);
  return found
    .filter(({ before, after }) => before > 0 && 1 - after / before >= LEAST)
    .sort((a, b) => worth(b) - worth(a));
}

/**
 * Whether phones were shunted before: what that leaves is not told apart by doing it again.
 * @param set as read
 * @returns true where the sensitivity of its phones is by audibility
 */
export const isShunted = ({ load }: SetDescription): boolean =>
  load.kind !== 'amplifier' && load.measured?.sensitivity?.method?.includes('audibility') === true;

/**
 * How much narrower the level at the ear becomes once one thing is measured.
 * @param station with its range and what makes it
 * @param what is measured
 * @returns undefined where that makes none of the range
 */
export function levelNarrowing({ ranges, budget = [] }: WantedStation, what: Measurable): Narrowing | undefined {
  const range = ranges?.soundPressureLevel;
  const way = WAYS[what];
  const gain = budget.find((one) => one.what === what)?.gain ?? 0;
  if (!range || !way || !(gain > 0)) return undefined;
  const before = range[1] - range[0];
  // Of what it makes of the range, the share that the measurement's own error leaves; squares add.
  const without = Math.max(0, before - gain);
  const after = Math.sqrt(without ** 2 + way.left ** 2 * (before ** 2 - without ** 2));
  return { narrows: 'level', before, after };
}

function levelMeasurements(station: WantedStation): NextMeasurement[] {
  return (station.budget ?? []).flatMap(({ what }): NextMeasurement[] => {
    const narrowing = levelNarrowing(station, what);
    const way = WAYS[what];
    return narrowing && way ? [{ method: way.method, equipment: way.equipment, ...narrowing }] : [];
  });
}

/** What of a set makes its dial; H and F. */
interface DialFigures {
  readonly L: number;
  /** The coil's own capacitance. */
  readonly own: number;
  readonly stray: number;
  readonly minimum: number;
  readonly maximum: number;
}

/** A pointer with a hair line, by hand. */
const HAIR_LINE = 0.006;

/** How sure the place of a station on the dial is, and what readings would make of it. */
export interface DialDoubt {
  /** Two stations near the ends of the dial say where all others are. */
  readonly ends: readonly Observation[];
  /** @returns the width of the range now, and after these readings */
  readonly narrowing: (readings: readonly Observation[]) => Narrowing;
}

/**
 * How sure the place of a frequency on the dial is, by the joint errors of coil, strays and capacitor.
 * @param set as read
 * @param frequency Hz
 * @returns undefined for a set without a variable capacitor whose capacitance rises along its scale, or with fewer than two stations
 */
export function dialDoubt(set: SetDescription, frequency: number): DialDoubt | undefined {
  const winding = tunedWinding(set);
  const coil = [...winding, 'measured', 'inductance'];
  const capacitor = capacitorOf(set);
  if (!capacitor) return undefined;
  const known = measuredAlready(set);
  const now = jointFigures(set, known);
  const paths = {
    L: coil,
    own: [...winding, 'measured', 'selfCapacitance'],
    stray: ['tuning', 'measured', 'stray'],
    minimum: ['tuning', 'measured', 'minimum'],
    maximum: ['tuning', 'measured', 'maximum'],
  } satisfies Record<keyof DialFigures, Path>;
  const at = (path: Path) => now.figures.find((f) => samePath(f.path, path))?.after.value;
  const [L, own = 0, stray, minimum = capacitor.minimum, maximum] = [
    paths.L,
    paths.own,
    paths.stray,
    paths.minimum,
    paths.maximum,
  ].map(at);
  if (L === undefined || maximum === undefined || stray === undefined) return undefined;
  const dial: DialFigures = { L, own, stray, minimum, maximum };
  const placeOf = (f: number, { own, stray, ...rest }: DialFigures): number =>
    positionOn(f, { ...capacitor, ...rest, stray: own + stray + set.tuning.trimmer });
  // Of another band, or beyond the ends, none is found on the dial.
  const frequencies = set.place.stations
    .map((s) => s.frequency)
    .filter((f) => placeOf(f, dial) >= 0 && placeOf(f, dial) <= 1);
  if (frequencies.length < 2) return undefined;
  const width = ({ figures, correlations }: Joint): number => {
    const deviations = figures.map(({ path, after }) => {
      const key = (Object.keys(paths) as (keyof DialFigures)[]).find((one) => samePath(paths[one], path));
      if (key === undefined) return 0;
      const h = 1e-4;
      const moved = (by: number) => placeOf(frequency, { ...dial, [key]: dial[key] * Math.exp(by) });
      return ((moved(h) - moved(-h)) / (2 * h)) * (after.standardError / after.value);
    });
    return 2 * NINETY * Math.sqrt(varianceOf(deviations, correlations));
  };
  return {
    ends: [Math.min(...frequencies), Math.max(...frequencies)].map((f) => ({
      of: 'dial',
      coil,
      position: placeOf(f, dial),
      frequency: f,
      standardError: HAIR_LINE,
    })),
    narrowing: (readings) => ({
      narrows: 'dial',
      before: width(now),
      after: width(jointFigures(set, [...known, ...readings])),
    }),
  };
}

/** What the description has as measured of coil, capacitor and the rest, its errors as they go together. */
function measuredAlready(set: SetDescription): readonly Observation[] {
  const figures = measurableFigures(set).flatMap(({ property, path, measured }) =>
    measured && measured.value > 0 && property !== 'load.sensitivity' ? [{ property, path, ...measured }] : [],
  );
  if (figures.length === 0) return [];
  const together = readCorrelations(set.correlations);
  const correlations = Float64Array.from(
    figures.flatMap(({ path: a }) => figures.map(({ path: b }) => correlationBetween(together, a, b))),
  );
  return [{ of: 'figures', figures, correlations }];
}

function dialMeasurement(set: SetDescription, frequency: number): NextMeasurement[] {
  const doubt = dialDoubt(set, frequency);
  return doubt ? [{ method: 'dial', equipment: ['set', 'ears', 'station'], ...doubt.narrowing(doubt.ends) }] : [];
}

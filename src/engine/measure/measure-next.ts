import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from '../set/description.ts';
import type { BudgetItem } from '../uncertainty/budget.ts';
import type { Measurable } from '../uncertainty/input.ts';
import { NINETY } from '../uncertainty/spread.ts';
import { jointFigures, type Observation } from './joint.ts';
import type { Equipment } from './measurement.ts';

/** A measurement by what it takes, not by how it is worked out. */
export type Method =
  | 'dial'
  | 'earth-electrodes'
  | 'width'
  | 'detector'
  | 'audibility'
  | 'aerial-substitution'
  | 'field-strength'
  | 'effective-height';

/** A measurement worth making next. */
export interface NextMeasurement {
  readonly method: Method;
  readonly equipment: readonly Equipment[];
  /** What it narrows: the level of the station at the ear (dB), or where it is found on the dial (share of the scale). */
  readonly narrows: 'level' | 'dial';
  /** Width of the 90 % range now, and expected after it. */
  readonly before: number;
  readonly after: number;
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
  const found = [...levelMeasurements(station), ...dialMeasurement(set, station.frequency)];
  const worth = ({ before, after, equipment }: NextMeasurement): number => (1 - after / before) / costOf(equipment);
  return found
    .filter(({ before, after }) => before > 0 && 1 - after / before >= LEAST)
    .sort((a, b) => worth(b) - worth(a));
}

function levelMeasurements({ ranges, budget = [] }: WantedStation): NextMeasurement[] {
  const range = ranges?.soundPressureLevel;
  if (!range) return [];
  const before = range[1] - range[0];
  return budget.flatMap(({ what, gain }): NextMeasurement[] => {
    const way = WAYS[what];
    if (!way || !(gain > 0)) return [];
    // Of what it makes of the range, the share that the measurement's own error leaves; squares add.
    const without = Math.max(0, before - gain);
    const after = Math.sqrt(without ** 2 + way.left ** 2 * (before ** 2 - without ** 2));
    return [{ method: way.method, equipment: way.equipment, narrows: 'level', before, after }];
  });
}

/** A pointer with a hair line, by hand. */
const POINTER = 0.006;

/** Two stations near the ends of the dial say where all others are: by the joint errors of coil, strays and capacitor. */
function dialMeasurement(set: SetDescription, frequency: number): NextMeasurement[] {
  const isEven = 'law' in set.tuning && set.tuning.law === 'semicircular' && !set.tuning.padder;
  const coil = isLoop(set.aerial) ? ['aerial', 'measured', 'inductance'] : ['coils', 0, 'measured', 'inductance'];
  const frequencies = set.place.stations.map((s) => s.frequency);
  if (!isEven || frequencies.length < 2) return [];
  const ends = [Math.min(...frequencies), Math.max(...frequencies)];
  const now = jointFigures(set, []);
  const at = (path: readonly (string | number)[]) =>
    now.figures.find((f) => f.path.join() === path.join())?.before.value;
  const L = at(coil);
  const [minimum = 0, maximum, stray] = ['minimum', 'maximum', 'stray'].map((key) => at(['tuning', 'measured', key]));
  if (L === undefined || maximum === undefined || stray === undefined) return [];
  const placeOf = (f: number): number => (1 / ((2 * Math.PI * f) ** 2 * L) - stray - minimum) / (maximum - minimum);
  const readings = ends.map(
    (f): Observation => ({ of: 'dial', coil, position: placeOf(f), frequency: f, standardError: POINTER }),
  );
  const width = (observations: readonly Observation[]): number => {
    const { figures, correlations } = jointFigures(set, observations);
    const n = figures.length;
    const slope = figures.map(({ path }) => {
      const key = path.join();
      const h = 1e-4;
      const moved = (by: number): number => {
        const value = (own: readonly (string | number)[], x: number) => (own.join() === key ? x * Math.exp(by) : x);
        const max = value(['tuning', 'measured', 'maximum'], maximum);
        const min = value(['tuning', 'measured', 'minimum'], minimum);
        return (
          (1 / ((2 * Math.PI * frequency) ** 2 * value(coil, L)) -
            value(['tuning', 'measured', 'stray'], stray) -
            min) /
          (max - min)
        );
      };
      return (moved(h) - moved(-h)) / (2 * h);
    });
    const s = figures.map(({ after }, i) => slope[i] * (after.standardError / after.value));
    let variance = 0;
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) variance += s[i] * s[j] * correlations[i * n + j];
    return 2 * NINETY * Math.sqrt(variance);
  };
  return [
    {
      method: 'dial',
      equipment: ['set', 'ears', 'station'],
      narrows: 'dial',
      before: width([]),
      after: width(readings),
    },
  ];
}

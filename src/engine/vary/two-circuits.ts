import type { Edit } from '../kinds/adjustment.ts';
import type { ArrangementDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { isLoop } from '../kinds/loops.ts';
import { halfTurns } from '../kinds/turns-adjust.ts';
import type { SetDescription } from '../set/description.ts';
import { untakenName } from '../set/untaken-name.ts';
import { valueAtPath } from '../set/write.ts';
import { formatQuantity } from '../units/format.ts';
import type { Hertz } from '../units/quantities.ts';
import { adjustmentsOf } from './adjustments.ts';
import { rewindFor } from './move-band.ts';
import { CLEAR, scoreOf } from './objective.ts';
import { optimise } from './optimise.ts';
import type { Figures, Goal, Objective } from './question.ts';
import { isBuilt, type Trial, type Trials } from './trial.ts';
import type { WantGoal } from './want-values.ts';
import { goalsOnBand } from './want-values-on-bands.ts';

/** A set made into one of two tuned circuits, as facts. */
export interface TwoCircuits {
  readonly code: 'two-circuits';
  /** Places of the coils in the description; the aerial's is a copy of the other, with other turns. */
  readonly coils: {
    readonly main: number;
    readonly aerial: number;
    readonly turns: readonly Edit[];
    readonly aerialTurns: readonly Edit[];
  };
  readonly aerialTurns: number;
  readonly turns: number;
  readonly arrangement: Extract<ArrangementDescription, { kind: 'two circuits' }>;
  readonly station: { readonly name: string; readonly before: Figures; readonly after: Figures };
  /** Ends of the dial before and after, Hz. */
  readonly before: readonly [Hertz, Hertz];
  readonly after: readonly [Hertz, Hertz];
  /** Stations on the dial that the aerial circuit does not reach, by name. */
  readonly beyond: readonly string[];
}

/** Turns of the aerial coil as shares of the tuning coil's, and taps as shares of it, that are tried. Common practice, no source. */
const TURNS = [1, 0.85, 0.7];
const TAPS = [0.6, 0.35, 0.2, 0.1];
/** Where the coils begin: clear of each other by about a diameter. Common practice, no source. */
const DISTANCE = '120 mm';
/** For coils whose place in space is not known. Common practice, no source. */
const COUPLING = '2 %';
/** A hundredth of the range is worth so much, dB: closer coils would give it up for loudness. */
const RANGE_WEIGHT = 2;

const FED = ['direct', 'series capacitor', 'tapped', 'coupled', 'two circuits'] as const;
type Fed = Extract<ArrangementDescription, { kind: (typeof FED)[number] }>;
const isFed = (arrangement: ArrangementDescription): arrangement is Fed =>
  FED.some((kind) => kind === arrangement.kind);

/**
 * Two tuned circuits that work for the target stations, out of a set of one: the tuning coil wound for the range that the
 * dial covers and the stations of the wants, an aerial coil like it with turns and tap that reach all of them, the
 * distance and the detector tap that serve the wants, or else keep the station clear of others.
 * @param trials of the set
 * @param station its place in the list
 * @returns what is to be written, with the station before and after; undefined for a frame, a rod, a slider, a
 * variometer or a list of elements, and where no such set can be built
 * @throws RangeError for a station the set does not have
 */
export function twoCircuitsFor(trials: Trials, station: number): TwoCircuits | undefined {
  const { now } = trials;
  const { set } = now;
  if (isLoop(set.aerial) || !isFed(set.arrangement)) return undefined;
  const goals = goalsOnBand(trials);
  const targets = [...new Set([station, ...goals.flatMap(({ stations }) => stations.slice(0, 1))])];
  const begun = trials.with(beginning(set, set.arrangement));
  if (!isBuilt(begun)) return undefined;
  const range = rangeFor(now, targets, goals);
  const rewound = rewindFor(begun.set, range).moved;
  const again = trials.about(rewound);
  const { arrangement } = rewound;
  if (arrangement.kind !== 'two circuits') return undefined;
  const [main, aerial] = [arrangement.coil, arrangement.aerialCoil].map((name) =>
    rewound.coils.findIndex((coil) => coil.name === name),
  );
  const full = again.now.receiver.circuit.coils[main].turns;
  const reach = (trial: Trial): number[] => targets.filter((one) => trial.tuned(one).otherWithin !== false);
  const objective = objectiveFor(goals, station, range);
  const tried = TURNS.flatMap((share) => {
    const turns = halfTurns(full * share);
    return TAPS.flatMap((tap) => {
      const edits: Edit[] = [
        { path: ['coils', aerial], to: withTurns(rewound.coils[aerial], share) },
        { path: ['arrangement', 'aerialTap'], to: Math.max(1, Math.round(turns * tap)) },
      ];
      const trial = again.with(edits);
      if (!isBuilt(trial)) return [];
      return [{ trial, reached: reach(trial).length, score: scoreOf(trial, { objective }) }];
    });
  });
  if (tried.length === 0) return undefined;
  const most = Math.max(...tried.map(({ reached }) => reached));
  const { trial } = tried.filter(({ reached }) => reached === most).reduce((a, b) => (b.score > a.score ? b : a));
  const best = placed(again.about(trial.set), objective, (other) => reach(other).length === most);
  return factsOf(now, best, station);
}

/** The dial as it is, and the target stations beyond it. */
function rangeFor(
  { set, curve }: Trial,
  targets: readonly number[],
  goals: readonly WantGoal[],
): { from: Hertz; to: Hertz } {
  const { lowest, highest } = curve();
  const carriers = targets.map((one) => set.place.stations[one].frequency);
  const bands = goals.flatMap(({ want }) => (want.kind === 'band' ? [want.from, want.to] : []));
  return { from: Math.min(lowest, ...carriers, ...bands), to: Math.max(highest, ...carriers, ...bands) };
}

/** All wants, without any the station clear of others; its loudness beside them; and the range. */
function objectiveFor(
  goals: readonly WantGoal[],
  station: number,
  { from, to }: { from: Hertz; to: Hertz },
): Objective {
  const wants = goals.map(({ goal }) => goal);
  const clear: Goal = { objective: { of: 'clearance', station }, enough: CLEAR };
  return {
    of: 'goals',
    goals: [
      ...(wants.length > 0 ? wants : [clear]),
      { objective: { of: 'loudness', station }, weight: LOUDNESS_WEIGHT },
      { objective: { of: 'band covered', from, to }, weight: RANGE_WEIGHT },
    ],
  };
}

/** Of a decibel of loudness so much is counted. Common practice, no source. */
const LOUDNESS_WEIGHT = 0.5;

/** A second coil like the first, the aerial on it. */
function beginning(set: SetDescription, arrangement: Fed): Edit[] {
  const index = set.coils.findIndex(({ name }) => name === arrangement.coil);
  const coil = set.coils[index];
  const old = 'aerialCoil' in arrangement ? set.coils.findIndex(({ name }) => name === arrangement.aerialCoil) : -1;
  const at = old < 0 ? set.coils.length : old;
  const name =
    old < 0 ? untakenName('aerial', (one) => set.coils.some(({ name }) => name === one)) : set.coils[old].name;
  const inSpace = coil.shape !== 'measured' && coil.shape !== 'core';
  const { detectorTap, traps } = arrangement;
  const { aerialTuning, ganged = false } = arrangement.kind === 'two circuits' ? arrangement : {};
  return [
    { path: ['coils', at], to: { ...coil, name, measured: undefined } },
    {
      path: ['arrangement'],
      to: {
        kind: 'two circuits',
        aerialCoil: name,
        coil: arrangement.coil,
        ...(inSpace ? { distance: DISTANCE } : { coupling: COUPLING }),
        ...(detectorTap === undefined ? {} : { detectorTap }),
        ...(aerialTuning === undefined ? {} : { aerialTuning }),
        ...(ganged ? { ganged } : {}),
        ...(traps === undefined ? {} : { traps }),
      },
    },
  ];
}

type Coil = SetDescription['coils'][number];
const withTurns = (coil: Coil, share: number): Coil => {
  if (coil.shape === 'multilayer')
    return { ...coil, turnsPerLayer: Math.max(1, Math.round(coil.turnsPerLayer * share)) };
  if (coil.shape === 'measured')
    return {
      ...coil,
      inductance: Number((coil.inductance * share * share).toPrecision(3)),
      turns: halfTurns(coil.turns * share),
    };
  return { ...coil, turns: halfTurns(coil.turns * share) };
};

/** The same with distance and detector tap at their best, where every station is still reached. */
function placed(trials: Trials, objective: Objective, isReached: (trial: Trial) => boolean): Trial {
  const { now } = trials;
  const { all } = adjustmentsOf(now.set);
  const ids = ['arrangement.distance', 'arrangement.coupling', 'arrangement.detectorTap'].filter((id) =>
    all.some((one) => one.id === id),
  );
  const [answer] = optimise(trials, all, { objective, unknowns: { together: ids } });
  const better = answer && trials.with(answer.changes);
  return better && isBuilt(better) && isReached(better) ? better : now;
}

function factsOf(now: Trial, best: Trial, station: number): TwoCircuits | undefined {
  const { set } = best;
  const { arrangement } = set;
  if (arrangement.kind !== 'two circuits') return undefined;
  const { stations } = set.place;
  const [main, aerial] = [arrangement.coil, arrangement.aerialCoil].map((name) =>
    set.coils.findIndex((coil) => coil.name === name),
  );
  const turnsOf = (name: string): number =>
    best.receiver.circuit.coils[set.coils.findIndex((coil) => coil.name === name)].turns;
  const ends = (trial: Trial): readonly [Hertz, Hertz] => [trial.curve().lowest, trial.curve().highest];
  return {
    code: 'two-circuits',
    coils: {
      main,
      aerial,
      turns: turnsEdits(set.coils[main], now.set.coils[main]),
      aerialTurns: turnsEdits(set.coils[aerial], now.set.coils[main]),
    },
    aerialTurns: turnsOf(arrangement.aerialCoil),
    turns: turnsOf(arrangement.coil),
    arrangement,
    station: {
      name: stations[station].name,
      before: now.medians.figures(station),
      after: best.medians.figures(station),
    },
    before: ends(now),
    after: ends(best),
    beyond: stations
      .filter((_, i) => best.tuned(i).within && best.tuned(i).otherWithin === false)
      .map(({ name }) => name),
  };
}

/** What two coils of one shape differ in, as a coil's own places. */
const turnsEdits = (coil: Coil, was: Coil): Edit[] =>
  ['turns', 'turnsPerLayer', 'layers', 'inductance'].flatMap((key): Edit[] => {
    const [to, from] = [valueAtPath(coil, [key]), valueAtPath(was, [key])];
    if (to === from || typeof to !== 'number') return [];
    return [{ path: [key], to: key === 'inductance' ? formatQuantity(to, 'inductance', 3) : to }];
  });

/**
 * What is to be written in a description for its two tuned circuits.
 * @param written the description that the set was read from
 * @param options facts of that set, from `twoCircuitsFor`
 * @returns edits; the aerial's coil is a copy of the tuning coil as it is written
 */
export function twoCircuitsEdits(written: unknown, { coils, arrangement }: TwoCircuits): readonly Edit[] {
  const coil = valueAtPath(written, ['coils', coils.main]) as Record<string, unknown>;
  const { measured: _, ...copied } = coil;
  const { kind, aerialCoil, coil: name, distance, coupling, aerialTap, detectorTap } = arrangement;
  const kept = ['aerialTuning', 'ganged', 'traps'].flatMap((key) => {
    const value = valueAtPath(written, ['arrangement', key]);
    return value === undefined ? [] : [[key, value] as const];
  });
  return [
    ...coils.turns.map(({ path, to }): Edit => ({ path: ['coils', coils.main, ...path], to })),
    { path: ['coils', coils.aerial], to: { ...copied, name: aerialCoil } },
    ...coils.aerialTurns.map(({ path, to }): Edit => ({ path: ['coils', coils.aerial, ...path], to })),
    {
      path: ['arrangement'],
      to: {
        kind,
        aerialCoil,
        coil: name,
        ...(coupling === undefined
          ? { distance: formatQuantity(distance, 'length', 2) }
          : { coupling: formatQuantity(coupling, 'ratio', 2) }),
        ...(aerialTap === undefined ? {} : { aerialTap }),
        ...(detectorTap === undefined ? {} : { detectorTap }),
        ...Object.fromEntries(kept),
      },
    },
  ];
}

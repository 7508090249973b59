import type { SetCircuit } from '../built/set-circuit.ts';
import { setCircuit } from '../built/set-circuit.ts';
import { magnitude } from '../numerics/complex.ts';
import { fromMap } from '../numerics/lazily.ts';
import { MASKED } from '../reception/interference/separation.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import { fieldsAtSite } from '../reception/path/field.ts';
import { bearingOf, emfOf, receiver } from '../reception/path/receive-station.ts';
import type { SetDescription } from '../set/description.ts';
import { straightQuotient } from '../solvers/linear/straight-quotient.ts';
import type { Peak } from '../solvers/linear/views.ts';
import { attempt } from '../uncertainty/attempt.ts';
import { type Decibels, decibels, type Farads, type Hertz } from '../units/quantities.ts';
import { worthOf } from '../vary/objective.ts';
import { type Trial, trialsOf } from '../vary/trial.ts';
import type { WantGoal } from '../vary/want-values.ts';
import type { BackEnd, FrontEnd, SetChoice, TurnsChosen } from './choices.ts';
import { type LevelTable, levelTable } from './level-table.ts';
import {
  aerialFeed,
  emptyMesh,
  emptyNodes,
  type Feed,
  joinAerial,
  joinTap,
  loadAtRadio,
  type Mesh,
  type PortOf,
  type RadioCoils,
  radioCoilsOf,
  type Shown,
  tunedTo,
} from './radio-side.ts';
import { isCoilTuned } from './turns-space.ts';

/** What estimates of one search share. */
export interface EstimateContext {
  readonly setOf: (choice: SetChoice) => SetDescription;
  readonly goals: readonly WantGoal[];
  readonly when: FieldOptions;
}

/** By which a set may be better than what the power at the top of its coil lets it be, dB: a tap may draw a little more. */
const OVER: Decibels = 1;

/** A goal for a station beyond the dial, as a search counts it, and for each neper it lies beyond. */
const BEYOND = -200;
const PER_NEPER = -100;
/** A station more is worth as much, dB. */
const PER_STATION = 3;
/** A margin so far from none makes a station likely heard, or not, dB. */
const DOUBT = 2;

/** Far under the threshold, dB: not worth asking what else is heard. */
const HOPELESS = 5 * DOUBT;
/** From so far over a threshold, dB. */
const likely = (margin: Decibels): number => 1 / (1 + Math.exp(-margin / DOUBT));

/** Estimates of every set of a front end: for order and for ruling out, never shown. Asked about one winding after the other. */
export interface Estimator {
  /** The turns and taps that are asked about from now on. */
  readonly wind: (turns: TurnsChosen) => void;
  /**
   * What they are worth with a back end, of each want, dB, more being better.
   * @returns whether a wanted station lies so near an end of the dial that sets as built may reach it or not
   */
  readonly worth: (back: BackEnd, into: Float64Array) => boolean;
  /** What the full reception of no detector's tap of theirs is worth more than; infinite where nothing bounds it. */
  readonly bound: (back: BackEnd, into: Float64Array) => void;
}

interface Listened {
  readonly tables: readonly LevelTable[];
  /** At each frequency that is asked about. */
  readonly ports: readonly PortOf[];
}

interface Kept {
  readonly feeds: Map<string, (frequency: Hertz) => Feed>;
  readonly listened: Map<BackEnd, Listened>;
  readonly wound: Map<string, RadioCoils>;
  readonly radioCoils: (set: SetDescription) => RadioCoils;
}

/** Coils kept; more are made anew. */
const MOST_COILS = 64;

/** Radio side and tables made once, kept for all front ends of a search. */
export function estimators(context: EstimateContext): (front: FrontEnd) => Estimator {
  const kept: Kept = { feeds: new Map(), listened: new Map(), wound: new Map(), radioCoils: radioCoilsOf() };
  const known = new Map<FrontEnd, Estimator>();
  return (front) =>
    fromMap(
      known,
      front,
      () => (isCoilTuned(front) ? coilTunedEstimator(front, context, kept) : estimatorOf(front, context, kept)),
      MOST_FRONTS,
    );
}
/** Front ends of one coil that are at work at once, and some more. */
const MOST_FRONTS = 256;

type Stations = SetDescription['place']['stations'];

/** The frequencies that a goal asks about. */
const askedBy = ({ goal: { objective }, stations: named }: WantGoal, stations: Stations): readonly Hertz[] =>
  objective.of === 'band covered'
    ? [objective.from, objective.to]
    : (objective.of === 'stations heard' ? stations : named.map((i) => stations[i])).map((one) => one.frequency);

const frequenciesOf = (goals: readonly WantGoal[], stations: Stations): Hertz[] => [
  ...new Set(goals.flatMap((goal) => askedBy(goal, stations))),
];

/** A back end as the estimates take it; whichever front end it is asked about with. */
const listenedWith = (
  { setOf, goals, when }: EstimateContext,
  { listened }: Kept,
  front: FrontEnd,
  back: BackEnd,
): Listened =>
  fromMap(listened, back, () => {
    const circuit = setCircuit(setOf({ front, back, turns: startingTurns(front) }));
    const { place } = circuit.set;
    const ready = receiver(circuit, fieldsAtSite(place, when));
    const { stations } = place;
    const load = loadAtRadio(ready.circuit);
    const byProgramme = new Map<string, LevelTable>();
    return {
      tables: stations.map((station) =>
        fromMap(byProgramme, `${station.programme} ${station.modulation}`, () => levelTable(ready, station)),
      ),
      ports: frequenciesOf(goals, stations).map((frequency) => ({
        load: load(frequency),
        junction: ready.circuit.detector.junctionCapacitance,
        conductance: ready.smallConductance,
      })),
    };
  });

function estimatorOf(front: FrontEnd, context: EstimateContext, kept: Kept): Estimator {
  const { setOf, goals, when } = context;
  const { winding, second, apart, aerial, earth, arrangement } = front;
  const anyTurns = (turns: TurnsChosen): SetChoice => ({ front, back: { detector: 0, load: 0 }, turns });
  const first = setCircuit(setOf(anyTurns(startingTurns(front))));
  const { stations } = first.set.place;
  const fieldOf = fieldsAtSite(first.set.place, when);
  const isLoop = arrangement === 'frame' || arrangement === 'ferrite rod';
  const feed = isLoop ? undefined : fromMap(kept.feeds, `${aerial} ${earth}`, () => aerialFeed(first));
  const wired = first.set.arrangement;
  const series = wired.kind === 'series capacitor' ? wired.seriesCapacitor : undefined;
  const { min, max, lossTangent } = first.tuning;
  const tuner = { range: [min, max] as const, lossTangent };
  const emfs = (circuit: SetCircuit): Float64Array =>
    Float64Array.from(stations, (station) => {
      const field = fieldOf(station);
      return emfOf(circuit, station, field, bearingOf(station, field));
    });
  const wireEmfs = isLoop ? undefined : emfs(first);
  const coilsOfTurns = (turns: TurnsChosen): RadioCoils =>
    fromMap(
      kept.wound,
      [winding.former, winding.reel, turns.turns, second?.former, second?.reel, turns.secondTurns, apart].join(' '),
      () => kept.radioCoils(setOf(anyTurns({ ...turns, aerialTap: turns.aerialTap ?? turns.turns }))),
      MOST_COILS,
    );
  const frequencies = frequenciesOf(goals, stations);
  const meshes = frequencies.map(emptyMesh);
  const nodes = frequencies.map(emptyNodes);
  const shown: Shown = { open: 0, resistance: 0, wanted: 0, loadedQ: 0, quotient: straightQuotient() };
  let wound: TurnsChosen | undefined;
  let coils: RadioCoils;
  let emf: Float64Array;
  let isTapJoined = false;
  const wind = (turns: TurnsChosen): void => {
    const isSameCoil = wound?.turns === turns.turns && wound.secondTurns === turns.secondTurns;
    if (!isSameCoil) {
      coils = coilsOfTurns(turns);
      emf = wireEmfs ?? emfs(setCircuit(setOf(anyTurns(turns))));
    }
    if (!isSameCoil || wound!.aerialTap !== turns.aerialTap)
      for (const [i, frequency] of frequencies.entries())
        joinAerial(
          { frequency, coils, feed: feed?.(frequency), series, aerialTap: turns.aerialTap ?? turns.turns },
          meshes[i],
        );
    wound = turns;
    isTapJoined = false;
  };
  const joinTaps = (): void => {
    const { turns, aerialTap = turns, detectorTap = turns } = wound!;
    for (const [i, mesh] of meshes.entries()) joinTap({ coils, aerialTap }, mesh, detectorTap, nodes[i]);
    isTapJoined = true;
  };
  let isAtEnd = false;
  let ports: readonly PortOf[];
  const look = (i: number, capacitance?: Farads): Shown => {
    tunedTo(nodes[i], ports[i], tuner, coils.main.selfCapacitance, shown, capacitance);
    if (capacitance === undefined && isNearEnd(shown.wanted, tuner.range)) isAtEnd = true;
    return shown;
  };
  const asking = goals.map((goal): Asking => {
    const at = askedBy(goal, stations).map((frequency) => frequencies.indexOf(frequency));
    return { goal, stations, range: tuner.range, at, look };
  });
  return {
    wind,
    worth(back, into) {
      const { tables, ports: seen } = listenedWith(context, kept, front, back);
      if (!isTapJoined) joinTaps();
      isAtEnd = false;
      ports = seen;
      for (let k = 0; k < asking.length; k++) into[k] = worthBy(asking[k], emf, tables);
      return isAtEnd;
    },
    bound(back, into) {
      const { tables, ports: seen } = listenedWith(context, kept, front, back);
      const awayAt = (i: number): number => surelyBeyond(meshes[i], seen[i], coils.main.selfCapacitance, tuner.range);
      for (let k = 0; k < asking.length; k++) into[k] = boundBy(asking[k], { meshes, emf, tables, awayAt });
    },
  };
}

/** Any turns with which a front end can be built. */
const startingTurns = ({ winding, second }: FrontEnd): TurnsChosen => ({
  turns: winding.most,
  aerialTap: winding.most,
  ...(second ? { secondTurns: Math.min(5, second.most) } : {}),
});

interface Asking {
  readonly goal: WantGoal;
  readonly stations: Stations;
  readonly range: readonly [Farads, Farads];
  /** Places of what it asks about among the frequencies of all goals. */
  readonly at: readonly number[];
  readonly look: (i: number, capacitance?: Farads) => Shown;
}

/** Nepers of frequency that a wanted capacitance lies beyond the ends; 0 within. */
function beyond(wanted: Farads, [least, most]: readonly [Farads, Farads]): number {
  if (!(wanted > 0)) return 1;
  return Math.max(0, Math.log(least / wanted), Math.log(wanted / most)) / 2;
}

/** As built the ends of a dial are where they are within a few hundredths, in shares of the capacitance. */
const END = 0.12;
const isNearEnd = (wanted: Farads, [least, most]: readonly [Farads, Farads]): boolean =>
  (wanted > most * (1 - END) && wanted <= most) || (wanted < least * (1 + END) && wanted >= least);

function worthBy(
  { goal: { goal, stations: named }, stations, range, at, look }: Asking,
  emf: Float64Array,
  tables: readonly LevelTable[],
): number {
  const { objective, enough = Number.POSITIVE_INFINITY } = goal;
  const [station, other] = named;
  const lost = (away: number): number => BEYOND + PER_NEPER * away;
  switch (objective.of) {
    case 'loudness': {
      const shown = look(at[0]);
      const away = beyond(shown.wanted, range);
      return away > 0 ? lost(away) : tables[station].level(emf[station] * shown.open, shown.resistance);
    }
    case 'clearance': {
      const shown = look(at[0]);
      const { wanted } = shown;
      const volts = emf[station] * shown.open;
      const away = beyond(wanted, range);
      if (away > 0) return lost(away);
      const margin = tables[station].margin(volts, shown.resistance);
      // A faint carrier is detected by its square.
      const clearance = 2 * decibels(volts / Math.max(emf[other] * look(at[1], wanted).open, 1e-15));
      return Math.min(enough, margin < 0 ? Math.min(0, clearance) + margin : clearance);
    }
    case 'band covered': {
      const lowest = objective.from * Math.sqrt(Math.max(look(at[0]).wanted, 1e-15) / range[1]);
      const highest = objective.to * Math.sqrt(Math.max(look(at[1]).wanted, 1e-15) / range[0]);
      const covered = Math.log(Math.min(highest, objective.to) / Math.max(lowest, objective.from));
      return 100 * Math.min(enough, Math.max(0, covered) / Math.log(objective.to / objective.from));
    }
    case 'stations heard': {
      let sum = 0;
      for (let i = 0; i < at.length; i++) {
        const { wanted, resistance, open } = look(at[i]);
        if (beyond(wanted, range) > 0) continue;
        const volts = emf[i] * open;
        const margin = tables[i].margin(volts, resistance);
        if (margin < -HOPELESS) continue;
        let strongest = 0;
        for (let j = 0; j < at.length; j++)
          if (j !== i) strongest = Math.max(strongest, emf[j] * look(at[j], wanted).open);
        const clear = 2 * decibels(volts / Math.max(strongest, 1e-15)) - MASKED;
        sum += likely(margin) * likely(clear);
      }
      return PER_STATION * sum;
    }
    case 'audio bandwidth': {
      const { frequency } = stations[station];
      const { wanted, loadedQ } = look(at[0]);
      const away = beyond(wanted, range);
      return away > 0 ? lost(away) : decibels(Math.min(enough, frequency / (2 * loadedQ)));
    }
    default:
      return 0;
  }
}

/** By which a peak may lie off where the susceptances at the top cancel, in shares of the capacitance. */
const OFF_PEAK = 0.15;
/** Broader tops than this, (2/Q)², may lie anywhere. */
const BROAD = 0.03;

/** Nepers of frequency by which a station lies beyond the dial whatever the detector's tap; 0 where it may lie within. */
function surelyBeyond(
  { frequency, ttr, tti }: Mesh,
  { junction }: PortOf,
  self: Farads,
  [least, most]: readonly [Farads, Farads],
): number {
  if (!(tti > 0) || ((2 * ttr) / tti) ** 2 > BROAD) return 0;
  const wanted = tti / (ttr * ttr + tti * tti) / (2 * Math.PI * frequency) - self;
  const [low, high] = [wanted - OFF_PEAK * Math.abs(wanted) - junction, wanted + OFF_PEAK * Math.abs(wanted)];
  if (low > most) return Math.log(low / most) / 2;
  if (high > 0 && high < least) return Math.log(least / high) / 2;
  return 0;
}

interface Bounding {
  readonly meshes: readonly Mesh[];
  readonly emf: Float64Array;
  readonly tables: readonly LevelTable[];
  readonly awayAt: (i: number) => number;
}

/** From the power that the top of the tuned circuit can give: no tap and no detector takes more. */
function boundBy({ goal: { goal, stations: named }, at }: Asking, { meshes, emf, tables, awayAt }: Bounding): number {
  const { objective, enough = Number.POSITIVE_INFINITY } = goal;
  const available = (i: number, station: number): number => {
    const { otr, oti, ttr } = meshes[i];
    return (emf[station] ** 2 * (otr * otr + oti * oti)) / (4 * Math.max(ttr, 1e-12));
  };
  switch (objective.of) {
    case 'loudness': {
      const [station] = named;
      const away = awayAt(at[0]);
      if (away > 0) return BEYOND + PER_NEPER * away;
      return tables[station].mostLevel(available(at[0], station)) + OVER;
    }
    case 'stations heard': {
      let count = 0;
      for (let i = 0; i < at.length; i++)
        if (awayAt(at[i]) === 0 && tables[i].mostMargin(available(at[i], i)) + OVER > 0) count++;
      return PER_STATION * count;
    }
    case 'band covered':
      return 100;
    case 'clearance':
      return enough;
    case 'audio bandwidth':
      return decibels(enough);
    default:
      return Number.POSITIVE_INFINITY;
  }
}

/** Nepers of conductance between two loads for which a coil that tunes is set. */
const LOAD_STEP = Math.log(8);

/**
 * Of a set that a coil tunes each winding is solved once with the first back end of the box; the others see what that
 * one sees.
 */
function coilTunedEstimator(front: FrontEnd, context: EstimateContext, kept: Kept): Estimator {
  const { setOf, goals, when } = context;
  let now: Trial | undefined;
  let known: (Decibels | undefined)[] = [];
  let peaks = new Map<string, Peak>();
  const inFull = (k: number): Decibels => (known[k] ??= worthOf(now!, goals[k].goal));
  const levelBy = (k: number, listened: Listened): Decibels => {
    const { stations, goal } = goals[k];
    const { network, circuit, fieldOf } = now!.receiver;
    const at = (i: number) => {
      const station = circuit.set.place.stations[i];
      const view = network.at(station.frequency);
      // Where it stands changes little with what a detector loads it with.
      const load = Math.round(Math.log(Math.max(listened.ports[0].conductance, 1e-9)) / LOAD_STEP);
      const peak = fromMap(peaks, `${i} ${load}`, () => view.peak(Math.exp(load * LOAD_STEP)));
      const { open, z } = view.at(peak.position, peak.other);
      const field = fieldOf(station);
      const emf = emfOf(circuit, station, field, bearingOf(station, field));
      return { isWithin: peak.within, open: emf * magnitude(open), resistance: Math.max(z.re, 1) };
    };
    if (goal.objective.of === 'loudness') {
      const { isWithin, open, resistance } = at(stations[0]);
      return isWithin ? listened.tables[stations[0]].level(open, resistance) : BEYOND;
    }
    if (goal.objective.of !== 'stations heard') return inFull(k);
    return circuit.set.place.stations.reduce((sum, _, i) => {
      const { isWithin, open, resistance } = at(i);
      return isWithin ? sum + PER_STATION * likely(listened.tables[i].margin(open, resistance)) : sum;
    }, 0);
  };
  return {
    wind(turns) {
      known = [];
      peaks = new Map();
      now = attempt(() => trialsOf(setOf({ front, back: { detector: 0, load: 0 }, turns }), when).now);
    },
    worth(back, into) {
      const listened = listenedWith(context, kept, front, back);
      for (let k = 0; k < goals.length; k++) into[k] = now ? levelBy(k, listened) : BEYOND;
      return false;
    },
    bound(_, into) {
      into.fill(Number.POSITIVE_INFINITY);
    },
  };
}

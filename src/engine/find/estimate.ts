import type { SetCircuit } from '../built/set-circuit.ts';
import { setCircuit } from '../built/set-circuit.ts';
import type { Complex } from '../numerics/complex.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import { fieldsAtSite } from '../reception/path/field.ts';
import { bearingOf, emfOf, type Receiver, receiver } from '../reception/path/receive-station.ts';
import type { SetDescription } from '../set/description.ts';
import { straightQuotient } from '../solvers/linear/straight-quotient.ts';
import { decibels, type Farads, type Hertz } from '../units/quantities.ts';
import { worthOf } from '../vary/objective.ts';
import { trialsOf } from '../vary/trial.ts';
import type { WantGoal } from '../vary/want-values.ts';
import type { BackEnd, FrontEnd, SetChoice, TurnsChosen } from './choices.ts';
import { type LevelTable, levelTable } from './level-table.ts';
import { aerialFeed, type Feed, loadAtRadio, type RadioCoils, radioCoils, type Shown, shownBy } from './radio-side.ts';

/** What the closed form says of a set: for order and for ruling out, never shown. */
export interface Estimated {
  /** Of each want, dB, more being better. */
  readonly worth: readonly number[];
  /** Whether a wanted station lies so near an end of the dial that sets as built may reach it or not. */
  readonly isAtEnd: boolean;
}

/** What estimates of one search share. */
export interface EstimateContext {
  readonly setOf: (choice: SetChoice) => SetDescription;
  readonly goals: readonly WantGoal[];
  readonly when: FieldOptions;
}

/** A goal for a station beyond the dial, as a search counts it, and for each neper it lies beyond. */
const BEYOND = -200;
const PER_NEPER = -100;
/** A station more is worth as much, dB. */
const PER_STATION = 3;
/** A margin so far from none makes a station likely heard, or not, dB. */
const DOUBT = 2;

/** Estimates of every set of a front end. */
export interface Estimator {
  readonly of: (back: BackEnd, turns: TurnsChosen) => Estimated;
}

const NO_LOAD: Complex = { re: 0, im: 0 };

interface Listened {
  readonly ready: Receiver;
  readonly load: (frequency: Hertz) => Complex;
  readonly tables: readonly LevelTable[];
}

/** Radio side and tables made once, kept for all front ends of a search. */
export function estimators(context: EstimateContext): (front: FrontEnd) => Estimator {
  const feeds = new Map<string, (frequency: Hertz) => Feed>();
  const listened = new Map<string, Listened>();
  const wound = new Map<string, RadioCoils>();
  let last: { readonly front: FrontEnd; readonly estimator: Estimator } | undefined;
  return (front) => {
    if (last?.front !== front)
      last = {
        front,
        estimator: isCoilTuned(front)
          ? receivingOf(front, context)
          : estimatorOf(front, context, { feeds, listened, wound }),
      };
    return last.estimator;
  };
}

/** Whether a coil does the tuning: then there is no closed form, and a set is received to be valued. */
const isCoilTuned = ({ arrangement }: FrontEnd): boolean => arrangement === 'slider' || arrangement === 'variometer';

function receivingOf(front: FrontEnd, { setOf, goals, when }: EstimateContext): Estimator {
  return {
    of(back, turns) {
      try {
        const { now } = trialsOf(setOf({ front, back, turns }), when);
        return { worth: goals.map(({ goal }) => worthOf(now, goal)), isAtEnd: false };
      } catch (refusal) {
        if (refusal instanceof RangeError) return { worth: goals.map(() => BEYOND), isAtEnd: false };
        throw refusal;
      }
    },
  };
}

interface Kept {
  readonly feeds: Map<string, (frequency: Hertz) => Feed>;
  readonly listened: Map<string, Listened>;
  readonly wound: Map<string, RadioCoils>;
}

/** Coils kept; more are made anew. */
const MOST_COILS = 400;

function remembered<V>(known: Map<string, V>, key: string, make: () => V): V {
  let value = known.get(key);
  if (value === undefined) {
    value = make();
    known.set(key, value);
    if (known.size > MOST_COILS) known.delete(known.keys().next().value!);
  }
  return value;
}

function estimatorOf(front: FrontEnd, { setOf, goals, when }: EstimateContext, kept: Kept): Estimator {
  const { winding, second, apart, aerial, earth, arrangement } = front;
  const anyTurns = (turns: TurnsChosen): SetChoice => ({ front, back: { detector: 0, load: 0 }, turns });
  const first = setCircuit(setOf(anyTurns(startingTurns(front))));
  const { stations } = first.set.place;
  const fieldOf = fieldsAtSite(first.set.place, when);
  const isLoop = arrangement === 'frame' || arrangement === 'ferrite rod';
  const feed = isLoop ? undefined : remembered(kept.feeds, `${aerial} ${earth}`, () => aerialFeed(first));
  const wired = first.set.arrangement;
  const series = wired.kind === 'series capacitor' ? wired.seriesCapacitor : undefined;
  const range: readonly [Farads, Farads] = [first.tuning.min, first.tuning.max];
  const { lossTangent } = first.tuning;
  const emfs = (circuit: SetCircuit): Float64Array =>
    Float64Array.from(stations, (station) => {
      const field = fieldOf(station);
      return emfOf(circuit, station, field, bearingOf(station, field));
    });
  const wireEmfs = isLoop ? undefined : emfs(first);
  const loopEmfs = new Map<number, Float64Array>();
  const emfOfTurns = (turns: TurnsChosen): Float64Array =>
    wireEmfs ?? rememberedBy(loopEmfs, turns.turns, () => emfs(setCircuit(setOf(anyTurns(turns)))));
  const coilsOfTurns = (turns: TurnsChosen): RadioCoils =>
    remembered(
      kept.wound,
      [winding.former, winding.reel, turns.turns, second?.former, second?.reel, turns.secondTurns, apart].join(' '),
      () => radioCoils(setOf(anyTurns({ ...turns, aerialTap: turns.aerialTap ?? turns.turns }))),
    );
  const listenedOf = (back: BackEnd): Listened =>
    remembered(kept.listened, `${back.detector} ${back.load} ${back.transformer}`, () => {
      const ready = receiver(setCircuit(setOf({ front, back, turns: startingTurns(front) })), fieldOf);
      const byProgramme = new Map<string, LevelTable>();
      const tables = stations.map((station) =>
        remembered(byProgramme, `${station.programme} ${station.modulation}`, () => levelTable(ready, station)),
      );
      return { ready, load: loadAtRadio(ready.circuit), tables };
    });
  const shown: Shown = { open: 0, resistance: 0, wanted: 0, loadedQ: 0, quotient: straightQuotient() };
  return {
    of(back, turns) {
      const { ready, load, tables } = listenedOf(back);
      const coils = coilsOfTurns(turns);
      const emf = emfOfTurns(turns);
      const { turns: N } = turns;
      const asked = {
        frequency: 0,
        feed: undefined as Feed | undefined,
        load: NO_LOAD,
        coils,
        series,
        aerialTap: turns.aerialTap ?? N,
        detectorTap: turns.detectorTap ?? N,
        junction: ready.circuit.detector.junctionCapacitance,
        conductance: ready.smallConductance,
        lossTangent,
      };
      const at = (frequency: Hertz, capacitance?: Farads): Shown => {
        asked.frequency = frequency;
        asked.feed = feed?.(frequency);
        asked.load = load(frequency);
        return shownBy(asked, range, shown, capacitance);
      };
      let isAtEnd = false;
      const found = (frequency: Hertz, capacitance?: Farads): Shown => {
        const answer = at(frequency, capacitance);
        isAtEnd ||= capacitance === undefined && beyond(answer.wanted, range) === 0 && isNearEnd(answer.wanted, range);
        return answer;
      };
      return { worth: goals.map((goal) => worthBy({ goal, stations, range, at: found, emf, tables })), isAtEnd };
    },
  };
}

function rememberedBy<K, V>(known: Map<K, V>, key: K, make: () => V): V {
  let value = known.get(key);
  if (value === undefined) known.set(key, (value = make()));
  return value;
}

/** Any turns with which a front end can be built. */
const startingTurns = ({ winding, second }: FrontEnd): TurnsChosen => ({
  turns: winding.most,
  aerialTap: winding.most,
  ...(second ? { secondTurns: Math.min(5, second.most) } : {}),
});

interface Asking {
  readonly goal: WantGoal;
  readonly stations: SetDescription['place']['stations'];
  readonly range: readonly [Farads, Farads];
  readonly at: (frequency: Hertz, capacitance?: Farads) => Shown;
  readonly emf: Float64Array;
  readonly tables: readonly LevelTable[];
}

/** Nepers of frequency that a wanted capacitance lies beyond the ends; 0 within. */
function beyond(wanted: Farads, [least, most]: readonly [Farads, Farads]): number {
  if (!(wanted > 0)) return 1;
  return Math.max(0, Math.log(least / wanted), Math.log(wanted / most)) / 2;
}

/** As built the ends of a dial are where they are within a few hundredths, in shares of the capacitance. */
const END = 0.12;
const isNearEnd = (wanted: Farads, [least, most]: readonly [Farads, Farads]): boolean =>
  wanted > most * (1 - END) || wanted < least * (1 + END);

function worthBy({ goal: { goal, stations: named }, stations, range, at, emf, tables }: Asking): number {
  const { objective, enough = Number.POSITIVE_INFINITY } = goal;
  const [station, other] = named;
  const lost = (away: number): number => BEYOND + PER_NEPER * away;
  switch (objective.of) {
    case 'loudness': {
      const shown = at(stations[station].frequency);
      const away = beyond(shown.wanted, range);
      return away > 0 ? lost(away) : tables[station](emf[station] * shown.open, shown.resistance).level;
    }
    case 'clearance': {
      const { wanted, open } = at(stations[station].frequency);
      const volts = emf[station] * open;
      const away = beyond(wanted, range);
      if (away > 0) return lost(away);
      // A faint carrier is detected by its square.
      return Math.min(
        enough,
        2 * decibels(volts / Math.max(emf[other] * at(stations[other].frequency, wanted).open, 1e-15)),
      );
    }
    case 'band covered': {
      const lowest = objective.from * Math.sqrt(Math.max(at(objective.from).wanted, 1e-15) / range[1]);
      const highest = objective.to * Math.sqrt(Math.max(at(objective.to).wanted, 1e-15) / range[0]);
      const covered = Math.log(Math.min(highest, objective.to) / Math.max(lowest, objective.from));
      return 100 * Math.min(enough, Math.max(0, covered) / Math.log(objective.to / objective.from));
    }
    case 'stations heard': {
      let sum = 0;
      for (const [i, { frequency }] of stations.entries()) {
        const { wanted, resistance, open } = at(frequency);
        if (beyond(wanted, range) > 0) continue;
        sum += 1 / (1 + Math.exp(-tables[i](emf[i] * open, resistance).margin / DOUBT));
      }
      return PER_STATION * sum;
    }
    case 'audio bandwidth': {
      const { frequency } = stations[station];
      const { wanted, loadedQ } = at(frequency);
      const away = beyond(wanted, range);
      return away > 0 ? lost(away) : decibels(Math.min(enough, frequency / (2 * loadedQ)));
    }
    default:
      return 0;
  }
}

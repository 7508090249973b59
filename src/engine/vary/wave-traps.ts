import type { Edit } from '../kinds/adjustment.ts';
import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { TrapAsMade } from '../kinds/arrangements/traps.ts';
import { isLoop } from '../kinds/loops.ts';
import { lazilyOf } from '../numerics/lazily.ts';
import { isHeard } from '../reception/verdict.ts';
import type { SetDescription } from '../set/description.ts';
import { untakenName } from '../set/untaken-name.ts';
import { stationNamed, stationText } from '../set/want-problems.ts';
import { type Decibels, decibels, type Farads, type Henries, type Hertz } from '../units/quantities.ts';
import { CLEAR } from './objective.ts';
import { isBuilt, type Trial, type Trials } from './trial.ts';

/** What a wave trap of a set does, as facts. */
export interface TrapEffect {
  /** Its place in the description. */
  readonly trap: number;
  readonly kind: TrapAsMade['kind'];
  readonly inductance: Henries;
  readonly capacitance: Farads;
  /** Where it resonates. */
  readonly frequency: Hertz;
  /** The station that it is for, or that it happens to stop: its place in the list, and the carrier it takes off there. */
  readonly stopped?: { readonly station: number; readonly name: string; readonly by: Decibels };
  /** What it does to the target station: medians with it and without. */
  readonly target?: {
    readonly station: number;
    readonly name: string;
    /** Level it costs; negative where the station comes louder. */
    readonly loss: Decibels;
    /** How far the stopped station stays below, with the trap and without; infinite where it is not heard. */
    readonly clearance?: readonly [withTrap: Decibels, without: Decibels];
    /** The station is heard without the trap, and not with it. */
    readonly isLost: boolean;
  };
}

/** A trap made for a station: what is to be written, and what it does. */
export interface TrapOffer {
  readonly changes: readonly Edit[];
  readonly effect: TrapEffect;
}

/** A trap nearer to a station than this share of its frequency stops it. */
const ON_STATION = 0.01;

/**
 * What each wave trap of a set takes off the station it stops, and what it costs the target station: the set with it
 * against the set without it.
 * @param trials of the set
 * @param target a station's place in the list; left out: no loss
 * @returns in the order of the description; none where there are no traps
 * @throws RangeError for a station the set does not have
 */
export function trapEffects(trials: Trials, target?: number): TrapEffect[] {
  const { now } = trials;
  const { traps } = aerialLead(now.set.arrangement);
  return now.receiver.circuit.traps.map((asBuilt, trap) => {
    const others = traps.filter((_, i) => i !== trap);
    const without = trials.with([{ path: ['arrangement', 'traps'], to: others.length > 0 ? others : undefined }]);
    return effectOf(now, isBuilt(without) ? without : undefined, trap, asBuilt, target);
  });
}

function effectOf(
  now: Trial,
  without: Trial | undefined,
  trap: number,
  asBuilt: TrapAsMade,
  target: number | undefined,
): TrapEffect {
  const { kind, inductance, capacitance, frequency } = asBuilt;
  const { stations } = now.set.place;
  const named = aerialLead(now.set.arrangement).traps[trap].stops;
  const station =
    named === undefined
      ? stations.findIndex((one) => Math.abs(frequency / one.frequency - 1) < ON_STATION)
      : (stationNamed(stations, named) ?? -1);
  const about = { trap, kind, inductance, capacitance, frequency };
  if (!without) return about;
  const carrier = (of: Trial, index: number): number => of.tuned(index).tunedVoltage;
  const stopped =
    station < 0
      ? undefined
      : {
          station,
          name: stations[station].name,
          by: decibels(carrier(without, station) / carrier(now, station)),
        };
  if (target === undefined) return { ...about, stopped };
  const [is, was] = [now.medians.figures(target), without.medians.figures(target)];
  return {
    ...about,
    stopped,
    target: {
      station: target,
      name: stations[target].name,
      loss: was.level - is.level,
      clearance:
        station < 0 || station === target || !is.isWithin || !was.isWithin
          ? undefined
          : [now.clearanceFrom(target, station), without.clearanceFrom(target, station)],
      isLost: isHeard(was.verdict) && !isHeard(is.verdict),
    },
  };
}

/** Tube and wire that a trap is wound on and with, written as in a file. Common practice, no source. */
const FORMER = { formerDiameter: '40 mm', wire: { size: '0.4 mm', covering: 'enamel' } } as const;
/** Turns tried, and capacitors that tune them. Common practice, no source. */
const TURNS = [20, 28, 40, 56, 80, 112, 160, 220];
const CAPACITOR = { kind: 'variable', maximum: '365 pF' } as const;
const COUPLINGS = ['5 %', '10 %', '20 %'];

/**
 * A wave trap made for a station: a coil on a 40 mm tube with a variable capacitor of 365 pF across it or in series with
 * it. Of all turns and places that tune the station, those that leave the target station clearest without making it
 * quieter.
 * @param trials of the set
 * @param options the station to be stopped and the target station, by their places in the list; a target beyond the dial is
 * not judged
 * @returns what is to be written, with the effect; undefined where the set takes no trap, or none tunes there
 * @throws RangeError for a station the set does not have
 */
export function trapFor(
  trials: Trials,
  { stop, target }: { readonly stop: number; readonly target?: number },
): TrapOffer | undefined {
  const { set } = trials.now;
  const { traps } = aerialLead(set.arrangement);
  if (set.arrangement.kind === 'elements' || traps.length >= MOST_TRAPS) return undefined;
  // A station beyond the dial says nothing about a trap.
  const judged = target !== undefined && trials.now.figures(target).isWithin ? target : undefined;
  const { frequency } = set.place.stations[stop];
  const known = knownReaches(trials);
  const tried = choicesFor(set, stop, traps.length).flatMap(({ turns, changes }) => {
    // What tunes elsewhere is not built again for another station or another way to connect it.
    if (known.has(turns) && !isTunedTo(known.get(turns), frequency)) return [];
    const trial = trials.with(changes);
    if (!isBuilt(trial)) return [];
    const asBuilt = trial.receiver.circuit.traps[traps.length];
    known.set(turns, asBuilt.reach);
    return isTunedTo(asBuilt.reach, frequency)
      ? [{ changes, trial, asBuilt, turns, score: scoreOf(trial, stop, judged) }]
      : [];
  });
  if (tried.length === 0) return undefined;
  const highest = Math.max(...tried.map(({ score }) => score));
  // Of those as good, the coil with the fewest turns.
  const [best] = tried.filter(({ score }) => score >= highest - ALIKE).sort((a, b) => a.turns - b.turns);
  return { changes: best.changes, effect: effectOf(best.trial, trials.now, traps.length, best.asBuilt, judged) };
}

type Reach = TrapAsMade['reach'];

/** From where to where a trap tunes, by its turns: the same for every station of a set, however it is connected. */
const knownReaches = lazilyOf((_: Trials) => new Map<number, Reach>());

const isTunedTo = (reach: Reach | undefined, frequency: Hertz): boolean =>
  reach !== undefined && frequency >= reach[0] * (1 + SPARE) && frequency <= reach[1] / (1 + SPARE);

/** So far within the ends of its capacitor a trap must tune to its station, a share of the frequency. */
const SPARE = 0.05;
/** Scores so near are alike, dB. */
const ALIKE: Decibels = 1;
/** So many traps a description may have. */
const MOST_TRAPS = 6;

/** Of clearance what is enough, with loudness added; without a target, the carrier that is left. */
function scoreOf(trial: Trial, stop: number, target: number | undefined): number {
  if (target === undefined || target === stop) return -decibels(trial.tuned(stop).tunedVoltage);
  const { isWithin, level } = trial.figures(target);
  return isWithin ? Math.min(CLEAR, trial.clearanceFrom(target, stop)) + level : Number.NEGATIVE_INFINITY;
}

function choicesFor(
  set: SetDescription,
  stop: number,
  count: number,
): { readonly turns: number; readonly changes: Edit[] }[] {
  const name = untakenName('trap', (one) => set.coils.some((coil) => coil.name === one));
  const stops = stationText(set.place.stations, stop);
  const kinds = isLoop(set.aerial)
    ? COUPLINGS.map((coupling) => ({ kind: 'absorption', coupling }))
    : [{ kind: 'parallel' }, { kind: 'series' }];
  return kinds.flatMap((kind) =>
    TURNS.map((turns) => {
      const trap = { ...kind, stops, coil: name, capacitor: CAPACITOR };
      return {
        turns,
        changes: [
          { path: ['coils', set.coils.length], to: { shape: 'solenoid', name, ...FORMER, turns } },
          count > 0
            ? { path: ['arrangement', 'traps', count], to: trap }
            : { path: ['arrangement', 'traps'], to: [trap] },
        ],
      };
    }),
  );
}

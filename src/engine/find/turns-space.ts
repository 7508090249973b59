import { fieldsOf, type SchemaNode } from '../fields/introspect.ts';
import { arrangement as arrangementSchema } from '../kinds/arrangements/arrangement-schema.ts';
import type { Metres } from '../units/quantities.ts';
import type { BoxDescription } from './box-schema.ts';
import type { FrontEnd, TurnsChosen, WindingChoice } from './choices.ts';
import { coilSpacing } from './chosen-set.ts';
import { windingSize } from './winding-size.ts';

/** Ratios between a number of turns and the next that is tried. */
interface Steps {
  readonly turns: number;
  readonly tap: number;
  readonly second: number;
}

/** From every whole turn to a first look; each number of a grid is one of these. */
const GRIDS: readonly Steps[] = [
  { turns: 1, tap: 1, second: 1 },
  { turns: 1.06, tap: 1.2, second: 1.25 },
  { turns: 1.12, tap: 1.4, second: 1.6 },
  { turns: 1.25, tap: 1.8, second: 2.2 },
  { turns: 1.6, tap: 3, second: 4 },
  { turns: 2, tap: 5, second: 7 },
];
/** The same where a coil tunes. */
const COIL_TUNED_GRIDS: readonly Steps[] = [
  { turns: 1, tap: 1, second: 1 },
  { turns: 1.15, tap: 1, second: 1.4 },
  { turns: 1.3, tap: 1, second: 1.8 },
  { turns: 1.5, tap: 1, second: 2.5 },
  { turns: 2, tap: 1, second: 4 },
  { turns: 2.5, tap: 1, second: 7 },
];
/** Every whole turn. */
export const WHOLE_GRID = 0;
/** The finest of those that leave some out. */
export const FINE_GRID = 1;
export const COARSEST_GRID = GRIDS.length - 1;
/** How far about a set of a grid others are tried, in shares of a step. */
const ABOUT = 0.85;

/** A coil of fewer turns tunes nothing; an aerial coil of more is no loose one. */
const FEWEST = 5;
const FEWEST_SECOND = 2;
const MOST_SECOND = 80;
/** Whole numbers from one to another, each a ratio from the last, both ends included. */
function stepped(from: number, to: number, ratio: number, every = 1): number[] {
  const values: number[] = [];
  for (let n = Math.ceil(from / every) * every; n <= to; ) {
    values.push(n);
    n = Math.max(n + every, Math.round((n * ratio) / every) * every);
  }
  const last = Math.floor(to / every) * every;
  if (last >= from && values[values.length - 1] !== last) values.push(last);
  return values;
}

/** Whether a coil of an arrangement does the tuning. */
export const isCoilTuned = ({ arrangement }: Pick<FrontEnd, 'arrangement'>): boolean =>
  arrangement === 'slider' || arrangement === 'variometer';

/** Sets of one coil, or pair of coils, and one aerial tap: all that the tuned circuit is without its detector. */
export interface TurnsGroup {
  readonly turns: number;
  readonly secondTurns?: number;
  readonly aerialTap?: number;
  /** In rising order, the last is the top of the coil. */
  readonly detectorTaps: readonly number[];
}

/** Which turns and taps a front end may have. */
export interface TurnsSpace {
  /** How many there are, every whole turn counted. */
  readonly count: number;
  /** Coils or pairs of them, and sets, of a grid. */
  readonly size: (grid: number) => { readonly coils: number; readonly sets: number };
  readonly groups: (grid: number) => Generator<TurnsGroup>;
  /**
   * Sets about one of a grid. About one of the fine grid every whole turn and tap, and of two coils, or one that tunes,
   * some; about one of a coarser grid some of each.
   */
  readonly about: (turns: TurnsChosen, grid: number) => Generator<TurnsGroup>;
}

/** One of a group of sets. */
export const turnsWith = ({ detectorTaps, ...turns }: TurnsGroup, tap: number): TurnsChosen =>
  tap === turns.turns ? turns : { ...turns, detectorTap: tap };

/**
 * The turns and taps of a front end that its formers and reels allow.
 * @param box as read
 * @param front end
 */
export function turnsSpace(box: BoxDescription, front: FrontEnd): TurnsSpace {
  const { winding, second, arrangement } = front;
  const every = box.limits?.tapEvery ?? 1;
  const most = winding.most;
  const hasTap = !isCoilTuned(front);
  const hasAerialTap = arrangement === 'tapped';
  const grids = hasTap ? GRIDS : COIL_TUNED_GRIDS;
  const room = second ? roomFor(box, winding, second, front.apart) : () => 0;
  const secondsUpTo = (turns: number): number => Math.min(MOST_SECOND, room(turns));
  const tapsBelow = (turns: number): number => Math.ceil(turns / every) - 1;
  let count = 0;
  for (let turns = FEWEST; turns <= most; turns++) {
    const taps = tapsBelow(turns);
    const seconds = second ? Math.max(0, secondsUpTo(turns) - FEWEST_SECOND + 1) : 1;
    count += seconds * (hasTap ? taps + 1 : 1) * (hasAerialTap ? taps : 1);
  }
  const tapsOf = (steps: Steps) => (turns: number) => stepped(every, turns - 1, steps.tap, every);
  const turnsOf = (steps: Steps) => stepped(FEWEST, most, steps.turns);
  const secondsOf = (steps: Steps) => (turns: number) => stepped(FEWEST_SECOND, secondsUpTo(turns), steps.second);
  function* made(
    turnsTried: readonly number[],
    secondsTried: (turns: number) => readonly number[],
    tapsTried: (turns: number, about?: number) => readonly number[],
    near?: TurnsChosen,
  ): Generator<TurnsGroup> {
    for (const turns of turnsTried) {
      const detectorTaps = [...(hasTap ? tapsTried(turns, near?.detectorTap ?? near?.turns) : []), turns];
      for (const secondTurns of second ? secondsTried(turns) : [undefined])
        for (const aerialTap of hasAerialTap ? tapsTried(turns, near?.aerialTap) : [undefined])
          yield {
            turns,
            ...(secondTurns === undefined ? {} : { secondTurns }),
            ...(aerialTap === undefined ? {} : { aerialTap }),
            detectorTaps,
          };
    }
  }
  return {
    count,
    size(grid) {
      const steps = grids[grid];
      let [coils, sets] = [0, 0];
      for (const turns of turnsOf(steps)) {
        const taps = hasTap ? tapsOf(steps)(turns).length : 0;
        const pairs = second ? secondsOf(steps)(turns).length : 1;
        coils += pairs;
        sets += pairs * (taps + 1) * (hasAerialTap ? taps : 1);
      }
      return { coils, sets };
    },
    groups: (grid) => made(turnsOf(grids[grid]), secondsOf(grids[grid]), tapsOf(grids[grid])),
    about(near, grid) {
      const steps = grids[grid];
      const by = (ratio: number): number => ABOUT * (ratio - 1);
      // Two coils are calculated for every pair of turns, and so is a coil that tunes.
      const isDear = second !== undefined || !hasTap;
      const some = (values: readonly number[], about: number): readonly number[] =>
        isDear || grid > FINE_GRID ? few(values, about) : values;
      return made(
        some(between(near.turns, by(steps.turns), FEWEST, most), near.turns),
        (turns) =>
          some(between(near.secondTurns!, by(steps.second), FEWEST_SECOND, secondsUpTo(turns)), near.secondTurns!),
        (turns, about = turns) => {
          const taps = between(about, by(steps.tap), 1, turns - 1).filter((tap) => tap % every === 0);
          return grid > FINE_GRID ? few(taps, about) : taps;
        },
        near,
      );
    },
  };
}

/** Of whole numbers in rising order the ends, one and its neighbours, and those half way. */
function few(values: readonly number[], about: number): readonly number[] {
  if (values.length <= MOST_ABOUT) return values;
  const last = values.length - 1;
  const at = Math.max(
    0,
    values.findIndex((value) => value >= about),
  );
  const places = new Set([0, at >> 1, at - 1, at, at + 1, (at + last) >> 1, last]);
  return values.filter((_, i) => places.has(i));
}
const MOST_ABOUT = 7;

/** Whole numbers about one. */
function between(about: number, share: number, least: number, most: number): number[] {
  const [from, to] = [Math.max(least, Math.floor(about * (1 - share))), Math.min(most, Math.ceil(about * (1 + share)))];
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);
}

/**
 * How many turns a second coil can have beside so many of the first: what is left of the reel and of the tube.
 * @param apart between two coils end to end, m; undefined where one turns within the other
 */
function roomFor(
  box: BoxDescription,
  main: WindingChoice,
  second: WindingChoice,
  apart: Metres | undefined,
): (turns: number) => number {
  const used = (at: WindingChoice, turns: number) => windingSize(box, at, turns);
  const one = used(second, second.most);
  const on = box.formers[main.former].former;
  const isShared = main.former === second.former && box.formers[main.former].count < 2;
  return (turns) => {
    if (isShared && apart === undefined) return 0;
    const wound = used(main, turns);
    let most = second.most;
    if (main.reel === second.reel) {
      const left = box.wires[main.reel].length - LEADS - wound.wireLength;
      most = Math.min(most, Math.floor((left * second.most) / one.wireLength));
    }
    if (apart === undefined) return most;
    const length = isShared && on.kind === 'tube' ? on.length : Number.POSITIVE_INFINITY;
    const isWithin = (n: number): boolean => {
      const lengths = [wound.windingLength, (one.windingLength * n) / second.most] as const;
      const distance = coilSpacing(lengths, apart);
      return distance <= MOST_DISTANCE && distance + (lengths[0] + lengths[1]) / 2 <= length;
    };
    while (most > 0 && !isWithin(most)) most--;
    return most;
  };
}
/** Off the wire of two coils for their leads, m. */
const LEADS = 1;
/** Between the middles of two coils as a description may have it, m. */
const MOST_DISTANCE =
  fieldsOf(arrangementSchema as unknown as SchemaNode, { kind: 'coupled' }).find(({ key }) => key === 'distance')
    ?.metadata.bounds?.max ?? Number.POSITIVE_INFINITY;

import { fieldsOf, type SchemaNode } from '../fields/introspect.ts';
import { arrangement as arrangementSchema } from '../kinds/arrangements/arrangement-schema.ts';
import type { Metres } from '../units/quantities.ts';
import type { BoxDescription } from './box-schema.ts';
import type { FrontEnd, TurnsChosen, WindingChoice } from './choices.ts';
import { coilSpacing } from './chosen-set.ts';
import { windingSize } from './winding-size.ts';

/** Front ends with no more sets than this are tried whole; of others a grid, and then every whole turn about the best. */
const TRIED_WHOLE = 6000;
/** Steps of the grid. */
const TURNS_STEP = 1.06;
const TAP_STEP = 1.2;
const SECOND_STEP = 1.25;
/** A coil of fewer turns tunes nothing; an aerial coil of more is no loose one. */
const FEWEST = 5;
const FEWEST_SECOND = 2;
const MOST_SECOND = 80;
/** How far about a set of the grid every whole turn is tried, as shares. */
const ABOUT = 0.05;
const ABOUT_TAP = 0.16;

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

const COIL_TUNES = new Set(['slider', 'variometer']);

/** Which turns and taps a front end may have. */
export interface TurnsSpace {
  /** How many there are, every whole turn counted. */
  readonly count: number;
  /** All of them, or a grid. */
  readonly grid: () => Generator<TurnsChosen>;
  /** Every one about one of the grid. */
  readonly about: (turns: TurnsChosen) => Generator<TurnsChosen>;
}

/**
 * The turns and taps of a front end that its formers and reels allow.
 * @param box as read
 * @param front end
 */
export function turnsSpace(box: BoxDescription, front: FrontEnd): TurnsSpace {
  const { winding, second, arrangement } = front;
  const every = box.limits?.tapEvery ?? 1;
  const most = winding.most;
  const isCoilTuned = COIL_TUNES.has(arrangement);
  const hasTap = !isCoilTuned;
  const hasAerialTap = arrangement === 'tapped';
  const room = second ? roomFor(box, winding, second, front.apart) : () => 0;
  const tapsBelow = (turns: number): number => Math.ceil(turns / every) - 1;
  let count = 0;
  for (let turns = FEWEST; turns <= most; turns++) {
    const taps = tapsBelow(turns);
    const seconds = second ? Math.max(0, Math.min(MOST_SECOND, room(turns)) - FEWEST_SECOND + 1) : 1;
    count += seconds * (hasTap ? taps + 1 : 1) * (hasAerialTap ? taps : 1);
  }
  const isWhole = count <= TRIED_WHOLE && !isCoilTuned;
  const step = (ratio: number): number => (isWhole ? 1 : ratio);
  function* made(
    turnsTried: readonly number[],
    secondsTried: (turns: number) => readonly number[],
    tapsTried: (turns: number, about?: number) => readonly number[],
    near?: TurnsChosen,
  ): Generator<TurnsChosen> {
    for (const turns of turnsTried)
      for (const secondTurns of second ? secondsTried(turns) : [undefined])
        for (const aerialTap of hasAerialTap ? tapsTried(turns, near?.aerialTap) : [undefined])
          for (const tap of hasTap ? [...tapsTried(turns, near?.detectorTap ?? near?.turns), turns] : [turns])
            yield {
              turns,
              ...(secondTurns === undefined ? {} : { secondTurns }),
              ...(aerialTap === undefined ? {} : { aerialTap }),
              ...(tap === turns ? {} : { detectorTap: tap }),
            };
  }
  const secondsUpTo = (turns: number): number => Math.min(MOST_SECOND, room(turns));
  return {
    count,
    grid: () =>
      made(
        stepped(FEWEST, most, isCoilTuned ? 1.3 : step(TURNS_STEP)),
        (turns) => stepped(FEWEST_SECOND, secondsUpTo(turns), isCoilTuned ? 1.8 : step(SECOND_STEP)),
        (turns) => stepped(every, turns - 1, step(TAP_STEP), every),
      ),
    about: (near) =>
      made(
        isCoilTuned ? [near.turns] : between(near.turns, ABOUT, FEWEST, most),
        (turns) => between(near.secondTurns!, ABOUT_TAP, FEWEST_SECOND, secondsUpTo(turns)),
        (turns, about = turns) => between(about, ABOUT_TAP, 1, turns - 1).filter((tap) => tap % every === 0),
        near,
      ),
  };
}

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

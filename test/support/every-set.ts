import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { FoundArrangement, WrittenBox } from '../../src/engine/find/box-schema.ts';
import { writtenSet } from '../../src/engine/find/chosen-set.ts';
import { type FindAnswer, findSets } from '../../src/engine/find/find.ts';
import { contenders } from '../../src/engine/find/ranking.ts';
import { readBoxValue } from '../../src/engine/find/read-box.ts';
import { type FindQuestion, findSpace, findWorker, setsSpanned } from '../../src/engine/find/tasks.ts';
import { turnsSpace, WHOLE_GRID } from '../../src/engine/find/turns-space.ts';
import { readValue } from '../../src/engine/set/read.ts';
import { worthOf } from '../../src/engine/vary/objective.ts';
import { type Trial, trialsOf } from '../../src/engine/vary/trial.ts';
import { goalsOf, wantValues } from '../../src/engine/vary/want-values.ts';
import { eachOf } from './each-set-of.ts';

/** Sets so far behind another in everything, every input in its middle, are not ahead of it in the median either, dB. */
const BEHIND = 1.5;
/** Medians taken of one box. */
const MOST_MEDIANS = 60;

const JSON_PLACE = JSON.parse(readFileSync(inRoot('examples/medium-wave-galena.json'), 'utf8'));
const NAMES: readonly string[] = JSON_PLACE.place.stations.map(({ name }: { name: string }) => name);

type Wants = FindQuestion['at']['wants'];

const someWants: fc.Arbitrary<Wants> = fc
  .shuffledSubarray([...NAMES], { minLength: 2, maxLength: 2 })
  .chain(([one, other]) =>
    fc.constantFrom<Wants>(
      [{ kind: 'loudest', station: one }],
      [
        { kind: 'loudest', station: one },
        { kind: 'loudest', station: other },
      ],
      [
        { kind: 'loudest', station: one },
        { kind: 'clear', station: one, from: other },
      ],
      [{ kind: 'most stations' }],
      [{ kind: 'loudest', station: one }, { kind: 'fewest parts' }],
    ),
  );

const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((n) => `${n} mm`);
const few = <T>(one: fc.Arbitrary<T>, maxLength: number) => fc.array(one, { minLength: 1, maxLength });

const someFormer = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ kind: fc.constant('tube'), diameter: millimetres(35, 110), length: millimetres(60, 140) }),
  },
  { weight: 1, arbitrary: fc.constant({ kind: 'plate', innerDiameter: '40 mm', outerDiameter: '130 mm', slots: 11 }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('rod'), diameter: millimetres(8, 12), length: millimetres(120, 200) }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('frame'), side: millimetres(300, 900), depth: millimetres(50, 120) }),
  },
);

const someArrangements = fc.shuffledSubarray<FoundArrangement>(
  ['direct', 'series capacitor', 'tapped', 'coupled', 'slider', 'variometer', 'frame', 'ferrite rod'],
  { minLength: 2, maxLength: 5 },
);

/** Small boxes of parts, not all of which make a set. */
const someBox: fc.Arbitrary<WrittenBox> = fc.record({
  format: fc.constant('faintwave-box/1' as const),
  name: fc.constant('Any box'),
  formers: few(fc.record({ former: someFormer, count: fc.integer({ min: 1, max: 2 }) }), 2),
  wires: few(
    fc.record({
      wire: fc.record({ size: fc.constantFrom('0.4 mm', '0.6 mm', '0.8 mm'), covering: fc.constant('enamel') }),
      length: fc.integer({ min: 6, max: 22 }).map((n) => `${n} m`),
    }),
    2,
  ),
  capacitors: fc
    .tuple(
      fc.integer({ min: 200, max: 520 }).map((pF) => ({ capacitor: { kind: 'variable', maximum: `${pF} pF` } })),
      fc.constantFrom('100 pF', '220 pF').map((capacitance) => ({ capacitor: { kind: 'fixed', capacitance } })),
    )
    .map((both) => [...both]),
  detectors: few(
    fc.constantFrom('galena', 'germanium').map((kind) => ({ detector: { kind } })),
    2,
  ),
  loads: few(
    fc.constantFrom(
      { load: { kind: 'phones', resistance: '4 kΩ' } },
      { load: { kind: 'crystal earpiece', resistor: '100 kΩ' } },
    ),
    2,
  ),
  aerials: fc
    .record({ height: fc.integer({ min: 4, max: 10 }), length: fc.integer({ min: 8, max: 30 }) })
    .map(({ height, length }) => [{ aerial: { kind: 'inverted-L', height: `${height} m`, length: `${length} m` } }]),
  earths: fc.constant([{ earth: { kind: 'rod', length: '1 m' } }]),
  limits: fc.record({ tapEvery: fc.constantFrom(8, 15, 30), arrangements: someArrangements }),
}) as fc.Arbitrary<WrittenBox>;

/** A box with what is wanted of it. */
export const someSearch = fc.record({ box: someBox, wants: someWants });

/**
 * The question of a search, at the place of an example.
 * @returns undefined for a box that spans fewer or more sets than asked for
 */
export function questionOf(
  { box, wants }: { readonly box: WrittenBox; readonly wants: Wants },
  [least, most]: readonly [number, number] = [1, Number.POSITIVE_INFINITY],
): FindQuestion | undefined {
  const read = readBoxValue(box);
  const set = readValue({ ...JSON_PLACE, wants });
  if (!read.ok || !set.ok) throw new Error(JSON.stringify([read, set]));
  const spanned = setsSpanned(read.box, findSpace(read.box));
  if (spanned < least || spanned > most) return undefined;
  const { place, ear } = set.set;
  return {
    box: read.box,
    written: read.written,
    at: { place: JSON_PLACE.place, ear: JSON_PLACE.ear, wants },
    read: { place, ear, wants: set.set.wants! },
  };
}

/** What a set is worth: each want, dB, and less effort as the last. */
interface Tried {
  readonly scores: readonly number[];
  readonly trial: Trial;
  readonly describedAs: string;
}

/**
 * Every set of a box by its own description and the full reception: no estimate, no bound.
 * @returns those that may be the best in anything, with medians
 */
function everySet(question: FindQuestion): { tried: number; best: readonly Tried[] } {
  const { fronts, backs } = findSpace(question.box);
  const goals = goalsOf(question.read);
  const all: Tried[] = [];
  for (const front of fronts)
    for (const turns of eachOf(turnsSpace(question.box, front).groups(WHOLE_GRID)))
      for (const back of backs) {
        const read = readValue(writtenSet(question, { front, back, turns }, question.at, 'Set'));
        if (!read.ok) continue;
        const { now } = trialsOf(read.set);
        const taps = (turns.aerialTap === undefined ? 0 : 1) + (turns.detectorTap === undefined ? 0 : 1);
        const effort = now.parts() + 4 * (front.second ? 2 : 1) + taps;
        all.push({
          scores: [...goals.map(({ goal }) => worthOf(now, goal)), -effort],
          trial: now,
          describedAs: `${front.arrangement} ${JSON.stringify(turns)}`,
        });
      }
  const best = contenders(all, [BEHIND, BEHIND / 2, BEHIND / 4], MOST_MEDIANS).map((one) => ({
    ...one,
    scores: [...wantValues(one.trial).map(({ worth }) => worth), one.scores[one.scores.length - 1]],
  }));
  return { tried: all.length, best };
}

/** What a search missed of a box in which everything was tried. */
export interface Compared {
  readonly tried: number;
  readonly counts: FindAnswer['counts'];
  readonly shown: number;
  /** By which the best set of each want is better than the best that was found, dB; the most of all wants. */
  readonly behind: number;
  /** By which some set that none beats is better than every found one of no more effort, in what it is least better in, dB. */
  readonly missing: number;
  readonly worst: string;
}

/** Below this nobody hears anything, dB: what is worth less is no answer. */
const NOTHING = -150;

/** Searches a box, tries everything in it, and compares. */
export async function compared(question: FindQuestion): Promise<Compared> {
  const { sets, others, counts } = await findSets(question, { work: findWorker(question, {}) });
  const { tried, best } = everySet(question);
  const found = [...sets, ...others].map(({ figures, effort }) => [...figures.map(({ worth }) => worth), -effort]);
  const worth = best.filter(({ scores }) => scores.slice(0, -1).some((score) => score > 0));
  let [behind, missing, worst] = [0, 0, ''];
  for (const { scores, describedAs } of worth) {
    if (scores.slice(0, -1).some((score) => score < NOTHING)) continue;
    const last = scores.length - 1;
    const asEasy = found.filter((one) => one[last] >= scores[last]);
    const short = Math.min(
      99,
      ...asEasy.map((one) => Math.max(...scores.slice(0, last).map((score, k) => score - one[k]))),
    );
    if (short > missing) [missing, worst] = [short, describedAs];
    for (let k = 0; k < last; k++)
      behind = Math.max(behind, scores[k] - Math.max(NOTHING, ...found.map((one) => one[k])));
  }
  return { tried, counts, shown: sets.length, behind, missing, worst };
}

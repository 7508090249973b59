import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { readValue } from '../set/read.ts';
import { trialsOf } from '../vary/trial.ts';
import { wantValues } from '../vary/want-values.ts';
import { lacksOf } from './choices.ts';
import { writtenSet } from './chosen-set.ts';
import { type FindAnswer, findSets } from './find.ts';
import { readBox } from './read-box.ts';
import { type FindQuestion, type FindTask, findSpace, findWorker } from './tasks.ts';
import { eachOf, turnsSpace, WHOLE_GRID } from './turns-space.ts';

// biome-ignore lint/suspicious/noExplicitAny: a box as written in JSON
const beginner = (): any => JSON.parse(readFileSync(inRoot('examples/boxes/beginner.json'), 'utf8'));

const place = {
  name: 'Little Withy',
  stations: [
    { name: 'Saltmarsh Radio', frequency: '1251 kHz', fieldStrength: '8 mV/m', programme: 'speech' as const },
    { name: 'Radio Corvale', frequency: '1449 kHz', fieldStrength: '5 mV/m', programme: 'mixed' as const },
  ],
};
const wants = [{ kind: 'loudest' as const, station: 'Saltmarsh Radio' }];

function questionOf(box: unknown, wanted: FindQuestion['at']['wants'] = wants): FindQuestion {
  const read = readBox(JSON.stringify(box));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const set = readValue({
    ...JSON.parse(readFileSync(inRoot('examples/medium-wave-galena.json'), 'utf8')),
    place,
    wants: wanted,
  });
  if (!set.ok) throw new Error(JSON.stringify(set.problems));
  return {
    box: read.box,
    written: read.written,
    at: { place, wants: wanted },
    read: { ...set.set, wants: set.set.wants! },
  };
}

/** A box small enough to try everything: few turns, taps every five. */
const small = () => ({
  ...beginner(),
  wires: [{ wire: { size: '0.5 mm', covering: 'enamel' }, length: '5 m' }],
  detectors: [{ detector: { kind: 'germanium' } }],
  limits: { tapEvery: 6, arrangements: ['direct', 'tapped'] },
});

/** Every set of a box, as calc reception has it. */
function everySet(question: FindQuestion): { figure: number; effort: number }[] {
  const { fronts, backs } = findSpace(question.box);
  const work = findWorker(question, {});
  return fronts.flatMap((end, front) =>
    backs.flatMap((_, back) =>
      [...eachOf(turnsSpace(question.box, end).groups(WHOLE_GRID))].flatMap((turns) => {
        const { candidates } = work({ do: 'judge', candidates: [{ front, back, turns, scores: [] }] });
        return candidates.map(({ scores }) => ({ figure: scores[0], effort: -scores[scores.length - 1] }));
      }),
    ),
  );
}

describe('find', () => {
  it('misses nothing on a box small enough to try everything', { timeout: 240_000 }, async () => {
    const question = questionOf(small());
    const all = everySet(question);
    expect(all.length).toBeGreaterThan(60);
    const work = findWorker(question, {});
    const { sets, counts } = await findSets(question, { work });
    expect(counts.spanned).toBe(all.length);
    const found = sets.map(({ figures, effort }) => ({ figure: figures[0].figure ?? -200, effort }));
    // Nothing is better by more than 0.3 dB at no more effort than one that was found.
    const missed = all.filter(
      (one) => one.figure > -150 && !found.some((set) => set.effort <= one.effort && set.figure >= one.figure - 0.3),
    );
    expect(missed).toEqual([]);
  });

  it('shows the figures of each set as its own file gives them, and of the same for any number of threads', {
    timeout: 120_000,
  }, async () => {
    const question = questionOf({ ...small(), limits: { tapEvery: 12, arrangements: ['tapped'] } });
    const alone = findWorker(question, {});
    const one = await findSets(question, { work: alone });
    const workers = [findWorker(question, {}), findWorker(question, {})];
    let turn = 0;
    const looks: number[] = [];
    const two = await findSets(question, {
      threads: 2,
      found: ({ length }) => looks.push(length),
      work: async (task: FindTask) => {
        const worker = workers[turn++ % 2];
        await new Promise((resolve) => setTimeout(resolve, turn % 3));
        return worker(task);
      },
    });
    const shown = ({ sets, ...rest }: FindAnswer) => ({
      ...rest,
      sets: sets.map(({ describe: written, ...set }) => ({ ...set, written: written('Set') })),
    });
    expect(shown(two)).toEqual(shown(one));
    // Something to see before all is known, and in the end what was found.
    expect(looks[0]).toBeGreaterThan(0);
    expect(looks[looks.length - 1]).toBe(two.sets.length);
    expect(one.sets.length).toBeGreaterThan(0);
    const first = one.sets[0];
    const read = readValue(first.describe('Set'));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.notes).toEqual([]);
    expect(wantValues(trialsOf(read.set).now)).toEqual(first.figures);
    expect(first.describe('Set')).toEqual(writtenSet(question, first.choice, question.at, 'Set'));
    expect(first.chances[0].chance).toBeGreaterThan(0.5);
  });

  it('stops when it is told to, and says that it did', async () => {
    const question = questionOf(small());
    const signal = { aborted: true };
    const answer = await findSets(question, { work: findWorker(question, {}), signal });
    expect([answer.sets, answer.isComplete, answer.counts.valued]).toEqual([[], false, 0]);
  });

  it('says what a box lacks', () => {
    const lacks = (more: object) => lacksOf(questionOf({ ...beginner(), ...more }).box);
    expect(lacks({})).toEqual([]);
    expect(lacksOf(questionOf({ format: 'faintwave-box/1', name: 'empty' }).box)).toEqual([
      'former',
      'wire',
      'capacitor',
      'detector',
      'load',
      'aerial',
      'earth',
    ]);
    // A tube makes a slider.
    expect(lacks({ capacitors: [] })).toEqual([]);
    expect(lacks({ capacitors: [], limits: { arrangements: ['tapped'] } })).toEqual(['capacitor']);
    expect(lacks({ detectors: [], loads: [] })).toEqual(['detector', 'load']);
    expect(lacks({ wires: [{ wire: { size: '0.5 mm' }, length: '1 m' }] })).toEqual(['room']);
    expect(lacks({ limits: { size: '50 mm' } })).toEqual(['limits']);
  });
});

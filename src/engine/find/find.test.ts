import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { compared, questionOf as searchOf, someSearch } from '../../../test/support/every-set.ts';
import { readValue } from '../set/read.ts';
import { trialsOf } from '../vary/trial.ts';
import { wantValues } from '../vary/want-values.ts';
import { lacksOf } from './choices.ts';
import { writtenSet } from './chosen-set.ts';
import { type FindAnswer, findSets } from './find.ts';
import { readBox } from './read-box.ts';
import { type FindQuestion, type FindTask, findWorker } from './tasks.ts';

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

describe('find', () => {
  it('misses nothing on boxes small enough to receive every set in full', async () => {
    const questions = fc
      .sample(someSearch, { numRuns: 200, seed: 3 })
      .flatMap((search) => searchOf(search, [60, 110]) ?? [])
      .slice(0, 3);
    expect(questions.length).toBe(3);
    for (const question of questions) {
      const { tried, counts, behind, missing, worst } = await compared(question);
      expect(tried).toBe(counts.spanned);
      expect(counts.untried).toBe(0);
      expect(behind, worst).toBeLessThan(0.3);
      expect(missing, worst).toBeLessThan(0.3);
    }
  });

  it('receives every set of a small box where estimates tell little', async () => {
    const box = { ...small(), limits: { tapEvery: 6, arrangements: ['tapped'] } };
    const question = questionOf(box, [{ kind: 'most stations' }]);
    const { counts } = await findSets(question, { work: findWorker(question, {}) });
    expect(counts.spanned).toBeLessThan(500);
    expect(counts.received).toBe(counts.spanned);
  });

  it('leaves no set of a box untold: each is valued, ruled out or counted as not tried', async () => {
    const question = questionOf({ ...beginner(), limits: { tapEvery: 2, arrangements: ['direct', 'tapped'] } });
    const { counts } = await findSets(question, { work: findWorker(question, {}) });
    expect(counts.untried).toBe(0);
    expect(counts.ruledOut).toBeGreaterThan(0);
    expect(counts.valued + counts.ruledOut).toBeGreaterThanOrEqual(counts.spanned);
  });

  it('shows the figures of each set as its own file gives them, and of the same for any number of threads', async () => {
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

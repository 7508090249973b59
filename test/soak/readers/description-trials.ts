import fc from 'fast-check';
import { readKept } from '../../../src/app/state/kept.ts';
import { readBox } from '../../../src/engine/find/read-box.ts';
import { receive } from '../../../src/engine/reception/path/receive.ts';
import { linkOf, textOfLink } from '../../../src/engine/set/link.ts';
import { type ReadResult, readText } from '../../../src/engine/set/read.ts';
import { writeText } from '../../../src/engine/set/write.ts';
import { problemSentence, readNote } from '../../../src/outputs/words/index.ts';
import { arbitrarySet } from '../../support/arbitrary-set.ts';
import { EXAMPLE_SETS, exampleTexts } from '../base-files.ts';
import { changedJson } from '../changed-json.ts';
import { changedText } from '../changed-text.ts';
import { mustBeSound, mustSay } from '../sound-values.ts';
import { trial } from '../trial.ts';

const SETS = exampleTexts('', '.json');
const BOXES = exampleTexts('boxes', '.json');
const TOKENS = [
  '"kind"',
  '"coils"',
  '"turns": ',
  '"stations": [',
  'null',
  'true',
  '1e999',
  '-',
  '// ',
  '"__proto__": {',
];

const json = (texts: readonly string[]) => fc.constantFrom(...texts.map((text) => JSON.parse(text) as unknown));
const written = (value: unknown): string => JSON.stringify(value) ?? 'null';
const changedSets = fc.oneof(
  { weight: 3, arbitrary: changedJson(json(SETS)).map(written) },
  { weight: 1, arbitrary: changedJson(arbitrarySet(0.3)).map(written) },
);

/** A set that reads is written and read as the same; one that does not says why. */
function checkRead(text: string): ReadResult {
  const read = readText(text);
  if (!read.ok) {
    mustSay(read.problems.map(problemSentence), text);
    return read;
  }
  for (const note of read.notes) mustSay([readNote(note)], text);
  mustBeSound(read.set, 'the set');
  const again = readText(writeText(read.written));
  if (!again.ok) throw new Error(`what was written is refused: ${again.problems.map(problemSentence).join('; ')}`);
  if (JSON.stringify(again.set) !== JSON.stringify(read.set)) throw new Error('what was written reads as another set');
  return read;
}

export const DESCRIPTION_TRIALS = [
  trial({
    name: 'sets',
    group: 'readers',
    says: 'a changed description reads as a set that is written and read as the same, or every problem is said with its place',
    cases: changedSets,
    check: (text) => void checkRead(text),
    batch: 500,
    share: 4,
    longest: 20,
  }),
  trial({
    name: 'set texts',
    group: 'readers',
    says: 'so does a text with pieces put in, left out, repeated or cut off',
    cases: changedText(fc.constantFrom(...SETS), TOKENS),
    check: (text) => void checkRead(text),
    batch: 500,
    share: 2,
    longest: 20,
  }),
  trial({
    name: 'receptions',
    group: 'readers',
    says: 'a changed description that reads is received, every figure of every station a number',
    cases: changedSets,
    check: (text) => {
      const read = readText(text);
      fc.pre(read.ok);
      const { stations } = receive(read.set);
      for (const { warnings: _warnings, ...figures } of stations) mustBeSound(figures, 'the reception');
    },
    batch: 20,
    share: 4,
    longest: 20,
  }),
  trial({
    name: 'boxes',
    group: 'readers',
    says: 'a changed box of parts reads, or every problem is said with its place',
    cases: fc.oneof(changedJson(json(BOXES)).map(written), changedText(fc.constantFrom(...BOXES), TOKENS)),
    check: (text) => {
      const read = readBox(text);
      if (read.ok) mustBeSound(read.box, 'the box');
      else mustSay(read.problems.map(problemSentence), text);
    },
    batch: 500,
    share: 2,
    longest: 20,
  }),
  trial({
    name: 'links',
    group: 'readers',
    says: 'a changed link gives the text of a description, or says what is wrong with it',
    cases: changedText(fc.constantFrom(...EXAMPLE_SETS.map((set, k) => linkOf(set, JSON.parse(SETS[k])))), [
      'set1=',
      'set2=',
      '-',
      '_',
      'AAAA',
      '7b7b',
      '%20',
    ]),
    check: (fragment) => {
      const link = textOfLink(fragment);
      if ('problem' in link) mustSay([problemSentence(link.problem)], fragment);
      else checkRead(link.text);
    },
    batch: 500,
    share: 1,
    longest: 20,
  }),
  trial({
    name: 'kept documents',
    group: 'readers',
    says: 'a changed document of the browser’s storage is taken up or set aside',
    cases: changedJson(
      json(SETS).map((set) => ({ revision: 7, written: set, fileName: 'a.json', isSaved: true, station: 1, tab: 'b' })),
    ).map(written),
    check: (text) => mustBeSound(readKept(text)?.revision ?? 0, 'the revision'),
    batch: 1000,
    share: 1,
    longest: 20,
  }),
];

import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readText } from '../../src/engine/set/read.ts';
import { matching } from '../../src/engine/vary/match.ts';
import { suggest } from '../../src/engine/vary/suggest.ts';
import { trialsOf } from '../../src/engine/vary/trial.ts';
import { coverageWords, matchWords, suggestionWords } from '../../src/outputs/words/index.ts';

const examples = readdirSync('examples').filter((file) => file.endsWith('.json'));

it.each(examples)('every suggestion and match of %s has words', (file) => {
  const read = readText(readFileSync(`examples/${file}`, 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  const trials = trialsOf(read.set);
  for (const station of [0, read.set.place.stations.length - 1]) {
    const sentences = [
      ...suggest(trials, station).map(suggestionWords),
      ...matching(trials, station, { taps: [9], withCoverage: true }).flatMap((one) => [
        matchWords(one),
        coverageWords(one) ?? matchWords(one),
      ]),
    ];
    expect(sentences.length).toBeGreaterThan(0);
    for (const one of suggest(trials, station)) expect(suggestionWords(one)).toMatch(/: .*(\d|dial)/);
    for (const sentence of sentences) {
      expect(sentence.length).toBeGreaterThan(5);
      expect(sentence).not.toMatch(/NaN|undefined|Infinity|\[object|(?:arrangement|coils|aerial|load|detector)[.[]/);
    }
  }
});

it('says stations lost and a dial that moved, and nothing of trifles', () => {
  const before = { stationsHeard: 6, lowest: 470e3, highest: 1585e3 };
  const words = (after: typeof before) => coverageWords({ coverage: { before, after } });
  expect(words({ stationsHeard: 1, lowest: 415e3, highest: 762e3 })).toBe(
    'Of six stations heard one remains, and the dial then covers 415–762\u00a0kHz instead of 470–1585\u00a0kHz.',
  );
  expect(words({ ...before, stationsHeard: 7, highest: 1550e3 })).toBeUndefined();
  expect(words({ ...before, stationsHeard: 0 })).toBe('Of six stations heard none remains.');
});

it('heads a suggestion by its loudness where nobody can read a change of its clearance', () => {
  const read = readText(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  if (!read.ok) throw new Error('example');
  const [one] = suggest(trialsOf(read.set), 0);
  const outlook = (clearance: number, level: number) => ({ ...one.before, bandwidth: 9e3, clearance, level });
  const words = (clearance: number) =>
    suggestionWords({ ...one, wish: 'clearance', before: outlook(23.1, 40), after: outlook(clearance, 42) });
  expect(words(23.4)).toMatch(/: \+2\.0 dB(,|$)/);
  expect(words(26)).toMatch(/: clearance 26 dB \(now 23 dB\), 2 dB louder/);
});

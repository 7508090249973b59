import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { type Path, readValue, withValueAt } from '../../../../engine/index.ts';
import { problemText } from './problems.ts';

const example = (file: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../../examples/${file}`, import.meta.url), 'utf8'));

/** Every place of a description, parts and lists too. */
const placesIn = (value: unknown, at: Path = []): Path[] =>
  typeof value !== 'object' || value === null
    ? [at]
    : [
        at,
        ...Object.entries(value).flatMap(([key, inner]) =>
          placesIn(inner, [...at, Array.isArray(value) ? Number(key) : key]),
        ),
      ];

const WRONG = [undefined, null, {}, [], 'abc', -1e9];

it('what is expected is said in words: no key of the file that is two words in one', () => {
  const said = new Set<string>();
  for (const file of ['two-tuned-circuits.json', 'frame-aerial.json']) {
    const written = example(file);
    for (const path of placesIn(written).slice(1))
      for (const wrong of WRONG) {
        const read = readValue(withValueAt(written, path, wrong));
        if (!read.ok) for (const problem of read.problems) said.add(problemText(problem).expected);
      }
  }
  expect(said.size).toBeGreaterThan(30);
  expect([...said].filter((words) => /\b[a-z]{2,}[A-Z][a-z]/.test(words))).toEqual([]);
});

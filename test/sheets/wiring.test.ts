import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import type { Point } from '../../src/outputs/scene/scene.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { lineText, netsOf, type WiringLine, wiringOf } from '../../src/outputs/sheets/board/wiring.ts';
import { BASE, SETS } from '../support/every-arrangement.ts';
import { someSet } from '../support/random-sets.ts';
import { wiringDisagreements, wiringFaults } from './board-checks.ts';

/** Terminals with more than two wires. */
function thrice(lines: readonly WiringLine[]): string[] {
  const ends = lines.flatMap(({ from, to }) => [from, to]);
  return [...new Set(ends)].filter((t) => ends.filter((end) => end === t).length > 2);
}

const check = (set: SetDescription): string[] => {
  const parts = boardParts(set);
  // In the order of the parts, and in short chains between terminals that lie anywhere.
  const at = new Map(
    parts.parts.flatMap((p) => p.terminals).map((t, i): [string, Point] => [t, [(i * 73) % 170, (i * 151) % 199]]),
  );
  return [wiringOf(netsOf(parts)), wiringOf(netsOf(parts), at)].flatMap(({ lines }) => {
    const list = lines.map(lineText);
    return [...wiringDisagreements(list, parts), ...wiringFaults(list, parts), ...thrice(lines)];
  });
};

const examples = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));

describe('the wiring list joins exactly what the circuit joins', () => {
  test.each(examples)('example %s', (file) => {
    const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
    if (!read.ok) throw new Error('does not read');
    expect(check(read.set)).toEqual([]);
  });

  test.each(Object.keys(SETS))('%s', (name) => {
    const read = readValue({ ...BASE, ...SETS[name] });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(check(read.set)).toEqual([]);
  });

  test('a few hundred sets by chance', () => {
    let seen = 0;
    fc.assert(
      fc.property(someSet, (set) => {
        if (!set) return;
        seen++;
        expect(check(set)).toEqual([]);
      }),
      { numRuns: 600, seed: 11 },
    );
    expect(seen).toBeGreaterThan(300);
  });
});

test('a wire left out, doubled up elsewhere or misread is found', () => {
  const read = readValue({ ...BASE, ...SETS.coupled });
  if (!read.ok) throw new Error('does not read');
  const parts = boardParts(read.set);
  const lines = wiringOf(netsOf(parts)).lines.map(lineText);
  lines.forEach((line, i) => {
    expect(wiringDisagreements(lines.toSpliced(i, 1), parts), `without ${line}`).not.toEqual([]);
    expect(wiringFaults(lines.toSpliced(i, 1), parts), `without ${line}`).not.toEqual([]);
  });
  expect(wiringDisagreements([...lines, 'A → P1'], parts)).not.toEqual([]);
  expect(() => wiringDisagreements([...lines, 'A → nowhere'], parts)).toThrow(RangeError);
  const turned = lines.map((l) =>
    l
      .replace(/D1 anode/g, '?')
      .replace(/D1 cathode/g, 'D1 anode')
      .replace(/\?/g, 'D1 cathode'),
  );
  expect(wiringDisagreements(turned, parts)).not.toEqual([]);
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { receive } from '../src/engine/reception/path/receive.ts';
import { readValue } from '../src/engine/set/read.ts';
import { problemSentence } from '../src/outputs/words/index.ts';
import { arbitrarySet } from './support/arbitrary-set.ts';

/** Places in an answer where a number is not one. */
function badNumbers(value: unknown, path = ''): string[] {
  if (/parts.coils.\d.(wireLength|dcResistance)$/.test(path)) return [];
  if (typeof value === 'number') return Number.isNaN(value) ? [path] : [];
  if (typeof value === 'string') return /NaN|undefined|Infinity/.test(value) ? [`${path}: ${value}`] : [];
  if (value instanceof Float64Array) return value.some(Number.isNaN) ? [path] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`));
}

describe('any set the schema allows', () => {
  it('is read with problems that have a path, or received without a figure that is not a number', () => {
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(arbitrarySet(), (written) => {
        const result = readValue(JSON.parse(JSON.stringify(written)));
        if (!result.ok) {
          seen.refused++;
          for (const problem of result.problems) {
            expect(problem.path).not.toBe('');
            expect(problemSentence(problem)).not.toMatch(/undefined|\[object/);
          }
          return;
        }
        seen.read++;
        expect(badNumbers(receive(result.set))).toEqual([]);
      }),
      {
        numRuns: Number(process.env.RUNS ?? 60),
        seed: process.env.SEED ? Number(process.env.SEED) : 21,
      },
    );
    expect(seen.read).toBeGreaterThan(seen.refused / 2);
    if (process.env.RUNS) console.log(seen);
  });
});

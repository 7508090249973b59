import fc from 'fast-check';
import { expect, it } from 'vitest';
import { withValueAt } from '../../engine/index.ts';
import { DEMO } from '../state/examples.ts';
import { differences, differenceTexts } from './differences.ts';

const demo: unknown = JSON.parse(DEMO.text);

it('says in the words of the page what was changed, added and removed', () => {
  const turns = withValueAt(demo, ['coils', 0, 'turns'], 60);
  const noted = withValueAt(turns, ['notes'], 'New wire');
  const lines = differenceTexts(demo, noted, 9);
  expect(lines).toHaveLength(2);
  expect(lines.join('\n')).toMatch(/Turns: \d+ → 60/);
  expect(differenceTexts(noted, turns, 9)[0]).toMatch(/New wire removed|→/);
  expect(differenceTexts(demo, noted, 1)[1]).toBe('and 1 more');
  expect(differenceTexts(demo, structuredClone(demo), 9)).toEqual([]);
});

it('the differences, made in the earlier description, give the later one', () => {
  fc.assert(
    fc.property(
      fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.jsonValue({ maxDepth: 2 })),
      fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.jsonValue({ maxDepth: 2 })),
      (before, after) => {
        const values = differences(before, after);
        const made = values.reduce<unknown>(
          (now, { path, after: value }) => put(now, path, value),
          structuredClone(before),
        );
        expect(JSON.parse(JSON.stringify(made))).toEqual(JSON.parse(JSON.stringify(after)));
      },
    ),
  );
});

/** Removed rows are taken from the end, as a list that became shorter is told. */
function put(now: unknown, path: readonly (string | number)[], value: unknown): unknown {
  if (path.length === 0) return value;
  const [key, ...rest] = path;
  if (Array.isArray(now)) {
    const copy = now.slice();
    if (rest.length === 0 && value === undefined) copy.length = Math.min(copy.length, Number(key));
    else copy[Number(key)] = put(copy[Number(key)], rest, value);
    return copy;
  }
  const copy: Record<string, unknown> = { ...(now as object) };
  if (rest.length === 0 && value === undefined) delete copy[String(key)];
  else copy[String(key)] = put(copy[String(key)], rest, value);
  return copy;
}

// Things as people measured and published them: reference/measured-in-practice.json, each row with its source.
import { expect, test } from 'vitest';
import reference from '../../../reference/measured-in-practice.json' with { type: 'json' };
import { CALCULATIONS } from './index.ts';

interface Row {
  readonly what: string;
  readonly input: unknown;
  readonly key: string;
  readonly measured: number;
  readonly source: string;
}
const rows = reference.rows as readonly Row[];

function rangeOf({ what, input, key }: Row): readonly [number, number] {
  const result = CALCULATIONS.find(({ name }) => name === what)!.run(input);
  if (!result.ok) throw new Error(`${what}: ${JSON.stringify(result.problems)}`);
  const { range, value } = result.answer[key] as { range: readonly [number, number]; value: number };
  // What is calculated lies within what is likely, rounding apart.
  expect(value).toBeGreaterThanOrEqual(range[0] * 0.999);
  expect(value).toBeLessThanOrEqual(range[1] * 1.001);
  return range;
}

test('at least 85 % of what was measured lies within its range', () => {
  const outside = rows.filter((row) => {
    const [low, high] = rangeOf(row);
    return !(row.measured >= low && row.measured <= high);
  });
  const told = outside.map((row) => `${row.what} ${row.key} ${row.measured}, ${rangeOf(row)} (${row.source})`);
  expect(outside.length / rows.length, told.join('\n')).toBeLessThanOrEqual(0.15);
});

test('ranges of parts are no wider than 3 to 1 in the geometric mean', () => {
  const parts = rows.filter(({ what }) => what !== 'groundwave');
  const logs = parts.map((row) => {
    const [low, high] = rangeOf(row);
    return Math.log(high / low);
  });
  const mean = Math.exp(logs.reduce((sum, x) => sum + x, 0) / logs.length);
  expect(mean).toBeLessThan(3);
  // Nor so narrow that they could not hold anything.
  expect(mean).toBeGreaterThan(1.3);
});

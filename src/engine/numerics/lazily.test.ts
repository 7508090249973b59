import { expect, test } from 'vitest';
import { fromMap } from './lazily.ts';

test('of a map with a limit the oldest value is forgotten, and made anew when it is asked for', () => {
  const known = new Map<number, number>();
  const made: number[] = [];
  const of = (key: number): number =>
    fromMap(
      known,
      key,
      () => {
        made.push(key);
        return 10 * key;
      },
      3,
    );
  for (const key of [1, 2, 3, 2, 4, 3]) expect(of(key)).toBe(10 * key);
  expect(made).toEqual([1, 2, 3, 4]);
  expect([...known.keys()]).toEqual([2, 3, 4]);
  expect(of(1)).toBe(10);
  expect(made).toEqual([1, 2, 3, 4, 1]);
});

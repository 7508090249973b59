import { expect, it } from 'vitest';
import { valueBetween } from './read-off.ts';

it('a value between two points lies on the straight line, and there is none off the ends', () => {
  const points = [
    [0, 10],
    [2, 20],
    [6, 0],
  ] as const;
  const at = (x: number) => valueBetween(points, x);
  expect([at(0), at(1), at(2), at(5), at(6)]).toEqual([10, 15, 20, 5, 0]);
  expect([at(-0.1), at(6.1), valueBetween([], 1), valueBetween([[3, 7]], 3)]).toEqual([
    undefined,
    undefined,
    undefined,
    7,
  ]);
});

import { expect, it } from 'vitest';
import type { Dial } from '../../../../engine/index.ts';
import { dialScale, evenMarks, placeNames, roundMarks } from './dial-scale.ts';

const points = Array.from({ length: 100 }, (_, i) => {
  const position = i / 99;
  return {
    position,
    scale: position * 180,
    frequency: 1.6e6 / Math.sqrt(1 + 8 * position),
    loadedQ: 40,
    bandwidth: 2e4,
  };
});
const dial = { points, lowest: points[99].frequency, highest: points[0].frequency, swing: 180 } as unknown as Dial;

it('goes from position to place and frequency and back', () => {
  const scale = dialScale(dial)!;
  for (const position of [0, 0.013, 0.4, 0.77, 1]) {
    expect(scale.positionAlong(scale.alongAt(position))).toBeCloseTo(position, 9);
    expect(scale.positionOf(scale.frequencyAt(position))).toBeCloseTo(position, 9);
  }
  expect(scale.alongAt(1)).toBe(0);
  expect(scale.frequencyAt(0)).toBe(1.6e6);
  expect(scale.positionOf(9e6)).toBe(0);
});

it('has nothing to turn where only one frequency is tuned', () => {
  expect(dialScale({ ...dial, points: points.slice(0, 1) })).toBeUndefined();
});

it('puts round numbers and names where there is room', () => {
  const marks = roundMarks(533, 1600, [500, 100, 50], (f) => f / 2000, 0.04);
  expect(marks.slice(0, 2).map((mark) => mark.text)).toEqual(['1000', '1500']);
  for (const a of marks)
    for (const b of marks) if (a !== b) expect(Math.abs(a.along - b.along)).toBeGreaterThan(0.0399);
  const places = placeNames(
    [
      { along: 0.5, width: 100 },
      { along: 0.51, width: 100 },
      { along: 0.52, width: 100 },
      { along: 0, width: 80 },
    ],
    2,
    600,
  );
  expect(places).toEqual([{ row: 0, middle: 300 }, { row: 1, middle: 306 }, undefined, { row: 0, middle: 40 }]);
});

it.each([
  [470, 1590, 100],
  [148, 290, 10],
  [880, 935, 10],
  [601, 606, 1],
])('labels a dial from %i to %i kHz at multiples of %i, and often enough', (lowest, highest, step) => {
  const marks = evenMarks(lowest, highest, (f) => Math.log(f / lowest) / Math.log(highest / lowest), 0.04);
  expect(marks.length).toBeGreaterThanOrEqual(4);
  for (const { text } of marks) expect(Number(text) % step).toBe(0);
});

import { expect, it } from 'vitest';
import { readingsFit } from './readings-fit.ts';

const plotWith = (last: number) => {
  const points = [0, 1, 2, 3].map((i) => ({ x: i, y: i, ...(i === 3 && { isSuspect: true }) }));
  return {
    x: { key: 'frequency' },
    y: { key: 'position' },
    points,
    curve: points.map(({ x }) => ({ x, y: x })),
    residuals: [0.01, -0.02, 0.01, last],
  };
};
const textsOf = (last: number): string =>
  JSON.stringify(readingsFit({ kind: 'dial', name: 'Dial readings', plot: plotWith(last) }));

it('a point left out that is off the scale of what is left says how far off it is', () => {
  expect(textsOf(0.17)).toContain('off by 0.17');
  expect(textsOf(-0.17)).toContain('off by −0.17');
  expect(textsOf(0.015)).not.toContain('off by');
});

import { expect, it } from 'vitest';
import { besideCalculated } from './beside-calculated.ts';

const of = (value: number, low: number, high: number) => ({
  value,
  standardError: (high - low) / 3.29,
  range: [low, high] as const,
});
const linesAt = (figures: Parameters<typeof besideCalculated>[0]['figures']) => {
  const scene = besideCalculated({ name: 'Earth', figures });
  return {
    scene,
    bars: scene.items.flatMap((item) =>
      item.kind === 'line' && item.width === 2 ? [{ from: item.from[0], to: item.to[0], stroke: item.stroke }] : [],
    ),
    dots: scene.items.flatMap((item) => (item.kind === 'circle' ? [item.centre[0]] : [])),
  };
};

it('draws the range of each on one scale', () => {
  const { bars, dots, scene } = linesAt([
    { label: 'Resistance', quantity: 'resistance', measured: of(40, 35, 45), calculated: of(60, 30, 90) },
  ]);
  const [calculated, measured] = bars;
  expect(measured.stroke).toBe('accent');
  // Ten ohms beside sixty.
  expect((measured.to - measured.from) / (calculated.to - calculated.from)).toBeCloseTo(1 / 6, 9);
  expect((dots[0] - dots[1]) / (calculated.to - calculated.from)).toBeCloseTo(20 / 60, 9);
  expect(scene.description).toContain('measured 40 Ω');
  expect(scene.description).toContain('calculated 60 Ω');
});

it('an end that readings do not set lies at the edge', () => {
  const { bars } = linesAt([{ label: 'Q', measured: of(300, 200, Number.POSITIVE_INFINITY) }]);
  const { bars: other } = linesAt([{ label: 'Q', measured: of(300, 200, 400) }]);
  expect(bars).toHaveLength(1);
  expect(Number.isFinite(bars[0].to)).toBe(true);
  expect(bars[0].to).toBeGreaterThan(other[0].to);
});

it('ranges that are far apart go by logarithms', () => {
  const { bars } = linesAt([
    { label: 'Earth', quantity: 'resistance', measured: of(20, 10, 40), calculated: of(500, 250, 1000) },
  ]);
  const [calculated, measured] = bars;
  expect(measured.to - measured.from).toBeCloseTo(calculated.to - calculated.from, 6);
});

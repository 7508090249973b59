import { describe, expect, test } from 'vitest';
import type { PointId } from '../model/points.ts';
import type { WaveSpec } from '../model/wave-spec.ts';
import { createWaves } from '../model/waves.ts';
import { averagedOver, PixelCoverage } from './pixel-coverage.ts';

const CARRIER = 200e3;
const spec: WaveSpec = {
  carrier: CARRIER,
  depth: 0.6,
  programme: { kind: 'tones', tones: [{ frequency: 1000, share: 1 }] },
  atAerial: 1,
  atTuned: 1,
  atDetector: 1,
  loadedQ: 40,
  neighbours: [],
  detector: 'perfect',
  detectorId: 'perfect',
  load: { resistance: 20e3, capacitance: 1e-9 },
};
const waves = createWaves(spec);
const steady = createWaves({ ...spec, depth: 0 });
const ROWS = 40;
const FINE = 16;

/** The waves by their definition (textbook), not by the model: what the picture is of. */
const DEFINITIONS: Partial<Record<PointId, (t: number) => number>> = {
  carrier: (t) => Math.cos(2 * Math.PI * CARRIER * t),
  modulated: (t) => (1 + 0.6 * Math.cos(2 * Math.PI * 1000 * t)) * Math.cos(2 * Math.PI * CARRIER * t),
  programme: (t) => 0.6 * Math.cos(2 * Math.PI * 1000 * t),
};

interface Drawing {
  readonly point: PointId;
  readonly from: number;
  readonly span: number;
  readonly columns: number;
  readonly radius: number;
}

const placed = (point: PointId) => {
  const { high } = waves.scale(point);
  return { zero: ROWS / 2, k: (ROWS / 2 - 3) / high };
};

function drawn({ point, from, span, columns, radius }: Drawing, of = waves): PixelCoverage {
  return new PixelCoverage().draw({
    extremes: (t0, t1, parts, min, max) => of.extent(point, t0, t1, parts, min, max),
    cycles: of.cycles(point),
    from,
    span,
    columns,
    rows: ROWS,
    radius,
    ...placed(point),
  });
}

/**
 * One column by brute force: 16 × 16 points in each pixel of the window it stands for, each asked whether the pen's round
 * tip passes over it, from values of the definition so close together that a step is far below a point's size.
 */
function supersampled({ point, from, span, columns, radius }: Drawing, column: number, width: number): number[] {
  const value = DEFINITIONS[point]!;
  const { zero, k } = placed(point);
  const px = span / columns;
  const across = Math.max(FINE, Math.round(width * FINE));
  const shares = new Array<number>(ROWS).fill(0);
  const left = column + 0.5 - width / 2;
  const steps = Math.ceil(2 * radius * Math.max(256, 96 * px * CARRIER));
  for (let a = 0; a < across; a++) {
    const x = left + ((a + 0.5) * width) / across;
    let top = Number.POSITIVE_INFINITY;
    let bottom = Number.NEGATIVE_INFINITY;
    for (let s = 0; s <= steps; s++) {
      const d = radius * ((2 * s) / steps - 1);
      const h = Math.sqrt(Math.max(0, radius * radius - d * d));
      const y = zero - k * value(from + (x + d) * px);
      top = Math.min(top, y - h);
      bottom = Math.max(bottom, y + h);
    }
    for (let row = 0; row < ROWS; row++)
      for (let b = 0; b < FINE; b++) {
        const y = row + (b + 0.5) / FINE;
        if (y >= top && y <= bottom) shares[row] += 1 / (FINE * across);
      }
  }
  return shares;
}

describe('the share of each pixel that a trace covers', () => {
  test('agrees with supersampling 16 by 16 at 200 spans, from a hundredth of a cycle in a px to 40 cycles', () => {
    const points = ['carrier', 'modulated', 'programme'] as const;
    let sum = 0;
    let count = 0;
    for (let n = 0; n < 200; n++) {
      const cycles = 0.01 * 4000 ** (n / 199);
      const point = points[n % 3];
      const columns = 9;
      const drawing = {
        point,
        from: 0.0001234 + n * 1.37e-6,
        span: (columns * cycles) / CARRIER,
        columns,
        radius: [0.8, 1.3, 2][Math.floor(n / 3) % 3],
      };
      const map = drawn(drawing);
      const px = drawing.span / columns;
      const width = averagedOver(waves.cycles(point).map((cycle) => cycle / px));
      const exact = supersampled(drawing, 4, width);
      for (let row = 0; row < ROWS; row++) {
        const wrong = Math.abs(map.shares[row * columns + 4] / 255 - exact[row]);
        sum += wrong;
        count++;
        // A grid of 16 is itself uncertain by one part in 16 of an edge.
        expect(wrong, `${point}, ${cycles} cycles a px, row ${row}`).toBeLessThan(1 / FINE);
      }
    }
    expect(sum / count).toBeLessThan(0.004);
  });

  test('a steady carrier leaves no pattern along the picture wherever its cycles are narrower than 4 px', () => {
    for (let cycle = 0.013; cycle < 4; cycle *= 1.043) {
      const columns = 400;
      const map = drawn(
        { point: 'carrier', from: 1.234e-4, span: columns / cycle / CARRIER, columns, radius: 0.8 },
        steady,
      );
      for (let row = 0; row < ROWS; row++) {
        const line = map.shares.subarray(row * columns, (row + 1) * columns);
        // 4 of 255: below what an eye tells apart in a grey (about 1 % of contrast; common practice, no source).
        expect(Math.max(...line) - Math.min(...line), `${cycle} px a cycle, row ${row}`).toBeLessThanOrEqual(4);
      }
    }
  });

  test('cycles come out of the grey without a jump while the picture zooms in', () => {
    let before: Uint8ClampedArray | undefined;
    for (let cycle = 2; cycle < 20; cycle *= 1.004) {
      const map = drawn({ point: 'carrier', from: 0, span: 1 / cycle / CARRIER, columns: 1, radius: 0.8 }, steady);
      if (before) {
        let change = 0;
        for (let row = 0; row < ROWS; row++) change += Math.abs(map.shares[row] - before[row]) / ROWS;
        expect(change, `${cycle} px a cycle`).toBeLessThan(3);
      }
      before = map.shares.slice();
    }
  });
});

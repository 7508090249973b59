import { describe, expect, test } from 'vitest';
import type { WaveSpec } from './wave-spec.ts';
import { createWaves } from './waves.ts';

const CARRIER = 200e3;
const COLUMNS = 1280;
const spec: WaveSpec = {
  carrier: CARRIER,
  depth: 0,
  programme: { kind: 'tones', tones: [{ frequency: 1000, share: 1 }] },
  atAerial: 0.05,
  atTuned: 2,
  atDetector: 1,
  loadedQ: 40,
  neighbours: [],
  detector: 'perfect',
  detectorId: 'perfect',
  load: { resistance: 20e3, capacitance: 1e-9 },
};
const waves = createWaves(spec);
const POINTS = ['carrier', 'modulated', 'tuned', 'detector', 'phones'] as const;

const columnsOf = (point: (typeof POINTS)[number], from: number, span: number) => {
  const min = new Float64Array(COLUMNS);
  const max = new Float64Array(COLUMNS);
  waves.drawn(point, from, from + span, COLUMNS, min, max);
  return { min, max };
};
const spanWith = (cyclesPerColumn: number): number => (cyclesPerColumn * COLUMNS) / CARRIER;

describe('what is drawn of a steady carrier', () => {
  test.each(POINTS)('%s: its edges are straight wherever a column holds more than a third of a cycle', (point) => {
    const { low, high } = waves.scale(point);
    for (let cycles = 1 / 3 + 1e-6; cycles < 12; cycles *= 1.07) {
      const { min, max } = columnsOf(point, 0.000123456, spanWith(cycles));
      for (const edge of [min, max])
        expect(Math.max(...edge) - Math.min(...edge), `${cycles} cycles`).toBeLessThan(0.01 * (high - low));
    }
  });

  test.each(POINTS)('%s: with six columns to a cycle or more it is the wave itself', (point) => {
    const { low, high } = waves.scale(point);
    for (const cycles of [1 / 6, 1 / 8, 1 / 13.7, 1 / 40]) {
      const span = spanWith(cycles * 0.999);
      const { min, max } = columnsOf(point, 0.000123456, span);
      for (let i = 0; i < COLUMNS; i++) {
        const v = waves.at(point, 0.000123456 + ((i + 0.5) * span) / COLUMNS);
        expect(v).toBeGreaterThanOrEqual(min[i] - 1e-3 * (high - low));
        expect(v).toBeLessThanOrEqual(max[i] + 1e-3 * (high - low));
        // No taller than the steepest stretch of a cosine in one column.
        expect(max[i] - min[i]).toBeLessThanOrEqual(
          Math.max(1, high - low) * 2 * Math.PI * cycles + 1e-3 * (high - low),
        );
      }
    }
  });

  test('neighbours far off leave a smooth edge', () => {
    const neighbours = [
      { frequency: 483e3, share: 0.03, depth: 0.5, tone: 400 },
      { frequency: 331e3, share: 0.006, depth: 0.5, tone: 600 },
    ];
    const crowded = createWaves({ ...spec, neighbours });
    const min = new Float64Array(COLUMNS);
    const max = new Float64Array(COLUMNS);
    for (const cycles of [0.34, 0.7, 1.32, 2.1, 3.3]) {
      crowded.drawn('tuned', 0, spanWith(cycles), COLUMNS, min, max);
      let rough = 0;
      for (let i = 1; i < COLUMNS - 1; i++) rough += Math.abs(max[i - 1] - 2 * max[i] + max[i + 1]) / COLUMNS;
      expect(rough / crowded.scale('tuned').high, `${cycles} cycles`).toBeLessThan(0.015);
    }
  });

  test('a carrier beating with its neighbours has their envelope, without steps', () => {
    // 198 kHz over 2 ms, as on paper; envelope of two steady carriers: |1 + m·exp(iΔt)| (law of cosines).
    const carrier = 198e3;
    const near = { frequency: carrier + 9e3, share: 0.25, depth: 0, tone: 400 };
    const beating = createWaves({ ...spec, carrier, neighbours: [near] });
    const span = 2e-3;
    const min = new Float64Array(COLUMNS);
    const max = new Float64Array(COLUMNS);
    beating.drawn('tuned', 0, span, COLUMNS, min, max);
    const top = beating.scale('tuned').high;
    let level = 0;
    for (let i = 1; i < COLUMNS - 1; i++) {
      const envelope = Math.sqrt(1 + 0.25 ** 2 + 0.5 * Math.cos((2 * Math.PI * 9e3 * (i + 0.5) * span) / COLUMNS));
      expect(Math.abs(max[i] / 2 - envelope), `column ${i}`).toBeLessThan(0.02);
      expect(Math.abs(min[i] + max[i])).toBeLessThan(0.03 * top);
      // A step is a column that stays where it was beside one that jumps.
      expect(Math.abs(max[i - 1] - 2 * max[i] + max[i + 1]) / top).toBeLessThan(0.006);
      level = max[i] === max[i - 1] ? level + 1 : 0;
      expect(level).toBeLessThan(3);
    }
  });

  test('a bar comes apart into cycles without a jump', () => {
    let before = Number.NaN;
    for (let columns = 3; columns < 8; columns += 0.02) {
      const { min, max } = columnsOf('carrier', 0, spanWith(1 / columns));
      const covered = max.reduce((sum, v, i) => sum + v - min[i], 0) / COLUMNS / 0.1;
      if (columns > 3) expect(Math.abs(covered - before), `${columns} columns`).toBeLessThan(0.03);
      before = covered;
    }
  });
});

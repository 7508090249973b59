import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { checksOfExample, examples, REPORT, WIDTH_OFF } from '../support/range-report.ts';

describe('stated ranges of the strongest, the middle and the faintest station against 2,000 plain draws', () => {
  it.each(['frame-aerial', 'spider-coil-earpiece'])('%s: every width and median of the path', (name) => {
    const checks = checksOfExample(name);
    expect(new Set(checks.map(({ station }) => station)).size).toBe(3);
    for (const { station, figure, width, median } of checks) {
      expect(Math.abs(width - 1), `${station}, width of ${figure}: ${width}`).toBeLessThan(WIDTH_OFF);
      expect(Math.abs(median), `${station}, median of ${figure}: ${median} dB off`).toBeLessThan(1.5);
    }
  });
});

describe('the report written by verify:ranges', () => {
  const rows = readFileSync(inRoot(REPORT), 'utf8')
    .split('\n')
    .flatMap((line) => {
      const [, example, , , , width, median, others, othersMedian] = line.split('|').map((cell) => cell.trim());
      return examples().includes(example)
        ? [{ example, width: Number(width), median: Number(median.replace('−', '-')), others, othersMedian }]
        : [];
    });

  it.each(examples())('has three stations of %s', (example) => {
    expect(rows.filter((row) => row.example === example)).toHaveLength(3);
  });

  it('found every width within 15 %, every median within 1.3 dB', () => {
    for (const { example, width, median, others, othersMedian } of rows) {
      expect(Math.abs(width - 1), example).toBeLessThanOrEqual(WIDTH_OFF);
      expect(Math.abs(median), example).toBeLessThan(1.3);
      expect(Number(others.replace(' %', '')), example).toBeLessThanOrEqual(100 * WIDTH_OFF);
      expect(Number(othersMedian), example).toBeLessThan(1.3);
    }
  });
});

import { describe, expect, test } from 'vitest';
import { MEASUREMENTS, type MeasurementKind } from '../../engine/measure/measurements.ts';
import type { TextItem } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { benchConnection } from './bench-connection.ts';

const KINDS: readonly (MeasurementKind | 'value')[] = ['value', ...(Object.keys(MEASUREMENTS) as MeasurementKind[])];

function boxOf({ at: [x, y], text, size, anchor = 'start', sits = 'base' }: TextItem) {
  const width = textWidth(text, size);
  const left = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x;
  const top = sits === 'middle' ? y - size / 2 : y - 0.8 * size;
  return { text, left, right: left + width, top, bottom: top + size };
}

describe.each(KINDS)('connection of %s', (kind) => {
  test.each([320, 400, 620])('at %i px no name lies on another or outside', (width) => {
    const { items, width: whole, height } = benchConnection(kind, { width });
    const boxes = items.filter((item): item is TextItem => item.kind === 'text').map(boxOf);
    expect(boxes.length).toBeGreaterThanOrEqual(2);
    for (const [i, a] of boxes.entries()) {
      expect(a.left, a.text).toBeGreaterThanOrEqual(0);
      expect(a.right, a.text).toBeLessThanOrEqual(whole);
      expect(a.top, a.text).toBeGreaterThanOrEqual(0);
      expect(a.bottom, a.text).toBeLessThanOrEqual(height);
      for (const b of boxes.slice(i + 1))
        expect(
          a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top,
          `${a.text} and ${b.text}`,
        ).toBe(true);
    }
  });
});

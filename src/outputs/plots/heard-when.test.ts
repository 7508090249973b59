import { expect, it } from 'vitest';
import { HEARD } from '../../engine/log/entry.ts';
import type { Item } from '../scene/scene.ts';
import { heardWhen } from './heard-when.ts';

const entriesOf = (count: number) =>
  Array.from({ length: count }, (_, n) => ({
    day: (n * 37) % 366,
    hour: (n * 7.3) % 24,
    heard: HEARD[n % HEARD.length],
  }));
const titles = (items: readonly Item[], heard: string) =>
  items.filter((item) => 'title' in item && item.title === heard);

it('a long log is drawn as few paths, within the plot, each way of being heard among them', () => {
  const { items, width, height } = heardWhen({ entries: entriesOf(20_000), nights: [] }, { width: 640 });
  expect(items.length).toBeLessThan(500);
  for (const heard of HEARD) expect(titles(items, heard).length, heard).toBeGreaterThan(0);
  for (const item of items)
    if (item.kind === 'path')
      for (const [, x, y] of item.segments as [string, number, number][])
        expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true);
});

it('of what was heard at one place the loudest is drawn, and each entry of a short log', () => {
  const at = { day: 100, hour: 12 };
  const crowd = Array.from({ length: 600 }, () => ({ ...at, heard: 'faint' as const }));
  const { items } = heardWhen({ entries: [...crowd, { ...at, heard: 'loud' }], nights: [] });
  expect([titles(items, 'faint').length, titles(items, 'loud').length]).toEqual([0, 1]);
  const few = heardWhen({ entries: crowd.slice(0, 5), nights: [] });
  expect(titles(few.items, 'faint')).toHaveLength(5);
});

import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { isLong } from './long.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);

test('no example is long; a list of 1,000 stations is, wherever it stands', () => {
  for (const file of readdirSync(EXAMPLES).filter((name) => name.endsWith('.json')))
    expect(isLong(JSON.parse(readFileSync(new URL(file, EXAMPLES), 'utf8'))), file).toBe(false);
  const stations = Array.from({ length: 1000 }, (_, i) => ({ name: `Station ${i}`, frequency: '549 kHz' }));
  expect(isLong({ place: { stations } })).toBe(true);
  expect(isLong({ unknown: { deep: [stations] } })).toBe(true);
  expect(isLong({ place: { stations: stations.slice(0, 100) } })).toBe(false);
});

test('looks at no more than it must', () => {
  let asked = 0;
  const wide = Array.from({ length: 100_000 }, () => ({
    get name() {
      asked++;
      return 'x';
    },
  }));
  expect(isLong(wide)).toBe(true);
  expect(asked).toBeLessThan(2000);
});

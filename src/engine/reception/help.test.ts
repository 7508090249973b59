import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText, readValue } from '../set/read.ts';
import { valueAtPath, withValueAt } from '../set/write.ts';
import { receive } from './receive.ts';

const examples = readdirSync('examples').filter((file) => file.endsWith('.json'));

describe.each(examples)('advice for %s', (file) => {
  const read = readText(readFileSync(`examples/${file}`, 'utf8'));
  if (!read.ok) throw new Error(`${file} does not read`);
  const now = receive(read.set, { helpFor: 'all' });
  const [best] = now.best;
  const station = now.stations[best];

  it('gives what it promises when it is tried', () => {
    for (const help of station.help) {
      if (!help.value) continue;
      const tried = readValue(withValueAt(read.written, help.value.path, help.value.to));
      expect(tried, help.what).toMatchObject({ ok: true });
      if (!tried.ok) continue;
      const gain = receive(tried.set).stations[best].soundPressureLevel - station.soundPressureLevel;
      // What is written is rounded to figures one would read.
      expect(Math.abs(gain - help.gain), help.what).toBeLessThan(0.2);
    }
  });

  it('points to a part of the description that is there', () => {
    for (const { field, what } of station.help) {
      const path = field.split(/[.[\]]+/).filter(Boolean);
      expect(valueAtPath(read.written, [path[0]]), what).toBeDefined();
    }
  });
});

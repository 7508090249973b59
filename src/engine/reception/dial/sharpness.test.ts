import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readValue } from '../../set/read.ts';
import { receive } from '../path/receive.ts';

const EXAMPLES = new URL('../../../../examples/', import.meta.url);
const examples = readdirSync(EXAMPLES).filter((name) => name.endsWith('.json'));

// A strong station loads the circuit otherwise; the dial speaks of faint ones.
test.each(examples)('%s: the dial and its faint stations agree on Q and bandwidth', (name) => {
  const written = JSON.parse(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  for (const station of written.place.stations) station.fieldStrength = '1 µV/m';
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { stations, dial } = receive(read.set);
  const within = stations.filter((s) => s.dial);
  expect(within.length).toBeGreaterThan(0);
  for (const s of within) {
    const near = dial.points.reduce((a, b) =>
      Math.abs(b.frequency - s.frequency) < Math.abs(a.frequency - s.frequency) ? b : a,
    );
    expect(near.loadedQ / s.loadedQ, `Q at ${s.frequency} Hz`).toBeCloseTo(1, 1);
    expect((near.bandwidth * near.loadedQ) / near.frequency).toBeCloseTo(1, 9);
    if (read.set.arrangement.kind !== 'two circuits' && s.loadedQ > 20)
      expect(near.bandwidth / s.bandwidth, `bandwidth at ${s.frequency} Hz`).toBeCloseTo(1, 1);
  }
});

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { SetDescription } from '../../set/description.ts';
import { readValue } from '../../set/read.ts';
import { receive } from '../path/receive.ts';
import { HEATER_WATCHED, heaterRun, heaterRuns } from './heater.ts';

const example = (name: string): SetDescription => {
  const read = readValue(
    JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), 'utf8')),
  );
  if (!read.ok) throw new Error('the example does not read');
  return read.set;
};
const set = example('ferrite-rod-valve-diode');

// What people find with such valves; common practice, no source.
it('a valve needs a little while to warm, and fades gradually when switched off', () => {
  const run = heaterRun(set, 0, { voltage: 6.3 })!;
  expect(run.on[0].soundPressureLevel).toBeLessThan(-100);
  expect(run.halfAfter).toBeGreaterThan(3);
  expect(run.halfAfter).toBeLessThan(20);
  expect(run.fullAfter).toBeGreaterThan(run.halfAfter);
  expect(run.fullAfter).toBeLessThan(40);
  expect(run.lastsFor).toBeGreaterThan(3);
  expect(run.goneAfter).toBeGreaterThan(run.lastsFor);
  expect(run.goneAfter).toBeLessThan(HEATER_WATCHED);
  // No second of the fading loses more than 6 dB, down to 40 dB under what it was.
  for (let k = 1; k < run.off.length; k++) {
    const [a, b] = [run.off[k - 1], run.off[k]];
    if (b.soundPressureLevel > run.warm.soundPressureLevel - 40)
      expect(a.soundPressureLevel - b.soundPressureLevel).toBeLessThan(6 * (b.time - a.time));
    expect(b.current).toBeLessThanOrEqual(a.current);
  }
});

it('ends where reception has the warm valve', () => {
  const run = heaterRun(set, 0)!;
  const station = receive(set).stations[0];
  expect(run.warm.soundPressureLevel).toBeCloseTo(station.soundPressureLevel!, 1);
  expect(run.on[run.on.length - 1].soundPressureLevel).toBeCloseTo(station.soundPressureLevel!, 0);
});

it('a 6.3 V heater at 5 V still works, at a part of its emission', () => {
  for (const station of [0, 1, 2]) {
    const { full, less } = heaterRuns(set, station)!;
    expect(less.voltage).toBeCloseTo(5, 9);
    expect(less.warm.soundPressureLevel).toBeGreaterThan(full.warm.soundPressureLevel - 6);
    expect(less.power).toBeLessThan(full.power);
    expect(less.emissionShare).toBeGreaterThan(0.05);
    expect(less.emissionShare).toBeLessThan(0.9);
  }
});

it('a crystal has no heater', () => {
  expect(heaterRun(example('medium-wave-galena'), 0)).toBeUndefined();
  expect(() => heaterRun(set, 99)).toThrow('no station 99');
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText, readValue } from '../set/read.ts';
import { withValueAt } from '../set/write.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { matching } from './match.ts';
import { trialsOf } from './trial.ts';

const readOf = (name: string, change: object = {}) => {
  const read = readValue({ ...JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')), ...change });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
};

describe.each(['medium-wave-galena', 'two-tuned-circuits', 'frame-aerial', 'spider-coil-earpiece'])('%s', (name) => {
  const { set, written } = readOf(name);
  const trials = trialsOf(set);
  const now = receiveRanged(set).stations[0];

  it('what is written gives what it promises', () => {
    const matches = matching(trials, 0);
    expect(matches.length).toBeGreaterThan(0);
    for (const { changes, after, what } of matches) {
      if (changes.length === 0) continue;
      const changed = changes.reduce<unknown>((d, { path, to }) => withValueAt(d, path, to), written);
      const read = readText(JSON.stringify(changed));
      if (!read.ok) throw new Error(what);
      expect(receiveRanged(read.set, { stations: [0] }).stations[0].soundPressureLevel, what).toBeCloseTo(
        after.level,
        6,
      );
    }
    for (const { before } of matches) expect(before.level).toBeCloseTo(now.soundPressureLevel!, 6);
  });

  it('what is at hand never beats the best', () => {
    for (const { atHand, what } of matching(trials, 0, { taps: [3, 9, 20], ratios: [4, 20] }))
      for (const { lost } of atHand) if (lost !== undefined) expect(lost, what).toBeGreaterThanOrEqual(0);
  });
});

it('tells what the set as a whole loses by the loudest aerial tap of the first example, when asked for', () => {
  const trials = trialsOf(readOf('medium-wave-galena').set);
  const tap = matching(trials, 0, { withCoverage: true }).find(({ what }) => what === 'aerial tap')!;
  expect(tap.value).toBe(47);
  expect(tap.coverage!.after.stationsHeard).toBeLessThan(tap.coverage!.before.stationsHeard);
  expect(tap.coverage!.after.highest).toBeLessThan(tap.coverage!.before.highest);
  expect(matching(trials, 0).every(({ coverage }) => coverage === undefined)).toBe(true);
});

describe('the best transformer', () => {
  it('steps low-resistance phones up by far, and loses less than having none', () => {
    const { set } = readOf('medium-wave-galena', { load: { kind: 'moving-coil phones', impedance: '32 Ω' } });
    const best = matching(trialsOf(set), 0, { ratios: [3, 10, 30] }).find(({ what }) => what === 'transformer')!;
    expect(best.value).toBeGreaterThan(8);
    expect(best.without).toBeLessThan(-10);
    expect(best.changes[0].path).toEqual(['load', 'transformer']);
  });
});

it('at night the level is that of the night', () => {
  const { set } = readOf('medium-wave-galena');
  const [day, night] = (['day', 'night'] as const).map((time) => receiveRanged(set, { time }).stations);
  const station = day.findIndex((s, i) => Math.abs(s.soundPressureLevel! - night[i].soundPressureLevel!) > 10);
  expect(station).toBeGreaterThanOrEqual(0);
  for (const [time, heard] of [['day', day[station]] as const, ['night', night[station]] as const])
    for (const { before } of matching(trialsOf(set, { time }), station))
      expect(before.level).toBeCloseTo(heard.soundPressureLevel!, 6);
});

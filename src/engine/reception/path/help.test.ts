import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { SetDescription } from '../../set/description.ts';
import { readText, readValue } from '../../set/read.ts';
import { valueAtPath, withValueAt } from '../../set/write.ts';
import { receive } from './receive.ts';
import { verdictOf } from './summary.ts';

type Part = Record<string, unknown> & { kind: string };
const numberAt =
  (part: 'aerial' | 'arrangement', field: string) =>
  (set: SetDescription): number | undefined =>
    (set[part] as Part)[field] as number | undefined;
/** How far one step goes, and what a builder can have at home: m, F, turns, Ω. */
const STEPS: Record<
  string,
  {
    of: (set: SetDescription) => number | undefined;
    times: readonly [number, number];
    reach: readonly [number, number];
  }
> = {
  'aerial.height': { of: numberAt('aerial', 'height'), times: [1, 1.5], reach: [3, 20] },
  'aerial.length': { of: numberAt('aerial', 'length'), times: [1, 1.5], reach: [5, 60] },
  'arrangement.distance': { of: numberAt('arrangement', 'distance'), times: [0.5, 2], reach: [0.01, 0.5] },
  'arrangement.seriesCapacitor': {
    of: numberAt('arrangement', 'seriesCapacitor'),
    times: [0.4, 2.5],
    reach: [1e-11, 1e-9],
  },
  // From one tap to the best one there may be several steps on the coil; a tap lies on its coil.
  'arrangement.aerialTap': { of: numberAt('arrangement', 'aerialTap'), times: [0.2, 5], reach: [1, 100] },
  'arrangement.detectorTap': { of: numberAt('arrangement', 'detectorTap'), times: [0.2, 5], reach: [1, 100] },
};

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
      expect(help.of).toBe('loudness');
      const gain = receive(tried.set).stations[best].soundPressureLevel - station.soundPressureLevel;
      // What is written is rounded to figures one would read.
      expect(Math.abs(gain - help.gain), help.what).toBeLessThan(0.2);
    }
  });

  it('asks for no more than a usual step, to values within reach', () => {
    for (const { value, what } of now.stations.flatMap((s) => s.help)) {
      if (!value) continue;
      const field = value.path.join('.');
      const tried = readValue(withValueAt(read.written, value.path, value.to));
      if (!tried.ok) throw new Error(`${what}: ${JSON.stringify(value.to)}`);
      const usual = STEPS[field];
      if (!usual) continue;
      const [before, after] = [read.set, tried.set].map((set) => usual.of(set)!);
      const times = after / before;
      expect(times, `${what}: ${before} → ${after}`).toBeGreaterThanOrEqual(usual.times[0] - 1e-9);
      expect(times, `${what}: ${before} → ${after}`).toBeLessThanOrEqual(usual.times[1] + 1e-9);
      expect(after, what).toBeGreaterThanOrEqual(usual.reach[0]);
      expect(after, what).toBeLessThanOrEqual(usual.reach[1]);
    }
  });

  it('points to a part of the description that is there', () => {
    for (const { field, what } of station.help) {
      const path = field.split(/[.[\]]+/).filter(Boolean);
      expect(valueAtPath(read.written, [path[0]]), what).toBeDefined();
    }
  });
});

describe('advice for a station that others drown', () => {
  const written = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  const read = readValue(written);
  if (!read.ok) throw new Error('the example does not read');
  const now = receive(read.set, { helpFor: 'all' });
  const index = now.stations.findIndex((s) => s.name === 'Northmoor Calling');
  const station = now.stations[index];

  it('brings it out from under them, by as much as it says', () => {
    expect(verdictOf(station)).toBe('drowned');
    expect(station.help.length).toBeGreaterThan(2);
    for (const help of station.help) {
      expect(help.of).toBe('margin over others');
      expect(help.gain).toBeGreaterThan(0.9);
      if (!help.value) continue;
      const tried = readValue(withValueAt(written, help.value.path, help.value.to));
      if (!tried.ok) throw new Error(help.what);
      const after = receive(tried.set).stations[index];
      const gain = after.disturbances[0].audioRatio - station.disturbances[0].audioRatio;
      expect(Math.abs(gain - help.gain), help.what).toBeLessThan(0.3);
    }
  });

  it('says a lower tap with the figures before and after', () => {
    const sentences = station.help.map((h) => h.sentence).join('\n');
    expect(sentences).toMatch(
      /The aerial tapped at [3-9] turns \(not 11\): Tollgate Community \d dB below, not 1 dB above, but \d+ dB quieter/,
    );
    expect(sentences).toMatch(/The detector tapped at \d+ turns \(not 18\): Tollgate Community \d+ dB below/);
  });

  it('never makes one of the heard stations drowned', () => {
    for (const s of now.stations) {
      if (verdictOf(s) === 'drowned') continue;
      for (const help of s.help.filter((h) => h.value)) {
        const tried = readValue(withValueAt(written, help.value!.path, help.value!.to));
        if (!tried.ok) throw new Error(help.what);
        expect(verdictOf(receive(tried.set).stations[s.index]), `${s.name}: ${help.what}`).not.toBe('drowned');
      }
    }
  });
});

describe('advice for stations out of reach of the dial', () => {
  it.each([
    ['a rod with too few turns', 'ferrite-rod-valve-diode', 15, /^More turns on the rod \(\d+ instead of 15\)/],
    ['a frame with too many', 'frame-aerial', 40, /^Fewer turns on the frame \(\d+ instead of 40\)/],
  ])('says what brings them in: %s', (_, file, turns, words) => {
    const written = JSON.parse(readFileSync(`examples/${file}.json`, 'utf8'));
    written.aerial.turns = turns;
    written.arrangement = { kind: written.arrangement.kind };
    const read = readValue(written);
    if (!read.ok) throw new Error('it does not read');
    const now = receive(read.set, { helpFor: 'all' });
    expect(now.stations.every((s) => verdictOf(s) === 'out of reach')).toBe(true);
    const station = now.stations[now.best[0]];
    expect(station.help.map((h) => h.what).find((what) => words.test(what))).toMatch(/within reach of the dial/);
    for (const help of station.help) {
      const tried = readValue(withValueAt(written, help.value!.path, help.value!.to));
      if (!tried.ok) throw new Error(help.what);
      expect(receive(tried.set).stations[station.index].outOfReach, help.what).toBeUndefined();
    }
  });
});

it('does not speak of a former to one who has a ferrite rod', () => {
  const read = readText(readFileSync('examples/ferrite-rod-valve-diode.json', 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  const sentences = receive(read.set, { helpFor: 'all' }).stations.flatMap((s) => s.help.map((h) => h.sentence));
  expect(sentences.join()).toMatch(/A rod of lower loss/);
  expect(sentences.join()).not.toMatch(/former/);
});

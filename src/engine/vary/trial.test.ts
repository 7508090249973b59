import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Edit } from '../kinds/adjustment.ts';
import { readText } from '../set/read.ts';
import { trialsOf } from './trial.ts';
import { trapFor } from './wave-traps.ts';

function setOfExample(file: string) {
  const read = readText(readFileSync(`examples/${file}.json`, 'utf8'));
  if (!read.ok) throw new Error(`${file} does not read`);
  return read.set;
}
const tap = (key: string, to: number): Edit => ({ path: ['arrangement', key], to });

it('a set is built once, in whatever order its changes are named and whatever else is written as it stands', () => {
  const trials = trialsOf(setOfExample('medium-wave-galena'));
  const { aerialTap, detectorTap } = trials.now.set.arrangement as { aerialTap: number; detectorTap: number };
  const [a, b] = [tap('aerialTap', aerialTap + 1), tap('detectorTap', detectorTap - 1)];
  const both = trials.with([a, b]);
  expect(trials.with([b, a])).toBe(both);
  expect(trials.with([a, tap('detectorTap', detectorTap)])).toBe(trials.with([a]));
  expect(trials.with([tap('aerialTap', aerialTap)])).toBe(trials.now);
  expect(trials.with([b])).not.toBe(both);
  expect(trials.built()).toBe(4);
});

it('of two edits of one place the later one counts', () => {
  const trials = trialsOf(setOfExample('medium-wave-galena'));
  const outcome = trials.with([tap('detectorTap', 10), tap('detectorTap', 20)]);
  expect(outcome).toMatchObject({ set: { arrangement: { detectorTap: 20 } } });
  expect(trials.with([tap('detectorTap', 20), tap('detectorTap', 10)])).toMatchObject({
    set: { arrangement: { detectorTap: 10 } },
  });
});

it('traps that tune elsewhere are not built again for another station', () => {
  const trials = trialsOf(setOfExample('medium-wave-galena'));
  const builtFor = (stop: number): number => {
    const before = trials.built();
    expect(trapFor(trials, { stop })).toBeDefined();
    return trials.built() - before;
  };
  const [first, second] = [builtFor(0), builtFor(1)];
  expect(second).toBeLessThan(first);
  expect(trapFor(trials, { stop: 1 })).toEqual(trapFor(trialsOf(trials.now.set), { stop: 1 }));
});

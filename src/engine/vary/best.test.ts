import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { SetDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { levelOf } from './best.ts';
import { bestAerialTap, bestDetectorTap } from './best-tap.ts';
import { bestTransformer } from './best-transformer.ts';

const written = JSON.parse(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
const setOf = (change: object = {}): SetDescription => {
  const read = readValue({ ...written, ...change });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};

describe('the best tap', () => {
  const set = setOf();
  it('is at least as good as every other whole turn', () => {
    const best = bestDetectorTap(set, 2)!;
    const arrangement = set.arrangement as Extract<typeof set.arrangement, { kind: 'tapped' }>;
    for (let tap = 1; tap <= 56; tap++) {
      const level = levelOf({ ...set, arrangement: { ...arrangement, detectorTap: tap } }, 2)!;
      expect(level, `${tap}`).toBeLessThanOrEqual(best.level + 0.02);
    }
    const aerial = bestAerialTap(set, 2)!;
    for (let tap = 1; tap <= 56; tap += 3) {
      const level = levelOf({ ...set, arrangement: { ...arrangement, aerialTap: tap } }, 2)!;
      expect(level, `${tap}`).toBeLessThanOrEqual(aerial.level + 0.02);
    }
  });

  it('tells what the present tap and those at hand lose, never less than nothing', () => {
    const best = bestDetectorTap(set, 2, { atHand: [5, 18, 56] })!;
    expect(best.lostNow).toBeGreaterThanOrEqual(0);
    expect(best.atHand.map((t) => t.value)).toEqual([5, 18, 56]);
    expect(best.atHand[1].lost).toBe(best.lostNow);
    for (const { lost } of best.atHand) expect(lost).toBeGreaterThanOrEqual(0);
    expect(best.sentence).toMatch(/^Best tapped at \d+ turns?; tapped at 18 turns it loses [\d.]+ dB/);
  });

  it('has no answer where there is no such tap, and refuses a station that is not there', () => {
    expect(bestAerialTap(setOf({ arrangement: { kind: 'direct', coil: 'main' } }), 0)).toBeUndefined();
    expect(() => bestDetectorTap(set, 99)).toThrow(RangeError);
  });
});

describe('the best transformer', () => {
  it('steps low-resistance phones up by far, and loses less than having none', () => {
    const set = setOf({ load: { kind: 'moving-coil phones', impedance: '32 Ω' } });
    const best = bestTransformer(set, 2, { atHand: [3, 10, 30] });
    expect(best.value).toBeGreaterThan(8);
    expect(best.lostWithout).toBeGreaterThan(10);
    for (const { lost } of best.atHand) expect(lost).toBeGreaterThanOrEqual(0);
    expect(best.sentence).toMatch(/^Best with a ratio of .* to 1.*Without a transformer it loses/);
  });

  it('with less loss it is at least as loud', () => {
    const set = setOf({ load: { kind: 'moving-coil phones', impedance: '32 Ω' } });
    const ideal = { primaryResistance: 1, secondaryResistance: 0.01, primaryInductance: 500, leakage: 0 };
    expect(bestTransformer(set, 2, { like: ideal }).level).toBeGreaterThan(bestTransformer(set, 2).level - 0.01);
  });
});

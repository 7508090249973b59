import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { SetDescription } from '../set/description.ts';
import { readText } from '../set/read.ts';
import { compareSets } from './compare-sets.ts';
import { comparedCurves } from './compared-curves.ts';

const example = (name: string): SetDescription => {
  const read = readText(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(name);
  return read.set;
};

it('curves of all sets go as far on either side of the station, and are as broad at −3 dB as their bandwidths say', () => {
  const compared = compareSets(['medium-wave-galena', 'two-tuned-circuits', 'long-wave-foil'].map(example), 0);
  const curves = comparedCurves(compared);
  const { frequency } = compared.sets[0].station;
  // The long-wave set does not tune to a station of the medium waves.
  expect(curves.map((curve) => curve !== undefined)).toEqual([true, true, false]);
  const drawn = curves.flatMap((curve) => (curve ? [curve.points] : []));
  for (const points of drawn) {
    const [first, last] = [points[0].frequency, points[points.length - 1].frequency];
    expect(first).toBeCloseTo(drawn[0][0].frequency, 3);
    expect(frequency - first).toBeCloseTo(last - frequency, 3);
  }
  for (const [i, points] of drawn.entries()) {
    const top = Math.max(...points.map(({ level }) => level));
    const inside = points.filter(({ level }) => level >= top - 10 * Math.log10(2));
    const width = inside[inside.length - 1].frequency - inside[0].frequency;
    const step = points[1].frequency - points[0].frequency;
    // By the definition of the bandwidth; the curve is known at points only.
    expect(Math.abs(width - compared.sets[i].station.bandwidth)).toBeLessThan(2 * step);
  }
});

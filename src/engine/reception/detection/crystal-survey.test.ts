import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { crystalSurface, USUAL_CRYSTAL } from '../../parts/detector/surface.ts';
import type { SetDescription } from '../../set/description.ts';
import { readValue } from '../../set/read.ts';
import { crystalSurvey, heardAtTouch } from './crystal-survey.ts';

const read = readValue(
  JSON.parse(readFileSync(new URL('../../../../examples/medium-wave-galena.json', import.meta.url), 'utf8')),
);
if (!read.ok) throw new Error('the example does not read');
const set: SetDescription = read.set;

// Common practice, no source: most of a crystal is dead, a good spot is worth having, a fair one still works.
it('spots are worth more the better they are, on every station, and most are dead', () => {
  for (const station of [0, 1, 2]) {
    const worth = crystalSurvey(set, station);
    expect(worth.map((s) => s.quality)).toEqual(['dead', 'poor', 'fair', 'good', 'very good']);
    for (let k = 1; k < worth.length; k++)
      expect(worth[k].soundPressureLevel).toBeGreaterThan(worth[k - 1].soundPressureLevel);
    expect(worth[0].gain).toBeLessThan(-20);
    expect(worth[0].share).toBeGreaterThan(0.5);
    expect(worth.reduce((sum, s) => sum + s.share, 0)).toBeCloseTo(1, 9);
  }
});

it('a touch is heard as its spot: the best of the map well over a dead one, and pressed hard it is worse', () => {
  const spots = [...crystalSurface(USUAL_CRYSTAL).spots()].sort((a, b) => a.merit - b.merit);
  const at = (merit: 'best' | 'dead', pressure: number) => {
    const { x, y } = spots[merit === 'best' ? spots.length - 1 : 0];
    return heardAtTouch(set, 0, USUAL_CRYSTAL, { x, y, pressure, material: 'phosphor bronze' }).soundPressureLevel;
  };
  expect(at('best', 0.2)).toBeGreaterThan(at('dead', 0.2) + 20);
  expect(at('best', 0.2)).toBeGreaterThan(at('best', 1) + 1);
});

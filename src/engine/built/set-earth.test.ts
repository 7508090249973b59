import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { earth } from '../parts/earth/earth.ts';
import { readValue } from '../set/read.ts';
import { changedParts } from './changed-parts.ts';
import { partsOf, workingFrequency } from './set-parts.ts';

const galena = JSON.parse(
  readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'),
) as Record<string, unknown>;
function setWith(described: object) {
  const result = readValue({ ...galena, earth: described });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.set;
}
const RADIALS = { kind: 'radials', count: 4, length: '15 m', depth: '5 cm', wire: '1.6 mm', soil: 'clay' };
const resistanceOf = (described: object, frequency: number): number =>
  partsOf(setWith(described)).earth.impedanceAt(frequency).re;

test('radials in a set have the resistance that they have by themselves at each radio frequency', () => {
  const alone = {
    shape: 'radials',
    count: 4,
    length: 15,
    depth: 0.05,
    wire: { diameter: 1.6e-3 },
    soil: 'clay',
  } as const;
  for (const frequency of [198e3, 603e3, 1.9e6])
    expect(resistanceOf(RADIALS, frequency)).toBeCloseTo(earth({ ...alone, frequency }).resistance, 9);
  // At low frequency they would have less than a fifth of it.
  expect(resistanceOf(RADIALS, 1.9e6)).toBeGreaterThan(5 * earth(alone).resistance);
});

test('wire beyond the skin depth of the soil does nothing for a set', () => {
  const longer = resistanceOf({ ...RADIALS, length: '30 m' }, 1e6) / resistanceOf(RADIALS, 1e6);
  expect(longer).toBeGreaterThan(0.95);
  expect(longer).toBeLessThan(1.05);
});

test('what is stated of buried wires is that at the middle of the stations, and its range that of soil and contact drawn', () => {
  const set = setWith({ kind: 'buried wire', length: '10 m', depth: '0.2 m', wire: '1 mm', soil: 'garden loam' });
  const parts = partsOf(set);
  const { resistance, range } = parts.earth;
  expect(parts.earth.impedanceAt(workingFrequency(set)).re).toBeCloseTo(resistance, 9);
  const drawn = (changes: object): number => changedParts(set, parts, changes).earth.resistance;
  // Garden loam is 80 Ω·m ×/÷ 5; squares of logarithms add.
  const together = (a: number, b: number): number => Math.exp(Math.hypot(Math.log(a), Math.log(b)));
  expect(range[0]).toBeCloseTo(resistance / together(resistance / drawn({ soilResistivity: 1 / 5 }), 1.19), 9);
  expect(range[1]).toBeCloseTo(resistance * together(drawn({ soilResistivity: 5 }) / resistance, 1.35), 9);
});

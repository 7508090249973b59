import { describe, expect, it } from 'vitest';
import demo from '../../../../examples/medium-wave-galena.json' with { type: 'json' };
import { partsOf } from '../../built/set-parts.ts';
import { readValue } from '../../set/read.ts';
import { earthModel } from '../models.ts';

/** The set with an earth and a ground in place of its own. */
function setWith(earth: object, ground?: unknown) {
  const read = readValue({ ...demo, earth, place: { ...demo.place, ground } });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const rod = { kind: 'rod', length: '1.2 m', diameter: '12 mm' };
const warned = (set: ReturnType<typeof setWith>): boolean =>
  partsOf(set).earth.warnings.some(({ code }) => code === 'earth.soil-and-ground');

describe('one soil for a place and its earth', () => {
  it('without a soil, an earth lies in what is usual over the ground of its place', () => {
    const rho = (ground?: unknown) => setWith(rod, ground).earth as { soil: string; soilResistivity: number };
    expect(rho()).toMatchObject({ soil: 'as the place' });
    expect(rho().soilResistivity).toBeCloseTo(150, 9);
    expect(rho('wet').soilResistivity).toBeLessThan(rho('average').soilResistivity);
    expect(rho('dry').soilResistivity).toBeCloseTo(150 * Math.sqrt(3), 9);
    expect(rho({ conductivity: 0.003, permittivity: 22 }).soilResistivity).toBeCloseTo(150, 9);
  });

  it('is as unsure as soil is; a figure of its own is surer, and stays whatever the ground', () => {
    const width = (earth: object, ground?: unknown) => {
      const [low, high] = earthModel(setWith(earth, ground).earth).range;
      return high / low;
    };
    expect(width(rod)).toBeGreaterThan(width({ ...rod, soilResistivity: '150 Ω·m' }));
    for (const ground of ['wet', 'dry'])
      expect(setWith({ ...rod, soilResistivity: '80 Ω·m' }, ground).earth).toMatchObject({
        soil: 'as its resistivity',
        soilResistivity: 80,
      });
    expect(setWith({ ...rod, soil: 'clay' }, 'dry').earth).toMatchObject({ soil: 'clay' });
  });

  it('says so where soil and ground as given hardly go together', () => {
    expect(warned(setWith({ ...rod, soilResistivity: '16 Ω·m' }, 'average'))).toBe(true);
    expect(warned(setWith({ ...rod, soil: 'dry sand' }, 'wet'))).toBe(true);
    for (const ground of ['wet', 'average', 'very dry']) expect(warned(setWith(rod, ground))).toBe(false);
    expect(warned(setWith({ ...rod, soil: 'clay' }, 'average'))).toBe(false);
  });

  it('a water pipe keeps its range in a set', () => {
    const { range, resistance } = earthModel(setWith({ kind: 'water pipe' }).earth);
    expect([range[0] / resistance, range[1] / resistance]).toEqual([1 / 3, 3].map((x) => expect.closeTo(x, 9)));
  });
});

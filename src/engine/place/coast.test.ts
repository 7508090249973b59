import { geoContains } from 'd3-geo';
import { feature } from 'topojson-client';
import { describe, expect, it } from 'vitest';
import land50 from 'world-atlas/land-50m.json' with { type: 'json' };
import land110 from 'world-atlas/land-110m.json' with { type: 'json' };
import { type CoastSection, coastline, type LandTopology } from './coast.ts';
import { distanceBetween } from './geodesy.ts';

const fine = coastline(land50 as unknown as LandTopology);
const coarse = coastline(land110 as unknown as LandTopology);
const sum = (sections: readonly CoastSection[]) => sections.reduce((total, { length }) => total + length, 0);

// Natural Earth's coastline; places from any atlas.
describe('coast', () => {
  it.each([
    [52, -1.5, 'land'],
    [54.5, 3, 'sea'],
    [0, -30, 'sea'],
    [-25, 134, 'land'],
    [68, 179.5, 'land'], // the far east of Asia, on both sides of the antimeridian
    [67.5, -178, 'land'],
    [60, 180, 'sea'],
    [-80, 180, 'sea'], // a great bay of Antarctica reaches here
    [-88, 180, 'land'],
    [-88, -45, 'land'],
    [-90, 0, 'land'],
    [90, 0, 'sea'],
    [42, 51, 'sea'], // the Caspian
    [65.8, -30, 'sea'],
  ] as const)('%d, %d is %s', (latitude, longitude, surface) => {
    expect(fine.surfaceAt({ latitude, longitude })).toBe(surface);
    expect(fine.surfaceAt({ latitude, longitude: longitude + 360 })).toBe(surface);
  });

  it('agrees with the spherical test of d3-geo', () => {
    const whole = feature(land110 as unknown as LandTopology, (land110 as unknown as LandTopology).objects.land);
    const wrong = [];
    for (let n = 0; n < 150; n++) {
      // Points spread evenly over the sphere by the golden angle.
      const latitude = (Math.asin(1 - (2 * n + 1) / 150) * 180) / Math.PI;
      const longitude = ((n * 137.50776405) % 360) - 180;
      const surface = geoContains(whole, [longitude, latitude]) ? 'land' : 'sea';
      if (coarse.surfaceAt({ latitude, longitude }) !== surface) wrong.push([latitude, longitude]);
    }
    expect(wrong).toEqual([]);
  });

  it('finds the sections of a path, the same from either end', () => {
    const a = { latitude: 52, longitude: -1 };
    const b = { latitude: 52.2, longitude: 6.5 };
    const there = fine.sections(a, b);
    const back = fine.sections(b, a);
    expect(there.map(({ surface }) => surface)).toEqual(['land', 'sea', 'land']);
    expect(sum(there)).toBeCloseTo(distanceBetween(a, b), 3);
    expect(back.toReversed().map(({ surface }) => surface)).toEqual(there.map(({ surface }) => surface));
    for (const [n, { length }] of back.toReversed().entries())
      expect(Math.abs(length - there[n].length)).toBeLessThan(60);
    expect(fine.sections(a, b)).toBe(there);
  });

  it('takes odd paths', () => {
    const home = { latitude: 52, longitude: -1 };
    expect(fine.sections(home, home)).toEqual([{ surface: 'land', length: 0 }]);
    const round = fine.sections(home, { latitude: -52, longitude: 179 });
    expect(sum(round)).toBeCloseTo(distanceBetween(home, { latitude: -52, longitude: 179 }), 2);
    expect(fine.sections({ latitude: 90, longitude: 0 }, { latitude: 80, longitude: 0 })[0].surface).toBe('sea');
    expect(() => coastline({} as LandTopology)).toThrow(/land/);
  });
});

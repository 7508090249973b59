import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import {
  bearingTo,
  compassPoint,
  destination,
  distanceBetween,
  FARTHEST,
  greatCircle,
  MEAN_RADIUS,
  midpoint,
} from './geodesy.ts';

const { Geodesic } = geodesic;
const sphere = new Geodesic.Geodesic(MEAN_RADIUS, 0);
const place = fc.record({
  latitude: fc.double({ min: -90, max: 90, noNaN: true }),
  longitude: fc.double({ min: -180, max: 180, noNaN: true }),
});
/** Smallest turn between two bearings. */
const apart = (a: number, b: number) => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

// Against GeographicLib (C. Karney), an independent implementation; a sphere is an ellipsoid of no flattening.
describe('great circles', () => {
  it('agree with GeographicLib on the same sphere', () => {
    fc.assert(
      fc.property(place, place, (a, b) => {
        const inverse = sphere.Inverse(a.latitude, a.longitude, b.latitude, b.longitude);
        const circle = greatCircle(a, b);
        expect(Math.abs(circle.distance - inverse.s12!)).toBeLessThan(0.01);
        const clear = Math.min(circle.distance, FARTHEST - circle.distance) > 1000 && Math.abs(a.latitude) < 89.9;
        if (clear) expect(apart(circle.bearing, inverse.azi1!)).toBeLessThan(1e-4);
      }),
    );
  });

  it('are within 0.6 % of the ellipsoid', () => {
    fc.assert(
      fc.property(place, place, (a, b) => {
        const real = Geodesic.WGS84.Inverse(a.latitude, a.longitude, b.latitude, b.longitude).s12!;
        expect(Math.abs(distanceBetween(a, b) - real)).toBeLessThanOrEqual(0.006 * real + 0.01);
      }),
    );
  });

  it('lead to their end, through every place on the way, also over poles and the antimeridian', () => {
    fc.assert(
      fc.property(place, place, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, share) => {
        const { distance, at } = greatCircle(a, b);
        const between = at(share * distance);
        expect(Math.abs(between.latitude)).toBeLessThanOrEqual(90);
        expect(Math.abs(between.longitude)).toBeLessThanOrEqual(180);
        expect(Math.abs(distanceBetween(a, between) - share * distance)).toBeLessThan(0.01);
        // Near the antipode the last metre of direction is worth nothing.
        expect(distanceBetween(at(distance), b)).toBeLessThan(FARTHEST - distance < 1 ? 2 : 0.01);
      }),
    );
    const across = midpoint({ latitude: 50, longitude: 170 }, { latitude: 50, longitude: -170 });
    expect(Math.abs(across.longitude)).toBeCloseTo(180, 9);
    expect(midpoint({ latitude: 80, longitude: 0 }, { latitude: 80, longitude: 180 }).latitude).toBeCloseTo(90, 9);
  });

  it('answer at the odd places', () => {
    const pole = { latitude: 90, longitude: 0 };
    expect(distanceBetween(pole, { latitude: -90, longitude: 77 })).toBeCloseTo(FARTHEST, 3);
    expect(distanceBetween(pole, { latitude: 90, longitude: 123 })).toBeLessThan(1e-6);
    expect(greatCircle(pole, pole)).toMatchObject({ distance: 0, bearing: 0 });
    expect(bearingTo(pole, { latitude: 50, longitude: 0 })).toBeCloseTo(180, 9);
    expect(bearingTo({ latitude: 50, longitude: 3 }, pole)).toBeCloseTo(0, 9);
    const there = destination({ latitude: 0, longitude: 0 }, 90, FARTHEST / 2);
    expect(there.latitude).toBeCloseTo(0, 9);
    expect(there.longitude).toBeCloseTo(90, 9);
    expect(() => greatCircle({ latitude: 91, longitude: 0 }, pole)).toThrow(RangeError);
    expect(() => greatCircle(pole, { latitude: 0, longitude: Number.NaN })).toThrow(RangeError);
  });

  it('name the eight points', () => {
    expect([0, 44, 46, 200, 359, -90].map(compassPoint)).toEqual([
      'north',
      'north-east',
      'north-east',
      'south',
      'north',
      'west',
    ]);
  });
});

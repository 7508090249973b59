import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averaged } from './averaged.ts';
import { curvature, type Detector } from './detector.ts';
import { steadyDetector } from './steady.ts';
import { crystalSurface, type SpotQuality, WHISKERS } from './surface.ts';

const heard = (detector: Detector) =>
  steadyDetector({
    averaged: averaged(detector),
    openCircuit: 0.05,
    sourceImpedance: { re: 5e4, im: 0 },
    dcResistance: 1e4,
  }).directVoltage;
const median = (values: number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const anywhere = {
  seed: fc.integer({ min: -1e9, max: 1e9 }),
  x: fc.double({ min: 0, max: 9e-3, noNaN: true }),
  y: fc.double({ min: 0, max: 6e-3, noNaN: true }),
  pressure: fc.double({ min: 0, max: 1, noNaN: true }),
  material: fc.constantFrom(...WHISKERS),
};

describe('the crystal as a surface', () => {
  test('the same seed is the same crystal; another seed is another', () => {
    fc.assert(
      fc.property(anywhere.seed, anywhere.x, anywhere.y, (seed, x, y) => {
        const first = crystalSurface(seed).probe(x, y);
        const again = crystalSurface(seed).probe(x, y);
        expect(again.spot).toEqual(first.spot);
        expect(again.detector.law).toEqual(first.detector.law);
      }),
      { numRuns: 30 },
    );
    expect(crystalSurface(1).spots()).not.toEqual(crystalSurface(2).spots());
  });

  test('anywhere, however held, there is a device with finite current', () => {
    fc.assert(
      fc.property(
        ...(Object.values(anywhere) as [
          typeof anywhere.seed,
          typeof anywhere.x,
          typeof anywhere.y,
          typeof anywhere.pressure,
          typeof anywhere.material,
        ]),
        (seed, x, y, pressure, material) => {
          const { detector, contact } = crystalSurface(seed).probe(x, y, pressure, material);
          expect(Number.isFinite(detector.current(0.3))).toBe(true);
          expect(['loose', 'light', 'crushed']).toContain(contact);
        },
      ),
    );
  });

  // Common practice, no source.
  test('most spots are dead, some fair, very few very good', () => {
    const count: Record<string, number> = {};
    for (let seed = 0; seed < 20; seed++) {
      for (const spot of crystalSurface(seed).spots())
        count[spot.quality] = (count[spot.quality] ?? 0) + 1 / (20 * 600);
    }
    expect(count.dead).toBeGreaterThan(0.5);
    expect(count.fair).toBeGreaterThan(0.08);
    expect(count['very good']).toBeGreaterThan(0.003);
    expect(count['very good']).toBeLessThan(0.03);
    // Every crystal is worth searching.
    for (let seed = 0; seed < 20; seed++) {
      expect(
        crystalSurface(seed)
          .spots()
          .some((s) => s.quality === 'good' || s.quality === 'very good'),
      ).toBe(true);
    }
  });

  // Common practice, no source.
  test('a better spot is heard louder', () => {
    const loudness = (quality: SpotQuality) => {
      const found: number[] = [];
      for (let seed = 0; seed < 12; seed++) {
        const surface = crystalSurface(seed);
        for (const spot of surface.spots()) {
          if (spot.quality === quality && surface.spotAt(spot.x, spot.y) && found.length < 60) {
            found.push(heard(surface.probe(spot.x, spot.y).detector));
          }
        }
      }
      return median(found);
    };
    const order = (['dead', 'poor', 'fair', 'good', 'very good'] as const).map(loudness);
    for (let k = 1; k < order.length; k++) expect(order[k]).toBeGreaterThan(order[k - 1]);
    // Between a fair and a very good spot lie several decibels; a dead one is 20 dB and more down.
    expect(20 * Math.log10(order[4] / order[2])).toBeGreaterThan(3);
    expect(20 * Math.log10(order[4] / order[0])).toBeGreaterThan(20);
  });

  // Common practice, no source.
  test('a light touch is best: too little loses signal, too much crushes the spot', () => {
    const surface = crystalSurface(5);
    const best = surface.spots().reduce((a, b) => (b.merit > a.merit ? b : a));
    const at = (pressure: number) => surface.probe(best.x, best.y, pressure).detector;
    expect(heard(at(0.2))).toBeGreaterThan(heard(at(0)));
    expect(heard(at(0.2))).toBeGreaterThan(2 * heard(at(1)));
    expect(curvature(at(0.2))).toBeGreaterThan(curvature(at(1)));
    expect(surface.probe(best.x, best.y, 1).warnings).toHaveLength(1);
  });

  // Common practice, no source.
  test('a knock loses the spot, most times; the same knock does the same', () => {
    const surface = crystalSurface(7);
    const best = surface.spots().reduce((a, b) => (b.merit > a.merit ? b : a));
    const position = { x: best.x, y: best.y, pressure: 0.2, material: 'phosphor bronze' } as const;
    let lost = 0;
    for (let n = 0; n < 50; n++) {
      const after = surface.knock(position, 1, n);
      expect(surface.knock(position, 1, n)).toEqual(after);
      if (surface.spotAt(after.x, after.y).merit < best.merit) lost++;
    }
    expect(lost).toBeGreaterThan(40);
    expect(surface.knock(position, 0, 3)).toEqual(position);
  });

  test('refuses places beside the crystal', () => {
    const surface = crystalSurface(1);
    expect(() => surface.probe(0.02, 0)).toThrow(RangeError);
    expect(() => surface.probe(Number.NaN, 0)).toThrow(RangeError);
    expect(() => surface.probe(0, 0, 2)).toThrow(RangeError);
    expect(() => crystalSurface(Number.NaN)).toThrow(RangeError);
  });
});

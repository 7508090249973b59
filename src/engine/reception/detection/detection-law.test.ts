import { describe, expect, it } from 'vitest';
import { averaged } from '../../parts/detector/averaged.ts';
import { exponentialDetector } from '../../parts/detector/exponential.ts';
import { type DetectionLaw, lawOfDetector } from './detection-law.ts';

const carriers = Array.from({ length: 60 }, (_, k) => 1e-3 * 1.25 ** k).filter((v) => v < 100);

describe('the law of an ideal exponential detector', () => {
  for (const n of [1, 1.5, 2])
    for (const resistance of [1e6, 1e9, 1e12]) {
      const detector = exponentialDetector({ saturationCurrent: 1e-6, ideality: n });
      const law = lawOfDetector(averaged(detector), resistance);

      it(`falls from square to straight with the carrier: ideality ${n}, ${resistance} Ω`, () => {
        const exponents = carriers.map(law.exponentAt);
        expect(Math.abs(law.exponentAt(detector.slopeVoltage / 10) - 2)).toBeLessThan(0.04);
        for (let k = 1; k < exponents.length; k++) expect(exponents[k]).toBeLessThanOrEqual(exponents[k - 1] + 1e-6);
        expect(law.linearFrom / detector.slopeVoltage).toBeGreaterThan(2);
        expect(law.linearFrom / detector.slopeVoltage).toBeLessThan(40);
        expect(law.exponentAt(law.linearFrom)).toBeCloseTo(1.5, 2);
      });
    }
});

// Source: root of x·I1(x)/I0(x) = 1.5·ln I0(x), found with scipy.special: the exponent of ln I0, the open output.
it.each([1, 1.5])('half way to linear detection is 3.2614 n·kT/e with an open load, ideality %d', (ideality) => {
  const detector = exponentialDetector({ saturationCurrent: 1e-6, ideality });
  expect(lawOfDetector(averaged(detector), 1e12).linearFrom / detector.slopeVoltage).toBeCloseTo(3.2614, 2);
});

describe('words of the law', () => {
  const ORDER: readonly DetectionLaw[] = ['square', 'faster than square', 'between', 'linear'];
  it.each([
    ['galena into low phones', 5e-6, 1.3, 2e3],
    ['galena into high phones', 5e-6, 1.3, 1e4],
    ['silicon into low phones', 3e-9, 1.8, 2e3],
    ['silicon into an amplifier', 3e-9, 1.8, 1e6],
  ])('only go one way as the carrier grows: %s', (_, saturationCurrent, ideality, resistance) => {
    const law = lawOfDetector(averaged(exponentialDetector({ saturationCurrent, ideality })), resistance);
    const steps = carriers.map((v) => ORDER.indexOf(law.lawAt(v)));
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
    expect(law.lawAt(1e-3)).toBe('square');
    expect(law.lawAt(50)).toBe('linear');
    for (const v of carriers) if (law.lawAt(v) === 'square') expect(Math.abs(law.exponentAt(v) - 2)).toBeLessThan(0.3);
  });

  it('silicon that a carrier hardly opens is not called square law', () => {
    const law = lawOfDetector(averaged(exponentialDetector({ saturationCurrent: 3e-9, ideality: 1.8 })), 2e3);
    expect(law.lawAt(0.3)).toBe('faster than square');
  });
});

import { describe, expect, test } from 'vitest';
import { coverageOf, simulatedBenches } from '../../../test/support/simulated-benches.ts';

describe('90 % ranges over simulated benches', () => {
  // At 400 benches the share scatters by 1.5 points (one standard deviation); 4,000 are in bench/coverage.ts.
  for (const [name, benches] of [
    ['resonance', 400],
    ['dial', 400],
    ['detector', 400],
    ['width', 400],
    ['decay', 60],
  ] as const)
    test(`${name}: hold the truth nine times in ten`, () => {
      const slack = 3 * Math.sqrt((0.9 * 0.1) / benches);
      for (const [figure, share] of coverageOf(simulatedBenches(11).measured[name], benches)) {
        expect(share, figure).toBeGreaterThan(0.9 - slack);
        expect(share, figure).toBeLessThan(0.9 + slack);
      }
    });
});

test('a misread station is found 95 times in 100, and 1 in 100 faultless dials has one suspected', () => {
  const { dial } = simulatedBenches(5);
  const found = Array.from({ length: 300 }, () => dial(true, [6, 11])).filter(
    ({ fit, bad }) => fit.suspects.length === 1 && fit.suspects[0].index === bad,
  );
  expect(found.length).toBeGreaterThanOrEqual(285);
  const falseAlarms = Array.from({ length: 500 }, () => dial(false)).filter(({ fit }) => fit.suspects.length > 0);
  expect(falseAlarms.length).toBeLessThanOrEqual(5);
});

// The E12 series of IEC 60063:2015, table 2.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { adjustmentCode, preferredValues } from './adjustment.ts';

it('preferred values rise through the E12 series, both ends included', () => {
  expect(preferredValues(1, 10)).toEqual([1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10]);
  expect(preferredValues(4.7e-11, 1e-10)).toEqual([4.7e-11, 5.6e-11, 6.8e-11, 8.2e-11, 1e-10]);
  expect(preferredValues(1.3, 1.4)).toEqual([]);
  fc.assert(
    fc.property(
      fc.double({ min: -12, max: 6, noNaN: true }),
      fc.double({ min: 0, max: 4, noNaN: true }),
      (low, span) => {
        const [from, to] = [10 ** low, 10 ** (low + span)];
        const values = preferredValues(from, to);
        expect(values).toEqual([...new Set(values)].sort((a, b) => a - b));
        for (const value of values) expect(value >= from * 0.999999 && value <= to * 1.000001).toBe(true);
        // Twelve to a decade.
        expect(Math.abs(values.length - 12 * span)).toBeLessThan(2);
      },
    ),
  );
});

it('an adjustment of any coil has one code', () => {
  expect(adjustmentCode('coils[0].turns')).toBe('coil.turns');
  expect(adjustmentCode('coils[12].former')).toBe('coil.former');
  expect(adjustmentCode('aerial.wire')).toBe('aerial.wire');
  expect(adjustmentCode('turns')).toBe('turns');
});

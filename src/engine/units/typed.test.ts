import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import '../../../test/support/fixed-seed.ts';
import type { Bounds } from './bounds.ts';
import { formatQuantity } from './format.ts';
import { parseQuantity, QUANTITY_KINDS, type QuantityKind } from './parse.ts';
import { typedQuantity, typedTurns } from './typed.ts';

const WIRE: Bounds = { min: 2e-5, max: 0.01, typical: [1e-4, 2e-3] };
const CAPACITANCE: Bounds = { min: 0, max: 1e-3, typical: [1e-10, 1e-9] };

describe('what is typed in a field', () => {
  it.each<[string, string, QuantityKind, string | undefined, Bounds]>([
    ['1044', '1044 kHz', 'frequency', '900 kHz', { min: 1e5, max: 2e6 }],
    ['75', '75 mm', 'length', '63 mm', { min: 1e-3, max: 2, typical: [0.02, 0.15] }],
    ['3', '3 mm', 'length', '63 mm', { min: 1e-3, max: 2, typical: [0.02, 0.15] }],
    ['0.4', '0.4 mm', 'length', '28 SWG', WIRE],
    ['26', '26 SWG', 'length', '28 SWG', WIRE],
    ['26', '26 AWG', 'length', '#28', WIRE],
    ['28', '28 SWG', 'length', '0.4 mm', WIRE],
    ['365', '365 pF', 'capacitance', '500 pF', CAPACITANCE],
    ['0.0005', '0.0005 µF', 'capacitance', '500 pF', CAPACITANCE],
    ['365', '365 pF', 'capacitance', '0.0005 µF', CAPACITANCE],
    ['2x365', '2 × 365 pF', 'capacitance', '500 pF', CAPACITANCE],
    ['365', '365 pF', 'capacitance', '2 × 500 pF', CAPACITANCE],
    ['75', '75 %', 'ratio', '60 %', { min: 0, max: 1.5, typical: [0.1, 1] }],
    ['0.6', '0.6', 'ratio', '60 %', { min: 0, max: 1.5, typical: [0.1, 1] }],
    ['51.2', '51.2°', 'latitude', '52°', { min: -90, max: 90 }],
    ['50', '50 N', 'latitude', '51°12′N', { min: -90, max: 90 }],
    ['51,2', '51,2 N', 'latitude', '50 N', { min: -90, max: 90 }],
    ['-3.5', '-3.5°', 'longitude', '4 W', { min: -180, max: 180 }],
    ['90', '90°', 'bearing', 'NE', { min: -360, max: 360 }],
    ['70', '70 mm', 'length', undefined, { min: 1e-3, max: 2, typical: [0.02, 0.15] }],
    ['75 MM', '75 MM', 'length', '63 mm', {}],
    ['five', 'five', 'length', '63 mm', {}],
  ])('%s is %s', (typed, stored, kind, shown, bounds) => {
    expect(typedQuantity(typed, kind, bounds, shown)).toBe(stored);
  });

  it('is stored so that it reads as the number in the unit shown, whatever the kind', () => {
    const kinds = (Object.keys(QUANTITY_KINDS) as QuantityKind[]).filter((kind) => kind !== 'ratio');
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 60 }),
        (kind, before, n) => {
          const shown = formatQuantity(before, kind);
          const stored = typedQuantity(String(n), kind, {}, shown);
          expect(parseQuantity(stored, kind).ok, `${n} over ${shown} was stored as ${stored}`).toBe(true);
          expect(stored).toMatch(new RegExp(`^${n}\\D`));
        },
      ),
    );
  });

  it('is a share of the turns for a tap', () => {
    expect(typedTurns('50 %', 90)).toBe(45);
    expect(typedTurns('33%', 70)).toBe(23);
    expect(typedTurns('25 per cent of the turns', 90)).toBe(22.5);
    expect(typedTurns('50 %')).toBeUndefined();
    expect(typedTurns('12 1/2')).toBe(12.5);
    expect(typedTurns('45 turns', 90)).toBe(45);
    expect(typedTurns('five', 90)).toBeUndefined();
  });
});

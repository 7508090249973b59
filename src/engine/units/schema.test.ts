import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { QuantityKind } from './parse.ts';
import { type Bounds, quantity } from './schema.ts';

const messageOf = (written: unknown, kind: QuantityKind, bounds: Bounds = {}): string => {
  const read = v.safeParse(quantity(kind, bounds), written);
  return read.success ? '' : read.issues[0].message;
};
const WIRE: Bounds = { above: 0, max: 0.02, typical: [1e-4, 2e-3] };

describe('what is said of a quantity that will not do', () => {
  it('offers the unit that makes a usual size, a gauge for a wire', () => {
    expect(messageOf('28', 'length', WIRE)).toMatch(/add a unit: "28 SWG", not "28"$/);
    expect(messageOf('0.4', 'length', WIRE)).toMatch(/add a unit: "0.4 mm", not "0.4"$/);
    expect(messageOf('60', 'ratio', { above: 0, max: 1.5, typical: [0.1, 1] })).toMatch(/add a unit: "60 %"/);
  });

  it('offers nothing that would be refused in its turn, and ends without a mark of its own', () => {
    const said = messageOf('-3', 'length', WIRE);
    expect(said).toMatch(/add a unit, as in "63 mm"$/);
    expect(said).not.toMatch(/"-3 /);
    expect(messageOf('500 PF', 'capacitance')).toMatch(/write "500 pF"$/);
  });

  it('names limits in the unit a builder would use', () => {
    expect(messageOf('5000 kHz', 'frequency', { min: 1e5, max: 2e6 })).toMatch(/of at most 2 MHz,/);
    expect(messageOf('-90 °C', 'temperature', { min: 200, max: 400 })).toMatch(/of at least −73 °C,/);
    expect(messageOf('200 °C', 'temperature', { min: 200, max: 400 })).toMatch(/of at most 126 °C,/);
    expect(messageOf('300 %', 'ratio', { above: 0, max: 1.5 })).toMatch(/of at most 150 %,/);
    expect(messageOf('-1 m', 'length', WIRE)).toMatch(/a length above 0,/);
  });
});

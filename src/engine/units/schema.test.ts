import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { QuantityKind } from './parse.ts';
import { refusalIn } from './refusal.ts';
import { type Bounds, quantity } from './schema.ts';

const refusalOf = (written: unknown, kind: QuantityKind, bounds: Bounds = {}) => {
  const read = v.safeParse(quantity(kind, bounds), written);
  return read.success ? undefined : refusalIn(read.issues[0]);
};
const WIRE: Bounds = { above: 0, max: 0.02, typical: [1e-4, 2e-3] };

describe('what is said of a quantity that will not do', () => {
  it('offers the unit that makes a usual size, a gauge for a wire', () => {
    const hint = (...given: Parameters<typeof refusalOf>) => refusalOf(...given)?.hint;
    expect(hint('28', 'length', WIRE)).toEqual({ code: 'add-this-unit', number: '28', unit: 'SWG' });
    expect(hint('0.4', 'length', WIRE)).toEqual({ code: 'add-this-unit', number: '0.4', unit: 'mm' });
    expect(hint('60', 'ratio', { above: 0, max: 1.5, typical: [0.1, 1] })).toEqual({
      code: 'add-this-unit',
      number: '60',
      unit: '%',
    });
  });

  it('offers nothing that would be refused in its turn', () => {
    expect(refusalOf('-3', 'length', WIRE)?.hint).toEqual({ code: 'add-a-unit', kind: 'length', usual: WIRE.typical });
    expect(refusalOf('0.3', 'length', { min: 50 })?.hint).toEqual({ code: 'add-this-unit', number: '0.3', unit: 'km' });
  });

  it('names the limit that is passed', () => {
    const expected = (...given: Parameters<typeof refusalOf>) => refusalOf(...given)?.expected;
    expect(expected('5000 kHz', 'frequency', { min: 1e5, max: 2e6 })).toMatchObject({
      code: 'quantity.at-most',
      max: 2e6,
    });
    expect(expected('-90 °C', 'temperature', { min: 200, max: 400 })).toMatchObject({
      code: 'quantity.at-least',
      min: 200,
    });
    expect(expected('-1 m', 'length', WIRE)).toMatchObject({ code: 'quantity.above', above: 0 });
  });

  it('keeps what was given, shortened', () => {
    expect(refusalOf('x'.repeat(1000), 'length')?.given).toEqual({ code: 'value', json: `"${'x'.repeat(60)}"` });
    expect(refusalOf(undefined, 'length')?.given).toEqual({ code: 'nothing' });
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import published from '../../../reference/parts-published.json' with { type: 'json' };
import { formatQuantity } from './format.ts';
import { gaugeDiameter } from './gauge.ts';
import { parseQuantity, QUANTITY_KINDS, type QuantityKind } from './parse.ts';

const value = (text: string, kind: QuantityKind) => {
  const parsed = parseQuantity(text, kind);
  return parsed.ok ? parsed.value : parsed.hint.code;
};

describe('quantities as people write them', () => {
  it.each<[string, QuantityKind, number]>([
    ['63 mm', 'length', 0.063],
    ['2 1/2 in', 'length', 0.0635],
    ['1/8"', 'length', 0.003175],
    ['28 SWG', 'length', 0.0148 * 0.0254],
    ['24 AWG', 'length', 0.127e-3 * 92 ** (12 / 39)],
    ['470 pF', 'capacitance', 470e-12],
    ['0.0005 µF', 'capacitance', 5e-10],
    ['.0005uF', 'capacitance', 5e-10],
    ['6.3 V', 'voltage', 6.3],
    ['549 kHz', 'frequency', 549e3],
    ['1,5 MHz', 'frequency', 1.5e6],
    ['4k7', 'resistance', 4700],
    ['2 kΩ', 'resistance', 2000],
    ['100 ohm m', 'resistivity', 100],
    ['2 kΩ·cm', 'resistivity', Number.NaN],
    ['66 dBµV/m', 'field strength', 1e-6 * 10 ** 3.3],
    ['20 °C', 'temperature', 293.15],
    ['30 %', 'ratio', 0.3],
    ['-33.5°', 'angle', -33.5],
    ['75 MM', 'length', 0.075],
    ['1.2 Mhz', 'frequency', 1.2e6],
    ['1.2 MHZ', 'frequency', 1.2e6],
    ['5 KW', 'power', 5e3],
    ['20 MV', 'voltage', 20e6],
    ['20 mv', 'voltage', 0.02],
    ['500 PF', 'capacitance', 500e-12],
    ['0.1 uf', 'capacitance', 1e-7],
    ['2 k ohm', 'resistance', 2000],
    ['20 °c', 'temperature', 293.15],
    ['66 dbuv/m', 'field strength', 1e-6 * 10 ** 3.3],
    ['2x365 pF', 'capacitance', 730e-12],
    ['2 × 365 pF', 'capacitance', 730e-12],
    ['3*0.0005 µF', 'capacitance', 1.5e-9],
    ['#26', 'length', 0.127e-3 * 92 ** (10 / 39)],
    ['26 B&S', 'length', 0.127e-3 * 92 ** (10 / 39)],
    ['26 awg', 'length', 0.127e-3 * 92 ** (10 / 39)],
    ['26 s.w.g.', 'length', 0.018 * 0.0254],
    ['#26 SWG', 'length', 0.018 * 0.0254],
    ['51.2 N', 'latitude', 51.2],
    ['51,2 n', 'latitude', 51.2],
    ['51°12′N', 'latitude', 51.2],
    ['33.5 S', 'latitude', -33.5],
    ['-33.5°', 'latitude', -33.5],
    ['4°30′W', 'longitude', -4.5],
    ['E 12.5', 'longitude', 12.5],
    ['NE', 'bearing', 45],
    ['north-east', 'bearing', 45],
    ['South South West', 'bearing', 202.5],
    ['45°', 'bearing', 45],
  ])('%s is %s', (text, kind, expected) => {
    if (Number.isNaN(expected)) expect(typeof value(text, kind)).toBe('string');
    else expect(value(text, kind)).toBeCloseTo(expected, 15);
  });

  it('refuses what is ambiguous or of another kind, and says what would do', () => {
    const hint = (text: string, kind: QuantityKind) => {
      const parsed = parseQuantity(text, kind);
      return parsed.ok ? parsed.value : parsed.hint;
    };
    const kind = 'capacitance';
    expect(hint('5 m', kind)).toEqual({ code: 'unit-of-another-kind', unit: 'm', other: 'length', kind });
    expect(hint('500', kind)).toEqual({ code: 'add-a-unit', kind });
    expect(hint('0.0005 MF', kind)).toEqual({
      code: 'unit-unclear',
      number: '0.0005',
      unit: 'MF',
      units: ['µF', 'mF'],
    });
    expect(hint('5 m', 'resistance')).toMatchObject({ code: 'unit-of-another-kind', other: 'length' });
    expect(hint('4.5 W', 'latitude')).toMatchObject({ code: 'unit-of-another-kind', other: 'power' });
    expect(hint('51.2', 'latitude')).toEqual({ code: 'add-a-unit', kind: 'latitude' });
    expect(hint('0x365 pF', kind)).toMatchObject({ code: 'unit-not-known' });
    expect(hint('2x365', kind)).toEqual({ code: 'add-a-unit', kind });
    expect(hint('28 SWG', kind)).toEqual({ code: 'gauge-is-a-length', gauge: 'SWG', kind });
    expect(hint('9 SWG', 'length')).toEqual({ code: 'gauge-range', gauge: 'SWG' });
    expect(hint('__proto__', 'length')).toEqual({ code: 'begin-with-number', kind: 'length' });
    expect(hint('1 constructor', 'length')).toEqual({ code: 'unit-not-known', unit: 'constructor', kind: 'length' });
    expect(parseQuantity(Number.NaN, 'length').ok).toBe(false);
    expect(parseQuantity(Number.POSITIVE_INFINITY, 'length').ok).toBe(false);
  });

  it('prints what it reads back', () => {
    const kinds = (Object.keys(QUANTITY_KINDS) as QuantityKind[]).filter(
      (k) => k !== 'ratio' && k !== 'level' && k !== 'temperature',
    );
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.double({ min: 1e-11, max: 9e5, noNaN: true }), (kind, x) => {
        const read = value(formatQuantity(x, kind, 6), kind);
        // The smallest printed step of a unit without small prefixes (an angle, a mass) bounds what can come back.
        expect(typeof read).toBe('number');
        expect(Math.abs((read as number) - x)).toBeLessThanOrEqual(Math.max(1e-5 * x, 1e-12));
      }),
      { numRuns: 500 },
    );
  });
});

// ASTM B258 defines the sizes between No. 36 (0.0050 in) and 4/0; No. 24 is printed there as 0.0201 in.
// BS 3737 sizes: reference/parts-published.json, entry "swg".
const gauges = published.entries.find((e) => e.id === 'swg')!;
describe('wire gauges', () => {
  it('agrees with the standards', () => {
    expect(gaugeDiameter('AWG', 36)! / 0.0254).toBeCloseTo(0.005, 6);
    expect(gaugeDiameter('AWG', 24)! / 0.0254).toBeCloseTo(0.0201, 4);
    for (const { swg, d_in } of gauges.values)
      expect(gaugeDiameter('SWG', swg)! / 0.0254, `${swg}`).toBeCloseTo(d_in, 6);
    expect(gaugeDiameter('SWG', 9)).toBeUndefined();
  });
});

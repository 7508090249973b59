import { describe, expect, it } from 'vitest';
import aerials from '../../../reference/aerials.json' with { type: 'json' };
import earths from '../../../reference/earths.json' with { type: 'json' };
import { aerialCalculation } from './aerial.ts';
import type { Calculation } from './calculation.ts';
import { earthCalculation } from './earth.ts';

// biome-ignore lint/suspicious/noExplicitAny: answers are open records.
const answer = (calculation: Calculation, input: unknown): any => {
  const result = calculation.run(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.answer;
};
const problems = (calculation: Calculation, input: unknown) => {
  const result = calculation.run(input);
  return result.ok ? [] : result.problems.map(({ path, message }) => `${path}: ${message}`);
};

describe('calc aerial', () => {
  it('runs its own example and gives every promised figure', () => {
    const it = answer(aerialCalculation, aerialCalculation.example);
    expect(it.capacitance.unit).toBe('F');
    expect(it.effectiveHeight.unit).toBe('m');
    expect(it.radiationResistance.unit).toBe('Ω');
    expect(it.impedance.resistance.value).toBeGreaterThan(it.radiationResistance.value);
    expect(it.impedance.reactance.value).toBeLessThan(0);
    const earthed = answer(aerialCalculation, { ...(aerialCalculation.example as object), earthResistance: '50 ohm' });
    expect(earthed.impedance.resistance.value - it.impedance.resistance.value).toBeCloseTo(50, 9);
  });

  it('is within 0.1 % of the reference moments (reference/aerials.json), from plain SI numbers', () => {
    for (const row of aerials.aerials) {
      const shape = row.kind.replace(' only', '');
      const got = answer(aerialCalculation, {
        shape,
        height: row.h_top,
        length: row.l_top,
        base: row.z_base,
        wire: { diameter: 2 * row.wire_radius },
      });
      expect(Math.abs(got.capacitance.value / row.C_n400 - 1)).toBeLessThan(1e-3);
      expect(Math.abs(got.effectiveHeight.value / row['h_eff_static=sum(q z)/Q'] - 1)).toBeLessThan(1e-3);
    }
  });

  it('counts the loss of what is around a wire in the range of its resistance, not in the value', () => {
    const long = { shape: 'inverted-L', height: '10 m', length: '40 m', wire: { diameter: '1.6 mm' } };
    const at = (surroundings: string, frequency: string) =>
      answer(aerialCalculation, { ...long, surroundings, frequency, earthResistance: '6 ohm' }).impedance.resistance;
    const alone = at('nothing', '136 kHz');
    const garden = at('garden', '136 kHz');
    expect(garden.value).toBe(alone.value);
    expect(alone.range[1]).toBeLessThan(7);
    // Published for such an aerial over wet clay: 1550/f^0.75, f in kHz; earth and frequency-free part are 6 Ω of it.
    for (const kHz of [136, 200, 300, 500]) {
      const { range } = at('garden', `${kHz} kHz`);
      expect(1550 / kHz ** 0.75, `${kHz} kHz`).toBeGreaterThan(range[0]);
      expect(1550 / kHz ** 0.75, `${kHz} kHz`).toBeLessThan(range[1]);
    }
  });

  it('answers the other kinds', () => {
    const frequency = '1 MHz';
    const frame = answer(aerialCalculation, {
      shape: 'frame',
      side: '60 cm',
      turns: 15,
      wire: { diameter: '0.7 mm' },
      frequency,
    });
    expect(frame.inductance.value).toBeGreaterThan(1e-4);
    expect(frame.nullDirection.value).toBe(90);
    const rod = answer(aerialCalculation, {
      shape: 'ferrite rod',
      length: '200 mm',
      diameter: '10 mm',
      permeability: 125,
      turns: 60,
      winding: '30 mm',
      frequency,
    });
    expect(rod.lossResistanceRange[0].value).toBeLessThan(rod.lossResistance.value);
    const gutter = answer(aerialCalculation, {
      shape: 'measured',
      capacitance: '400 pF',
      resistance: '80 ohm',
      effectiveHeight: '2 m',
      frequency,
    });
    expect(gutter.impedance.reactance.value).toBeCloseTo(-397.9, 1);
    const touchstone = '# MHz S RI R 50\n0.5 0.9 -0.3\n1.5 0.8 -0.5\n';
    expect(
      answer(aerialCalculation, { shape: 'impedance', touchstone, effectiveHeight: '3 m', frequency }).impedance
        .reactance.unit,
    ).toBe('Ω');
    const points = [{ frequency: '1 MHz', resistance: '20 ohm', reactance: '-300 ohm' }];
    expect(
      answer(aerialCalculation, { shape: 'impedance', points, effectiveHeight: 3, frequency }).impedance.reactance
        .value,
    ).toBe(-300);
  });

  it('names what is wrong, all at once', () => {
    expect(problems(aerialCalculation, { shape: 'T', height: '5 pF', length: -1, wire: 3 })).toHaveLength(3);
    expect(
      problems(aerialCalculation, { shape: 'vertical', height: 5, base: 6, wire: { diameter: '2 mm' } }).join(),
    ).toMatch(/the foot of the lead-in must be at least 0 and below 5 m, not 6 m/);
    expect(problems(aerialCalculation, { shape: 'blob' }).join()).toMatch(/"inverted-L"/);
    expect(problems(aerialCalculation, null)).toHaveLength(1);
    expect(
      problems(aerialCalculation, {
        shape: 'impedance',
        touchstone: '# MHz\nx',
        effectiveHeight: 1,
        frequency: 1e6,
      }).join(),
    ).toMatch(/line 2/);
    expect(problems(aerialCalculation, { shape: 'impedance', effectiveHeight: 1, frequency: 1e6 }).join()).toMatch(
      /at least one point/,
    );
  });
});

describe('calc earth', () => {
  it('runs its own example, and Dwight’s rods (reference/earths.json) exactly', () => {
    expect(answer(earthCalculation, earthCalculation.example).warnings).toEqual([]);
    for (const row of earths.earth_rod) {
      const { resistance } = answer(earthCalculation, {
        shape: 'rod',
        length: row.L,
        diameter: row.d,
        soilResistivity: row.rho,
      });
      expect(resistance.value / row.R_dwight).toBeCloseTo(1, 12);
      expect(resistance.unit).toBe('Ω');
    }
  });

  it('answers the other kinds and names what is wrong', () => {
    const wire = { diameter: '2 mm' };
    for (const input of [
      { shape: 'rods', length: '1.2 m', diameter: '12 mm', count: 3, spacing: '2 m', soil: 'clay' },
      { shape: 'plate', side: '1 ft', depth: '0.5 m', soilResistivity: 100 },
      { shape: 'buried wire', length: '20 m', depth: '0.3 m', wire, soil: 'chalk' },
      { shape: 'radials', count: 8, length: '5 m', depth: '5 cm', wire, soilResistivity: 100 },
      { shape: 'counterpoise', length: '10 m', height: '0.5 m', wire, soilResistivity: 100 },
      { shape: 'water pipe', resistance: '20 ohm', range: ['10 ohm', '40 ohm'] },
    ]) {
      const got = answer(earthCalculation, input);
      expect(got.range[0].value).toBeLessThan(got.resistance.value);
      expect(got.range[1].value).toBeGreaterThan(got.resistance.value);
    }
    expect(problems(earthCalculation, { shape: 'rod', length: '1 pF', diameter: Number.NaN })).toHaveLength(2);
    // A soil that is not said is the usual one over average ground: 150 Ω·m, ×/÷ 5.
    const rod = { shape: 'rod', length: 1, diameter: 0.01 };
    expect(answer(earthCalculation, rod).resistance.value).toBe(
      answer(earthCalculation, { ...rod, soilResistivity: 150 }).resistance.value,
    );
    expect(problems(earthCalculation, { shape: 'rod', length: 1, diameter: 2, soil: 'clay' }).join()).toMatch(
      /thinner/,
    );
  });
});

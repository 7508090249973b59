// Held-out style rows: reference/coils.json through the fixed names of `faintwave calc`.
import { describe, expect, it } from 'vitest';
import reference from '../../../reference/coils.json' with { type: 'json' };
import type { Calculation } from './calculation.ts';
import { coilCalculation } from './coil.ts';
import { couplingCalculation } from './coupling.ts';
import { wireCalculation } from './wire.ts';

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
const off = (got: number, want: number) => Math.abs(got / want - 1);
const { computed, published } = reference;

describe('calc coil, coupling and wire', () => {
  it('run their own examples', () => {
    for (const calculation of [coilCalculation, couplingCalculation, wireCalculation])
      expect(calculation.run(calculation.example).ok).toBe(true);
  });

  it('answers with units and takes written quantities', () => {
    const written = answer(coilCalculation, {
      shape: 'solenoid',
      turns: 50,
      meanDiameter: '50 mm',
      pitch: '1 mm',
      wire: { diameter: '0.5 mm' },
      frequency: '1 MHz',
    });
    const plain = answer(coilCalculation, {
      shape: 'solenoid',
      turns: 50,
      meanDiameter: 0.05,
      pitch: 0.001,
      wire: { diameter: 0.0005 },
      frequency: 1e6,
    });
    expect(written).toEqual(plain);
    for (const [name, unit] of Object.entries({
      inductance: 'H',
      wireLength: 'm',
      dcResistance: 'Ω',
      selfCapacitance: 'F',
      selfResonance: 'Hz',
      inductanceAtFrequency: 'H',
      resistance: 'Ω',
      q: '',
    })) {
      expect(written[name].unit, name).toBe(unit);
      expect(written[name].value, name).toBeGreaterThan(0);
    }
    expect(off(written.inductance.value, computed.solenoids.find((r) => r.N === 50)!.L_uniform_current)).toBeLessThan(
      1e-8,
    );
    // Length and direct-current resistance of 50 turns of 50 mm in 0.5 mm copper, 0.0878077 Ω/m.
    expect(off(written.wireLength.value, 50 * Math.PI * 0.05)).toBeLessThan(1e-4);
    expect(off(written.dcResistance.value, 50 * Math.PI * 0.05 * 0.08780769)).toBeLessThan(1e-4);
    // Medhurst at l/D = 1: 0.46 pF per cm
    expect(off(written.selfCapacitance.value, 2.3e-12)).toBeLessThan(1e-9);
  });

  it('wire and coupling agree with the independent values', () => {
    for (const row of computed.skin_effect.copper) {
      const got = answer(wireCalculation, { diameter: row.d, frequency: row.f });
      expect(off(got.resistancePerMetre.value, row.Rac_per_m)).toBeLessThan(1e-7);
      expect(off(got.acToDcRatio.value, row.Rac_over_Rdc)).toBeLessThan(1e-8);
    }
    for (const r of computed.coaxial_pairs) {
      const one = (turns: number, meanDiameter: number, pitch: number) => ({
        shape: 'solenoid',
        turns,
        meanDiameter,
        pitch,
        wire: { diameter: 0.9 * pitch },
      });
      const got = answer(couplingCalculation, {
        first: one(r.N1, r.D1, r.pitch1),
        second: one(r.N2, r.D2, r.pitch2),
        offset: r.z_first_turn_coil2 + ((r.N2 - 1) * r.pitch2) / 2 - ((r.N1 - 1) * r.pitch1) / 2,
      });
      expect(off(got.mutualInductance.value, r.M), r.note).toBeLessThan(1e-8);
      expect(off(got.couplingCoefficient.value, r.k), r.note).toBeLessThan(1e-8);
    }
  });

  it('resistance follows Medhurst’s factor where skin is thin', () => {
    // l/D = 1, d/s = 0.5, 40 turns of 0.625 mm on 50 mm: 1.67 in the table, at 10 MHz
    const { columns_d_over_s, rows_l_over_D } = published.medhurst_phi.values;
    const phi = rows_l_over_D['1'][columns_d_over_s.indexOf(0.5)];
    const got = answer(coilCalculation, {
      shape: 'solenoid',
      turns: 40,
      meanDiameter: 0.05,
      pitch: 1.25e-3,
      wire: { diameter: 6.25e-4 },
      frequency: 1e7,
    });
    const straight = answer(wireCalculation, { diameter: 6.25e-4, frequency: 1e7 });
    expect(off(got.resistance.value / got.wireLength.value / straight.resistancePerMetre.value, phi)).toBeLessThan(0.1);
  });

  it('takes every shape', () => {
    for (const shape of [
      {
        shape: 'multilayer',
        turnsPerLayer: 25,
        layers: 4,
        innerDiameter: '50 mm',
        pitch: '0.6 mm',
        layerPitch: '0.6 mm',
        wire: { diameter: '0.5 mm' },
      },
      { shape: 'spiral', turns: 30, innerDiameter: '40 mm', pitch: '1 mm', wire: { diameter: '0.5 mm' } },
      {
        shape: 'bank-wound',
        turns: 100,
        layers: 2,
        formerDiameter: '2 1/2 in',
        wire: { diameter: '28 SWG', covering: 'enamel' },
      },
      {
        shape: 'spider',
        turns: 45,
        innerDiameter: '40 mm',
        slots: 11,
        wire: { diameter: '24 SWG', covering: 'double cotton' },
        former: 'card',
      },
      { shape: 'basket', turns: 45, pegCircle: '80 mm', wire: { diameter: '24 SWG', covering: 'double cotton' } },
      { shape: 'core', turns: 60, perTurnSquared: '50 nH', wire: { diameter: '0.4 mm' } },
      {
        shape: 'solenoid',
        turns: 60.5,
        formerDiameter: '70 mm',
        wire: { diameter: '0.07 mm', strands: 40, covering: 'double silk' },
        temperature: '30 °C',
      },
    ]) {
      const got = answer(coilCalculation, { ...shape, frequency: '900 kHz' });
      expect(got.inductance.value, shape.shape).toBeGreaterThan(1e-5);
      expect(got.q.value).toBeGreaterThan(20);
      expect(got.qRange[0].value).toBeLessThan(got.qRange[1].value);
    }
  });

  it('names every problem with its path, and never fails on nonsense', () => {
    expect(
      problems(coilCalculation, {
        shape: 'solenoid',
        turns: -3,
        meanDiameter: '5 pF',
        pitch: '1 mm',
        wire: { diameter: 'thick' },
      }),
    ).toEqual([
      expect.stringMatching(/^turns: /),
      expect.stringMatching(/^meanDiameter: expected a length/),
      expect.stringMatching(/^wire\.diameter: expected a length/),
    ]);
    expect(problems(coilCalculation, { shape: 'cube' })).toEqual([expect.stringMatching(/shape.*solenoid/)]);
    expect(
      problems(coilCalculation, { shape: 'solenoid', turns: 10, pitch: '1 mm', wire: { diameter: '0.5 mm' } }),
    ).toEqual([expect.stringMatching(/neither a former nor a winding diameter/)]);
    expect(
      problems(coilCalculation, {
        shape: 'solenoid',
        turns: 10,
        meanDiameter: '0.2 mm',
        pitch: '1 mm',
        wire: { diameter: '0.5 mm' },
      }),
    ).toEqual([expect.stringMatching(/too small/)]);
    expect(
      problems(coilCalculation, {
        shape: 'multilayer',
        turnsPerLayer: 20000,
        layers: 90,
        innerDiameter: '50 mm',
        wire: { diameter: '0.5 mm' },
      }),
    ).toEqual([expect.stringMatching(/turns/)]);
    for (const input of [null, 7, 'coil', [], {}, { __proto__: { shape: 'solenoid' } }, { shape: null }]) {
      expect(problems(coilCalculation, input).length).toBeGreaterThan(0);
      expect(problems(couplingCalculation, input).length).toBeGreaterThan(0);
      expect(problems(wireCalculation, input).length).toBeGreaterThan(0);
    }
  });
});

import { describe, expect, test } from 'vitest';
import published from '../../../../../reference/detectors-published.json' with { type: 'json' };
// Source: exact planar solution and heater balance computed with scipy (reference/thermionic.json); the device's
// constants are assumptions from memory, stated there.
import reference from '../../../../../reference/thermionic.json' with { type: 'json' };
import { averaged } from '../averaged.ts';
import { steadyDetector } from '../steady.ts';
import { cathodeTemperature, heatCathode } from './heater.ts';
import { scaledErfc } from './langmuir.ts';
import { emission, thermionicDetector } from './thermionic.ts';

const column = (rows: (number[] | number | null)[]) => rows as unknown as number[][];

describe('current', () => {
  test.each(reference.curves)('at $T_K K is the exact solution within 0.1 %', ({ T_K, Isat_A, rows }) => {
    const valve = thermionicDetector({ temperature: T_K });
    const applied = reference.constants.contact_potential_V;
    for (const [v, i] of column(rows)) expect(Math.abs(valve.current(v + applied) / i - 1)).toBeLessThan(1e-3);
    expect(emission(T_K) / Isat_A).toBeCloseTo(1, 3);
  });

  // Source: Richardson-Dushman examples, recomputed (reference/detectors-published.json, entry "thermionic").
  test('emission densities', () => {
    const entry = published.entries.find((e) => e.id === 'thermionic') as unknown as {
      recomputed_check: { 'richardson_J(A/m^2)': { T: number; A: number; phi_eV: number; J: number }[] };
    };
    for (const { T, A, phi_eV, J } of entry.recomputed_check['richardson_J(A/m^2)']) {
      const density = emission(T, { emissionConstant: A, workFunction: phi_eV, area: 1, gap: 1, contactPotential: 0 });
      expect(density / J).toBeCloseTo(1, 6);
    }
  });

  test('retarded: e-fold for kT/e, 86.2 mV at 1000 K', () => {
    const valve = thermionicDetector({ temperature: 1000 });
    expect(Math.log(valve.current(-1) / valve.current(-1 - 0.08617333))).toBeCloseTo(1, 4);
  });

  test('erfcx: known values (DLMF 7.9; scipy.special.erfcx)', () => {
    for (const [t, y] of [
      [0, 1],
      [0.5, 0.6156903441929259],
      [1, 0.427583576155807],
      [1.999, 0.2555025145905779],
      [2, 0.25539567631050575],
      [5, 0.11070463773306863],
    ]) {
      expect(scaledErfc(t)).toBeCloseTo(y, 8);
    }
  });
});

describe('heater', () => {
  test('steady temperature follows the balance', () => {
    for (const [V, T] of column(reference.underrun.rows)) expect(cathodeTemperature(V) / T).toBeCloseTo(1, 4);
  });

  test.each([
    ['cooling_from_6.3V', 0],
    ['cooling_from_5.0V', 0],
    ['warmup_to_6.3V', 6.3],
    ['warmup_to_5.0V', 5],
  ] as const)('%s in time, within 0.1 K', (name, volts) => {
    const rows = column(reference[name].rows);
    const start = rows[0][1];
    for (const [t, T] of rows) expect(Math.abs(heatCathode(start, volts, t) - T)).toBeLessThan(0.1);
  });

  test('two steps are one', () => {
    expect(heatCathode(heatCathode(300, 6.3, 3), 6.3, 4)).toBeCloseTo(heatCathode(300, 6.3, 7), 6);
  });
});

describe('what people find (common practice, no source)', () => {
  const heard = (T: number) =>
    steadyDetector({
      averaged: averaged(thermionicDetector({ temperature: T })),
      openCircuit: 0.3,
      sourceImpedance: { re: 1e5, im: 0 },
      dcResistance: 5e4,
    });
  const standing = (T: number) =>
    steadyDetector({
      averaged: averaged(thermionicDetector({ temperature: T })),
      openCircuit: 0,
      sourceImpedance: { re: 1e5, im: 0 },
      dcResistance: 5e4,
    }).directVoltage;
  const detected = (T: number) => heard(T).directVoltage - standing(T);

  test('a 6.3 V heater run at 5 V still detects', () => {
    expect(detected(cathodeTemperature(5))).toBeGreaterThan(0.5 * detected(cathodeTemperature(6.3)));
  });

  test('nothing is heard in the first seconds; within a minute it is as loud as it will be', () => {
    const full = detected(cathodeTemperature(6.3));
    expect(detected(heatCathode(300, 6.3, 1.5))).toBeLessThan(0.05 * full);
    expect(detected(heatCathode(300, 6.3, 60)) / full).toBeCloseTo(1, 2);
  });

  test('switched off, it works on for a while and fades gradually', () => {
    const full = detected(1020);
    const after = (t: number) => detected(heatCathode(1020, 0, t));
    expect(after(3)).toBeGreaterThan(0.5 * full);
    expect(after(120)).toBeLessThan(0.01 * full);
    // Gradually: no second of the fading loses more than 6 dB.
    for (let t = 4; t < 60; t++) if (after(t) > 1e-3 * full) expect(after(t + 1)).toBeGreaterThan(0.5 * after(t));
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import published from '../../../../../reference/detectors-published.json' with { type: 'json' };
// Source: exact planar solution and heater balance computed with scipy (reference/thermionic.json); the device's
// constants are assumptions from memory, stated there.
import reference from '../../../../../reference/thermionic.json' with { type: 'json' };
// Heater and cathode as two bodies, by scipy; the standard warm-up time from memory, as is stated there.
import twoBodies from '../../../../../reference/valve-heater.json' with { type: 'json' };
import { averaged } from '../averaged.ts';
import { steadyDetector } from '../steady.ts';
import { cathodeTemperature, cold, type Heater, heatCathode, heatedThrough, SMALL_VALVE_HEATER } from './heater.ts';
import { heaterTimes, WORKING_EMISSION } from './heater-times.ts';
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

  // A corner in the curvature made the response to faint signals, i''/i', step to a fifth at one voltage near 0.2 V.
  test.each([600, 650, 750, 850, 926, 1020, 1100])('no corner anywhere at %d K', (temperature) => {
    const valve = thermionicDetector({ temperature });
    const Vt = valve.slopeVoltage;
    const step = Vt / 80;
    // Slope of ln i in units of 1/Vt, and its change over a whole Vt.
    const slope = (v: number) => (Vt * valve.conductance(v)) / valve.current(v);
    let before: { readonly slope: number; readonly bend: number } | undefined;
    for (let v = -1; v < 2 && valve.current(v) < 0.5 * emission(temperature); v += step) {
      const now = slope(v);
      const bend = before ? (now - before.slope) / (step / Vt) : 0;
      expect(now, `${v} V`).toBeGreaterThan(0);
      expect(now).toBeLessThan(1 + 1e-9);
      const numeric = (Vt * Math.log(valve.current(v + 1e-5) / valve.current(v - 1e-5))) / 2e-5;
      expect(Math.abs(numeric - now), `slope at ${v} V`).toBeLessThan(2e-3);
      if (before) expect(Math.abs(bend - before.bend), `bend at ${v} V`).toBeLessThan(0.13);
      before = { slope: now, bend };
    }
  });

  test('rises throughout, at any temperature and contact potential', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 1200, noNaN: true }),
        fc.double({ min: 0.3, max: 1.2, noNaN: true }),
        fc.double({ min: -2, max: 4, noNaN: true }),
        fc.double({ min: 1e-4, max: 0.05, noNaN: true }),
        (temperature, contactPotential, v, step) => {
          const valve = thermionicDetector({ temperature, electrodes: { contactPotential } });
          expect(valve.current(v + step)).toBeGreaterThanOrEqual(valve.current(v));
          expect(valve.conductance(v)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
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

/** One body, as the older reference has it: a directly heated cathode. */
const DIRECT: Heater = { ...SMALL_VALVE_HEATER, heatCapacity: 0.05, wire: undefined };
const allAt = (T: number) => ({ wire: T, cathode: T });

describe('heater', () => {
  test('directly heated: steady temperature follows the balance', () => {
    for (const [V, T] of column(reference.underrun.rows)) expect(cathodeTemperature(V, DIRECT) / T).toBeCloseTo(1, 4);
  });

  test.each([
    ['cooling_from_6.3V', 0],
    ['cooling_from_5.0V', 0],
    ['warmup_to_6.3V', 6.3],
    ['warmup_to_5.0V', 5],
  ] as const)('directly heated: %s in time, within 0.1 K', (name, volts) => {
    const rows = column(reference[name].rows);
    const start = allAt(rows[0][1]);
    for (const [t, T] of rows) expect(Math.abs(heatCathode(start, volts, t, DIRECT).cathode - T)).toBeLessThan(0.1);
  });

  test('indirectly heated: steady temperatures of wire and cathode', () => {
    for (const [V, wire, cathode] of twoBodies.steady.rows) {
      expect(heatedThrough(V).wire / wire).toBeCloseTo(1, 5);
      expect(heatedThrough(V).cathode / cathode).toBeCloseTo(1, 5);
    }
  });

  test.each([
    ['warm_up_6.3V', 6.3, 'on'],
    ['warm_up_5.0V', 5, 'on'],
    ['cooling_from_6.3V', 6.3, 'off'],
    ['cooling_from_5.0V', 5, 'off'],
  ] as const)('indirectly heated: %s in time, within 0.1 K', (name, volts, way) => {
    const start = way === 'on' ? cold(SMALL_VALVE_HEATER) : heatedThrough(volts);
    for (const [t, wire, cathode] of twoBodies.courses[name].rows) {
      const now = heatCathode(start, way === 'on' ? volts : 0, t);
      expect(Math.abs(now.wire - wire), `wire, ${t} s`).toBeLessThan(0.1);
      expect(Math.abs(now.cathode - cathode), `cathode, ${t} s`).toBeLessThan(0.1);
    }
  });

  test('takes the standard warm-up time: 11 s to 80 % of its voltage, through three times its hot resistance', () => {
    const { ratedVoltage, ratedCurrent, wire } = SMALL_VALVE_HEATER;
    const hot = ratedVoltage / ratedCurrent;
    const across = (T: number) => {
      const R = hot * (T / wire!.ratedTemperature) ** 1.2;
      return (4 * ratedVoltage * R) / (R + 3 * hot);
    };
    let state = cold(SMALL_VALVE_HEATER);
    let time = 0;
    for (; across(state.wire) < 0.8 * ratedVoltage; time += 0.005)
      state = heatCathode(state, across(state.wire), 0.005);
    const { computed_s, published_s, tolerance_s } = twoBodies.standard_warm_up;
    expect(Math.abs(time - computed_s)).toBeLessThan(0.02);
    expect(Math.abs(time - published_s)).toBeLessThan(tolerance_s);
  });

  test('two steps are one', () => {
    const twice = heatCathode(heatCathode(allAt(300), 6.3, 3), 6.3, 4);
    const once = heatCathode(allAt(300), 6.3, 7);
    expect(twice.cathode).toBeCloseTo(once.cathode, 6);
    expect(twice.wire).toBeCloseTo(once.wire, 6);
  });

  test('works from and until when the reference passes 10 µA', () => {
    for (const [volts, name] of [
      [6.3, '6.3V'],
      [5, '5.0V'],
    ] as const) {
      const { worksAfter, worksFor } = heaterTimes(volts, SMALL_VALVE_HEATER)!;
      expect(worksAfter.time).toBeCloseTo(twoBodies.courses[`warm_up_${name}`].emission_passes['1e-05 A'], 1);
      expect(worksFor.time).toBeCloseTo(twoBodies.courses[`cooling_from_${name}`].emission_passes['1e-05 A'], 1);
    }
    expect(WORKING_EMISSION).toBe(1e-5);
    expect(heaterTimes(1, SMALL_VALVE_HEATER)).toBeUndefined();
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
    expect(detected(heatCathode(allAt(300), 6.3, 1.5).cathode)).toBeLessThan(0.05 * full);
    expect(detected(heatCathode(allAt(300), 6.3, 60).cathode) / full).toBeCloseTo(1, 2);
  });

  test('switched off, it works on for a while and fades gradually', () => {
    const full = detected(1020);
    const after = (t: number) => detected(heatCathode(heatedThrough(6.3), 0, t).cathode);
    expect(after(3)).toBeGreaterThan(0.5 * full);
    expect(after(120)).toBeLessThan(0.01 * full);
    // Gradually: no second of the fading loses more than 6 dB.
    for (let t = 4; t < 60; t++) if (after(t) > 1e-3 * full) expect(after(t + 1)).toBeGreaterThan(0.5 * after(t));
  });
});

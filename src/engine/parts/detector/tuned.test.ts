import { describe, expect, test } from 'vitest';
// Source: periodic steady state by shooting with an implicit Runge-Kutta solver (reference/detectors-tuned.json).
import reference from '../../../../reference/detectors-tuned.json' with { type: 'json' };
import { decibels } from '../../units/quantities.ts';
import { exponentialDetector } from './exponential.ts';
import { tunedDetector } from './tuned.ts';

describe('detector on a tuned circuit', () => {
  const solve = (
    c: (typeof reference.cases)[number],
    change: { junctionCapacitance?: number; seriesResistance?: number } = {},
  ) =>
    tunedDetector({
      detector: exponentialDetector({ saturationCurrent: c.Is_A, ideality: c.n, ...change }),
      tunedCircuit: { inductance: c.L_H, q: c.Q, frequency: c.f_Hz },
      tap: c.tap,
      availablePower: c.Pav_W,
      load: { resistance: c.R_ohm, capacitance: c.Co_F },
    });

  test.each(reference.cases)('$f_Hz Hz, tap $tap, $R_ohm Ω, $Pav_W W: within 1e-5 dB of the whole waveform', (c) => {
    const r = solve(c);
    expect(Math.abs(decibels(r.directVoltage / c.Vdc_V))).toBeLessThan(1e-5);
    expect(Math.abs(decibels(r.tunedCircuitVoltage / c.Vtank_fund_peak_V))).toBeLessThan(1e-5);
    expect(r.inputResistance / c.Rin_at_tap_ohm).toBeCloseTo(1, 6);
    expect(Math.abs(r.insertionLoss - c.insertion_loss_dB)).toBeLessThan(1e-5);
    expect(r.loadedQ / c.loadedQ).toBeCloseTo(1, 6);
    expect(r.inputPower / c.P_into_diode_and_load_W).toBeCloseTo(1, 6);
    expect(r.carrierDistortion / (c.Vtank_h2_V / c.Vtank_fund_peak_V)).toBeCloseTo(1, 6);
    expect(r.warnings).toEqual([]);
  });

  test('nothing comes out that did not go in, and no more goes in than is available', () => {
    for (const c of reference.cases) {
      for (const change of [{}, { seriesResistance: 100 }, { junctionCapacitance: 2e-12 }]) {
        const r = solve(c, change);
        expect(r.outputPower).toBeLessThan(r.inputPower);
        expect(r.inputPower).toBeLessThanOrEqual(c.Pav_W * (1 + 1e-9));
      }
    }
  });

  test('series resistance costs efficiency (though it may help the match); a picofarad tuned out costs nearly nothing', () => {
    for (const c of reference.cases) {
      const { directVoltage: plain, efficiency } = solve(c);
      expect(solve(c, { seriesResistance: 500 }).efficiency).toBeLessThan(efficiency);
      expect(Math.abs(decibels(solve(c, { junctionCapacitance: 1e-12 }).directVoltage / plain))).toBeLessThan(0.1);
    }
  });
});

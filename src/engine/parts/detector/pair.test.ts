import { describe, expect, test } from 'vitest';
import { averaged, averagedCurrents } from './averaged.ts';
import { exponentialDetector } from './exponential.ts';
import { pairAveraged } from './pair.ts';
import { steadyDetector } from './steady.ts';

const single = averaged(exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1, seriesResistance: 20 }));
const solve = (device: typeof single, dcResistance: number, openCircuit = 0.3) =>
  steadyDetector({ averaged: device, openCircuit, sourceImpedance: { re: 0, im: 0 }, dcResistance });

describe('two detectors', () => {
  test('full wave: each carries half, so the load is worth twice its ohms to each', () => {
    for (const E of [0.01, 0.3, 2]) {
      const both = solve(pairAveraged(single, 'full-wave'), 1e4, E);
      const one = solve(single, 2e4, E);
      expect(both.directVoltage / one.directVoltage).toBeCloseTo(1, 6);
      expect(both.inputPower / (2 * one.inputPower)).toBeCloseTo(1, 6);
    }
  });

  test('doubler: twice the voltage that one makes in half the load', () => {
    for (const E of [0.01, 0.3, 2]) {
      const both = solve(pairAveraged(single, 'doubler'), 1e5, E);
      const one = solve(single, 5e4, E);
      expect(both.directVoltage / (2 * one.directVoltage)).toBeCloseTo(1, 6);
      expect(both.inputPower / (2 * one.inputPower)).toBeCloseTo(1, 6);
      expect(both.outputPower).toBeLessThan(both.inputPower);
    }
  });

  test('slopes are those of the averages', () => {
    const [out, up] = [averagedCurrents(), averagedCurrents()];
    for (const wiring of ['full-wave', 'doubler'] as const) {
      const { at } = pairAveraged(single, wiring);
      const h = 1e-6;
      at(0.1, -0.05, out);
      at(0.1 + h, -0.05, up);
      expect((up.mean - out.mean) / h / out.meanByAmplitude).toBeCloseTo(1, 3);
      expect((up.fundamental - out.fundamental) / h / out.fundamentalByAmplitude).toBeCloseTo(1, 3);
      at(0.1, -0.05 + h, up);
      expect((up.mean - out.mean) / h / out.meanByDirect).toBeCloseTo(1, 3);
      expect((up.fundamental - out.fundamental) / h / out.fundamentalByDirect).toBeCloseTo(1, 3);
    }
  });
});

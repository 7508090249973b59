import { describe, expect, test } from 'vitest';
import { complex } from '../../numerics/complex.ts';
import { averaged } from './averaged.ts';
import { detectorMerit } from './detector-merits.ts';
import { DETECTOR_KINDS, detectorByKind } from './library.ts';
import { steadyDetector } from './steady.ts';

describe('comparing detectors', () => {
  test('the merit is what a matched detector gives: output = figure · input² for faint signals', () => {
    for (const id of ['germanium', 'galena-fair', 'HSMS-2850']) {
      const detector = detectorByKind(id);
      const { resistance, figure } = detectorMerit(detector);
      const V = detector.slopeVoltage / 50;
      const { inputPower, outputPower } = steadyDetector({
        averaged: averaged(detector),
        openCircuit: 2 * V,
        sourceImpedance: complex(resistance),
        dcResistance: resistance,
      });
      expect(outputPower / (figure * inputPower ** 2)).toBeCloseTo(1, 1);
    }
  });

  // Common practice, no source.
  test('germanium stays put when tapped, galena does not', () => {
    const knocked = (id: string) => DETECTOR_KINDS.find((kind) => kind.id === id)!.knocks;
    expect(knocked('germanium')).toBe(false);
    expect(knocked('galena-good')).toBe(true);
  });
});

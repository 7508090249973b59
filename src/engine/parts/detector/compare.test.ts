import { describe, expect, test } from 'vitest';
import { complex } from '../../numerics/complex.ts';
import { averaged } from './averaged.ts';
import { compareDetectors, detectorMerit, squareLawEnds } from './compare.ts';
import { exponentialDetector } from './exponential.ts';
import { DETECTOR_IDS, DETECTOR_KINDS, detectorByKind } from './library.ts';
import { steadyDetector } from './steady.ts';

const circuit = (E: number, R = 2e5) => ({
  carrier: { openCircuit: complex(E), impedance: complex(R) },
  dcResistance: 1e4,
});

describe('comparing detectors', () => {
  test('every kind can be compared, and the loudest stands at 0 dB', () => {
    const rows = compareDetectors(
      DETECTOR_IDS.map((id) => ({ detector: detectorByKind(id) })),
      circuit(0.2),
    );
    expect(Math.max(...rows.map((row) => row.loudness))).toBe(0);
    for (const row of rows) {
      for (const value of [row.loading, row.distortion, row.bestTap.tap, row.bestLoad.resistance, row.squareLawEnds]) {
        expect(Number.isFinite(value)).toBe(true);
      }
      expect(row.bestTap.gain).toBeGreaterThan(-0.01);
      expect(row.bestLoad.gain).toBeGreaterThan(-0.01);
      expect(row.swing[0]).toBeLessThan(row.swing[1]);
    }
  });

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

  test('words say the loss and the match', () => {
    expect(detectorMerit(exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1 })).words).toMatch(
      /1 nW.*dB.*57 kΩ/,
    );
  });

  // Source: root of x·I1(x)/I0(x) = 1.5·ln I0(x), found with scipy.special: the exponent of ln I0, the open output.
  test('square law ends at 3.26 n·kT/e with an open load', () => {
    for (const n of [1, 1.5]) {
      const detector = exponentialDetector({ saturationCurrent: 1e-6, ideality: n });
      expect(squareLawEnds(detector, 1e12) / detector.slopeVoltage).toBeCloseTo(3.2614, 2);
    }
  });

  // Common practice, no source.
  test('with a high tuned circuit a low-resistance detector wants a tap down, a high-resistance one the top', () => {
    const [low, high] = compareDetectors(
      [
        { detector: exponentialDetector({ saturationCurrent: 5e-6, ideality: 1.1 }) },
        { detector: exponentialDetector({ saturationCurrent: 2e-8, ideality: 1.1 }) },
      ],
      circuit(0.05, 3e5),
    );
    expect(low.bestTap.tap).toBeLessThan(0.5);
    expect(high.bestTap.tap).toBeGreaterThan(0.8);
    expect(low.loading).toBeGreaterThan(high.loading);
    expect(high.bestLoad.resistance).toBeGreaterThan(low.bestLoad.resistance);
  });

  // Common practice, no source.
  test('germanium stays put when tapped, galena does not', () => {
    const knocked = (id: string) => DETECTOR_KINDS.find((kind) => kind.id === id)!.knocks;
    expect(knocked('germanium')).toBe(false);
    expect(knocked('galena-good')).toBe(true);
  });

  // Common practice, no source: a silicon diode with a bias cell becomes a usable detector.
  test('a bias is compared as well', () => {
    const [plain, biased] = compareDetectors(
      [{ detector: detectorByKind('silicon') }, { detector: detectorByKind('silicon'), bias: 0.2 }],
      circuit(0.05),
    );
    expect(biased.loudness - plain.loudness).toBeGreaterThan(6);
  });
});

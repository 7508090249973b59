import { expect, test } from 'vitest';
import { complex, reciprocal, scale } from '../../numerics/complex.ts';
import { audioDetection } from '../../parts/detector/audio.ts';
import { type AveragedDetector, averaged } from '../../parts/detector/averaged.ts';
import { measuredDetector } from '../../parts/detector/measured.ts';
import { steadyDetector } from '../../parts/detector/steady.ts';
import { lawOfDetector } from './detection-law.ts';

/** Devices nearly as good one way as the other: currents cancel in the mean, and no answer may take long for that. */

/** A table of points, and how often its curve is asked for. */
function counted(count: number, reach: number, current: (v: number) => number) {
  const points = Array.from({ length: count }, (_, k) => {
    const voltage = -reach + (2 * reach * k) / (count - 1);
    return { voltage, current: current(voltage) };
  });
  const device = measuredDetector({ points });
  const asked = { curve: 0 };
  const each: AveragedDetector = averaged({
    ...device,
    evaluate: (v, out) => {
      asked.curve++;
      device.evaluate(v, out);
    },
  });
  return { averaged: each, asked };
}

const shapes: readonly [string, (v: number, s: number) => number][] = [
  ['saturating', (v, s) => Math.tanh(v / s)],
  ['rising both ways', (v, s) => Math.sinh(v / s)],
  ['flat at 0 V', (v, s) => Math.sinh(v / s) ** 3],
  ['a resistor', (v, s) => v / s],
  ['blocking both ways', (v, s) => (Math.sign(v) * Math.max(0, Math.abs(v) - s)) / s],
];
const carrier = (E: number) => (df: number) => {
  const z = reciprocal(complex(1 / 5e4, (2 * 60 * df) / 1e6 / 5e4));
  return { openCircuit: scale(z, E / 5e4), impedance: z };
};

test.each(shapes)(
  '%s: the law, the steady carrier and the tone take a bounded number of looks at the curve',
  (_, shape) => {
    for (const [count, more] of [
      [25, 1e-2],
      [25, 1e-6],
      [300, 1e-3],
    ])
      for (const R of [1e4, 2e11]) {
        const { averaged: device, asked } = counted(
          count,
          0.16,
          (v) => 1e-6 * shape(v, 0.025) * (v > 0 ? 1 + more : 1),
        );
        const looks = (work: () => void): number => {
          asked.curve = 0;
          work();
          return asked.curve;
        };
        expect(looks(() => lawOfDetector(device, R))).toBeLessThan(6e6);
        for (const E of [1e-3, 0.3, 30]) {
          const at = carrier(E);
          expect(
            looks(() =>
              steadyDetector({ averaged: device, openCircuit: E, sourceImpedance: complex(5e4), dcResistance: R }),
            ),
          ).toBeLessThan(2e6);
          const tone = () => {
            const r = audioDetection({
              averaged: device,
              audioFrequency: 1000,
              depth: 0.8,
              carrier: at(0),
              upper: at(1000),
              lower: at(-1000),
              loadAt: (f) => reciprocal(complex(1e-4, 2 * Math.PI * f * 1e-9)),
              dcResistance: R,
              leaveOut: 0.06,
            });
            if (r.settled) expect(r.audioVoltage).toBeLessThan(E);
          };
          expect(looks(tone)).toBeLessThan(2e7);
        }
      }
  },
);

test('a table of amperes both ways, more than any leakage, is still a curve', () => {
  const { averaged: device } = counted(25, 0.16, (v) => Math.sinh(v / 0.025));
  expect(device.detector.current(0.1)).toBeCloseTo(Math.sinh(4), 1);
});

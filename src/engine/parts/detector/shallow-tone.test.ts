import fc from 'fast-check';
import { expect, test } from 'vitest';
import { complex, reciprocal } from '../../numerics/complex.ts';
import { audioDetection } from './audio.ts';
import { averaged } from './averaged.ts';
import { exponentialDetector } from './exponential.ts';
import { shallowTones } from './shallow-tone.ts';
import { steadyDetector } from './steady.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const cases = fc.record({
  carrier: within(150e3, 1.6e6),
  detuned: within(-0.02, 0.02),
  Q: within(20, 300),
  capacitance: within(50e-12, 1e-9),
  saturation: within(-8, -5.5),
  series: fc.constantFrom(0, 100, 2000),
  level: within(-3, 1),
  resistance: within(3, 6.3),
  bypass: within(50e-12, 3e-9),
  tone: within(100, 6000),
});

// The harmonic balance of the whole tone is the outside here: what it tends to, within what it settles to.
test('a shallow tone is what the harmonic balance of a depth of a thousandth gives', () => {
  fc.assert(
    fc.property(cases, ({ carrier, detuned, Q, capacitance, level, tone, ...rest }) => {
      const device = averaged(
        exponentialDetector({
          saturationCurrent: 10 ** rest.saturation,
          ideality: 1.1,
          seriesResistance: rest.series,
        }),
      );
      const resonance = carrier * (1 + detuned);
      const seen = (f: number) => {
        const w = 2 * Math.PI * f;
        const peak = Q / (2 * Math.PI * resonance * capacitance);
        const z = reciprocal(complex(1 / peak, w * capacitance - (2 * Math.PI * resonance) ** 2 * (capacitance / w)));
        return { openCircuit: complex((10 ** level * z.re) / peak, (10 ** level * z.im) / peak), impedance: z };
      };
      const loadAt = (f: number) => reciprocal(complex(1 / 10 ** rest.resistance, 2 * Math.PI * f * rest.bypass));
      const [own, upper, lower] = [seen(carrier), seen(carrier + tone), seen(carrier - tone)];
      const dcResistance = 10 ** rest.resistance;
      const steady = steadyDetector({
        averaged: device,
        openCircuit: Math.hypot(own.openCircuit.re, own.openCircuit.im),
        sourceImpedance: own.impedance,
        dcResistance,
      });
      const depth = 0.001;
      const whole = audioDetection({
        averaged: device,
        audioFrequency: tone,
        depth,
        carrier: own,
        upper,
        lower,
        loadAt,
        dcResistance,
        steady,
      });
      const current = depth * shallowTones(device, own, steady)(upper, lower, loadAt(tone));
      expect(whole.settled).toBe(true);
      expect(Math.abs(current / whole.audioCurrent - 1)).toBeLessThan(1e-3);
    }),
    { numRuns: 300 },
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { add, type Complex, complex, magnitude, reciprocal, scale } from '../../numerics/complex.ts';
import { type AudioDetectionOptions, audioDetection } from './audio.ts';
import { type AveragedDetector, averaged } from './averaged.ts';
import type { Detector } from './detector.ts';
import { exponentialDetector } from './exponential.ts';
import { DETECTOR_IDS, detectorByKind } from './library.ts';
import { measuredDetector } from './measured.ts';
import { pairAveraged } from './pair.ts';
import { standingPoint } from './standing.ts';
import { crystalSurface } from './surface.ts';

/** No passive detector gives more power out than it takes in, and its audio stays below the carrier it is taken from. */

const table: readonly (readonly [number, number])[] = [
  [-1, -1e-5],
  [-0.3, -4e-6],
  [-0.1, -1e-6],
  [0, 0],
  [0.1, 5e-6],
  [0.2, 4e-5],
  [0.4, 5e-4],
  [1, 5e-3],
];
const crystal = crystalSurface(7);
const spots = crystal.spots();
const spot = (quality: string) => {
  const { x, y } = spots.find((one) => one.quality === quality)!;
  return crystal.probe(x, y).detector;
};
const devices: readonly Detector[] = [
  ...[1e-12, 1e-9, 2e-7, 1e-5].flatMap((saturationCurrent) =>
    [1, 1.1, 1.8].map((ideality) => exponentialDetector({ saturationCurrent, ideality })),
  ),
  exponentialDetector({ saturationCurrent: 2e-7, ideality: 1.1, leakage: 1e-5 }),
  ...DETECTOR_IDS.map((id) => detectorByKind(id)),
  ...(['dead', 'poor', 'fair', 'good'] as const).map(spot),
  measuredDetector({ points: table.map(([voltage, current]) => ({ voltage, current })) }),
];

const resistor = (R: number) => complex(R);
const coil = (R: number, L: number, f: number) => complex(R, 2 * Math.PI * f * L);
const parallel = (a: Complex, b: Complex) => reciprocal(add(reciprocal(a), reciprocal(b)));
const capacitor = (C: number, f: number) => complex(0, -1 / (2 * Math.PI * f * C));
/** What may hang on a detector: plain, bypassed, inductive phones, a coupled load of few ohms for audio, one that resonates. */
const loads: readonly { dc: number; at: (f: number) => Complex }[] = [
  { dc: 1e4, at: () => resistor(1e4) },
  { dc: 1e6, at: (f) => parallel(resistor(1e6), capacitor(1e-9, f)) },
  { dc: 4e3, at: (f) => parallel(coil(4e3, 2, f), capacitor(1e-9, f)) },
  { dc: 1e5, at: (f) => parallel(resistor(1e5), add(resistor(1e4), capacitor(1e-7, f))) },
  { dc: 300, at: (f) => parallel(coil(300, 2.5, f), capacitor(1e-8, f)) },
  { dc: 1e12, at: (f) => capacitor(1e-8, f) },
];

/** Most that a device gives of its own: a hot cathode sends a current against a little voltage. */
function ownPower(device: Detector): number {
  let most = 0;
  for (let k = 0; k <= 200; k++) most = Math.max(most, (k / 50) * device.current(-k / 50));
  return most;
}

function expectLawful(options: AudioDetectionOptions, reach: number, hot: number): void {
  const { carrier, upper, lower, depth, loadAt, audioFrequency, dcResistance, bias = 0 } = options;
  const r = audioDetection(options);
  // What the bias cell gives: its voltage times the mean current through it.
  const own = hot + Math.max(0, bias * r.directCurrent);
  expect(r.settled).toBe(true);
  const offered = [carrier, upper, lower].map(
    ({ openCircuit, impedance }, k) => (magnitude(openCircuit) * (k ? depth / 2 : 1)) ** 2 / (8 * impedance.re),
  );
  const power = offered.reduce((a, b) => a + b) + own;
  const resistance = loadAt(audioFrequency).re;
  const direct = r.directCurrent ** 2 * dcResistance;
  expect(direct + (r.audioCurrent ** 2 * resistance) / 2).toBeLessThanOrEqual(power * 1.001 + 1e-18);
  expect(r.audioPower).toBeLessThanOrEqual(power * 1.001 + 1e-18);
  const peak =
    magnitude(carrier.openCircuit) + (depth / 2) * (magnitude(upper.openCircuit) + magnitude(lower.openCircuit));
  // With the carrier's peak in series, no more than that is added to what bias and cathode send through the load alone.
  const heaviest = Math.max(dcResistance, magnitude(loadAt(audioFrequency)));
  const { directVoltage } = standingPoint(options.averaged, heaviest, bias);
  expect(r.audioVoltage).toBeLessThanOrEqual(reach * peak * 1.001 + Math.max(0, directVoltage) + 1e-12);
  expect(r.junctionVoltage).toBeLessThanOrEqual(peak * 1.001);
  for (const value of [r.directVoltage, r.secondHarmonic, r.thirdHarmonic, r.carrierVoltage, r.inputResistance])
    expect(value).not.toBeNaN();
}

describe('power and peak', () => {
  const circuit = (E: number, Rp: number, Q: number, detune: number) => (df: number) => {
    const z = reciprocal(complex(1 / Rp, (2 * Q * (df + detune)) / 1e6 / Rp));
    return { openCircuit: scale(z, E / Rp), impedance: z };
  };
  const wirings = [
    { reach: 1, make: (a: AveragedDetector) => a },
    { reach: 1, make: (a: AveragedDetector) => pairAveraged(a, 'full-wave') },
    { reach: 2, make: (a: AveragedDetector) => pairAveraged(a, 'doubler') },
  ];
  const check = (device: Detector, w: number, l: number, depth: number, at: ReturnType<typeof circuit>, bias = 0) => {
    const single = averaged(device);
    const { reach, make } = wirings[w];
    const { dc, at: loadAt } = loads[l];
    expectLawful(
      {
        averaged: make(single),
        audioFrequency: 1000,
        depth,
        carrier: at(0),
        upper: at(1000),
        lower: at(-1000),
        loadAt,
        dcResistance: dc,
        bias,
        leaveOut: 0.06,
      },
      reach,
      2 * ownPower(device),
    );
  };

  test('every detector at full depth, from 1 mV to 100 V, into inductive phones', () => {
    for (const device of devices) for (const E of [1e-3, 1, 10, 100]) check(device, 0, 2, 1, circuit(E, 5e4, 60, 0));
  });

  test('any detector, wiring, load, circuit, bias, depth and strength from 1 nV to 100 V', () => {
    fc.assert(
      fc.property(
        fc.record({
          device: fc.constantFrom(...devices),
          w: fc.constantFrom(0, 1, 2),
          l: fc.nat({ max: loads.length - 1 }),
          E: fc.double({ min: -9, max: 2, noNaN: true }),
          bias: fc.oneof(fc.constant(0), fc.double({ min: -1, max: 3, noNaN: true })),
          depth: fc.oneof(fc.constant(1), fc.double({ min: 0, max: 1, noNaN: true })),
          Rp: fc.double({ min: 2, max: 6, noNaN: true }),
          Q: fc.double({ min: 3, max: 200, noNaN: true }),
          detune: fc.double({ min: -3000, max: 3000, noNaN: true }),
        }),
        ({ device, w, l, E, bias, depth, Rp, Q, detune }) =>
          check(device, w, l, depth, circuit(10 ** E, 10 ** Rp, Q, detune), bias),
      ),
      { numRuns: 150 },
    );
  });
});

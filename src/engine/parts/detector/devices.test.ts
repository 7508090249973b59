import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import published from '../../../../reference/detectors-published.json' with { type: 'json' };
import { temperatureVoltage } from '../../units/quantities.ts';
import { averaged } from './averaged.ts';
import { curvature, type Detector, slopeResistance } from './detector.ts';
import { exponentialDetector, saturationAt } from './exponential.ts';
import { detectorByKind } from './library.ts';
import { measuredDetector } from './measured.ts';
import { steadyDetector } from './steady.ts';
import { thermionicDetector } from './thermionic/thermionic.ts';

const germanium = { saturationCurrent: 5e-7, ideality: 1.1 };
const ways: readonly [string, Detector][] = [
  ['junction', exponentialDetector(germanium)],
  ['junction with resistance and leakage', exponentialDetector({ ...germanium, seriesResistance: 80, leakage: 2e-7 })],
  ['junction with a megohm', exponentialDetector({ ...germanium, seriesResistance: 1e6 })],
  ['valve', thermionicDetector({ temperature: 1020 })],
  ['cold valve', thermionicDetector({ temperature: 300 })],
  [
    'measured',
    measuredDetector({
      points: [-0.5, -0.1, 0, 0.05, 0.1, 0.2, 0.3].map((voltage) => ({
        voltage,
        current: 5e-7 * Math.expm1(voltage / 0.03),
      })),
    }),
  ],
];

describe.each(ways)('any device: %s', (_, device) => {
  test('current never falls, conductance is its slope, nothing overflows', () => {
    const out = { current: 0, conductance: 0 };
    const big = fc.double({ min: -200, max: 200, noNaN: true });
    const small = fc.double({ min: -0.6, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(big, small), (v) => {
        device.evaluate(v, out);
        expect(Number.isFinite(out.current)).toBe(true);
        expect(out.conductance).toBeGreaterThanOrEqual(0);
        expect(device.current(v + 1e-3)).toBeGreaterThanOrEqual(out.current);
        expect(device.current(v)).toBe(out.current);
        expect(device.conductance(v)).toBe(out.conductance);
        const h = 1e-5;
        const slope = (device.current(v + h) - device.current(v - h)) / (2 * h);
        const round = (1e-15 * Math.abs(out.current)) / h;
        expect(Math.abs(slope - out.conductance)).toBeLessThan(0.03 * out.conductance + 2 * round + 1e-18);
      }),
    );
  });
});

describe('junction', () => {
  // Source: HSMS-28xx data sheets' own formula Rj = n·kT/(e·Is), with k/e in full (reference/detectors-published.json).
  test('zero-bias resistance of the published Schottky diodes at 298 K', () => {
    const { values, recomputed_check } = published.entries.find((e) => e.id === 'schottky_spice') as unknown as {
      values: Record<string, { Is: number; N: number; Rs: number }>;
      recomputed_check: { Rj0_ohm_at_298K: Record<string, number> };
    };
    for (const [type, ohms] of Object.entries(recomputed_check.Rj0_ohm_at_298K)) {
      const { Is, N } = values[type];
      // The check was rounded from the data sheet's 8.33e-5; k/e is 3.4 % more.
      const device = exponentialDetector({ saturationCurrent: Is, ideality: N, temperature: 298 });
      expect(slopeResistance(device) / ohms).toBeGreaterThan(0.96);
      expect(slopeResistance(device) / ohms).toBeLessThan(1.04);
    }
  });

  // Source: a published way of measuring Is and n: at 25 °C, 6·Is flows at 0.0500·n V and 3·Is at 0.0356·n V.
  test('six and three times the saturation current', () => {
    for (const n of [1, 1.1, 1.6]) {
      const device = exponentialDetector({ saturationCurrent: 1e-6, ideality: n, temperature: 298.15 });
      expect(device.current(0.05 * n) / 6e-6).toBeCloseTo(1, 2);
      expect(device.current(0.0356 * n) / 3e-6).toBeCloseTo(1, 2);
    }
  });

  test('with series resistance the closed form satisfies the implicit equation', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -9, max: -5, noNaN: true }),
        fc.double({ min: -1, max: 6, noNaN: true }),
        fc.double({ min: -12, max: -5, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        (logIs, logRs, logG, v) => {
          const [Is, Rs, G] = [10 ** logIs, 10 ** logRs, 10 ** logG];
          const i = exponentialDetector({
            saturationCurrent: Is,
            ideality: 1.2,
            seriesResistance: Rs,
            leakage: G,
          }).current(v);
          const u = v - i * Rs;
          const again = Is * Math.expm1(u / (1.2 * temperatureVoltage(300))) + G * u;
          // An error of one part in 1e13 of v + Rs·Is is multiplied by the steepness of the exponential.
          const steep = (Math.abs(i) + Is) / 0.03 + G;
          expect(Math.abs(again - i)).toBeLessThan(1e-9 * Math.abs(i) + 1e-13 * (1 + Math.abs(v) + Rs * Is) * steep);
        },
      ),
    );
  });

  test('near nothing it is Is·v/(n·kT/e), bent by 1/(n·kT/e)', () => {
    const device = exponentialDetector(germanium);
    const s = 1.1 * temperatureVoltage(300);
    expect(device.current(1e-9) / ((5e-7 * 1e-9) / s)).toBeCloseTo(1, 6);
    expect(curvature(device) * s).toBeCloseTo(1, 3);
  });

  // Common practice: the saturation current of germanium doubles for about every 10 K.
  test('saturation current of germanium doubles in 8 to 13 K', () => {
    const from = 298;
    const doubled = saturationAt(1, { from, to: from + 10, ideality: 1.1, energyGap: 0.67 });
    expect(doubled).toBeGreaterThan(2 ** (10 / 13));
    expect(doubled).toBeLessThan(2 ** (10 / 8));
  });

  test('refuses what is not a device', () => {
    for (const bad of [Number.NaN, 0, -1e-9, Number.POSITIVE_INFINITY]) {
      expect(() => exponentialDetector({ saturationCurrent: bad, ideality: 1 })).toThrow(RangeError);
      expect(() => exponentialDetector({ saturationCurrent: 1e-6, ideality: bad })).toThrow(RangeError);
    }
  });
});

describe('measured curve', () => {
  const law = exponentialDetector({ saturationCurrent: 8e-7, ideality: 1.2 });
  const volts = [-0.3, -0.15, -0.08, -0.04, -0.02, 0, 0.02, 0.04, 0.06, 0.08, 0.1, 0.13, 0.16, 0.2];
  const points = volts.map((voltage) => ({ voltage, current: law.current(voltage) }));

  test('passes through its points and follows the law between them within 2 %', () => {
    const device = measuredDetector({ points });
    for (const p of points) expect(device.current(p.voltage)).toBeCloseTo(p.current, 12);
    for (let v = 0.01; v < 0.19; v += 0.007)
      expect(Math.abs(device.current(v) / law.current(v) - 1)).toBeLessThan(0.02);
    expect(device.warnings).toEqual([]);
  });

  test('goes on in a straight line above, with the law below', () => {
    const device = measuredDetector({ points });
    const g = device.conductance(0.2);
    expect(device.current(0.5)).toBeCloseTo(device.current(0.2) + 0.3 * g, 12);
    expect(device.current(-2) / law.current(-2)).toBeCloseTo(1, 2);
  });

  // Truth: the very device the points were taken from, at other voltages; the averaged equations of both.
  describe('faint signals through few points', () => {
    const devices: Record<string, Detector> = {
      germanium: exponentialDetector({ saturationCurrent: 1e-6, ideality: 1.15, seriesResistance: 80 }),
      'leaky germanium': exponentialDetector({
        saturationCurrent: 1e-6,
        ideality: 1.15,
        seriesResistance: 80,
        leakage: 2e-6,
      }),
      galena: exponentialDetector({ saturationCurrent: 3e-6, ideality: 1.7, seriesResistance: 300, leakage: 1e-5 }),
      schottky: exponentialDetector({ saturationCurrent: 3e-6, ideality: 1.06, seriesResistance: 25 }),
      silicon: exponentialDetector({ saturationCurrent: 4e-9, ideality: 1.9 }),
      valve: thermionicDetector({ temperature: 1020 }),
    };
    const tables: Record<string, number[]> = {
      'every 50 mV': [-0.2, -0.1, -0.05, 0, 0.05, 0.1, 0.15, 0.2],
      'every 100 mV': [-0.5, -0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.4],
      'one point backwards': [-1, 0, 0.1, 0.2, 0.3],
      'close together': [-0.3, -0.15, -0.08, -0.04, -0.02, 0, 0.02, 0.04, 0.06, 0.08, 0.1, 0.13, 0.16, 0.2],
    };
    const detected = (device: Detector, E: number) => {
      const at = (openCircuit: number) =>
        steadyDetector({
          averaged: averaged(device),
          openCircuit,
          sourceImpedance: { re: 0, im: 0 },
          dcResistance: 5e4,
        }).directVoltage;
      return at(E) - at(0);
    };
    const worst = (device: Detector, truth: Detector) =>
      Math.max(
        ...[1e-3, 3e-3, 0.01, 0.03, 0.1].map((E) =>
          Math.abs(20 * Math.log10(detected(device, E) / detected(truth, E))),
        ),
      );
    test.each(Object.keys(devices))('%s', (name) => {
      const truth = devices[name];
      for (const [how, list] of Object.entries(tables)) {
        const exact = list.map((voltage) => ({ voltage, current: truth.current(voltage) }));
        expect(worst(measuredDetector({ points: exact }), truth), how).toBeLessThan(0.3);
        // A meter that is 1 % out, one way and the other.
        const read = exact.map((p, k) => ({
          ...p,
          current: p.current * (1 + [0.01, -0.01, -0.01, 0.01, 0.005][k % 5]),
        }));
        expect(worst(measuredDetector({ points: read }), truth), `${how}, read to 1 %`).toBeLessThan(0.8);
      }
    });

    // Points as a builder takes them: any, three or more forwards and one or more in reverse, none of them at 0 V. A cubic
    // laid across 0 V lost up to 32 dB where the reverse current hardly changes.
    test('any four to eight points of any junction: within 0.5 dB at 1 mV to 1 V, as far as they reach', () => {
      const kinds = ['galena-good', 'galena-fair', 'iron-pyrites', 'germanium', 'HSMS-2850', '1N5711', 'silicon'];
      const logarithmic = (from: number, to: number) =>
        fc.double({ min: Math.log(from), max: Math.log(to), noNaN: true }).map(Math.exp);
      fc.assert(
        fc.property(
          fc.constantFrom(...kinds),
          logarithmic(0.02, 0.08),
          logarithmic(0.25, 1),
          fc.integer({ min: 3, max: 7 }),
          logarithmic(0.05, 1),
          (kind, lowest, highest, forwards, reverse) => {
            const truth = detectorByKind(kind);
            const list = [
              -reverse,
              ...Array.from({ length: forwards }, (_, k) => lowest * (highest / lowest) ** (k / (forwards - 1))),
            ];
            const device = measuredDetector({
              points: list.map((voltage) => ({ voltage, current: truth.current(voltage) })),
            });
            for (const E of [1e-3, 3e-3, 0.01, 0.03, 0.1, 0.3, 1]) {
              if (E > highest) continue;
              const dB = 20 * Math.log10(detected(device, E) / detected(truth, E));
              expect(Math.abs(dB), `${kind} by ${list.map((v) => v.toFixed(3))} V, carrier ${E} V`).toBeLessThan(0.5);
            }
          },
        ),
        { numRuns: 60 },
      );
    });

    test('fewer than four points are said to be few', () => {
      const points = [-0.1, 0, 0.1, 0.3].map((voltage) => ({ voltage, current: devices.galena.current(voltage) }));
      expect(measuredDetector({ points }).warnings).toContainEqual({ code: 'detector.measured-few', count: 3 });
      points.push({ voltage: 0.2, current: devices.galena.current(0.2) });
      expect(measuredDetector({ points }).warnings).toEqual([]);
    });

    test('what rests on the law, or lies beyond the points, is said', () => {
      const points = tables['every 100 mV'].map((voltage) => ({
        voltage,
        current: devices.germanium.current(voltage),
      }));
      const at = (openCircuit: number) =>
        steadyDetector({
          averaged: averaged(measuredDetector({ points })),
          openCircuit,
          sourceImpedance: { re: 0, im: 0 },
          dcResistance: 5e4,
        }).warnings;
      const [apart] = at(0.003);
      expect(at(0.003)).toHaveLength(1);
      expect(apart).toMatchObject({ code: 'detector.measured-points-apart' });
      if (apart.code !== 'detector.measured-points-apart') return;
      expect(apart.carrier).toBeCloseTo(0.003, 4);
      expect(apart.gap).toBeCloseTo(0.1, 6);
      expect(at(0.2)).toEqual([]);
      expect(at(2).map(({ code }) => code)).toContain('detector.outside-measured-range');
      const odd = [-0.2, 0, 0.1, 0.2].map((voltage) => ({ voltage, current: 1e-5 * voltage }));
      expect(measuredDetector({ points: odd }).warnings).toContainEqual({ code: 'detector.measured-no-junction' });
    });
  });

  test('order does not matter, repeats are averaged, falling currents are levelled and told', () => {
    const shuffled = measuredDetector({ points: [...points].reverse() });
    expect(shuffled.current(0.07)).toBe(measuredDetector({ points }).current(0.07));
    const noisy = measuredDetector({
      points: [
        { voltage: 0, current: 0 },
        { voltage: 0.1, current: 3e-6 },
        { voltage: 0.1, current: 5e-6 },
        { voltage: 0.15, current: 2e-6 },
        { voltage: 0.2, current: 9e-6 },
      ],
    });
    expect(noisy.current(0.15)).toBeGreaterThanOrEqual(noisy.current(0.1));
    expect(noisy.warnings).toContainEqual({ code: 'detector.measured-averaged' });
  });

  test('forward points alone: zero is added, and said', () => {
    const device = measuredDetector({ points: points.filter((p) => p.voltage > 0) });
    expect(device.current(0)).toBeCloseTo(0, 20);
    expect(device.warnings).toContainEqual({ code: 'detector.measured-without-zero' });
  });

  test('whatever the points, the current never falls and is finite', () => {
    const point = fc.record({
      voltage: fc.integer({ min: -1000, max: 1000 }).map((mV) => mV / 1000),
      size: fc.double({ min: -12, max: -1, noNaN: true }),
      forward: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 9 }), (list) => {
        const points = list.map(({ voltage, size, forward }) => ({
          voltage,
          current: (forward ? 1 : -1) * 10 ** size,
        }));
        if (new Set(points.map((p) => p.voltage)).size < 2) return;
        const device = measuredDetector({ points });
        let before = Number.NEGATIVE_INFINITY;
        for (let v = -1.5; v < 1.5; v += 0.003) {
          const i = device.current(v);
          expect(Number.isFinite(i)).toBe(true);
          expect(device.conductance(v)).toBeGreaterThanOrEqual(0);
          expect(i).toBeGreaterThanOrEqual(before - 1e-9 * Math.abs(i) - 1e-18);
          before = i;
        }
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  test('refuses too little and what is not a number', () => {
    expect(() => measuredDetector({ points: [{ voltage: 0.1, current: 1e-6 }] })).toThrow(RangeError);
    expect(() => measuredDetector({ points: [...points, { voltage: Number.NaN, current: 0 }] })).toThrow(RangeError);
  });
});

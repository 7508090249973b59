import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import published from '../../../../reference/detectors-published.json' with { type: 'json' };
// Source: log-domain solution of the averaged equations, checked by quadrature (reference/detectors-steady.json).
import reference from '../../../../reference/detectors-steady.json' with { type: 'json' };
import type { Volts } from '../../units/quantities.ts';
import { averaged, averagedCurrents } from './averaged.ts';
import type { Detector } from './detector.ts';
import { exponentialDetector } from './exponential.ts';
import { pairAveraged } from './pair.ts';
import { steadyDetector } from './steady.ts';
import { thermionicDetector } from './thermionic/thermionic.ts';

const none = { re: 0, im: 0 };

describe('averages over the cycle', () => {
  const straight = (device: Detector, V: number, v0: number) => {
    const N = 8000;
    const sum = averagedCurrents();
    const point = { current: 0, conductance: 0 };
    for (let j = 0; j < N; j++) {
      const c = Math.cos((Math.PI * (j + 0.5)) / N);
      device.evaluate(v0 + V * c, point);
      sum.mean += point.current / N;
      sum.fundamental += (2 * c * point.current) / N;
      sum.meanByAmplitude += (c * point.conductance) / N;
      sum.meanByDirect += point.conductance / N;
      sum.fundamentalByAmplitude += (2 * c * c * point.conductance) / N;
      sum.fundamentalByDirect += (2 * c * point.conductance) / N;
    }
    return sum;
  };
  const devices: Detector[] = [
    exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1 }),
    exponentialDetector({ saturationCurrent: 3e-6, ideality: 1.06, leakage: 1e-6 }),
    exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1, seriesResistance: 50 }),
    exponentialDetector({ saturationCurrent: 2e-8, ideality: 1.6, seriesResistance: 20_000, leakage: 1e-7 }),
    thermionicDetector({ temperature: 1020 }),
    thermionicDetector({ temperature: 926 }),
  ];
  test.each(devices.map((d, i) => [i, d.kind, d] as const))(
    'device %d (%s): within 1e-4 of a long sum',
    (_, __, device) => {
      const out = averagedCurrents();
      const { at } = averaged(device);
      for (const V of [0.003, 0.02, 0.1, 0.4, 1.5, 6]) {
        for (const back of [0, 0.5, 0.9]) {
          if (device.seriesResistance === 0 && device.kind === 'exponential' && V * (1 - back) > 5) continue;
          at(V, -back * V, out);
          const want = straight(device, V, -back * V);
          // Currents are what is promised; slopes steer Newton and may be rougher at a corner.
          expect(Math.abs(out.mean - want.mean)).toBeLessThan(1e-4 * Math.abs(want.mean) + 1e-9 * device.currentScale);
          expect(Math.abs(out.fundamental / want.fundamental - 1)).toBeLessThan(1e-4);
          for (const key of [
            'meanByAmplitude',
            'meanByDirect',
            'fundamentalByAmplitude',
            'fundamentalByDirect',
          ] as const) {
            expect(Math.abs(out[key] / want[key] - 1)).toBeLessThan(2e-3);
          }
        }
      }
    },
  );

  test('a pulse looked up: what is rectified within 2e-9 of a long sum', () => {
    const device = exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.6, seriesResistance: 2000 });
    const out = averagedCurrents();
    for (const x of [0.25, 0.3, 0.7, 1, 2]) {
      const V = x * device.slopeVoltage;
      averaged(device).at(V, 0, out);
      const exact = straight(device, V, 0);
      for (const key of ['mean', 'fundamental'] as const)
        expect(Math.abs(out[key] / exact[key] - 1), `${key} at ${x}`).toBeLessThan(2e-9);
    }
  });

  test('of a carrier however faint: what is rectified follows its square, the current at the carrier follows it', () => {
    const out = averagedCurrents();
    for (const device of devices) {
      const { at } = averaged(device);
      for (const v0 of [0, 0.03, -0.05]) {
        const s = device.slopeVoltage;
        // Where the sums take over.
        at(0.05 * s, v0, out);
        const strong = { ...out };
        for (const share of [1e-1, 1e-3, 1e-6, 1e-9]) {
          at(0.05 * share * s, v0, out);
          const near = (got: number, want: number) => expect(Math.abs(got / want - 1)).toBeLessThan(2e-3);
          near(out.fundamental, share * strong.fundamental);
          near(out.meanByAmplitude, share * strong.meanByAmplitude);
          near(out.fundamentalByDirect, share * strong.fundamentalByDirect);
          near(out.fundamentalByAmplitude, strong.fundamentalByAmplitude);
          near(out.meanByDirect, strong.meanByDirect);
          // At rest nothing flows but what is rectified; nothing of it is lost in what flows to and fro.
          if (v0 === 0 && device.kind === 'exponential') near(out.mean, share * share * strong.mean);
        }
      }
    }
  });

  test('no NaN from a microvolt to 1 kV, whatever the direct voltage', () => {
    const out = averagedCurrents();
    fc.assert(
      fc.property(
        fc.constantFrom(...devices),
        fc.double({ min: -6, max: 3, noNaN: true }),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        (device, log, back) => {
          const V = 10 ** log;
          averaged(device).at(V, back * V, out);
          for (const value of Object.values(out)) expect(Number.isFinite(value)).toBe(true);
          expect(out.meanByDirect).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('steady detector', () => {
  describe('from a picovolt to 100 V, on whatever circuit, needs few averages', () => {
    const exponential = (saturationCurrent: number, ideality: number, seriesResistance: number, leakage = 0) =>
      exponentialDetector({ saturationCurrent, ideality, seriesResistance, leakage });
    const devices: [string, Detector, Volts, number][] = [
      ['bare junction', exponential(5e-7, 1.1, 0), 100, 30],
      ['bare junction that lets little through', exponential(1e-9, 1.05, 0), 100, 30],
      ['junction with resistance', exponential(5e-7, 1.1, 50), 100, 30],
      ['crystal with much resistance and leakage', exponential(1e-8, 1.6, 2e4, 1e-7), 100, 30],
      ['leaking junction', exponential(1e-7, 1.2, 10, 1e-5), 100, 30],
      // Its averages are sums over the cycle; stronger signals than these none of its sets hears.
      ['valve', thermionicDetector({ temperature: 1020 }), 1, 60],
    ];
    const wirings = ['single', 'full-wave', 'doubler'] as const;
    test.each(
      devices.flatMap(([name, device, highest, most]) => wirings.map((w) => [name, w, device, highest, most] as const)),
    )('%s, %s', (_, wiring, device, highest, most) => {
      const whole = wiring === 'single' ? averaged(device) : pairAveraged(averaged(device), wiring);
      let count = 0;
      const counted = {
        ...whole,
        at: (...given: Parameters<typeof whole.at>) => {
          count++;
          whole.at(...given);
        },
      };
      for (let openCircuit = 1e-12; openCircuit <= highest * 1.01; openCircuit *= Math.sqrt(10)) {
        for (const size of [1, 1e2, 1e4, 1e5, 1e6, 1e8]) {
          for (const im of [0, size, -size]) {
            for (const dcResistance of [1, 1e2, 1e4, 1e6, 1e8, 1e12]) {
              for (const bias of [0, 0.15, -0.2]) {
                count = 0;
                const options = { openCircuit, sourceImpedance: { re: size, im }, dcResistance, bias };
                steadyDetector({ averaged: counted, ...options });
                if (count > most) expect(count, JSON.stringify(options)).toBeLessThanOrEqual(most);
              }
            }
          }
        }
      }
    });
  });

  test('agrees with the averaged equations within 1e-7', () => {
    for (const [Is, n, R, V, Vdc, Rin, Pin, Pout] of reference.rows) {
      const r = steadyDetector({
        averaged: averaged(exponentialDetector({ saturationCurrent: Is, ideality: n })),
        openCircuit: V,
        sourceImpedance: none,
        dcResistance: R,
      });
      const row = `Is ${Is} n ${n} R ${R} V ${V}`;
      expect(Math.abs(r.directVoltage / Vdc - 1), row).toBeLessThan(1e-7);
      expect(Math.abs(r.inputResistance / Rin - 1), row).toBeLessThan(1e-7);
      expect(Math.abs(r.inputPower / Pin - 1), row).toBeLessThan(1e-7);
      expect(Math.abs(r.outputPower / Pout - 1), row).toBeLessThan(1e-7);
    }
  });

  // Source: published I0 form of the detector, recomputed (reference/detectors-published.json, entry "detector_theory").
  test('published examples: open, shorted and loaded output', () => {
    const { values } = published.entries.find((e) => e.id === 'detector_theory') as unknown as {
      values: Record<string, number>[];
    };
    for (const example of values) {
      const device = exponentialDetector({
        saturationCurrent: example.Is,
        ideality: example.n,
        temperature: example.T,
      });
      const solve = (dcResistance: number) =>
        steadyDetector({
          averaged: averaged(device),
          openCircuit: example.A_peak,
          sourceImpedance: none,
          dcResistance,
        });
      const Rj = example['Rj0=nVt/Is'];
      expect(solve(1e15).directVoltage / example.Vdc_open).toBeCloseTo(1, 6);
      expect(solve(0).directCurrent / example.Idc_short).toBeCloseTo(1, 7);
      expect(solve(0).inputResistance / example['Rin_shorted_output=A/(2 Is I1)']).toBeCloseTo(1, 7);
      expect(solve(Rj).directVoltage / example['Vdc_load_R=nVt/Is']).toBeCloseTo(1, 7);
      expect(solve(5 * Rj).directVoltage / example['Vdc_load_R=5nVt/Is']).toBeCloseTo(1, 7);
    }
  });

  const any = {
    logIs: fc.double({ min: -9, max: -5, noNaN: true }),
    n: fc.double({ min: 1, max: 2.5, noNaN: true }),
    Rs: fc.constantFrom(0, 5, 100, 5000),
    G: fc.constantFrom(0, 1e-8, 1e-5),
    logE: fc.double({ min: -6, max: 4.5, noNaN: true }),
    logZ: fc.double({ min: 0, max: 7, noNaN: true }),
    angle: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
    logR: fc.double({ min: 1, max: 9, noNaN: true }),
    bias: fc.constantFrom(0, 0.1, 0.3, -0.2),
  };
  const build = (a: { logIs: number; n: number; Rs: number; G: number }) =>
    averaged(
      exponentialDetector({ saturationCurrent: 10 ** a.logIs, ideality: a.n, seriesResistance: a.Rs, leakage: a.G }),
    );

  const wirings = fc.constantFrom('single', 'full-wave', 'doubler');
  test('any circuit, wiring and signal: solved, and energy is kept', () => {
    fc.assert(
      fc.property(fc.record(any), wirings, (a, wiring) => {
        const E = 10 ** a.logE;
        const Z = 10 ** a.logZ;
        const sourceImpedance = { re: Z * Math.cos(a.angle), im: Z * Math.sin(a.angle) };
        const single = build(a);
        const device = wiring === 'single' ? single : pairAveraged(single, wiring);
        const r = steadyDetector({
          averaged: device,
          openCircuit: E,
          sourceImpedance,
          dcResistance: 10 ** a.logR,
          bias: a.bias,
        });
        const out = averagedCurrents();
        device.at(r.junctionVoltage, r.deviceVoltage, out);
        const seen = Math.hypot(
          r.junctionVoltage + sourceImpedance.re * out.fundamental,
          sourceImpedance.im * out.fundamental,
        );
        expect(Math.abs(seen / E - 1)).toBeLessThan(1e-6);
        expect(Math.abs(10 ** a.logR * out.mean - r.directVoltage)).toBeLessThan(
          1e-6 * (Math.abs(r.directVoltage) + Math.abs(a.bias) * 1e-3 + E * 1e-9) +
            1e-12 * (1 + 10 ** a.logR * 10 ** a.logIs),
        );
        // What goes in, from the carrier and the cell, is what the load and the device use up.
        const given = r.inputPower + a.bias * r.directCurrent;
        expect(given).toBeGreaterThanOrEqual(r.outputPower * (1 - 1e-8) - 1e-25);
        expect(r.iterations).toBeLessThan(5000);
      }),
      { numRuns: 300 },
    );
  });

  test.each([10, 300, 6e3, 6e4])('a doubler on a circuit of %d V loads it as two detectors do', (openCircuit) => {
    const single = averaged(exponentialDetector({ saturationCurrent: 2e-7, ideality: 1.1 }));
    const both = steadyDetector({
      averaged: pairAveraged(single, 'doubler'),
      openCircuit,
      sourceImpedance: { re: 5e4, im: 1e3 },
      dcResistance: 2000,
    });
    // Each of the two has half the load to itself; the circuit sees both.
    const one = steadyDetector({
      averaged: single,
      openCircuit,
      sourceImpedance: { re: 1e5, im: 2e3 },
      dcResistance: 1000,
    });
    expect(both.junctionVoltage / one.junctionVoltage).toBeCloseTo(1, 6);
    expect(both.directVoltage / (2 * one.directVoltage)).toBeCloseTo(1, 6);
    expect(both.inputResistance / (one.inputResistance / 2)).toBeCloseTo(1, 6);
  });

  test('more carrier gives more direct voltage and never a better bargain than V', () => {
    fc.assert(
      fc.property(fc.record(any), fc.double({ min: 1.01, max: 3, noNaN: true }), (a, more) => {
        const solve = (E: number) =>
          steadyDetector({
            averaged: build(a),
            openCircuit: E,
            sourceImpedance: { re: 10 ** a.logZ, im: 0 },
            dcResistance: 10 ** a.logR,
          });
        const E = 10 ** a.logE;
        const first = solve(E);
        // Of the saturation current through the load: it matters below a microvolt of carrier.
        const rounding = 1e-15 * first.junctionVoltage + 1e-16;
        expect(solve(E * more).directVoltage).toBeGreaterThan(first.directVoltage - rounding);
        expect(first.directVoltage).toBeGreaterThan(-rounding);
        expect(first.directVoltage).toBeLessThan(first.junctionVoltage + rounding);
      }),
      { numRuns: 200 },
    );
  });

  test('square law: Vdc → V²/(4·n·kT/e)·R/(R + Rj) and Rin → Rj', () => {
    fc.assert(
      fc.property(any.logIs, any.n, any.logR, (logIs, n, logR) => {
        const device = exponentialDetector({ saturationCurrent: 10 ** logIs, ideality: n });
        const [s, R, V] = [device.slopeVoltage, 10 ** logR, 1e-3];
        const r = steadyDetector({
          averaged: averaged(device),
          openCircuit: V,
          sourceImpedance: none,
          dcResistance: R,
        });
        const Rj = s / device.currentScale;
        // Within 0.0007 dB at 1 mV.
        expect(Math.abs(r.directVoltage / (((V * V) / (4 * s)) * (R / (R + Rj))) - 1)).toBeLessThan(
          1e-4 * (0.0259 / s) ** 2 + 2e-4,
        );
        expect(r.inputResistance / Rj).toBeCloseTo(1, 3);
      }),
    );
  });

  test('strong signals: nearly all of the peak across an open load; input resistance half the load', () => {
    const device = exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1 });
    const r = steadyDetector({ averaged: averaged(device), openCircuit: 10, sourceImpedance: none, dcResistance: 1e6 });
    expect(r.directVoltage / 10).toBeGreaterThan(0.97);
    expect(r.inputResistance / 5e5).toBeCloseTo(1, 1);
  });

  test('too much for the reverse limit is said', () => {
    const device = exponentialDetector({ saturationCurrent: 3e-6, ideality: 1.06, reverseLimit: 3.8 });
    const solve = (E: number) =>
      steadyDetector({ averaged: averaged(device), openCircuit: E, sourceImpedance: none, dcResistance: 1e5 });
    expect(solve(3).warnings).toHaveLength(1);
    expect(solve(1).warnings).toHaveLength(0);
  });

  test('refuses what is not a circuit', () => {
    const device = averaged(exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1 }));
    const good = { averaged: device, openCircuit: 1, sourceImpedance: none, dcResistance: 1e4 };
    expect(() => steadyDetector({ ...good, openCircuit: Number.NaN })).toThrow(RangeError);
    expect(() => steadyDetector({ ...good, dcResistance: -1 })).toThrow(RangeError);
    expect(() => steadyDetector({ ...good, sourceImpedance: { re: -1, im: 0 } })).toThrow(RangeError);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { element } from '../../../../test/support/element.ts';
import type { Circuit, Element } from '../../network/elements.ts';
import { elementId } from '../../network/ids.ts';
import { exponentialDetector } from '../../parts/detector/exponential.ts';
import { linearSolver } from '../linear/solve.ts';
import { tonesOf } from './analysis.ts';
import { type CurveDevice, curveOf, type Device, solveLoadLine } from './devices.ts';
import { createTransient, type TransientOptions } from './transient.ts';

const R = (name: string, from: string, to: string, resistance: number): Element =>
  element({
    kind: 'resistor',
    name,
    from,
    to,
    resistance,
  });
const C = (name: string, from: string, to: string, capacitance: number): Element =>
  element({
    kind: 'capacitor',
    name,
    from,
    to,
    capacitance,
  });
const L = (name: string, from: string, to: string, inductance: number, resistance: number): Element =>
  element({
    kind: 'inductor',
    name,
    from,
    to,
    inductance,
    resistance,
  });
const field: Element = element({ kind: 'source', name: 'field', from: 'earth', to: 'sky', emf: { re: 1, im: 0 } });
const detector: Element = element({ kind: 'detector', name: 'detector', from: 'top', to: 'out' });
const receiver: Circuit = {
  elements: [
    field,
    C('aerial', 'sky', 'wire', 200e-12),
    R('earth', 'wire', 'lead', 40),
    C('coupling', 'lead', 'top', 30e-12),
    L('coil', 'top', 'earth', 220e-6, 12),
    C('tuning', 'top', 'earth', 90e-12),
    detector,
    C('by-pass', 'out', 'earth', 1e-9),
    R('phones', 'out', 'winding', 2000),
    L('phones inductance', 'winding', 'earth', 1.2, 0),
  ],
};
const germanium = { saturationCurrent: 1e-6, ideality: 1.1 };
const MW = { frequency: 1e6, emf: 0.05, modulation: [{ frequency: 1000, depth: 0.5 }] };
const options: TransientOptions = {
  devices: [germanium],
  stations: [MW],
  probes: [
    { kind: 'voltage', node: 'out' },
    { kind: 'voltage', node: 'top', over: 'out' },
    { kind: 'detector current' },
    { kind: 'coil current', coil: 'phones inductance' },
  ],
};
const record = (circuit: Circuit, o: TransientOptions, steps: number) => {
  const run = createTransient(circuit, o);
  const out = o.probes.map(() => new Float64Array(Math.ceil(steps / (o.every ?? 1))));
  run.run(steps, out);
  return out;
};

describe('transient', () => {
  it('is the linear solution when the device is a resistor: the step is exact at the carrier', () => {
    const ohmic: CurveDevice = { current: (v) => v / 5e3, conductance: () => 1 / 5e3 };
    const cycles = 3000;
    const probes: TransientOptions['probes'] = [
      { kind: 'voltage', node: 'top' },
      { kind: 'voltage', node: 'lead', over: 'out' },
      { kind: 'coil current', coil: 'coil' },
    ];
    const run = createTransient(receiver, {
      ...options,
      devices: [ohmic],
      stations: [{ frequency: 1e6, emf: 1 }],
      probes,
    });
    run.run(cycles * 32);
    const out = probes.map(() => new Float64Array(32 * 64));
    run.run(32 * 64, out);
    const linear = linearSolver({
      elements: receiver.elements.map((e) => (e.kind === 'detector' ? R('device', 'top', 'out', 5e3) : e)),
    }).solve(1e6);
    const want = [
      linear.voltage('top'),
      {
        re: linear.voltage('lead').re - linear.voltage('out').re,
        im: linear.voltage('lead').im - linear.voltage('out').im,
      },
      linear.current(elementId('coil')),
    ];
    out.forEach((samples, k) => {
      const { amplitude, phase } = tonesOf(samples, run.step, [1e6], { start: run.step }).tones[0];
      // What is left is the by-pass capacitor, which is stepped for audio: 0.3 % of its own reactance is left out.
      expect(amplitude / Math.hypot(want[k].re, want[k].im)).toBeCloseTo(1, 3);
      const turn = (phase - Math.atan2(want[k].im, want[k].re)) / (2 * Math.PI);
      expect(turn - Math.round(turn)).toBeCloseTo(0, 4);
    });
  });

  it('gives the same numbers however a run is cut up', () => {
    const whole = record(receiver, options, 4000);
    const run = createTransient(receiver, options);
    const parts = options.probes.map(() => new Float64Array(4000));
    for (let at = 0, n = 1; at < 4000; at += n, n = Math.min(4000 - at, n * 2 + 3)) run.run(n, parts, at);
    expect(parts).toEqual(whole);
  });

  it('means are the means of the values', () => {
    const every = 32;
    const probes: TransientOptions['probes'] = [
      ...options.probes,
      { kind: 'square', node: 'top' },
      { kind: 'power', node: 'top' },
    ];
    const fine = record(receiver, { ...options, probes }, 6400);
    const means = record(receiver, { ...options, probes, every, average: true }, 6400);
    means.forEach((m, k) => {
      const size = Math.max(...fine[k].map(Math.abs));
      for (let f = 0; f < 200; f += 7) {
        let sum = 0;
        for (let i = 0; i < every; i++) sum += fine[k][f * every + i];
        expect((m[f] - sum / every) / size).toBeCloseTo(0, 9);
      }
    });
  });

  it('what goes into a detector is what it keeps and what its load gets', () => {
    const every = 32 * 500;
    const probes: TransientOptions['probes'] = [
      { kind: 'power', node: 'top' },
      { kind: 'power', node: 'out' },
      { kind: 'power', node: 'top', over: 'out' },
    ];
    const [into, load, device] = record(receiver, { ...options, probes, every, average: true }, every * 4);
    expect((into[3] - load[3] - device[3]) / into[3]).toBeCloseTo(0, 9);
    expect(device[3]).toBeGreaterThan(0);
  });

  it('a curve and a closed law of the same device agree', () => {
    const law = exponentialDetector({ saturationCurrent: 1e-6, ideality: 1.1, seriesResistance: 80, leakage: 1e-6 });
    const curve: CurveDevice = { current: law.current, conductance: law.conductance };
    const [a] = record(receiver, { ...options, devices: [law] }, 20000);
    const [b] = record(receiver, { ...options, devices: [curve] }, 20000);
    const size = Math.max(...a);
    for (let i = 0; i < a.length; i += 97) expect((a[i] - b[i]) / size).toBeCloseTo(0, 7);
  });

  it('a doubler with next to no load gives nearly twice the voltage of one device', () => {
    const base: Element[] = [field, R('source', 'sky', 'live', 50)];
    const load = [C('by-pass', 'out', 'earth', 1e-9), R('load', 'out', 'earth', 10e6)];
    const single: Circuit = {
      elements: [...base, element({ kind: 'detector', name: 'd', from: 'live', to: 'out' }), ...load],
    };
    const doubler: Circuit = {
      elements: [
        ...base,
        C('pump', 'live', 'mid', 1e-9),
        element({ kind: 'detector', name: 'd', from: 'mid', to: 'out' }),
        element({ kind: 'detector', name: 'e', from: 'earth', to: 'mid' }),
        ...load,
      ],
    };
    const steady = { frequency: 1e6, emf: 1 };
    const probes: TransientOptions['probes'] = [{ kind: 'voltage', node: 'out' }];
    const last = (c: Circuit, devices: Device[]) =>
      record(c, { devices, stations: [steady], probes, every: 32, average: true }, 32 * 3000)[0][2999];
    const one = last(single, [germanium]);
    expect(last(doubler, [germanium, germanium]) / one).toBeGreaterThan(1.9);
    expect(last(doubler, [germanium, germanium]) / one).toBeLessThan(2.001);
  });

  it('starts where a bias cell holds it', () => {
    const biased: Circuit = {
      elements: [
        ...receiver.elements.filter((e) => e.kind !== 'detector'),
        element({ kind: 'cell', name: 'cell', from: 'top', to: 'anode', voltage: 0.15 }),
        element({ kind: 'detector', name: 'd', from: 'anode', to: 'out' }),
      ],
    };
    const probes: TransientOptions['probes'] = [{ kind: 'detector current' }, { kind: 'voltage', node: 'out' }];
    const quiet = record(biased, { ...options, stations: [{ frequency: 1e6, emf: 0 }], probes }, 5000);
    expect(quiet[0][4999] / quiet[0][0]).toBeCloseTo(1, 6);
    // i = Is·(exp((0.15 − 2000·i)/nVt) − 1), the phones being 2000 Ω to a direct current
    const d = curveOf(germanium);
    const v = solveLoadLine(d, 0.15, -2012, 0);
    expect(quiet[0][0] / d.current(v)).toBeCloseTo(1, 3);
  });

  it('never answers with anything but numbers, whatever the parts', () => {
    const decades = (low: number, high: number) =>
      fc.double({ min: Math.log10(low), max: Math.log10(high), noNaN: true }).map((d) => 10 ** d);
    const parts = fc.record({
      tune: decades(1e-12, 1e-6),
      coil: decades(1e-6, 1),
      q: decades(1, 1e6),
      aerial: decades(1e-12, 1e-6),
      load: decades(1, 1e7),
      bypass: decades(1e-13, 1e-7),
      Is: decades(1e-15, 1e-4),
      n: decades(0.5, 3),
      Rs: decades(1e-3, 1e4),
      emf: decades(1e-6, 1e2),
      frequency: decades(3e4, 3e7),
      wiring: fc.integer({ min: 0, max: 2 }),
    });
    fc.assert(
      fc.property(parts, (p) => {
        const w = 2 * Math.PI * p.frequency;
        const elements: Element[] = [
          field,
          C('aerial', 'sky', 'top', p.aerial),
          L('coil', 'top', 'earth', p.coil, (w * p.coil) / p.q),
          C('tuning', 'top', 'earth', p.tune),
          C('by-pass', 'out', 'earth', p.bypass),
          R('load', 'out', 'earth', p.load),
        ];
        const device = { saturationCurrent: p.Is, ideality: p.n, seriesResistance: p.Rs };
        const devices: Device[] = [device];
        elements.push(element({ kind: 'detector', name: 'd', from: p.wiring === 2 ? 'pump' : 'top', to: 'out' }));
        if (p.wiring > 0) devices.push(p.wiring === 1 ? curveOf(device) : device);
        if (p.wiring === 1) elements.push(element({ kind: 'detector', name: 'e', from: 'earth', to: 'out' }));
        if (p.wiring === 2)
          elements.push(
            C('pump', 'top', 'pump', 1e-9),
            element({ kind: 'detector', name: 'e', from: 'earth', to: 'pump' }),
          );
        const [out] = record(
          { elements },
          {
            devices,
            stations: [{ frequency: p.frequency, emf: p.emf }],
            probes: [{ kind: 'voltage', node: 'out' }],
          },
          400,
        );
        expect(out.every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  it('says what is wrong', () => {
    expect(() => createTransient(receiver, { ...options, devices: [] })).toThrow('1 detectors, not 0');
    expect(() => createTransient(receiver, { ...options, stations: [] })).toThrow('needs a station');
    expect(() => createTransient(receiver, { ...options, stepsPerCycle: 3 })).toThrow('from 4');
    expect(() => createTransient(receiver, { ...options, probes: [{ kind: 'voltage', node: 'attic' }] })).toThrow(
      '"attic"',
    );
    expect(() => createTransient(receiver, { ...options, devices: [{ saturationCurrent: -1, ideality: 1 }] })).toThrow(
      'saturation current',
    );
  });
});

describe('tones', () => {
  it('are found exactly over whole periods, and closely over a window that holds none', () => {
    const dt = 1e-5;
    const signal = (n: number) =>
      Float64Array.from({ length: n }, (_, i) => {
        const t = i * dt;
        return 0.3 + 0.2 * Math.cos(2 * Math.PI * 1000 * t + 0.4) + 0.01 * Math.cos(2 * Math.PI * 2000 * t - 1);
      });
    for (const [n, digits] of [
      [6000, 9],
      [6131, 6],
    ]) {
      const { mean, tones } = tonesOf(signal(n), dt, [1000, 2000]);
      expect(mean).toBeCloseTo(0.3, digits);
      expect(tones[0].amplitude).toBeCloseTo(0.2, digits);
      expect(tones[0].phase).toBeCloseTo(0.4, digits);
      expect(tones[1].amplitude).toBeCloseTo(0.01, digits);
    }
  });
});

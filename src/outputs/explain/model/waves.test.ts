import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { element } from '../../../../test/support/element.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { detectorByKind } from '../../../engine/parts/detector/library.ts';
import { createTransient } from '../../../engine/solvers/transient/transient.ts';
import type { PointId } from './points.ts';
import type { WaveSpec } from './wave-spec.ts';
import { createWaves } from './waves.ts';

const TONE = 1000;
const spec = (more: Partial<WaveSpec> = {}): WaveSpec => ({
  carrier: 200e3,
  depth: 0.6,
  programme: { kind: 'tones', tones: [{ frequency: TONE, share: 1 }] },
  atAerial: 0.05,
  atTuned: 2,
  atDetector: 1,
  loadedQ: 40,
  neighbours: [],
  detector: 'perfect',
  detectorId: 'perfect',
  load: { resistance: 20e3, capacitance: 1e-9 },
  ...more,
});

/** Least and greatest of a function over each pixel by dense sampling. */
function dense(f: (t: number) => number, t0: number, t1: number, pixels: number, perPixel: number) {
  const min = new Float64Array(pixels).fill(Number.POSITIVE_INFINITY);
  const max = new Float64Array(pixels).fill(Number.NEGATIVE_INFINITY);
  for (let i = 0; i < pixels; i++) {
    for (let k = 0; k <= perPixel; k++) {
      const v = f(t0 + ((i + k / perPixel) * (t1 - t0)) / pixels);
      min[i] = Math.min(min[i], v);
      max[i] = Math.max(max[i], v);
    }
  }
  return { min, max };
}

const drawn = (waves: ReturnType<typeof createWaves>, point: PointId, t0: number, t1: number, pixels: number) => {
  const min = new Float64Array(pixels);
  const max = new Float64Array(pixels);
  waves.extent(point, t0, t1, pixels, min, max);
  return { min, max };
};

/** A trace 100 pixels high with a line 1.5 pixels wide. */
const LINE_WIDTH = 0.015 / 2;

function expectSame(
  got: { min: Float64Array; max: Float64Array },
  wanted: { min: Float64Array; max: Float64Array },
  within: number,
  what: string,
) {
  for (let i = 0; i < got.min.length; i++) {
    if (!(Math.abs(got.min[i] - wanted.min[i]) <= within && Math.abs(got.max[i] - wanted.max[i]) <= within))
      throw new Error(
        `${what}: pixel ${i} => ${got.min[i]}…${got.max[i]}, wanted ${wanted.min[i]}…${wanted.max[i]} within ${within}`,
      );
  }
}

describe('what is drawn is the wave itself', () => {
  // cos(2πft) and its product with 1 + m·cos are the definition of amplitude modulation: nothing to look up.
  const am = (t: number) => 0.05 * (1 + 0.6 * Math.cos(2 * Math.PI * TONE * t)) * Math.cos(2 * Math.PI * 200e3 * t);

  test.each([
    [20e-3, 64, 4000],
    [2e-3, 200, 400],
    [1e-3, 300, 200],
    [3e-4, 300, 100],
    [5e-5, 300, 60],
    [5e-6, 300, 30],
    [5e-8, 300, 10],
  ])('modulated carrier over %d s', (span, pixels, perPixel) => {
    const waves = createWaves(spec());
    for (const t0 of [0, 0.000123456, 0.0104321]) {
      expectSame(
        drawn(waves, 'modulated', t0, t0 + span, pixels),
        dense(am, t0, t0 + span, pixels, perPixel),
        0.05 * 1.6 * LINE_WIDTH,
        `${span} s from ${t0}`,
      );
    }
  });

  test('any carrier, tone, depth and stretch', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 150, max: 1600 }),
        fc.integer({ min: 2, max: 90 }),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        fc.double({ min: -1e-3, max: 2, noNaN: true }),
        fc.double({ min: -7.3, max: -3.4, noNaN: true }),
        (kHz, fifties, depth, t0, logSpan) => {
          const span = 10 ** logSpan;
          const tone = fifties * 50;
          const waves = createWaves(
            spec({ carrier: kHz * 1e3, depth, programme: { kind: 'tones', tones: [{ frequency: tone, share: 1 }] } }),
          );
          const f = (t: number) =>
            0.05 * (1 + depth * Math.cos(2 * Math.PI * tone * t)) * Math.cos(2 * Math.PI * kHz * 1e3 * t);
          const perPixel = Math.min(400, Math.ceil((span / 40) * kHz * 1e3 * 40) + 8);
          expectSame(
            drawn(waves, 'modulated', t0, t0 + span, 40),
            dense(f, t0, t0 + span, 40, perPixel),
            0.05 * (1 + depth) * LINE_WIDTH,
            `${kHz} kHz, ${tone} Hz, depth ${depth}, ${span} s from ${t0}`,
          );
        },
      ),
      { numRuns: 150 },
    );
  });

  test('neighbours together with the wanted station, over many cycles and over one', () => {
    const neighbours = [
      { frequency: 209e3, share: 0.4, depth: 0.5, tone: 400 },
      { frequency: 164e3, share: 0.2, depth: 0.3, tone: 700 },
    ];
    const waves = createWaves(spec({ neighbours }));
    const x = 2 * 40 * (TONE / 200e3);
    const gain = 1 / Math.hypot(1, x);
    const lag = Math.atan(x);
    const turn = 2 * Math.PI;
    const f = (t: number) =>
      2 *
      ((1 + 0.6 * gain * Math.cos(turn * TONE * t - lag)) * Math.cos(turn * 200e3 * t) +
        0.4 * (1 + 0.5 * Math.cos(turn * 400 * t + 1)) * Math.cos(turn * 209e3 * t) +
        0.2 * (1 + 0.3 * Math.cos(turn * 700 * t + 1)) * Math.cos(turn * 164e3 * t));
    for (const [t0, span, pixels, perPixel] of [
      [0, 20e-3, 40, 8000],
      [0.0312, 1e-3, 150, 200],
      [1.00021, 4e-5, 150, 60],
      [0.01999, 2e-5, 150, 40],
    ]) {
      expectSame(
        drawn(waves, 'tuned', t0, t0 + span, pixels),
        dense(f, t0, t0 + span, pixels, perPixel),
        2 * 2.2 * LINE_WIDTH,
        `${span} s from ${t0}`,
      );
    }
  });

  test('after the detector: its own curve into a bare resistance, at every instant', () => {
    const detector = detectorByKind('galena-fair');
    const waves = createWaves(spec({ detector, atDetector: 0.2 }));
    const R = 20e3;
    for (let k = 0; k < 200; k++) {
      const t = k * 1.37e-7;
      const y = waves.at('detector', t);
      const v = waves.at('tuned', t) * (0.2 / 2);
      // The resistance carries what the curve lets through at the voltage left for it.
      expect(Math.abs(y - R * detector.current(v - y))).toBeLessThan(1e-4 * 0.2 + 1e-3 * Math.abs(y));
    }
  });

  test('the running average drawn over it allocates nothing and stays finite at every zoom', () => {
    const waves = createWaves(spec({ detector: detectorByKind('germanium') }));
    const min = new Float64Array(500);
    const max = new Float64Array(500);
    for (const point of ['programme', 'carrier', 'modulated', 'tuned', 'detector', 'phones'] as const) {
      for (let span = 10; span > 4e-8; span /= 3.7) {
        waves.extent(point, 0.3, 0.3 + span, 500, min, max);
        expect(min.every((v, i) => Number.isFinite(v) && v <= max[i])).toBe(true);
        waves.mean(point, 0.3, 0.3 + span, 500, min, max);
        expect(min.every((v, i) => Number.isFinite(v) && v <= max[i])).toBe(true);
      }
    }
  });
});

describe('the running average', () => {
  test('is zero before the detector, within 1e-6 of the carrier, by its own figures', () => {
    for (const more of [{}, { depth: 1 }, { neighbours: [{ frequency: 209e3, share: 0.5, depth: 1, tone: 3000 }] }]) {
      const waves = createWaves(spec(more));
      for (const point of ['carrier', 'modulated', 'tuned'] as const) {
        const carrier = waves.lines(point).find((line) => line.what === 'carrier')!.amplitude;
        for (let k = 0; k < 500; k++) expect(Math.abs(waves.meanAt(point, k * 7.3e-6))).toBeLessThan(1e-6 * carrier);
      }
    }
  });

  test('is zero before the detector when the drawn wave itself is averaged', () => {
    const waves = createWaves(spec());
    const sigma = 0.95 / 199e3;
    for (const t of [0, 1.1e-4, 3.33e-4, 7.07e-4]) {
      let sum = 0;
      let weight = 0;
      for (let k = -3000; k <= 3000; k++) {
        const u = (k / 3000) * 7 * sigma;
        const bell = Math.exp(-(u * u) / (2 * sigma * sigma));
        sum += bell * waves.at('modulated', t + u);
        weight += bell;
      }
      expect(Math.abs(sum / weight)).toBeLessThan(1e-6 * 0.05);
    }
  });

  test('is the programme after a perfect detector', () => {
    // The mean of a half-wave of height a is a/π (textbook).
    const waves = createWaves(spec({ loadedQ: 1e-9 }));
    for (let k = 0; k < 300; k++) {
      const t = k * 1.7e-5;
      const wanted = (1 + 0.6 * Math.cos(2 * Math.PI * TONE * t)) / Math.PI;
      expect(waves.meanAt('detector', t)).toBeCloseTo(wanted, 6);
    }
  });

  test('after the detector is the mean of what is drawn there, cycle by cycle', () => {
    for (const detector of ['perfect', detectorByKind('galena-fair'), detectorByKind('silicon')] as const) {
      const waves = createWaves(spec({ detector, atDetector: 0.5, depth: 0 }));
      let sum = 0;
      const n = 2000;
      for (let k = 0; k < n; k++) sum += waves.at('detector', ((k + 0.5) / n) * 5e-6);
      expect(Math.abs(waves.meanAt('detector', 1e-4) - sum / n)).toBeLessThan(1e-5);
    }
  });
});

describe('spectrum', () => {
  test('sidebands are m/2 of the carrier, exactly', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), (depth) => {
        const lines = createWaves(spec({ depth })).lines('modulated');
        expect(lines.map((l) => l.frequency)).toEqual([199e3, 200e3, 201e3]);
        expect(lines[0].amplitude).toBe((0.05 * depth) / 2);
        expect(lines[1].amplitude).toBe(0.05);
        expect(lines[2].amplitude).toBe((0.05 * depth) / 2);
      }),
    );
  });

  test('the lines add up to the wave', () => {
    const waves = createWaves(
      spec({
        neighbours: [{ frequency: 209e3, share: 0.4, depth: 0.5, tone: 400 }],
        programme: {
          kind: 'tones',
          tones: [
            { frequency: 600, share: 0.6 },
            { frequency: 1500, share: 0.4, phase: 0.7 },
          ],
        },
      }),
    );
    for (const point of ['programme', 'carrier', 'modulated'] as const) {
      for (let k = 0; k < 50; k++) {
        const t = k * 3.21e-5;
        const sum = waves
          .lines(point)
          .reduce((total, l) => total + l.amplitude * Math.cos(2 * Math.PI * l.frequency * t + (l.phase ?? 0)), 0);
        expect(Math.abs(sum - waves.at(point, t))).toBeLessThan(2e-5 * waves.scale(point).high);
      }
    }
  });

  test('after a perfect detector: 1/π direct, m/π programme, half the carrier', () => {
    // Fourier series of a half-wave: 1/π + ½cos + (2/3π)cos 2wt − … (textbook)
    const lines = createWaves(spec({ loadedQ: 1e-9 })).lines('detector');
    const at = (f: number) => lines.find((l) => l.frequency === f)!.amplitude;
    expect(at(0)).toBeCloseTo(1 / Math.PI, 3);
    expect(at(1000)).toBeCloseTo(0.6 / Math.PI, 3);
    expect(at(200e3)).toBeCloseTo(0.5, 3);
    expect(at(400e3)).toBeCloseTo(2 / (3 * Math.PI), 3);
    expect(at(2000)).toBeLessThan(1e-3);
  });
});

describe('after the capacitor', () => {
  test.each([
    ['germanium', 1e-9, 0.6, 20e3],
    ['galena-fair', 100e-12, 0.8, 10e3],
    ['germanium', 20e-9, 0.9, 50e3],
  ])(
    '%s with %d F: the same as the transient of the same circuit, within line width',
    (kind, capacitance, depth, resistance) => {
      const detector = detectorByKind(kind, { junctionCapacitance: 0 });
      const amplitude = 0.5;
      const waves = createWaves(
        spec({
          carrier: 150e3,
          depth,
          detector,
          atDetector: amplitude,
          loadedQ: 1e-6,
          load: { resistance, capacitance },
        }),
      );
      const perCycle = 128;
      const transient = createTransient(
        {
          elements: [
            element({ kind: 'source', name: 'station', from: EARTH, to: 'e', emf: { re: 1, im: 0 } }),
            element({ kind: 'resistor', name: 'lead', from: 'e', to: 'a', resistance: 0.1 }),
            element({ kind: 'detector', name: 'detector', from: 'a', to: 'out' }),
            element({ kind: 'resistor', name: 'load', from: 'out', to: EARTH, resistance }),
            element({ kind: 'capacitor', name: 'by-pass', from: 'out', to: EARTH, capacitance }),
          ],
        },
        {
          devices: [detector],
          stations: [{ frequency: 150e3, emf: amplitude, modulation: [{ frequency: TONE, depth }] }],
          stepsPerCycle: perCycle,
          probes: [{ kind: 'voltage', node: 'out' }],
        },
      );
      const periods = 4;
      const steps = periods * 150 * perCycle;
      const out = [new Float64Array(steps)];
      transient.run(steps, out);
      const high = waves.scale('phones').high;
      let worst = 0;
      for (let k = 0; k < 150 * perCycle; k++) {
        const t = (k + 1) * transient.step;
        worst = Math.max(worst, Math.abs(waves.at('phones', t) - out[0][(periods - 1) * 150 * perCycle + k]));
      }
      expect(worst / high).toBeLessThan(2 * LINE_WIDTH);
    },
  );

  test('too small a capacitor leaves the carrier, too large a one cannot follow', () => {
    const ripple = (capacitance: number) => {
      const waves = createWaves(spec({ load: { resistance: 20e3, capacitance } }));
      const { min, max } = drawn(waves, 'phones', 0, 5e-6, 1);
      return (max[0] - min[0]) / max[0];
    };
    expect(ripple(20e-12)).toBeGreaterThan(0.5);
    expect(ripple(2e-9)).toBeLessThan(0.15);
    // The trough of the programme comes half a period after its crest; with RC = 4 ms it cannot be reached.
    const lowest = (capacitance: number) => {
      const waves = createWaves(spec({ load: { resistance: 20e3, capacitance }, depth: 0.8 }));
      return drawn(waves, 'phones', 0, 1e-3, 1).min[0];
    };
    expect(lowest(1e-9)).toBeLessThan(0.25);
    expect(lowest(200e-9)).toBeGreaterThan(0.7);
  });

  test('a recorded programme gives what the same tone gives', () => {
    const rate = 48e3;
    const samples = Float32Array.from({ length: 4800 }, (_, i) => Math.cos((2 * Math.PI * TONE * i) / rate));
    const detector = detectorByKind('germanium');
    const load = { resistance: 20e3, capacitance: 1e-9 };
    const recorded = createWaves(
      spec({ detector, load, programme: { kind: 'recording', name: 'a tone', samples, rate } }),
    );
    const tone = createWaves(spec({ detector, load }));
    for (const span of [2e-3, 1e-5]) {
      const a = drawn(recorded, 'phones', 0.01, 0.01 + span, 100);
      const b = drawn(tone, 'phones', 0.01, 0.01 + span, 100);
      expectSame(a, b, 0.03 * tone.scale('phones').high, `${span} s`);
    }
    expectSame(
      drawn(recorded, 'modulated', 0.01, 0.012, 100),
      drawn(tone, 'modulated', 0.01, 0.012, 100),
      0.05 * 0.01,
      'modulated',
    );
  });
});

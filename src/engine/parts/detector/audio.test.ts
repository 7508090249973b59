import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
// Source: RF-level integration, 512 exact exponential steps a cycle (reference/detectors-am.json).
import reference from '../../../../reference/detectors-am.json' with { type: 'json' };
import { add, complex, divide, multiply, reciprocal, scale } from '../../numerics/complex.ts';
import { decibels } from '../../units/quantities.ts';
import { audioDetection } from './audio.ts';
import { averaged } from './averaged.ts';
import { exponentialDetector } from './exponential.ts';
import { steadyDetector } from './steady.ts';

const detector = averaged(exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1 }));
const { Ra_ohm, Ca_F, Cc_F } = reference.aerial;
const Cs = (Ca_F * Cc_F) / (Ca_F + Cc_F);

/** The set of the reference at one frequency, seen from the top of its tuned circuit. */
function seen(c: (typeof reference.cases)[number], f: number) {
  const w = 2 * Math.PI * f;
  const L = c.band === 'LW' ? reference.tunedCircuits.LW.L_H : reference.tunedCircuits.MW.L_H;
  const aerial = reciprocal(complex(Ra_ohm, -1 / (w * Cs)));
  const all = add(aerial, complex(1 / c.Rp_ohm, w * c.C_tank_F - 1 / (w * L)));
  return { openCircuit: scale(divide(aerial, all), c.emf_peak_V[0]), impedance: reciprocal(all) };
}
function solve(c: (typeof reference.cases)[number]) {
  const [fc0, fa] = [c.fc_Hz[0], c.fm_Hz[0]];
  const { R_ohm: R, C_F: C } = c.load;
  const loadAt = (f: number) => reciprocal(complex(1 / R, 2 * Math.PI * f * C));
  return audioDetection({
    averaged: detector,
    audioFrequency: fa,
    depth: c.m[0],
    carrier: seen(c, fc0),
    upper: seen(c, fc0 + fa),
    lower: seen(c, fc0 - fa),
    loadAtCarrier: loadAt(fc0),
    loadAt,
    dcResistance: R,
    carrierFrequency: fc0,
  });
}

describe('one station’s tone', () => {
  // What the averaged device can reach without the carrier's own harmonics: see the physics page.
  test.each(reference.cases)('$name agrees with the RF-level integration', (c) => {
    const r = solve(c);
    const want = c.result;
    const strong = c.emf_peak_V[0] > 0.05;
    expect(Math.abs(decibels(r.audioVoltage / want.audio1k_peak_V))).toBeLessThan(strong ? 0.17 : 0.01);
    expect(Math.abs(decibels(r.directVoltage / want.Vdc_V))).toBeLessThan(strong ? 0.11 : 0.01);
    expect(100 * Math.abs(r.secondHarmonic - want.H2_ratio)).toBeLessThan(strong ? 0.23 : 0.03);
    expect(100 * Math.abs(r.thirdHarmonic - want.H3_ratio)).toBeLessThan(0.03);
    expect(Math.abs(decibels(r.inputResistance / want.Rin_diode_ohm))).toBeLessThan(strong ? 0.5 : 0.03);
    // The integration counts its phase from the start of the tone, as here.
    expect(Math.abs((r.audioPhase * 180) / Math.PI - want.audio1k_phase_deg)).toBeLessThan(0.05);
    expect(r.loadedQ! / want.loadedQ).toBeGreaterThan(0.9);
    expect(r.loadedQ! / want.loadedQ).toBeLessThan(1.15);
    // The least loaded Q is where the carrier's harmonics begin to tell, and that is said.
    expect(r.warnings.map(({ code }) => code)).toEqual(want.loadedQ < 15 ? ['detector.loaded-q-low'] : []);
  });

  const still = (openCircuit: number, R: number) => ({ openCircuit: complex(openCircuit), impedance: complex(R) });
  const wide = (E: number, R: number, depth: number, loadAt: (f: number) => ReturnType<typeof complex>, dc: number) =>
    audioDetection({
      averaged: detector,
      audioFrequency: 1000,
      depth,
      carrier: still(E, R),
      upper: still(E, R),
      lower: still(E, R),
      loadAt,
      dcResistance: dc,
    });

  test('a slow, shallow tone follows the steady detector: the audio is the slope of the direct voltage', () => {
    for (const E of [0.02, 0.2, 2]) {
      const load = () => complex(2e4);
      const steady = (m: number) => wide(E * (1 + m), 5e4, 0, load, 2e4).directVoltage;
      const slope = (steady(0.01) - steady(-0.01)) / 0.02;
      expect(wide(E, 5e4, 0.01, load, 2e4).audioVoltage / (0.01 * slope)).toBeCloseTo(1, 3);
    }
  });

  test('square law: the second harmonic of a faint station is a quarter of its depth, its audio is 2·m·Vdc', () => {
    for (const m of [0.1, 0.3, 0.8]) {
      const r = wide(1e-3, 1e4, m, () => complex(1e4), 1e4);
      expect(r.secondHarmonic / (m / 4)).toBeCloseTo(1, 2);
      expect(r.audioVoltage / ((2 * m * r.directVoltage) / (1 + (m * m) / 2))).toBeCloseTo(1, 3);
    }
  });

  test('no modulation, no tone; both sidebands the same way round, no phase', () => {
    expect(wide(0.1, 1e5, 0, () => complex(1e4), 1e4).audioVoltage).toBeLessThan(1e-15);
    expect(Math.abs(wide(0.1, 1e5, 0.4, () => complex(1e4), 1e4).audioPhase)).toBeLessThan(1e-9);
  });

  test('a load lower for audio than for direct current clips deep modulation, and it is said', () => {
    const lowForAudio = () => complex(1e4);
    const clipped = wide(3, 2e4, 0.9, lowForAudio, 1e5);
    expect(clipped.clipped).toBe(true);
    expect(clipped.warnings).toContainEqual({ code: 'detector.negative-peak-clipping' });
    const shallow = wide(3, 2e4, 0.2, lowForAudio, 1e5);
    const even = wide(3, 2e4, 0.9, () => complex(1e5), 1e5);
    for (const r of [shallow, even]) {
      expect(r.clipped).toBe(false);
      expect(r.warnings).toEqual([]);
    }
    expect(clipped.thirdHarmonic).toBeGreaterThan(3 * even.thirdHarmonic);
  });

  test('a sharp tuned circuit trims the sidebands: less depth is left at high tones', () => {
    const c = reference.cases[0];
    const left = (fa: number) =>
      audioDetection({
        averaged: detector,
        audioFrequency: fa,
        depth: 0.3,
        carrier: seen(c, 2e5),
        upper: seen(c, 2e5 + fa),
        lower: seen(c, 2e5 - fa),
        loadAt: () => complex(1e4),
        dcResistance: 1e4,
      }).depthLeft;
    expect(left(200)).toBeGreaterThan(left(2000));
    expect(left(2000)).toBeGreaterThan(left(5000));
    expect(left(200)).toBeLessThan(0.31);
  });

  test('any circuit: settled, finite, and no more audio than a straight rectifier could give', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        fc.double({ min: 2, max: 7, noNaN: true }),
        fc.double({ min: -2, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 3, max: 300, noNaN: true }),
        (logE, logR, logLoad, logShare, m, Q) => {
          const E = 10 ** logE;
          const Rp = 10 ** logR;
          const dc = 10 ** logLoad;
          // A single tuned circuit on the carrier, and a load that is another one for audio than for direct current.
          const at = (df: number) => {
            const z = reciprocal(complex(1 / Rp, (2 * Q * df) / 1e6 / Rp));
            return { openCircuit: scale(z, E / Rp), impedance: z };
          };
          const r = audioDetection({
            averaged: detector,
            audioFrequency: 1000,
            depth: m,
            carrier: at(0),
            upper: at(1000),
            lower: at(-1000),
            loadAt: (f) => multiply(complex(dc * 10 ** logShare), divide(complex(1), complex(1, f / 5000))),
            dcResistance: dc,
          });
          for (const value of [r.audioVoltage, r.directVoltage, r.secondHarmonic, r.junctionVoltage]) {
            expect(Number.isFinite(value)).toBe(true);
          }
          expect(r.settled).toBe(true);
          expect(r.directVoltage).toBeGreaterThanOrEqual(-1e-12);
          expect(r.directVoltage).toBeLessThan(E * (1 + m));
          expect(r.audioPower).toBeLessThanOrEqual(((E * E) / (8 * Rp)) * (1 + (m * m) / 2) * 1.001);
        },
      ),
      { numRuns: 300 },
    );
  });

  test('what cannot be solved has no figures and says so', () => {
    const steady = {
      ...steadyDetector({ averaged: detector, openCircuit: 1, sourceImpedance: complex(1e4), dcResistance: 1e4 }),
    };
    const broken = {
      detector: detector.detector,
      at: (_V: number, _v0: number, out: Parameters<typeof detector.at>[2]) => void (out.mean = Number.NaN),
    };
    const at = { openCircuit: complex(1), impedance: complex(1e4) };
    const r = audioDetection({
      averaged: broken,
      audioFrequency: 1000,
      depth: 1,
      carrier: at,
      upper: at,
      lower: at,
      loadAt: () => complex(1e4),
      dcResistance: 1e4,
      steady,
    });
    expect(r.settled).toBe(false);
    for (const figure of [r.audioVoltage, r.audioPower, r.audioCurrent, r.directVoltage, r.secondHarmonic])
      expect(figure).toBeNaN();
    expect(r.warnings).toContainEqual({ code: 'detector.audio-unsolved' });
  });

  test('refuses what is not a tone', () => {
    const load = () => complex(1e4);
    expect(() => wide(1, 1e4, Number.NaN, load, 1e4)).toThrow(RangeError);
    expect(() => wide(1, 1e4, 3, load, 1e4)).toThrow(RangeError);
  });
});

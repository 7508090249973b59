import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Limiter } from './limiter.ts';

const RATE = 48_000;
/** 20·log10(0.5), dBFS. */
const CEILING_DBFS = -6.0206;

const loudest = (sound: Float32Array): number => sound.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
const tone = (amplitude: number, seconds = 0.5, frequency = 1000): Float32Array =>
  Float32Array.from({ length: seconds * RATE }, (_, i) => amplitude * Math.sin((2 * Math.PI * frequency * i) / RATE));
const ran = (sound: Float32Array, options = {}): Float32Array => {
  new Limiter({ rate: RATE, ...options }).run(sound);
  return sound;
};

describe('the limiter', () => {
  it('lets nothing above −6.02 dBFS out, whatever comes in', () => {
    expect(20 * Math.log10(new Limiter({ rate: RATE }).ceiling)).toBeCloseTo(CEILING_DBFS, 4);
    const anything = fc.array(fc.float({ noDefaultInfinity: false }), { minLength: 1, maxLength: 2000 });
    fc.assert(
      fc.property(anything, (samples) => {
        const out = ran(Float32Array.from(samples), { fadeIn: 0 });
        expect(out.every(Number.isFinite)).toBe(true);
        expect(loudest(out)).toBeLessThanOrEqual(0.5);
      }),
      { numRuns: 200, seed: 2 },
    );
  });

  it('turns a tone down to just under its ceiling and leaves a softer one as it is', () => {
    for (const ceiling of [0.5, 0.25]) {
      const out = ran(tone(20), { fadeIn: 0, ceiling }).subarray(RATE / 4);
      expect(loudest(out)).toBeLessThanOrEqual(ceiling);
      expect(loudest(out)).toBeGreaterThan(0.97 * ceiling);
    }
    const out = ran(tone(0.4), { fadeIn: 0 });
    expect(loudest(out)).toBeCloseTo(0.4, 5);
  });

  it('says how far it turned down', () => {
    const limiter = new Limiter({ rate: RATE, fadeIn: 0 });
    limiter.run(tone(0.4));
    expect(limiter.lowestGain).toBe(1);
    limiter.run(tone(5));
    expect(limiter.lowestGain).toBeCloseTo((0.98 * 0.5) / 5, 3);
  });

  it('is back within 1 s after a crash', () => {
    const limiter = new Limiter({ rate: RATE, fadeIn: 0 });
    limiter.run(tone(50, 0.1));
    limiter.run(tone(0.1, 2));
    const after = tone(0.1, 0.5);
    limiter.run(after);
    expect(loudest(after)).toBeGreaterThan(0.095);
  });

  it('begins in silence and fades in over 1.5 s', () => {
    const out = ran(tone(0.4, 2));
    expect(loudest(out.subarray(0, 0.05 * RATE))).toBeLessThan(0.004);
    expect(loudest(out.subarray(0.7 * RATE, 0.76 * RATE))).toBeCloseTo(0.2, 1);
    expect(loudest(out.subarray(1.3 * RATE, 1.4 * RATE))).toBeLessThan(0.4 - 1e-3);
    expect(loudest(out.subarray(1.55 * RATE))).toBeCloseTo(0.4, 4);
  });

  /** Samples that it looks ahead: 3 ms. */
  const AHEAD = 0.003 * RATE;
  const steps = (...parts: readonly (readonly [size: number, samples: number])[]): Float32Array =>
    Float32Array.from(parts.flatMap(([size, samples]) => Array.from({ length: samples }, () => size)));

  it('gives each sample 3 ms after it came', () => {
    const out = ran(steps([0, 10], [0.3, 1], [0, 200]), { fadeIn: 0 });
    expect(out.findIndex((x) => x !== 0)).toBe(10 + AHEAD);
    expect(out[10 + AHEAD]).toBeCloseTo(0.3, 6);
  });

  it('turns down smoothly in the 3 ms before a step, which then is not cut off', () => {
    const out = ran(steps([0.1, 1000], [1, 1000]), { fadeIn: 0 });
    const gainAfter = (samples: number) => 0.49 + 0.51 * Math.exp((-5 * samples) / AHEAD);
    for (const samples of [1, AHEAD / 4, AHEAD / 2, AHEAD - 1])
      expect(out[1000 + samples - 1] / (0.1 * gainAfter(samples))).toBeCloseTo(1, 5);
    expect(out[1000 + AHEAD]).toBeCloseTo(gainAfter(AHEAD + 1), 5);
    expect(out[1000 + AHEAD]).toBeLessThan(0.5);
    expect(out[1999]).toBeCloseTo(0.49, 5);
  });

  it('holds a loud sample until it has passed, and comes back with a time constant of 0.25 s', () => {
    const [loud, quiet] = [5, 1e-4];
    const start = 0.1 * RATE + AHEAD;
    const out = ran(steps([loud, 0.1 * RATE], [quiet, RATE]), { fadeIn: 0 });
    // What is held falls as e^−t/τ and the gain follows what it asks for: cosh t/τ times where it stood.
    for (const t of [0.05, 0.25, 0.4])
      expect(out[start + t * RATE] / ((quiet * 0.49 * Math.cosh(t / 0.25)) / loud)).toBeCloseTo(1, 3);
  });

  it('limits what lies between its aim and its ceiling, and stands still under an even sound', () => {
    expect(loudest(ran(tone(0.495), { fadeIn: 0 }).subarray(RATE / 4))).toBeLessThan(0.4903);
    const even = ran(steps([1, RATE]), { fadeIn: 0 }).subarray(RATE / 2);
    expect(loudest(even) - even.reduce((least, x) => Math.min(least, x), 1)).toBeLessThan(1e-6);
  });

  it('keeps the lowest gain when it has come back', () => {
    const limiter = new Limiter({ rate: RATE, fadeIn: 0 });
    limiter.run(tone(5));
    limiter.run(tone(0.1, 3));
    expect(limiter.lowestGain).toBeCloseTo((0.98 * 0.5) / 5, 3);
  });

  it('takes what is no number for silence, and goes on', () => {
    const bad = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    const out = ran(Float32Array.from([...bad, ...steps([0.3, 400])]), { fadeIn: 0 });
    expect([...out.subarray(AHEAD, AHEAD + 3)]).toEqual([0, 0, 0]);
    expect(out[AHEAD + 3]).toBeCloseTo(0.3, 6);
  });

  it('leaves what lies behind the frames it is given', () => {
    const sound = steps([0.3, 20]);
    new Limiter({ rate: RATE, fadeIn: 0 }).run(sound, 10);
    expect([...sound.subarray(0, 10)]).toEqual(Array.from({ length: 10 }, () => 0));
    expect(sound[10]).toBeCloseTo(0.3, 6);
  });

  it('refuses a ceiling that is none', () => {
    for (const ceiling of [0, -0.1, 1.01, Number.NaN])
      expect(() => new Limiter({ rate: RATE, ceiling })).toThrow(
        new RangeError(`a ceiling must be above 0 and at most 1, not ${ceiling}`),
      );
    expect(new Limiter({ rate: RATE, ceiling: 1 }).ceiling).toBe(1);
  });
});

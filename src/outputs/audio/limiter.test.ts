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

  it('refuses a ceiling that is none', () => {
    for (const ceiling of [0, -0.1, 1.01, Number.NaN])
      expect(() => new Limiter({ rate: RATE, ceiling })).toThrow(RangeError);
    expect(new Limiter({ rate: RATE, ceiling: 1 }).ceiling).toBe(1);
  });
});

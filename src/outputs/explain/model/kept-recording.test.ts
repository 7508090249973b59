import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  LONGEST_RECORDING,
  loudestMoment,
  RECORDING_RATE,
  recordingOf,
  samplesFromText,
  samplesToText,
  secondsOf,
  trimmed,
  withRecording,
} from './kept-recording.ts';
import { emptyRange } from './range.ts';
import { envelopeOf } from './wave-programme.ts';

const tone = (seconds: number, frequency: number, level = 1): Float32Array =>
  Float32Array.from(
    { length: Math.round(seconds * RECORDING_RATE) },
    (_, i) => level * Math.sin((2 * Math.PI * frequency * i) / RECORDING_RATE),
  );

describe('a recording kept with the set', () => {
  test('what is kept sounds as what was put in: noise 20 dB below tones where speech has most of its power', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 1000 }), fc.double({ min: 0.02, max: 1, noNaN: true }), (f, level) => {
        const sound = tone(0.5, f, level);
        const kept = samplesFromText(samplesToText(sound))!;
        expect(kept.length).toBe(sound.length);
        let signal = 0;
        let noise = 0;
        // The step needs a few milliseconds to reach the sound.
        for (let i = 200; i < sound.length; i++) {
          signal += sound[i] ** 2;
          noise += (kept[i] - sound[i]) ** 2;
        }
        expect(10 * Math.log10(signal / noise)).toBeGreaterThan(20);
      }),
      { numRuns: 50 },
    );
  });

  test('a minute of it fits a description, and comes back the same from it', () => {
    const samples = tone(LONGEST_RECORDING, 440);
    const written = withRecording<{ own: number; recording?: { samples: string } }>(
      { own: 1 },
      { kind: 'recording', name: 'a talk', rate: RECORDING_RATE, samples },
    );
    expect(JSON.stringify(written).length).toBeLessThan(500_000);
    const back = recordingOf(JSON.parse(JSON.stringify(written)))!;
    expect(secondsOf(back)).toBe(60);
    expect(samplesToText(back.samples)).toBe(written.recording?.samples);
    expect(written.own).toBe(1);
  });

  test('it starts where sound is and ends after the last', () => {
    const sound = new Float32Array(4 * RECORDING_RATE);
    sound.set(tone(1, 300, 0.3), 2 * RECORDING_RATE);
    const out = trimmed(sound, RECORDING_RATE)!;
    expect(out.length / RECORDING_RATE).toBeGreaterThan(1);
    expect(out.length / RECORDING_RATE).toBeLessThan(1.2);
    expect(Math.max(...out)).toBeCloseTo(1, 3);
    expect(trimmed(new Float32Array(1000), RECORDING_RATE)).toBeUndefined();
  });

  test('of an hour a minute is kept from its first sound, and less where that is followed by silence', () => {
    const rate = 500;
    const hour = new Float32Array(3600 * rate);
    hour.fill(0.5, 10 * rate, 12 * rate);
    hour.fill(1, 3000 * rate, 3002 * rate);
    const seconds = trimmed(hour, rate)!.length / rate;
    expect(seconds).toBeGreaterThan(2);
    expect(seconds).toBeLessThan(2.2);
    hour.fill(0.5, 10 * rate, 110 * rate);
    expect(trimmed(hour, rate)!.length / rate).toBe(LONGEST_RECORDING);
    const moment = loudestMoment({ kind: 'recording', name: '', samples: hour, rate });
    expect(moment).toBeGreaterThan(3000);
    expect(moment).toBeLessThan(3002);
  });

  test('the loudest moment is found', () => {
    const samples = tone(3, 300, 0.2);
    samples.set(tone(0.1, 300, 1), Math.round(1.7 * RECORDING_RATE));
    expect(loudestMoment({ kind: 'recording', name: '', samples, rate: RECORDING_RATE })).toBeCloseTo(1.75, 1);
  });

  test('it is never wrapped: before it and after it there is silence', () => {
    const samples = tone(2, 300);
    const programme = { kind: 'recording', name: '', samples, rate: RECORDING_RATE } as const;
    const envelope = envelopeOf(programme, 0.6, 1);
    const out = emptyRange();
    for (const [a, b] of [
      [-3, -0.01],
      [2.01, 60],
    ]) {
      envelope.extent(a, b, out);
      expect([out.min, out.max, envelope.at((a + b) / 2)]).toEqual([1, 1, 1]);
    }
    envelope.extent(-1, 10, out);
    expect(out.max).toBeGreaterThan(1.59);
  });
});

import { describe, expect, it, test } from 'vitest';
import demo from '../../../../examples/medium-wave-galena.json' with { type: 'json' };
import { setCircuit } from '../../built/set-circuit.ts';
import { gaussian, uniform } from '../../numerics/random.ts';
import { fieldsAtSite } from '../../reception/path/field.ts';
import { receiver, receiveStation } from '../../reception/path/receive-station.ts';
import { readValue } from '../../set/read.ts';
import { type AudioSpectrum, audioSpectrum, type BandLevel, besidePredicted } from './audio-spectrum.ts';
import { predictedAudio } from './predicted-audio.ts';

const RATE = 32_000;
const SECONDS = 6;

function setOf(written: unknown) {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const set = setOf(demo);

/** A loop-back: tones in every band, of levels in dBV, into an input that a sine of `fullScale` volts rms fills. */
function recorded(bands: readonly BandLevel[], fullScale: number, noise: number, loss = (_: number) => 1) {
  const [random, normal] = [uniform(5), gaussian(uniform(6))];
  const samples = Float64Array.from({ length: SECONDS * RATE }, () => noise * normal());
  for (const { frequency, level } of bands) {
    const tones = [0.93, 0.97, 1, 1.04, 1.08].map((by) => by * frequency);
    for (const tone of tones) {
      const amplitude = (loss(tone) * (10 ** (level / 20) / fullScale)) / Math.sqrt(tones.length);
      const phase = 2 * Math.PI * random();
      for (let i = 0; i < samples.length; i++)
        samples[i] += amplitude * Math.sin((2 * Math.PI * tone * i) / RATE + phase);
    }
  }
  return audioSpectrum(samples, RATE);
}

test('a tone that fills the input is 0 dB, in its own band alone', () => {
  const samples = Float64Array.from(
    { length: SECONDS * RATE },
    (_, i) => 0.9 * Math.sin((2 * Math.PI * 1000 * i) / RATE),
  );
  const { bands, level, faults } = audioSpectrum(samples, RATE);
  expect(faults).toEqual([]);
  expect(level).toBeCloseTo(20 * Math.log10(0.9), 2);
  for (const band of bands)
    if (band.frequency === 1000) expect(band.level).toBeCloseTo(20 * Math.log10(0.9), 2);
    else expect(band.level).toBeLessThan(-60);
});

test('white noise rises with the width of the bands, 1 dB each', () => {
  const normal = gaussian(uniform(9));
  const samples = Float64Array.from({ length: 10 * RATE }, () => 0.05 * normal());
  const { bands } = audioSpectrum(samples, RATE);
  for (const { frequency, level } of bands) {
    const share = (frequency * (2 ** (1 / 6) - 2 ** (-1 / 6))) / (RATE / 2);
    expect(Math.abs(level - 10 * Math.log10(2 * 0.05 ** 2 * share)), `${frequency}`).toBeLessThan(1.5);
  }
});

test('what is no recording is refused', () => {
  const silence = new Float64Array(SECONDS * RATE);
  for (const rate of [0, -RATE, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => audioSpectrum(silence, rate), `${rate}`).toThrow(/sample rate/);
  for (const sample of [Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => audioSpectrum(silence.with(7, sample), RATE)).toThrow(/sample 7/);
});

test('what is too short, silent or clipped says so', () => {
  const faultsOf = (samples: Float64Array) => audioSpectrum(samples, RATE).faults;
  expect(faultsOf(new Float64Array(RATE))).toEqual(['too-short']);
  expect(faultsOf(new Float64Array(SECONDS * RATE))).toEqual(['silent']);
  const wave = Float64Array.from({ length: SECONDS * RATE }, (_, i) => Math.max(-1, Math.min(1, 3 * Math.sin(i / 20))));
  expect(faultsOf(wave)).toEqual(['clipped']);
});

describe('the audio of a set beside the predicted one', () => {
  const predicted = predictedAudio(set, 0, 'line');
  const fullScale = 0.5;
  const inVolts = 20 * Math.log10(fullScale);

  it('across the phones it is the voltage, at the ear what the phones make of it', () => {
    const ready = receiver(setCircuit(set), fieldsAtSite(set.place, {}));
    const heard = predictedAudio(set, 0, 'microphone');
    heard.forEach(({ frequency, level }, i) => {
      expect(level - predicted[i].level).toBeCloseTo(ready.soundPressureOfVoltAt(frequency), 9);
    });
    // All bands together are the programme at its depth: a few decibels about the tone that carries its modulation.
    const { spl } = receiveStation(ready, set.place.stations[0]).heard;
    const sum = 10 * Math.log10(heard.reduce((all, { level }) => all + 10 ** (level / 10), 0));
    expect(Math.abs(sum - spl)).toBeLessThan(6);
    for (const { frequency } of predicted) expect(frequency).toBeLessThanOrEqual(4500);
  });

  it('a loop-back of what is predicted agrees in level and in every band', () => {
    const beside = besidePredicted(recorded(predicted, fullScale, 1e-6), predicted, inVolts)!;
    expect(Math.abs(beside.difference!)).toBeLessThan(0.3);
    for (const { frequency, level } of beside.shape) expect(Math.abs(level), `${frequency} Hz`).toBeLessThan(0.7);
    expect(beside.scatter).toBeLessThan(0.5);
  });

  it('a set 6 dB weaker with a leaky treble is told as both', () => {
    const loss = (tone: number) => 0.5 / Math.hypot(1, tone / 1500);
    const beside = besidePredicted(recorded(predicted, fullScale, 1e-6, loss), predicted, inVolts)!;
    expect(beside.difference!).toBeLessThan(-6);
    const at = (frequency: number) => beside.shape.find((band) => band.frequency === frequency)!.level;
    const asMade = (tone: number) => 20 * Math.log10(loss(tone));
    expect(at(4000) - at(400)).toBeCloseTo(asMade(4000) - asMade(400), 0);
  });

  it('without a calibration the level is not known, and the shape is the same', () => {
    const recording = recorded(predicted, 0.02, 1e-6);
    const [relative, absolute] = [
      besidePredicted(recording, predicted)!,
      besidePredicted(recording, predicted, inVolts)!,
    ];
    expect(relative.difference).toBeUndefined();
    relative.shape.forEach(({ level }, i) => {
      expect(level).toBeCloseTo(absolute.shape[i].level, 9);
    });
    const mean = (bands: readonly BandLevel[]) =>
      bands
        .filter(({ frequency }) => predicted.some((band) => band.frequency === frequency))
        .reduce((sum, { level }) => sum + level, 0);
    expect(mean(relative.measured)).toBeCloseTo(mean(relative.predicted), 6);
  });

  it('nothing recorded is nothing to compare', () => {
    const none: AudioSpectrum = { bands: [], level: Number.NEGATIVE_INFINITY, faults: ['too-short'] };
    expect(besidePredicted(none, predicted)).toBeUndefined();
  });
});

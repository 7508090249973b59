import { expect, test } from 'vitest';
import { type Complex, magnitude, phase } from '../../numerics/complex.ts';
import { gaussian, uniform } from '../../numerics/random.ts';
import { impedanceSweep } from './impedance-sweep.ts';
import { playedSamples, soundAt, tonePlan } from './tone-plan.ts';
import { type CardRecording, findDelay, toneReadings } from './tone-readings.ts';

const RATE = 48_000;
const PLAN = tonePlan([21, 66, 213, 534, 1000, 2694, 6790, 13580, 20000]);

/** Phones as a resistor and an inductor; the output's resistor, the input's resistance, and the known resistor, Ω. */
const PHONES = { R: 1200, L: 0.6 };
const LEAD = 10_000;
const INPUT = 22_000;
const KNOWN = 4700;

interface Card {
  readonly delay: number;
  /** Of the playing clock beside the recording one, a share. */
  readonly clock: number;
  readonly noise: number;
  readonly random: () => number;
  readonly gain?: number;
}
type State = 'open' | 'known' | 'device';

/**
 * A loop-back through the network, sample by sample: trapezoidal steps, whose impedance at f is exactly that of an
 * inductor L·2·rate·tan(πf/rate)/2πf.
 */
function recorded(state: State, { delay, clock, noise, random, gain = 0.25 }: Card) {
  const normal = gaussian(random);
  const n = Math.ceil((PLAN.duration + delay + 0.1) * RATE);
  const [input, reference] = [new Float64Array(n), new Float64Array(n)];
  const across = state === 'known' ? 1 / (1 / INPUT + 1 / KNOWN) : INPUT;
  const [share, Rth] = [across / (across + LEAD), (across * LEAD) / (across + LEAD)];
  const { R, L } = PHONES;
  let [i, b] = [0, 0];
  for (let k = 0; k < n; k++) {
    const t = (k / RATE - delay) * (1 + clock);
    const v = t > 0 ? gain * soundAt(PLAN, t) : 0;
    if (state === 'device') {
      i = ((share * v + b) / 2 + i * (L * RATE - R / 2)) / (R / 2 + L * RATE + Rth / 2);
      b = share * v - Rth * i;
    } else b = share * v;
    // The two inputs have their own gains.
    reference[k] = 0.9 * v + noise * normal();
    input[k] = 1.1 * b + noise * normal();
  }
  return { sampleRate: RATE, input, reference };
}

const truth = (f: number): Complex => ({ re: PHONES.R, im: PHONES.L * 2 * RATE * Math.tan((Math.PI * f) / RATE) });

type Inputs = 1 | 2;
function sweepOf(card: Card, inputs: Inputs, resistorError: number) {
  const recording = (state: State): CardRecording => {
    const { reference, ...one } = recorded(state, card);
    return inputs === 2 ? { ...one, reference } : one;
  };
  const open = toneReadings(PLAN, recording('open'));
  const [known, device] = (['known', 'device'] as const).map((state) =>
    toneReadings(PLAN, recording(state), inputs === 1 ? open.delay : undefined),
  );
  expect([open, known, device].flatMap(({ faults }) => faults)).toEqual([]);
  const states = { open: open.readings, known: known.readings, device: device.readings };
  return impedanceSweep(states, KNOWN, resistorError);
}

test.each([1, 2] as const)('a quiet loop-back with %i input: the network’s own impedance at every tone', (inputs) => {
  const card = { delay: 0.0372, clock: 0, noise: 0, random: uniform(1) };
  const sweep = sweepOf(card, inputs, 0);
  expect(sweep.map(({ frequency }) => frequency)).toEqual(PLAN.tones.map(({ frequency }) => frequency));
  for (const { frequency, magnitude: size, phase: angle } of sweep) {
    const Z = truth(frequency);
    // What is left are the tone's own transients, and of 20 kHz samples the last few that a ramp takes.
    expect(Math.abs(size.value / magnitude(Z) - 1), `${frequency} Hz`).toBeLessThan(2e-4);
    expect(Math.abs(angle.value - (phase(Z) * 180) / Math.PI), `${frequency} Hz`).toBeLessThan(0.02);
  }
});

test.each([1, 2] as const)('noise, delay and two clocks, %i input: nine in ten ranges hold the truth', (inputs) => {
  const random = uniform(20 + inputs);
  let [held, all] = [0, 0];
  for (let run = 0; run < 6; run++) {
    const card = { delay: 0.02 + 0.4 * random(), clock: (random() - 0.5) * 2e-4, noise: 2e-4, random };
    for (const { frequency, magnitude: size, phase: angle } of sweepOf(card, inputs, 0)) {
      const Z = truth(frequency * (1 + card.clock));
      const within = ([low, high]: readonly [number, number], value: number) => Number(value > low && value < high);
      held += within(size.range, magnitude(Z)) + within(angle.range, (phase(Z) * 180) / Math.PI);
      all += 2;
    }
  }
  // Three standard deviations of a share of 0.9 counted over all.
  expect(Math.abs(held / all - 0.9)).toBeLessThan(3 * Math.sqrt((0.9 * 0.1) / all));
});

test('the delay is found to a few samples under noise, whatever the network does to the phase', () => {
  const random = uniform(3);
  for (const delay of [0, 0.0113, 0.31, 0.85]) {
    const { input } = recorded('device', { delay, clock: 0, noise: 0.01, random });
    expect(Math.abs(findDelay(input, RATE)! - delay)).toBeLessThan(2e-4);
  }
});

test('with one input a delay that is not that of the open recording is named, and one that stays is not', () => {
  const random = uniform(5);
  const at = (state: State, delay: number) => {
    const { reference: _, ...one } = recorded(state, { delay, clock: 0, noise: 2e-4, random });
    return one;
  };
  const { delay } = toneReadings(PLAN, at('open', 0.05));
  for (const state of ['known', 'device'] as const) {
    expect(toneReadings(PLAN, at(state, 0.05), delay).faults, state).toEqual([]);
    for (const moved of [-1e-3, 1e-3, 0.01])
      expect(toneReadings(PLAN, at(state, 0.05 + moved), delay).faults, state).toEqual(['delay-moved']);
  }
});

test('silence, clipping and distortion are named', () => {
  const random = uniform(4);
  const quiet = { delay: 0.05, clock: 0, noise: 1e-4, random };
  const normal = gaussian(random);
  const noise = Float64Array.from({ length: 3 * RATE }, () => 0.01 * normal());
  expect(toneReadings(PLAN, { sampleRate: RATE, input: noise }).faults).toEqual(['no-signal']);
  expect(toneReadings(PLAN, { sampleRate: RATE, input: new Float64Array(3 * RATE) }).faults).toEqual(['no-signal']);
  const silence = { sampleRate: RATE, input: noise };
  expect(toneReadings(PLAN, silence, 0.05).faults).toEqual(['no-signal']);
  const clipped = recorded('open', { ...quiet, gain: 2 });
  const held = clipped.reference.map((x) => Math.max(-1, Math.min(1, x)));
  expect(toneReadings(PLAN, { ...clipped, reference: held }).faults).toEqual(['clipped']);
  // x − 0.4·x³ of amplitude a has a third harmonic of 0.1·a², 0.5 % here.
  const bent = recorded('open', quiet);
  const cubic = bent.reference.map((x) => x - 0.4 * x ** 3);
  expect(toneReadings(PLAN, { ...bent, reference: cubic }).faults).toEqual(['distorted']);
  expect(toneReadings(PLAN, bent).faults).toEqual([]);
});

test('what is played stays within full scale, has no click, and lasts as long as is said', () => {
  const plan = tonePlan();
  const samples = playedSamples(plan, RATE, 1);
  expect(samples.length).toBe(Math.ceil(plan.duration * RATE));
  expect(samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0)).toBeLessThanOrEqual(1);
  const { frequency, start } = plan.tones[0];
  const from = Math.round((start - 0.03) * RATE);
  let steepest = 0;
  for (let i = from; i < from + 2000; i++) steepest = Math.max(steepest, Math.abs(samples[i + 1] - samples[i]));
  // The steady tone's own steepest step, and that of its rise.
  expect(steepest).toBeLessThan((2 * Math.PI * frequency) / RATE + Math.PI / (2 * 0.012 * RATE));
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { heatedSet, heaterRun } from '../../src/engine/reception/detection/heater.ts';
import { readValue } from '../../src/engine/set/read.ts';
import { BLOCK, type Listening, openListening, SOUND_RATE } from '../../src/outputs/audio/index.ts';

const example = JSON.parse(
  readFileSync(new URL('../../examples/ferrite-rod-valve-diode.json', import.meta.url), 'utf8'),
);
example.place.stations = [{ ...example.place.stations[0], programme: 'tone', modulation: '50 %' }];
const read = readValue(example);
if (!read.ok) throw new Error('the example does not read');
const { set } = read;
const run = heaterRun(set, 0)!;

const out = new Float32Array(BLOCK);
/** The next block: its sum of squared pressures. */
function nextBlock(listening: Listening): number {
  listening.process(out, BLOCK);
  let sum = 0;
  for (const p of listening.pressure) sum += p * p;
  return sum;
}
/** Sound pressure level over so long, from the next block on. */
function levelOf(next: () => number, seconds: number): number {
  let sum = 0;
  const blocks = Math.round((seconds * SOUND_RATE) / BLOCK);
  for (let b = 0; b < blocks; b++) sum += next();
  return 10 * Math.log10(Math.max(sum / (blocks * BLOCK), 1e-24) / 20e-6 ** 2);
}
const level = (listening: Listening, seconds: number): number => levelOf(() => nextBlock(listening), seconds);
const quiet = { noise: false, room: false } as const;

/** What is heard from the moment the heater is switched on, calculated once as far as anybody has listened. */
const coming: { readonly energy: number; readonly cathode: number }[] = [];
let heating: Listening | undefined;
/** Listens to it from the beginning. */
function fromCold() {
  heating ??= openListening(set, { ...quiet, heater: 'switched on' });
  const listening = heating;
  let at = 0;
  const next = (): number => {
    if (at === coming.length) coming.push({ energy: nextBlock(listening), cathode: listening.cathode! });
    return coming[at++].energy;
  };
  return { level: (seconds: number) => levelOf(next, seconds), cathode: () => coming[at - 1].cathode };
}

describe('a valve’s heater while one listens', () => {
  const steady = openListening(set, quiet);
  level(steady, 0.5);
  const warm = level(steady, 0.5);

  it('on its way the valve itself is heard: within 1.5 dB of the steady detector at every temperature', () => {
    const { level, cathode } = fromCold();
    const { pointAt } = heatedSet(set, 0)!;
    level(3.9);
    // Down to 20 dB under the threshold of hearing; below that, both are nothing.
    const audible = (dB: number) => Math.max(dB, -20);
    for (let time = 4; time < 14; time += 0.5) {
      level(0.4);
      const before = cathode();
      const heard = level(0.1);
      const steady = pointAt((before + cathode()) / 2).soundPressureLevel;
      expect(Math.abs(audible(heard) - audible(steady)), `${time} s`).toBeLessThan(1.5);
    }
    expect(pointAt(cathode()).soundPressureLevel).toBeGreaterThan(run.warm.soundPressureLevel - 3);
  });

  it('switched on from cold: silence, then as loud as the engine says, when it says', () => {
    const { level, cathode } = fromCold();
    expect(level(0.5)).toBeLessThan(warm - 60);
    level(run.halfAfter - 0.75);
    expect(level(0.5)).toBeGreaterThan(warm - 8);
    level(run.fullAfter - run.halfAfter);
    expect(level(0.5)).toBeGreaterThan(warm - 1.5);
    level(20);
    expect(level(0.5)).toBeCloseTo(warm, 0);
    expect(cathode()).toBeCloseTo(run.warm.temperature, -1);
  });

  // Common practice, no source: after switching off it goes on working for a while and fades gradually.
  it('switched off: it goes on for a while, fades gradually, and comes back when switched on in time', () => {
    const listening = openListening(set, quiet);
    level(listening, 0.5);
    listening.setHeater(false);
    expect(level(listening, Math.min(1, run.lastsFor / 2))).toBeGreaterThan(warm - 3);
    let before = Number.POSITIVE_INFINITY;
    for (let k = 0; k < 12; k++) {
      const now = level(listening, 0.5);
      expect(now).toBeLessThan(before + 0.1);
      before = now;
    }
    listening.setHeater(true);
    level(listening, 25);
    expect(level(listening, 0.5)).toBeCloseTo(warm, 0);
  });

  it('no step when it is switched', () => {
    const listening = openListening(set, quiet);
    level(listening, 0.5);
    let last = listening.pressure[BLOCK - 1];
    let usual = 0;
    let worst = 0;
    for (let b = 0; b < 200; b++) {
      if (b === 100) listening.setHeater(false);
      listening.process(out, BLOCK);
      for (const p of listening.pressure) {
        const step = Math.abs(p - last);
        if (b < 100) usual = Math.max(usual, step);
        else worst = Math.max(worst, step);
        last = p;
      }
    }
    expect(worst).toBeLessThan(1.05 * usual);
  });

  it('a set without a valve takes no notice', () => {
    const galena = readValue({ ...example, detector: { kind: 'germanium' } });
    if (!galena.ok) throw new Error('it does not read');
    const listening = openListening(galena.set, { ...quiet, heater: 'switched on' });
    expect(level(listening, 0.5)).toBeGreaterThan(20);
    expect(listening.cathode).toBeUndefined();
  });
});

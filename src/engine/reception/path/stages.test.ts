import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { stageLevel, stageSentence } from '../../../outputs/words/index.ts';
import { setCircuit } from '../../built/set-circuit.ts';
import { readText } from '../../set/read.ts';
import { measuredWidth } from '../interference/interference.ts';
import { receive } from './receive.ts';
import { receiver, receiveStation } from './receive-station.ts';

const setOf = (name: string) => {
  const read = readText(readFileSync(`examples/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return read.set;
};
const galena = receive(setOf('medium-wave-galena')).stations[0];
const stage = (id: string) => galena.path.find((one) => one.id === id)!;

it('leads from the power in the phones to the level at the ear: a tone, and a programme less than it', () => {
  const sentence = stageSentence(stage('ear'));
  const [, tone, below] = /would be (\d+) dB SPL; the mean level of speech is (\d+) dB lower/.exec(sentence)!;
  // Phones of 102 dB SPL for 1 mW.
  expect(Math.abs(Number(tone) - (102 + 10 * Math.log10(galena.phonesPower / 1e-3)))).toBeLessThan(1.5);
  expect(Number(tone) - Number(below)).toBe(Math.round(galena.soundPressureLevel!));
});

it('says the effective height and the emf', () => {
  expect(stageSentence(stage('aerial'))).toMatch(/^Effective height [\d.]+ m: emf \d+ mV; available power /);
});

it('writes levels with a true minus sign, and a bound for what is next to nothing', () => {
  const set = setOf('medium-wave-galena');
  const [first] = set.place.stations;
  const [s] = receive({
    ...set,
    place: { ...set.place, stations: [{ ...first, fieldStrength: 1e-9 }] },
  }).stations;
  expect(stageLevel(s.path.find((one) => one.id === 'ear')!)).toMatch(/^−\d+ dB SPL$/);
  expect(s.path.map(stageLevel).join()).not.toMatch(/-\d|0\.0000/);
  expect(s.path.map(stageSentence).join()).not.toMatch(/0\.0000/);
});

it('measures the width of two tuned circuits between the points 3 dB down', () => {
  const ready = receiver(setCircuit(setOf('two-tuned-circuits')));
  for (const station of ready.circuit.set.place.stations) {
    const s = receiveStation(ready, station);
    const level = (f: number): number => ready.network.at(f).level(1 / s.steady.inputResistance, s.position, s.other);
    const sweep = Array.from({ length: 4001 }, (_, k) => station.frequency + (k - 2000) * 20);
    const top = Math.max(...sweep.map(level));
    const within = sweep.filter((f) => level(f) > top * Math.SQRT1_2);
    const width = within[within.length - 1] - within[0];
    expect(Math.abs(measuredWidth(ready, s) - width) / width, station.name).toBeLessThan(0.03);
  }
});

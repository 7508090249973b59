import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setCircuit } from '../built/set-circuit.ts';
import { magnitude } from '../numerics/complex.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { standingPoint } from '../parts/detector/standing.ts';
import { readValue } from '../set/read.ts';
import { decibels } from '../units/quantities.ts';
import { receive } from './path/receive.ts';
import { receiver, receiveStation, toneSource } from './path/receive-station.ts';

/** Whole sets on signals of any strength: no more comes out than the aerial and a bias cell or hot cathode put in. */

const EXAMPLES = new URL('../../../examples/', import.meta.url);
// biome-ignore lint/suspicious/noExplicitAny: descriptions as written.
type Written = any;
const examples = readdirSync(EXAMPLES).filter((name) => name.endsWith('.json'));
const written = (name: string): Written => JSON.parse(readFileSync(new URL(name, EXAMPLES), 'utf8'));

const detectors: readonly Written[] = [
  { kind: 'exponential', saturationCurrent: '200 nA', ideality: 1.1 },
  { kind: 'exponential', saturationCurrent: '1 pA', ideality: 1 },
  { kind: 'exponential', saturationCurrent: '200 nA', ideality: 1.1, wiring: 'doubler' },
  { kind: 'silicon' },
  { kind: 'silicon', seriesResistance: '0 Ω' },
  { kind: 'germanium' },
  { kind: 'germanium', seriesResistance: '0 Ω' },
  { kind: 'schottky', seriesResistance: '0 Ω' },
  { kind: 'galena', spot: 'good', seriesResistance: '0 Ω' },
  { kind: 'galena', spot: 'poor' },
  { kind: 'mineral', mineral: 'carborundum', bias: '0.8 V' },
  { kind: 'germanium', bias: '0.3 V' },
  { kind: 'germanium', wiring: 'full-wave' },
  { kind: 'valve' },
  { kind: 'valve', wiring: 'full-wave' },
  { kind: 'valve', wiring: 'doubler' },
  // A crystal's curve as somebody measured it.
  {
    kind: 'measured',
    points: [
      { voltage: -1, current: -1e-5 },
      { voltage: -0.3, current: -4e-6 },
      { voltage: -0.1, current: -1e-6 },
      { voltage: 0, current: 0 },
      { voltage: 0.1, current: 5e-6 },
      { voltage: 0.2, current: 4e-5 },
      { voltage: 0.4, current: 5e-4 },
      { voltage: 1, current: 5e-3 },
    ],
  },
];

/** Most that a hot cathode gives: it sends a current against a little voltage. */
function cathodePower(device: Detector): number {
  let most = 0;
  for (let k = 0; k <= 200; k++) most = Math.max(most, (k / 50) * device.current(-k / 50));
  return most;
}

/** Sets that take a detector: a full-wave pair needs both ends of a coil whose middle is earthed. */
const takers = (detector: Written): readonly string[] =>
  detector.wiring === 'full-wave' ? examples.filter((name) => readValue({ ...written(name), detector }).ok) : examples;

function onStation(example: string, detector: Written, fieldStrength: number, depth: number) {
  const one = written(example);
  one.detector = detector;
  const [first] = one.place.stations;
  one.place.stations = [
    {
      name: 'Near',
      frequency: first.frequency,
      fieldStrength: `${fieldStrength} V/m`,
      modulation: `${100 * depth} %`,
      programme: 'speech',
    },
  ];
  const read = readValue(one);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}

function expectPossible(set: ReturnType<typeof onStation>): void {
  const ready = receiver(setCircuit(set));
  const [station] = set.place.stations;
  const s = receiveStation(ready, station);
  const { carrier, upper, lower } = toneSource(ready, s);
  const half = station.modulation / 2;
  const power = ({ openCircuit, impedance }: typeof carrier) =>
    magnitude(openCircuit) ** 2 / (8 * Math.max(impedance.re, 1e-9));
  const { bias, averaged, detector } = ready.circuit;
  // A bias cell gives its voltage times the mean current.
  const own = 2 * cathodePower(detector) + Math.max(0, bias * s.audio.directCurrent);
  const available = power(carrier) + half * half * (power(upper) + power(lower)) + own;
  expect(s.audioPower).toBeLessThanOrEqual(available * 1.001);
  expect(s.phonesPower).toBeLessThanOrEqual(available * 1.001);
  // The same of the carrier alone: it loads the circuit, and its direct voltage comes from what it takes.
  expect(s.steady.inputPower).toBeLessThanOrEqual((power(carrier) + own) * 1.001);
  expect(s.steady.outputPower).toBeLessThanOrEqual((s.steady.inputPower + own) * 1.001 + 1e-25);
  const peak = magnitude(carrier.openCircuit) + half * (magnitude(upper.openCircuit) + magnitude(lower.openCircuit));
  const reach = set.detector.wiring === 'doubler' ? 2 : 1;
  // With the carrier's peak in series, no more than that is added to what bias and cathode send through the load alone.
  const heaviest = Math.max(ready.dcResistance, magnitude(ready.audioLoadAt(1000)));
  const standing = Math.max(0, standingPoint(averaged, heaviest, bias).directVoltage);
  expect(s.audioVoltage).toBeLessThanOrEqual(reach * peak * 1.001 + standing);
  // The ear hears no more than a tone of all that audio power at the transducer's best note.
  const volts = s.audio.audioCurrent * magnitude(ready.transducerAt(1000));
  let best = Number.NEGATIVE_INFINITY;
  for (let f = 100; f <= 8000; f *= 1.1) {
    const more = magnitude(ready.transducerAt(f)) / magnitude(ready.transducerAt(1000));
    best = Math.max(best, ready.soundPressureOfVoltAt(f) + decibels(Math.max(1, more)));
  }
  expect(Number.isFinite(s.heard.spl)).toBe(true);
  expect(s.heard.spl).toBeLessThanOrEqual(Math.max(-190, best + decibels(volts)) + 3);
}

describe('strong signals through whole sets', () => {
  test('a bare junction on the slider set at 50 mV/m, modulated fully, is heard as loud as its power allows', () => {
    const set = onStation('slider-set.json', detectors[0], 0.05, 1);
    const [s] = receive(set).stations;
    expect(s.audioVoltage).toBeLessThan(10);
    expect(s.soundPressureLevel).toBeLessThan(100);
  });

  test.each(examples)('%s, fully modulated, from 1 mV/m to 10 V/m through a bare junction', (name) => {
    for (const field of [1e-3, 0.05, 1, 10]) expectPossible(onStation(name, detectors[0], field, 1));
  });

  test.each(detectors.map((one) => [JSON.stringify(one).slice(0, 60), one] as const))(
    '%s through every example at 0.01 to 50 mV/m',
    (_, detector) => {
      expect(takers(detector).length).toBeGreaterThanOrEqual(5);
      for (const name of takers(detector))
        for (const field of [1e-5, 1e-3, 0.05]) expectPossible(onStation(name, detector, field, 0.8));
    },
  );

  test('any example with any detector in any field', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...detectors.flatMap((detector) => takers(detector).map((name) => ({ name, detector })))),
        fc.double({ min: -6, max: 2, noNaN: true }),
        fc.oneof(fc.constant(1), fc.double({ min: 0.01, max: 1, noNaN: true })),
        ({ name, detector }, field, depth) => expectPossible(onStation(name, detector, 10 ** field, depth)),
      ),
      { numRuns: 60 },
    );
  });
});

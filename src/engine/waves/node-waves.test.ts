import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setCircuit } from '../built/set-circuit.ts';
import { slopeResistance } from '../parts/detector/detector.ts';
import { receiver, receiveStation } from '../reception/path/receive-station.ts';
import type { SetDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { linearSolver } from '../solvers/linear/solve.ts';
import { MOST_SAMPLES, nodeWaves, readingOf } from './node-waves.ts';
import { usualPlaces, wavePlaces } from './wave-places.ts';

const example = (name: string, change: Record<string, unknown> = {}): SetDescription => {
  const text = readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8');
  const read = readValue({ ...JSON.parse(text), ...change });
  if (!read.ok) throw new Error(JSON.stringify(read));
  return read.set;
};
const EXAMPLES = [
  'medium-wave-galena',
  'frame-aerial',
  'two-tuned-circuits',
  'slider-set',
  'spider-coil-earpiece',
  'ferrite-rod-valve-diode',
];
const dB = (a: number, b: number) => Math.abs(20 * Math.log10(a / b));

describe('waves at any point', () => {
  it('is a node that arrangements make, or a part, for every place, each once, and all can be looked at', () => {
    for (const name of EXAMPLES) {
      const set = example(name);
      const places = wavePlaces(setCircuit(set));
      expect(new Set(places.map((p) => JSON.stringify(p.point))).size, name).toBe(places.length);
      for (const { point } of places)
        if (point.code === 'node') expect(['inside', 'listed', undefined], name).not.toContain(point.node?.code);
      expect(usualPlaces(places).length, name).toBeGreaterThan(2);
      const { waves } = nodeWaves(set, {
        station: 0,
        places: places.map((p) => p.id),
        duration: 1e-4,
        begin: 'coming on',
      });
      for (const w of waves) expect(w.samples.every(Number.isFinite), `${name}, ${w.id}`).toBe(true);
    }
  });

  // Two methods of this project, made apart: the steady way's figures are held to outside references elsewhere.
  it.each(EXAMPLES)('agrees with reception’s figures: %s', (name) => {
    const set = example(name);
    const station = set.place.stations.findIndex((s) => s.modulation <= 1);
    const s = receiveStation(receiver(setCircuit(set)), set.place.stations[station]);
    const run = nodeWaves(set, { station, neighbours: false, duration: 4e-3 });
    const out = run.waves[run.waves.length - 1].reading;
    const across = run.waves.find((w) => w.id === 'detector')!.reading;
    // Strong signals swing the slider set's crystal so hard that the plain model leaves its range.
    const near = name === 'slider-set' ? 0.6 : 0.3;
    expect(dB(across.carrier, s.steady.junctionVoltage)).toBeLessThan(2);
    expect(dB(-across.mean, s.audio.directVoltage)).toBeLessThan(near);
    expect(dB(out.audio, s.audioVoltage)).toBeLessThan(near);
  });

  it('drives every turn of a tapped frame by its own share of the field: as the linear solution has it', () => {
    const given = example('frame-aerial');
    // So faint a field leaves the set linear: its detector is a resistance.
    const stations = [{ ...given.place.stations[0], fieldStrength: 1e-7 }];
    const set = { ...given, place: { ...given.place, stations } };
    const circuit = setCircuit(set);
    const s = receiveStation(receiver(circuit), set.place.stations[0]);
    const { elements } = circuit.assembly.circuitAt(s.position, s.other);
    const resistance = slopeResistance(circuit.detector);
    const linear = linearSolver({
      elements: elements.map((e) => (e.kind === 'detector' ? { ...e, kind: 'resistor', resistance } : e)),
    }).solve(s.station.frequency);
    const top = linear.voltage('top');
    const run = nodeWaves(set, {
      station: 0,
      places: ['top'],
      neighbours: false,
      tone: 1000,
      depth: 0,
      duration: 1e-3,
    });
    expect(run.waves[0].reading.carrier / (s.emf * Math.hypot(top.re, top.im))).toBeCloseTo(1, 2);
  });

  it('starts from nothing when a station comes on, and can be stopped', () => {
    const set = example('medium-wave-galena');
    const run = nodeWaves(set, { station: 0, begin: 'coming on', duration: 1e-3 });
    expect(run.start).toBeLessThan(1e-7);
    const first = run.waves.find((w) => w.id === 'top')!;
    const early = Math.max(...first.samples.subarray(0, 32).map(Math.abs));
    expect(early).toBeLessThan(0.3 * Math.max(first.reading.greatest, -first.reading.least));
    expect(() => nodeWaves(set, { station: 0, progress: () => false })).toThrow('stopped');
    expect(() => nodeWaves(set, { station: 0, places: ['attic'] })).toThrow('"attic"');
    expect(() => nodeWaves(set, { station: 99 })).toThrow('no station 99');
    expect(() => nodeWaves(set, { station: 0, duration: 1 })).toThrow('at most');
    expect(MOST_SAMPLES).toBeGreaterThan(1e6);
  });

  it('takes a stronger neighbour in', () => {
    const set = example('medium-wave-galena');
    const station = set.place.stations.length - 1;
    const alone = nodeWaves(set, { station, neighbours: false, duration: 2e-3 }).waves[0].reading.greatest;
    const together = nodeWaves(set, { station, duration: 2e-3 });
    expect(together.neighbours.length).toBeGreaterThan(0);
    expect(together.waves[0].reading.greatest).toBeGreaterThan(alone);
  });
});

describe('reading of a wave', () => {
  it('finds mean, carrier, depth and audio put into it', () => {
    const perCycle = 32;
    const carrier = 1e6;
    const samples = Float32Array.from({ length: 4000 * perCycle }, (_, i) => {
      const t = i / perCycle / carrier;
      const m = Math.cos(2 * Math.PI * 1000 * t);
      return 0.2 + 0.05 * m + (1 + 0.4 * m) * Math.cos((2 * Math.PI * i) / perCycle);
    });
    const r = readingOf(samples, { perCycle, carrier, tone: 1000, start: 0, whole: true });
    expect(r.mean).toBeCloseTo(0.2, 4);
    expect(r.audio).toBeCloseTo(0.05, 4);
    expect(r.carrier).toBeCloseTo(1, 4);
    expect(r.depth).toBeCloseTo(0.4, 4);
    expect(r.greatest).toBeCloseTo(1.65, 2);
    expect(r.secondHarmonic).toBeLessThan(1e-3);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import galena from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { setCircuit } from '../built/set-circuit.ts';
import { receive } from '../reception/path/receive.ts';
import { isHeard, verdictOf } from '../reception/verdict.ts';
import { readText, readValue } from '../set/read.ts';
import { hasRanges, type RangedFigure, rangedReception, rangedStation } from './ranged-reception.ts';
import { receiveRanged } from './receive-ranged.ts';
import { uncertaintyOf } from './uncertainty.ts';

const set = (() => {
  const read = readText(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
  if (!read.ok) throw new Error('does not read');
  return read.set;
})();

describe('a reception with ranges', () => {
  const calculated = receive(set);
  const uncertainties = uncertaintyOf(setCircuit(set), { stations: [0, 1, 7] });
  const ranged = rangedReception(calculated, uncertainties);

  it('has medians for figures, each inside its range, and on the path the same', () => {
    for (const i of [0, 1, 7]) {
      const station = ranged.stations[i];
      if (!hasRanges(station)) throw new Error('no ranges');
      expect(station.budget.length).toBeGreaterThan(2);
      for (const [id, [low, high]] of Object.entries(station.ranges)) {
        expect(low, id).toBeLessThan(high);
        expect(station[id as RangedFigure], id).toBeGreaterThanOrEqual(low);
        expect(station[id as RangedFigure], id).toBeLessThanOrEqual(high);
      }
      for (const { id, value, range } of station.path) {
        expect(value, id).toBeGreaterThanOrEqual(range![0]);
        expect(value, id).toBeLessThanOrEqual(range![1]);
      }
      for (const { id, facts, ranges = {} } of station.path)
        for (const [name, [low, high]] of Object.entries(ranges)) {
          const value = (facts as unknown as Record<string, number>)[name];
          expect(low, `${id} ${name}`).toBeLessThan(high);
          expect(value, `${id} ${name}`).toBeGreaterThanOrEqual(low);
          expect(value, `${id} ${name}`).toBeLessThanOrEqual(high);
        }
      expect(station.path.at(-1)!.value).toBe(station.soundPressureLevel);
      expect(station.path.at(-1)!.range).toBe(station.ranges.soundPressureLevel);
    }
  });

  it('has a range on every figure of a stage that rests on something unmeasured', () => {
    const station = ranged.stations[0];
    const named = Object.fromEntries(station.path.map(({ id, ranges }) => [id, Object.keys(ranges ?? {})]));
    expect(named).toEqual({
      field: [],
      aerial: ['effectiveHeight', 'emf', 'availablePower'],
      'tuned circuit': ['gain', 'loadedQ', 'bandwidth'],
      detector: ['inputPower', 'inputResistance'],
      audio: ['directVoltage', 'distortion'],
      phones: [],
      ear: [],
    });
  });

  it('has one verdict for a station in its list and on its dial, and leaves other stations as they were', () => {
    for (const mark of ranged.dial.stations) expect(mark.verdict).toBe(ranged.stations[mark.index].verdict);
    for (const station of ranged.stations)
      if (!hasRanges(station)) expect(station).toBe(calculated.stations[station.index]);
    expect(ranged.stations.filter(hasRanges)).toHaveLength(3);
  });

  it('serves a set a little changed: ranges move with the figure they are about', () => {
    const louder = calculated.stations.map((s) => ({
      ...s,
      directVoltage: 2 * s.directVoltage,
      hearing: s.hearing && { ...s.hearing, level: s.hearing.level + 6 },
    }));
    const moved = rangedStation(louder[0], uncertainties[0]!);
    const before = rangedStation(calculated.stations[0], uncertainties[0]!);
    expect(moved.directVoltage).toBeCloseTo(2 * before.directVoltage, 12);
    expect(moved.ranges.directVoltage![0]).toBeCloseTo(2 * before.ranges.directVoltage![0], 12);
    expect(moved.soundPressureLevel! - before.soundPressureLevel!).toBeCloseTo(6, 9);
  });

  it('says in its sentences the figures of its table: emf is field times height', () => {
    for (const i of [0, 1, 7]) {
      const { path } = rangedStation(calculated.stations[i], uncertainties.find((u) => u?.index === i)!);
      const field = path[0].value!;
      const { facts, value } = path[1];
      if (facts.stage !== 'aerial') throw new Error('no aerial');
      expect(facts.emf).toBe(value);
      expect(facts.effectiveHeight * field * Math.SQRT2).toBeCloseTo(value!, 9);
    }
  });

  it('has for the usual such set the verdict that follows from the medians', () => {
    for (const uncertainty of uncertainties) {
      if (!uncertainty) throw new Error('no ranges');
      const usual = rangedStation(calculated.stations[uncertainty.index], uncertainty);
      expect(usual.path.at(-1)!.value).toBe(usual.soundPressureLevel);
      expect(usual.hearing!.level).toBe(usual.soundPressureLevel);
      expect(usual.verdict).toBe(verdictOf(true, usual.hearing!.loudness, usual.disturbances));
      // Of several things that each leave more than half, half may be left or less.
      if (isHeard(usual.verdict) && usual.disturbances.length === 0) expect(usual.chance).toBeGreaterThanOrEqual(0.5);
    }
  });
});

it('an aerial that gives nothing has numbers for all its figures', () => {
  const read = readValue({
    ...galena,
    aerial: {
      kind: 'bent',
      points: [
        [-500, -500, 0.05],
        [18.5, -500, 0.49129],
        [-500, -500, 0.0501662],
      ],
      surroundings: 'nothing',
    },
    earth: { kind: 'counterpoise', count: 1, length: 0.05, height: 0.18571 },
    place: {
      ...galena.place,
      stations: [{ name: 'North', frequency: '150 kHz', fieldStrength: '10 mV/m', bearing: 0 }],
    },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const plain = receive(read.set).stations[0];
  const [station] = receiveRanged(read.set, { stations: [0] }).stations;
  if (!hasRanges(station)) throw new Error('no ranges');
  expect(plain.emf).toBe(0);
  // What is no number without ranges either is left out.
  expect(notNumbers(station).filter((at) => !notNumbers(plain).includes(at))).toEqual([]);
  expect(notNumbers(station.path)).toEqual([]);
  expect(station.path.find(({ id }) => id === 'tuned circuit')!.facts).toMatchObject({ gain: 0 });
});

/** Where in a value NaN stands. */
function notNumbers(value: unknown, at = ''): readonly string[] {
  if (Number.isNaN(value)) return [at];
  return value && typeof value === 'object'
    ? Object.entries(value).flatMap(([key, inner]) => notNumbers(inner, `${at}.${key}`))
    : [];
}

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setCircuit } from '../built/set-circuit.ts';
import { receive } from '../reception/path/receive.ts';
import { isHeard, verdictOf } from '../reception/verdict.ts';
import { readText } from '../set/read.ts';
import { hasRanges, rangedReception } from './ranged-reception.ts';
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

  it('has every figure of an asked station inside its range, on the path and beside it', () => {
    for (const i of [0, 1, 7]) {
      const station = ranged.stations[i];
      if (!hasRanges(station)) throw new Error('no ranges');
      const figures = station as unknown as Record<string, number>;
      for (const [id, [low, high]] of Object.entries(station.ranges)) {
        expect(low, id).toBeLessThan(high);
        expect(figures[id], id).toBeGreaterThanOrEqual(low);
        expect(figures[id], id).toBeLessThanOrEqual(high);
      }
      for (const { id, value, range } of station.path) {
        expect(value, id).toBeGreaterThanOrEqual(range![0]);
        expect(value, id).toBeLessThanOrEqual(range![1]);
      }
      expect(station.path.at(-1)!.value).toBe(station.soundPressureLevel);
      expect(station.hearing!.level).toBe(station.soundPressureLevel);
    }
  });

  it('says in its sentences the figures of its table: emf is field times height', () => {
    for (const i of [0, 1, 7]) {
      const { path } = ranged.stations[i];
      const field = path[0].value!;
      const { facts, value } = path[1];
      if (facts.stage !== 'aerial') throw new Error('no aerial');
      expect(facts.emf).toBe(value);
      expect(facts.effectiveHeight * field * Math.SQRT2).toBeCloseTo(value!, 9);
      // Trees and a house take about 4 dB of the height.
      const { facts: alone } = calculated.stations[i].path[1];
      if (alone.stage === 'aerial') expect(facts.effectiveHeight / alone.effectiveHeight).toBeCloseTo(0.63, 1);
    }
  });

  it('has the verdict that follows from the median, the same on the dial, and leaves other stations as they were', () => {
    for (const station of ranged.stations) {
      expect(ranged.dial.stations[station.index].verdict).toBe(station.verdict);
      if (!hasRanges(station)) {
        expect(station).toBe(calculated.stations[station.index]);
        continue;
      }
      expect(station.verdict).toBe(verdictOf(true, station.hearing!.loudness, station.disturbances));
      if (isHeard(station.verdict)) expect(station.chance).toBeGreaterThanOrEqual(0.5);
    }
    expect(ranged.stations.filter(hasRanges)).toHaveLength(3);
  });
});

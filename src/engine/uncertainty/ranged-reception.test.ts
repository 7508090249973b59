import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setCircuit } from '../built/set-circuit.ts';
import { receive } from '../reception/path/receive.ts';
import { isHeard, verdictOf } from '../reception/verdict.ts';
import { readText } from '../set/read.ts';
import { hasRanges, rangedReception, rangedStation } from './ranged-reception.ts';
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

  it('has the figures as received, and every median of an asked station inside its range', () => {
    for (const i of [0, 1, 7]) {
      const station = ranged.stations[i];
      if (!hasRanges(station)) throw new Error('no ranges');
      const { ranges, medians, chance, budget, path, ...figures } = station;
      const { path: asReceived, ...received } = calculated.stations[i];
      expect(figures).toEqual(received);
      expect(path.map(({ median, range, ...stage }) => stage)).toEqual(asReceived.map(({ range, ...stage }) => stage));
      expect(budget.length).toBeGreaterThan(2);
      expect(Object.keys(medians)).toEqual(Object.keys(ranges));
      for (const [id, [low, high]] of Object.entries(ranges)) {
        expect(low, id).toBeLessThan(high);
        expect(medians[id as keyof typeof medians], id).toBeGreaterThanOrEqual(low);
        expect(medians[id as keyof typeof medians], id).toBeLessThanOrEqual(high);
      }
      for (const { id, median, range } of path) {
        expect(median, id).toBeGreaterThanOrEqual(range![0]);
        expect(median, id).toBeLessThanOrEqual(range![1]);
      }
      expect(path.at(-1)!.median).toBe(medians.soundPressureLevel);
    }
  });

  it('leaves verdicts, the dial and other stations as they were', () => {
    expect(ranged.dial).toBe(calculated.dial);
    for (const station of ranged.stations)
      if (!hasRanges(station)) expect(station).toBe(calculated.stations[station.index]);
    expect(ranged.stations.filter(hasRanges)).toHaveLength(3);
  });

  it('says in its sentences the figures of its table: emf is field times height', () => {
    for (const i of [0, 1, 7]) {
      const { path } = rangedStation(calculated.stations[i], uncertainties.find((u) => u?.index === i)!);
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

  it('has for the usual such set the verdict that follows from the medians', () => {
    for (const uncertainty of uncertainties) {
      if (!uncertainty) throw new Error('no ranges');
      const usual = rangedStation(calculated.stations[uncertainty.index], uncertainty);
      expect(usual.path.at(-1)!.value).toBe(usual.soundPressureLevel);
      expect(usual.hearing!.level).toBe(usual.soundPressureLevel);
      expect(usual.verdict).toBe(verdictOf(true, usual.hearing!.loudness, usual.disturbances));
      if (isHeard(usual.verdict)) expect(usual.chance).toBeGreaterThanOrEqual(0.5);
    }
  });
});

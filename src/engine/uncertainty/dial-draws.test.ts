import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plainDraws } from '../../../test/support/plain-draws.ts';
import { setCircuit } from '../built/set-circuit.ts';
import type { SetDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { dialDraws } from './dial-draws.ts';
import { rangedOf } from './draws.ts';
import { hasRanges } from './ranged-reception.ts';
import { receiveRanged } from './receive-ranged.ts';
import { uncertaintyOf } from './uncertainty.ts';

// biome-ignore lint/suspicious/noExplicitAny: tests reach into the written file freely
function example(name: string, change: (d: any) => void = () => {}): SetDescription {
  const d = JSON.parse(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
  change(d);
  const read = readValue(d);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const width = ([low, high]: readonly [number, number]): number => high - low;
const PLAIN = 400;

describe('readings of the dial and its reach against sets drawn one by one', () => {
  it.each(['medium-wave-galena', 'frame-aerial'])('%s', (name) => {
    const set = example(name, (d) => d.place.stations.splice(2));
    const circuit = setCircuit(set);
    const plain = plainDraws(circuit, PLAIN, 7);
    const draws = dialDraws(circuit);
    for (const [i, station] of uncertaintyOf(circuit).entries()) {
      if (!station?.reading) continue;
      const drawn = plain.flatMap((stations) => stations[i] ?? []);
      const angles = Float64Array.from(drawn, ({ position }) => circuit.tuning.angleAt(position));
      const of = rangedOf(angles).range;
      const told = `${set.place.stations[i].name}: ${station.reading}, drawn ${of}`;
      // Of 400 draws the ends themselves are known to some 6 %.
      expect(Math.abs(width(station.reading) / width(of) - 1), told).toBeLessThan(0.15);
      const reaches = draws.reaches(set.place.stations[i].frequency);
      const share = Array.from({ length: 2000 }, (_, k) => k).filter(reaches).length / 2000;
      expect(Math.abs(share - drawn.filter(({ within }) => within).length / PLAIN), told).toBeLessThan(0.06);
    }
  });
});

describe('a dial with ranges', () => {
  const set = example('medium-wave-galena');
  const { dial, stations } = receiveRanged(set);

  it('has its points and ends in their ranges', () => {
    for (const { frequency, range, loadedQ, bandwidth, capacitance, ranges } of dial.points) {
      const holds = (value: number, of: readonly [number, number]) => value >= of[0] && value <= of[1];
      expect(holds(frequency, range!)).toBe(true);
      expect(holds(loadedQ, ranges!.loadedQ)).toBe(true);
      expect(holds(bandwidth, ranges!.bandwidth)).toBe(true);
      expect(holds(capacitance!, ranges!.capacitance!)).toBe(true);
    }
    expect(dial.lowestRange![0]).toBeLessThan(dial.lowest);
    expect(dial.highestRange![1]).toBeGreaterThan(dial.highest);
    expect(dial.points[dial.points.length - 1].range![0] / dial.lowestRange![0]).toBeCloseTo(1, 3);
  });

  it('warns of the bandwidth that its points have', () => {
    const wide = receiveRanged(example('medium-wave-galena', (d) => void (d.arrangement.aerialTap = 20))).dial;
    const [warned] = wide.warnings;
    expect(warned.code).toBe('reception.dial-broad');
    const { frequency, bandwidth } = warned as unknown as { frequency: number; bandwidth: number };
    const point = wide.points.find((one) => one.frequency === frequency)!;
    expect(point.bandwidth).toBe(bandwidth);
    expect(bandwidth).toBe(Math.max(...wide.points.map((one) => one.bandwidth)));
  });

  it('gives a station the readings at which the points may have its frequency', () => {
    for (const { dial: place, frequency } of stations) {
      if (!place) continue;
      const may = dial.points.filter(({ range }) => frequency >= range![0] && frequency <= range![1]);
      const step = dial.points[1].scale - dial.points[0].scale;
      const told = `${frequency} Hz: ${place.range}, ${may[0].scale} to ${may[may.length - 1].scale}`;
      expect(Math.abs(place.range![0] - may[0].scale), told).toBeLessThan(2 * step);
      expect(Math.abs(place.range![1] - may[may.length - 1].scale), told).toBeLessThan(2 * step);
    }
  });
});

describe('the chance of hearing a station', () => {
  const strongAt = (frequency: number) =>
    example('medium-wave-galena', (d) => {
      d.place.stations = [{ ...d.place.stations[0], frequency: `${frequency / 1000} kHz`, fieldStrength: '2 V/m' }];
    });
  const { lowest, highest } = dialDraws(setCircuit(strongAt(1e6)));
  const chanceAt = (frequency: number): number => uncertaintyOf(setCircuit(strongAt(frequency)))[0]!.chance;

  it('falls towards the ends of the dial, and is not gone at once beyond them', () => {
    expect(chanceAt(1e6)).toBeGreaterThan(0.99);
    for (const [inside, end, outside] of [
      [1.15 * lowest, lowest, lowest / 1.04],
      [highest / 1.3, highest, 1.08 * highest],
    ]) {
      expect(chanceAt(inside)).toBeGreaterThan(0.95);
      expect(Math.abs(chanceAt(end) - 0.5)).toBeLessThan(0.15);
      expect(chanceAt(outside)).toBeGreaterThan(0.02);
      expect(chanceAt(outside)).toBeLessThan(0.4);
    }
    expect(chanceAt(lowest / 1.5)).toBe(0);
  });

  it('counts a station that masks it in a part of such sets', () => {
    const beside = (fieldStrength: string | undefined) => {
      const set = example('medium-wave-galena', (d) => {
        const [own] = d.place.stations;
        const wanted = { ...own, frequency: '900 kHz', fieldStrength: '100 mV/m' };
        const other = { ...own, name: 'Other', frequency: '909 kHz', fieldStrength };
        d.place.stations = fieldStrength ? [wanted, other] : [wanted];
      });
      const [station] = receiveRanged(set).stations;
      if (!hasRanges(station)) throw new Error('no ranges');
      return station;
    };
    const alone = beside(undefined).chance;
    expect(alone).toBeGreaterThan(0.9);
    const weak = beside('1 mV/m').chance;
    const equal = beside('100 mV/m');
    const strong = beside('1 V/m').chance;
    expect(weak).toBeGreaterThan(alone - 0.02);
    expect(equal.chance).toBeLessThan(alone - 0.1);
    expect(strong).toBeLessThan(0.05);
    const [disturbance] = equal.disturbances;
    expect(disturbance.range![0]).toBeLessThan(disturbance.separation);
    expect(disturbance.range![1]).toBeGreaterThan(disturbance.separation);
  });
});

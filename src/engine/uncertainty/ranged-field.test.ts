import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { arrivals } from '../place/stations/arrivals.ts';
import { arrivalOptions } from '../reception/path/field.ts';
import { readText } from '../set/read.ts';
import { rangedArrivals } from './ranged-field.ts';
import { hasRanges } from './ranged-reception.ts';
import { receiveRanged } from './receive-ranged.ts';

it.each(['day', 'night'] as const)('fields at a place by %s are those of the path', (time) => {
  const read = readText(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
  if (!read.ok) throw new Error('does not read');
  const { place } = read.set;
  const plain = arrivals(place, place.stations, arrivalOptions({ time }, place.sunspots));
  const ranged = rangedArrivals(place, plain, { time });
  const { stations } = receiveRanged(read.set, { time });
  for (const [i, station] of stations.entries()) {
    if (!hasRanges(station)) throw new Error('no ranges');
    const { fieldStrength, range } = ranged[i].total;
    expect(fieldStrength / station.fieldStrength, station.name).toBeCloseTo(1, 9);
    for (const end of [0, 1]) expect(range![end] / station.ranges.fieldStrength![end], station.name).toBeCloseTo(1, 9);
  }
});

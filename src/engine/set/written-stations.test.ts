import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationsToTable } from '../place/stations/export.ts';
import { openStationTable, stationsFromTable } from '../place/stations/import.ts';
import type { Station } from '../place/stations/station.ts';
import { joinStations, readStations, writeStation } from './written-stations.ts';

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const name = fc.stringMatching(/^[A-Z][a-z ,"']{0,20}[a-z]$/);
const station: fc.Arbitrary<Station> = fc.record(
  {
    name,
    frequency: fc.integer({ min: 150, max: 1700 }).map((f) => f * 1e3),
    power: tenths(0.1, 2000).map((p) => p * 1e3),
    position: fc.record({ latitude: tenths(-90, 90), longitude: tenths(-180, 180) }),
    mastHeight: tenths(10, 400),
    modulation: fc.integer({ min: 10, max: 100 }).map((m) => m / 100),
    hours: fc.constantFrom('06:00-22:00', '24h'),
  },
  { requiredKeys: ['name', 'frequency', 'power', 'position'] },
);

describe('stations as a description writes them', () => {
  it('come back as they were, by way of a table too', () => {
    fc.assert(
      fc.property(fc.array(station, { minLength: 1, maxLength: 8 }), (stations) => {
        const opened = openStationTable(stationsToTable(stations));
        const table = stationsFromTable(opened.rows, opened.columns, opened.hasHeader);
        expect(table.problems).toEqual([]);
        const made = table.stations.map(writeStation);
        expect(made.flatMap(({ problems }) => problems)).toEqual([]);
        for (const [i, read] of readStations(made.map(({ written }) => written)).entries()) {
          const given = stations[i];
          expect(read?.name).toBe(given.name);
          expect(read?.frequency).toBeCloseTo(given.frequency, 6);
          expect(read?.power).toBeCloseTo(given.power ?? 0, 6);
          expect(read?.position?.longitude).toBeCloseTo(given.position?.longitude ?? 0, 9);
          expect(read?.modulation).toBeCloseTo(given.modulation ?? 0.6, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('leave out and tell what a description cannot hold', () => {
    const { written, read, problems } = writeStation({
      name: 'Heron',
      frequency: 612e3,
      power: 0,
      distance: 5e4,
      modulation: 3,
      programme: 'knitting',
    });
    expect(read).toBeUndefined();
    expect(written).toEqual({ name: 'Heron', frequency: '612 kHz', distance: '50 km' });
    expect(problems.map(({ name, fact }) => [name, fact])).toMatchObject([
      ['Heron', { code: 'programme-not-known', programme: 'knitting' }],
      ['Heron', { code: 'field-left-out', field: 'power', refusal: { expected: { code: 'quantity.at-least' } } }],
      ['Heron', { code: 'field-left-out', field: 'modulation', refusal: { expected: { code: 'quantity.at-most' } } }],
      ['Heron', { code: 'refused' }],
    ]);
  });

  it('join a list: the same station takes the new figures, the rest go to the end, unread ones stay', () => {
    const list = [
      { name: 'Heron', frequency: '612 kHz', power: '1 kW', distance: '50 km', mine: 'kept' },
      { name: 'Broken', frequency: 'soon' },
    ];
    const added = [
      { name: 'heron ', frequency: '0.612 MHz', power: '2 kW', distance: '40 km' },
      { name: 'Otter', frequency: '810 kHz', power: '2 kW', distance: '40 km' },
    ];
    expect(joinStations(list, added)).toEqual([
      { name: 'heron ', frequency: '0.612 MHz', power: '2 kW', distance: '40 km', mine: 'kept' },
      list[1],
      added[1],
    ]);
    expect(joinStations('nonsense', added)).toEqual(added);
  });
});

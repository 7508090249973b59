import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Arrival } from '../../engine/place/stations/arrival.ts';
import { receive } from '../../engine/reception/path/receive.ts';
import { readText } from '../../engine/set/read.ts';
import { stationRows } from './stations-table.ts';

const read = readText(readFileSync('examples/medium-wave-galena.json', 'utf8'));
if (!read.ok) throw new Error('the example does not read');
const reception = receive(read.set);
const arrival = {
  total: { fieldStrength: 1e-3, spread: 5 },
  source: 'ground wave',
  neighbours: [],
  warnings: [],
} as unknown as Arrival;
const arrivals = reception.stations.map(() => arrival);
const rowsOf = (stations: typeof reception.stations) =>
  stationRows({ ...reception, stations }, { day: arrivals, night: arrivals, now: arrivals });

describe('what a station comes to in the table', () => {
  it('is the verdict of the list of stations, masked ones too', () => {
    const rows = rowsOf(reception.stations);
    for (const row of rows) expect(row.heard, row.name).toBe(reception.stations[row.index].verdict);
    expect(rows.filter((r) => r.heard === 'masked').every((r) => r.disturbedBy !== undefined && !r.first)).toBe(true);
    expect(rows.some((r) => r.heard === 'masked')).toBe(true);
  });

  it('has nobody behind a station that is not heard or not reached', () => {
    const silent = rowsOf(reception.stations.map((s) => ({ ...s, verdict: 'not heard' as const })));
    const beyond = rowsOf(reception.stations.map((s) => ({ ...s, verdict: 'out of range' as const })));
    for (const row of [...silent, ...beyond]) expect(row.disturbedBy, row.name).toBeUndefined();
    expect([...silent, ...beyond].some((r) => r.first)).toBe(false);
  });
});

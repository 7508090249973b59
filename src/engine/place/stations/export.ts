import type { Station } from './station.ts';
import { writeTable } from './text-table.ts';

/** Heading, and the cell of a station; a number prints with as many digits as it has. */
const COLUMNS: readonly (readonly [string, (station: Station) => string | number | undefined])[] = [
  ['name', (s) => s.name],
  ['frequency (kHz)', (s) => scaled(s.frequency, 1e3)],
  ['power (kW)', (s) => scaled(s.power, 1e3)],
  ['latitude', (s) => s.position?.latitude],
  ['longitude', (s) => s.position?.longitude],
  ['distance (km)', (s) => scaled(s.distance, 1e3)],
  ['bearing (deg)', (s) => s.bearing],
  ['mast height (m)', (s) => s.mastHeight],
  ['mast gain (dB)', (s) => s.mastGain],
  ['field strength (mV/m)', (s) => scaled(s.fieldStrength, 1e-3)],
  ['modulation (%)', (s) => scaled(s.modulation, 0.01)],
  ['programme', (s) => s.programme],
  ['hours', (s) => s.hours],
];

/** Fifteen figures: what a unit's factor leaves behind is dropped. */
const scaled = (value: number | undefined, factor: number): number | undefined =>
  value === undefined ? undefined : Number((value / factor).toPrecision(15));

/**
 * Stations as a comma-separated table that `openStationTable` reads back. Columns nobody filled are left out.
 * Own land and sea sections do not fit a table and are not written.
 * @param stations SI
 * @returns text with a line of titles
 */
export function stationsToTable(stations: readonly Station[]): string {
  const used = COLUMNS.filter(([header, cell]) => header === 'name' || stations.some((s) => cell(s) !== undefined));
  return writeTable([
    used.map(([header]) => header),
    ...stations.map((station) => used.map(([, cell]) => String(cell(station) ?? ''))),
  ]);
}

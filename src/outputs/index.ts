/** What there is to see, hear or read, for other programs: pure functions of plain data. See README.md beside this. */
export * from './audio/index.ts';
export * from './drawings/index.ts';
export * as explain from './explain/index.ts';
export * as waves from './explain/node-waves/index.ts';
export * from './plots/index.ts';
export * from './scene/index.ts';
export * from './sheets/index.ts';
export { compareTable } from './tables/compare-table.ts';
export { dialStationsTable, dialTable } from './tables/dial-table.ts';
export { pathTable, stationsTable } from './tables/path-table.ts';
export { type DayAndNight, placeTable, type StationRow, stationRows } from './tables/stations-table.ts';

export { compareTable } from './compare-table.ts';
export { numbersCsv } from './csv.ts';
export { dialStationsTable, dialTable } from './dial-table.ts';
export { folded } from './fold.ts';
export { logTable } from './log-table.ts';
export { pathTable, stationsTable } from './path-table.ts';
export { type ComparedRow, comparedParts, comparedPath, comparedStations, comparedTable } from './sets-table.ts';
export {
  placeTable,
  type StationRow,
  stationRows,
  warningsTogether,
} from './stations-table.ts';
export { clean, cleanLines } from './table.ts';

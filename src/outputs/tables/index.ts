export { dialStationsTable, dialTable } from './dial-table.ts';
export { folded } from './fold.ts';
export { pathTable, stationsTable } from './path-table.ts';
export {
  bearingText,
  comesBy,
  estimateText,
  neighbourText,
  placeTable,
  type StationRow,
  stationRows,
  warningsTogether,
} from './stations-table.ts';
export { clean, cleanLines, table } from './table.ts';

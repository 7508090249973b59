import type { StationField } from '../../../../engine/place/stations/columns.ts';
import { plural } from '../grammar.ts';

const FIELDS: Readonly<Record<StationField, string>> = {
  name: 'Name',
  frequency: 'Frequency',
  power: 'Power',
  latitude: 'Latitude',
  longitude: 'Longitude',
  position: 'Latitude and longitude',
  distance: 'Distance',
  bearing: 'Bearing',
  mastHeight: 'Mast height',
  mastGain: 'Mast gain',
  fieldStrength: 'Field strength',
  modulation: 'Modulation',
  programme: 'Programme',
  hours: 'Hours',
};

/** Stations out of a table. */
export const importWords = {
  title: 'Stations from a table',
  about:
    'Paste rows copied from a spreadsheet or a page, or choose a file of comma-, semicolon- or tab-separated text. The table stays on this machine.',
  table: 'Table',
  example: 'Station, kHz, kW, lat, long\nHeron Radio, 612, 10, 53.1 N, 2.2 W',
  file: 'Or a file',
  failed: (reason: string): string => `This cannot be read: ${reason}`,
  tooLarge: (megabytes: number): string => `expected a list of stations of at most ${megabytes} MB, got a larger file`,
  problems: (count: number): string => `${count} ${plural(count, 'row', 'rows')} to check`,
  more: (count: number): string => `and ${count} more.`,
  add: 'Add to the list',
  replace: 'Replace the list',
  cancel: 'Cancel',
  hasHeader: 'The first row is a heading',
  columns: 'Columns',
  meaning: (column: string): string => `What ${column} holds`,
  unit: (column: string): string => `Unit of ${column}`,
  notUsed: 'not used',
  plainNumber: 'plain number',
  fields: FIELDS,
} as const;

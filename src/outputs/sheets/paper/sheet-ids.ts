/** In the order of a bound book of them. */
export const SHEET_IDS = [
  'glance',
  'circuit',
  'coil',
  'capacitor',
  'detector',
  'dial',
  'board',
  'wiring',
  'bring-up',
  'faults',
  'cautions',
  'handout',
  'text',
] as const;
/** Which sheet of a set. */
export type SheetId = (typeof SHEET_IDS)[number];
/** Also the one of several sets. */
export type AnySheetId = SheetId | 'comparison';

/** What one prints sheets for. */
export type SheetJob = 'build' | 'wind' | 'mend' | 'show';

/** The sheets of each job, in the order of the book. */
export const SHEET_JOBS: Readonly<Record<SheetJob, readonly AnySheetId[]>> = {
  build: SHEET_IDS.filter((id) => id !== 'handout' && id !== 'text'),
  wind: ['coil', 'capacitor'],
  mend: ['circuit', 'board', 'wiring', 'bring-up', 'faults', 'cautions'],
  show: ['glance', 'circuit', 'dial', 'handout', 'text'],
};

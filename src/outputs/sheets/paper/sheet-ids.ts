/** In the order of a bound book of them. */
export const SHEET_IDS = [
  'glance',
  'circuit',
  'coil',
  'capacitor',
  'dial',
  'board',
  'wiring',
  'bring-up',
  'cautions',
  'handout',
  'text',
] as const;
/** Which sheet. */
export type SheetId = (typeof SHEET_IDS)[number];

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** When stations were heard, by season and hour. */
export const heardWhenWords = {
  title: 'When it was heard',
  month: (index: number): string => MONTHS[index] ?? '',
  key: { heard: 'heard (larger: louder)', notHeard: 'not heard', masked: 'masked' },
  text: (
    { heard, notHeard, masked }: { readonly heard: number; readonly notHeard: number; readonly masked: number },
    hasNights: boolean,
  ): string =>
    `Entries by season and hour (UTC), all years together: ${heard} heard, ${notHeard} not heard, ${masked} masked.${hasNights ? ' Shaded: the sun is down.' : ''}`,
} as const;

/** What was heard: written down, and beside what was predicted. */
export const logWords = {
  label: 'Log',
  title: 'Write down what is heard',
  which: '1. Which station',
  unknown: 'Unknown station',
  how: '2. How well it is heard',
  more: 'Frequency, scale, conditions, remark',
  fields: {
    frequency: 'Frequency, kHz',
    pointer: 'Reading of the scale, degrees',
    shunt: 'Resistance across the phones when just audible, Ω',
    conditions: 'Conditions',
    spot: 'Spot of the crystal',
    remark: 'Remark',
  },
  examples: {
    frequency: '603',
    pointer: '74',
    shunt: '270 Ω',
    conditions: 'thunderstorms far off',
    spot: 'edge, upper left',
    remark: 'every word',
  },
  write: '3. Write it down',
  chooseWhich: 'Choose a station; for an unknown one give its frequency or the reading of the scale.',
  chooseHow: 'Choose how well it is heard. The time is taken from the clock of this device.',
  written: (station: string): string => `Written down: ${station}.`,
  erased: (station: string): string => `Deleted: ${station}.`,
  undo: 'Undo',
  beside: 'Predicted beside heard',
  besideTable: 'Predicted and heard, a row for each station',
  working: 'Calculating what should be heard by day and by night…',
  entries: 'Entries',
  where: 'Where it was heard',
  station: 'Station',
  everyStation: 'all stations',
  light: { any: 'day and night', day: 'by day', night: 'by night' },
  lightLabel: 'Heard',
  none: 'No entry yet.',
  atPointer: (degrees: string): string => `at ${degrees} on the scale`,
  erase: (what: string, time: string): string => `Delete the entry ${what}, ${time}`,
  showMore: (count: number): string => `Show ${count} more`,
  save: 'Save as CSV',
  open: 'Add a CSV file…',
  picker: 'Add a log from a CSV file',
  fileName: 'log.csv',
  notRead: (name: string): string => `${name} cannot be read: expected text in UTF-8 with a heading row.`,
  notKept:
    'This browser cannot keep the log: its storage is blocked or full. Save it as CSV before you close the page.',
  saveNow: 'Save as CSV',
} as const;

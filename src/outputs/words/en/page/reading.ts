const COUNT = new Intl.NumberFormat('en-GB');

/** Of long texts while they are read. */
export const readingWords = {
  reading: (name: string, size: number): string => `Reading ${name} (${COUNT.format(size)} characters)…`,
  readingTable: 'Reading the table…',
  cancel: 'Cancel',
  readable: 'a description that can be read',
  /** Of a text too long to edit in a field. */
  longText: (size: number): string => `${COUNT.format(size)} characters; this is the beginning.`,
  chosenFile: (name: string, size: number): string => `${name}, ${COUNT.format(size)} bytes.`,
  clear: 'Clear the text',
  /** @param read stations; @param leftOut rows after the last that a description can hold */
  stationsRead: (read: number, leftOut: number): string =>
    read === 0
      ? 'No station can be read from it yet.'
      : leftOut > 0
        ? `${COUNT.format(read)} stations read, the most a description holds; ${COUNT.format(leftOut)} more are left out.`
        : `${COUNT.format(read)} ${read === 1 ? 'station' : 'stations'} read.`,
  /** @param leftOut stations that did not fit in the list */
  listIsFull: (most: number, leftOut: number): string =>
    `A description holds at most ${COUNT.format(most)} stations; ${COUNT.format(leftOut)} of the table ${leftOut === 1 ? 'is' : 'are'} left out.`,
} as const;

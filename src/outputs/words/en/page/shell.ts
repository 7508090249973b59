import { listOf, plural } from '../grammar.ts';

/** The head of the page: name of the set, views, files, undo, colours. */
export const headerWords = {
  skip: 'Skip to',
  toWorkbench: 'Skip to the workbench',
  toSuggestions: 'Skip to the suggestions',
  product: 'Faintwave',
  nameOfSet: 'Name of the set',
  changed: ' · changed',
  shelf: 'Shelf',
  compare: 'Compare',
  shelfTip: 'All sets kept in this browser, and versions of this one',
  views: 'Views',
  view: {
    set: 'Set',
    find: 'Find',
    explain: 'Explain',
    sheets: 'Sheets',
    measure: 'Measure',
    faults: 'Faults',
    log: 'Log',
  },
  open: 'Open',
  fromBench: 'Begin from my bench…',
  openFile: 'A file…',
  openFileKey: 'Ctrl O',
  filePicker: 'Open a file',
  paste: 'Paste a description…',
  examples: 'Begin with an example',
  save: 'Save',
  saveKey: 'Ctrl S',
  undo: (label: string | undefined): string => (label === undefined ? 'Undo' : `Undo ${label}`),
  undoTip: (label: string | undefined): string => (label === undefined ? 'Nothing to undo' : `Undo: ${label} (Ctrl Z)`),
  redo: (label: string | undefined): string => (label === undefined ? 'Redo' : `Redo ${label}`),
  redoTip: (label: string | undefined): string =>
    label === undefined ? 'Nothing to redo' : `Redo: ${label} (Ctrl Shift Z)`,
  colours: { auto: 'Colours: as the device', light: 'Colours: light', dark: 'Colours: dark' },
  help: 'Help',
  handbook: 'Handbook',
  glossary: 'Glossary',
  licences: 'Licences',
  scenesChanged: 'scenes',
} as const;

/** Of parts of the page that are fetched, calculated, shown in words. */
export const widgetWords = {
  opening: (name: string): string => `Opening ${name}…`,
  notFetched: (name: string): string => `${name} could not be fetched. Check the connection, then try again.`,
  tryAgain: 'Try again',
  calculatingFirst: 'Calculating the set first…',
  messages: 'Messages',
  dismiss: 'Dismiss',
  wholeMessage: 'Whole message',
  less: 'Less',
  inWords: 'In words',
  readOff: (plot: string): string => `${plot}: read off`,
  readOffHint: 'Point at the plot, or use the arrow keys in it, to read values off.',
  unknownFigures: (labels: readonly string[]): string => `Not known from the values given: ${listOf(labels)}.`,
  workerStopped: 'the calculation stopped without an answer',
  coastNotLoaded: (status: number): string => `the coastline could not be loaded (status ${status})`,
} as const;

/** Dialogs: a description that cannot be read, one to be pasted. */
export const dialogWords = {
  badFile: (name: string): string => `“${name}” cannot be opened as it is`,
  problemCount: (count: number): string =>
    `It has ${count} ${plural(count, 'problem', 'problems')}. Your own set is unchanged.`,
  problems: 'Problems',
  columns: { where: 'Where', expected: 'Expected', given: 'Given', hint: 'Hint' },
  wholeFile: 'the file',
  morePlain: (count: number): string => `and ${count} more.`,
  close: 'Close',
  pasteTitle: 'Paste a description',
  pasteLabel: 'The text of a set’s file',
  pasteTakes:
    'Takes the whole text of a file that this page or the command line saved: JSON that begins with { "format": "faintwave-set/1". For a table of stations use “Paste or import a table…” under Field.',
  pasteRefused: (count: number): string =>
    `This text cannot be opened: ${count} ${plural(count, 'problem', 'problems')}. Your own set is unchanged; mend the text here, or cancel.`,
  openPasted: 'Open it',
  cancel: 'Cancel',
} as const;

/** The documents as a book. */
export const handbookWords = {
  label: 'Handbook',
  contents: 'Contents of the handbook',
  search: 'Search the handbook',
  foundCount: (count: number): string =>
    count === 0
      ? 'Nothing found. Try fewer words, or the beginning of one.'
      : `${count} ${plural(count, 'place', 'places')}`,
  place: (chapter: string, heading: string | undefined): string =>
    heading === undefined ? chapter : `${chapter}: ${heading}`,
  parts: {
    sets: 'Build three sets',
    page: 'The page',
    script: 'Command line and scripts',
    physics: 'The physics',
    proof: 'Accuracy and checks',
  },
  next: (title: string): string => `Next: ${title}`,
  licences: 'Licences',
  licencesOf: (count: number): string =>
    `Faintwave is shipped with ${count} packages of others. Each is under its own licence, whose text follows.`,
  packageLicence: (name: string, version: string, licence: string): string => `${name} ${version}: ${licence}`,
  noLicenceText: 'The package holds no text of its licence.',
} as const;

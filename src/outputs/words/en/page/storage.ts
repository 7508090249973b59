import { firstOf, plural } from '../grammar.ts';

/** What the browser keeps of the set, and what it cannot keep. */
export const storageWords = {
  laterChanges: 'This browser has later changes of the set, from before it was closed.',
  showLater: 'Show them',
  laterLabel: 'the later changes',
  unreadable: 'The set kept in this browser from the last visit cannot be read. It has been put aside, not deleted.',
  unreadableBox: 'The box of parts kept in this browser cannot be read. It has been put aside, not deleted.',
  saveUnreadable: 'Save it to a file',
  keepsNothing:
    'This browser cannot keep the set: its storage is blocked or full. Save the set to a file before you close the page.',
  keepsPart:
    'This browser keeps the set only in part: its storage is blocked or full. The latest changes may be lost when the page closes; save the set to a file.',
  saveNow: 'Save to a file',
  otherTab: 'This set is open in another tab as well. What is changed in one appears in the other.',
} as const;

/** A newer version of the page. */
export const versionWords = {
  isThere: 'A new version of the page is there. Your work stays as it is.',
  use: 'Use it now',
  tookOver: 'Another tab has changed to a new version of the page.',
  reload: 'Reload this tab',
} as const;

/** Files opened and saved. */
export const fileWords = {
  openLabel: (name: string): string => `open ${name}`,
  /** @param notes what the reader remarks, each a sentence without its full stop */
  opened: (name: string, notes: readonly string[]): string =>
    [`Opened ${name}.`, ...notes.map((note) => `${note}.`)].join(' '),
  backToBefore: 'Back to what I had',
  fileKind: 'Faintwave set',
  saved: (name: string): string => `Saved ${name}.`,
  notWritten: (reason: string): string => `The file could not be written: ${reason}`,
  downloadInstead: 'Download it instead',
  tooLarge: (name: string, kilobytes: number): string => `${name} is larger than ${kilobytes} kB.`,
  pasted: 'pasted.json',
  fromLink: 'from-a-link.json',
  sharedText: 'a text',
  sharedWithPage: (names: readonly string[]): string =>
    `Shared with this page: ${firstOf(names)}. Open it only if you have shared it: a web site can send the same.`,
  openShared: 'Open it',
  sharedTooMuch:
    'What was shared is too much at once: at most 20 files of 100 MB together, and a text of 4 million characters.',
  sharingFailed: 'What was shared could not be kept in this browser: its storage is blocked or full.',
  oneInstrumentFile: (first: string, others: readonly string[]): string =>
    `Only ${first} is in Measure: it takes one file of an instrument at a time. Not opened: ${firstOf(others)}.`,
  fieldsRefused: (count: number): string =>
    `${count} ${plural(count, 'field', 'fields')} could not be read and ${plural(count, 'is', 'are')} marked`,
} as const;

/** What the figures use where a field is refused; each a sentence. @param value as it is written; undefined: nothing is written there */
export const standInWords = {
  last: (value: string | undefined): string =>
    value === undefined ? 'The figures leave it out, as before.' : `The figures use ${value}, the last good value.`,
  usual: (value: string | undefined): string =>
    value === undefined ? 'The figures leave it out.' : `The figures use ${value}, a typical value.`,
  none: (_value: string | undefined): string => 'The figures leave it out.',
  ofThePart: 'what was there',
} as const;

/** Of a description that has problems, the figures standing as they were. */
export const problemWords = {
  lastValid: 'These figures are of the last valid description.',
  usesLastGood: 'The figures use the last good value where a field is refused.',
  usesOthers: 'Where a field is refused, the figures use what is said beside it.',
  count: (count: number): string => `${count} ${plural(count, 'problem', 'problems')} to correct:`,
  all: 'What is wrong',
  fewer: 'Less',
  wholeDescription: 'The whole description',
  itemOf: (list: string, number: number): string => `${list} no. ${number}`,
  quoted: (name: string): string => `“${name}”`,
  path: (labels: readonly string[]): string => labels.join(' › '),
  atField: (expected: string, hint: string | undefined): string =>
    hint ? `Expected ${expected}: ${hint}.` : `Expected ${expected}.`,
  inList: (expected: string, hint: string | undefined): string =>
    hint ? `: expected ${expected} (${hint}).` : `: expected ${expected}.`,
  more: (count: number): string => `and ${count} more`,
} as const;

import { listOf } from '../grammar.ts';

/** Editing a description: fields, lists, kinds of parts. Labels in small letters name a step to undo. */
export const editingWords = {
  add: 'Add',
  addRow: 'Add a row',
  kind: 'Kind',
  unknownChoice: '—',
  ownFigures: 'own figures',
  fromFile: 'Or from a file',
  slider: (label: string): string => `${label}, slider`,
  leaveOut: 'Leave out',
  leaveOutField: (label: string): string => `Leave out ${label}`,
  remove: 'Remove',
  removeItem: (what: string): string => `Remove ${what}`,
  rowOf: (list: string, row: number): string => `${list}, row ${row}`,
  inRow: (column: string, row: string): string => `${column}, ${row}`,
  change: 'change',
  otherTab: 'changes in another tab',
  undo: 'Undo',
  coilName: 'Name of a coil',
  addLabel: (field: string): string => `add ${field}`,
  leaveOutLabel: (field: string): string => `leave out ${field}`,
  addToLabel: (list: string): string => `add to ${list}`,
  removeFromLabel: (list: string): string => `remove from ${list}`,
  kindLabel: (label: string, kind: string): string => `${label}: ${kind}`,
  fieldWithValue: (field: string, value: string | number): string => `${field} ${value}`,
  fieldWithCount: (field: string, count: number): string => `${field} (${count})`,
  noLongerUsed: (fields: readonly string[]): string => `No longer used: ${listOf(fields)}.`,
  newStation: 'New station',
  unnamed: 'Unnamed',
} as const;

const leftOut = (fields: readonly string[]): string => (fields.length > 0 ? ` No longer used: ${listOf(fields)}.` : '');

/** What else changed with a part, each a whole sentence. */
export const settledWords = {
  aerialFollows: (kind: string, dropped: readonly string[]): string =>
    `The aerial is now “${kind}”, as the arrangement needs.${leftOut(dropped)}`,
  arrangementFollows: (kind: string, dropped: readonly string[]): string =>
    `The arrangement is now “${kind}”, as the aerial needs.${leftOut(dropped)}`,
  coilAdded: (name: string): string => `A coil “${name}” was added.`,
  coilCopied: (name: string, of: string): string => `A coil “${name}” like “${of}” was added.`,
  singleDetector: 'The detector is now a single one: this arrangement has no coil with an earthed centre tap.',
  bandsRemoved: 'The band switch is gone: it changes only sets that one capacitor tunes.',
  wantsDropped: (count: number): string =>
    count === 1 ? 'A want was removed with its station.' : `${count} wants were removed with their stations.`,
  keptDropped: (places: readonly string[]): string => `No longer kept: ${places.join(', ')}.`,
  tapMoved: {
    aerialTap: (turns: number, isPart = false): string =>
      `The aerial tap moved down to turn ${turns}, the ${isPart ? 'last turn in use' : 'top of the coil'}.`,
    detectorTap: (turns: number, isPart = false): string =>
      `The detector tap moved down to turn ${turns}, the ${isPart ? 'last turn in use' : 'top of the coil'}.`,
    usedTurns: (turns: number): string => `All ${turns} turns of the coil are in use now.`,
    fewest: (turns: number): string => `The slider’s last turn moved down to turn ${turns}, the top of the coil.`,
  },
} as const;

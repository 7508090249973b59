import type { FindProgress } from '../../../../engine/find/find.ts';
import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { Want } from '../../../../engine/set/wants.ts';
import type { WantValue } from '../../../../engine/vary/want-values.ts';
import { kindName } from '../fields/kinds.ts';
import { counted, listOf } from '../grammar.ts';

const PHASES: { readonly [P in FindProgress['phase']]: string } = {
  estimate: 'Estimating every set',
  refine: 'Trying every turn and tap about the best',
  receive: 'Calculating the best in full',
  judge: 'Calculating the best as built, with tolerances',
  chances: 'Calculating the chance of hearing each station',
};

/** The view that finds sets in a box of parts. */
export const findView = {
  label: 'Find sets in a box of parts',
  box: 'Box of parts',
  boxes: 'Boxes',
  newBox: 'New box',
  boxFile: 'box.json',
  openBox: 'Open…',
  boxPicker: 'Open a box of parts from a file',
  saveBox: 'Save',
  addBox: 'New',
  removeBox: 'Remove',
  removed: (name: string): string => `“${name}” is no longer kept here.`,
  putBack: 'Put it back',
  exampleBoxes: 'Example boxes',
  undo: (label: string | undefined): string => (label === undefined ? 'Undo in the box' : `Undo in the box: ${label}`),
  redo: (label: string | undefined): string => (label === undefined ? 'Redo in the box' : `Redo in the box: ${label}`),
  otherTab: 'change in another tab',
  noBox: 'No box is open: begin with an example, a file or a new one.',
  add: 'Add',
  added: (list: string): string => `add to ${list}`,
  removeItem: (what: string): string => `Remove ${what}`,
  removedItem: (what: string): string => `remove ${what}`,
  item: (list: string, number: number): string => `${list}, ${number}`,
  withProblems: (count: number): string => `${counted(count, 'value', 'values')} to mend`,
  limits: 'Limits',
  allArrangements: 'All arrangements are tried.',
  wanted: (place: string): string => `Wanted at ${place}`,
  fromSet: 'Place, wants and what is kept are those of the open set. Without a want: as many stations as possible.',
  editWants: 'Change them',
  unkept: (part: string, why: string): string => `${part} is not kept here: ${why}.`,
  search: 'Find sets',
  searchAgain: 'Find again',
  stop: 'Stop',
  goOn: 'Go on',
  mendFirst: 'The box has values that cannot be read; they are marked. Mend them to search.',
  setNotReady: 'The set has values that cannot be read: place and wants are those of its last state without any.',
  progress: ({ phase, front }: FindProgress): string =>
    front ? `${PHASES[phase]}: ${kindName('arrangement', front.arrangement)}` : PHASES[phase],
  searching: (count: number): string =>
    count === 0
      ? 'The first sets appear in a moment.'
      : `${counted(count, 'set', 'sets')} so far; better ones may follow.`,
  stopped: 'Stopped: these are the best of what has been calculated so far.',
  outdated: 'The box, the place or the wants have changed since: these sets are of how they were.',
  failed: (why: string): string => `The search stopped: ${why}`,
  notYet: 'What can be made from this box, and what each set gives of what is wanted, appears here.',
  tradeOff: 'Trade-off',
  across: 'Across',
  upwards: 'Upwards',
  effort: 'effort',
  parts: 'parts',
  points: 'Found sets in the plot',
  point: (number: number, name: string): string => `${number}: ${name}`,
  table: 'Found sets',
  columns: { number: 'No.', set: 'Set', effort: 'Effort', parts: 'Parts' },
  chosen: 'Chosen set',
  takes: 'Takes from the box',
  open: 'Open this set',
  save: 'Save to a file',
  fileName: (name: string): string => `${name}.json`,
  circuit: 'Circuit',
  whyNot: 'Why not …?',
  whyNotChoose: 'Choose a part or an arrangement',
  whyNotNone: 'Every detector, former, arrangement and load that gives anything is in one of the sets.',
  groups: { detector: 'Detectors', load: 'Phones and amplifiers', arrangement: 'Arrangements', former: 'Formers' },
  isIn: (what: string, numbers: readonly number[]): string =>
    `${what}: in ${numbers.length === 1 ? 'set' : 'sets'} ${listOf(numbers.map(String))}.`,
  noneWith: (what: string): string =>
    `Why no ${what}? No set with it gives anything of what is wanted, or none can be made: too little wire or room for its coil, nothing to tune it with, or not within the limits.`,
} as const;

/** An axis of the trade-off: what it shows, and its unit. */
export interface TradeOffAxis {
  readonly name: string;
  readonly unit: string;
  /** What is counted has no places after the point. */
  readonly isWhole?: boolean;
}

const AXES: ByKind<Want, TradeOffAxis> = {
  loudest: ({ station }) => ({ name: station, unit: 'dB SPL' }),
  clear: ({ station, from }) => ({ name: `${from} below ${station}`, unit: 'dB' }),
  band: () => ({ name: 'band covered', unit: '%' }),
  'most stations': () => ({ name: 'stations heard', unit: '', isWhole: true }),
  speech: ({ station }) => ({ name: `audio bandwidth, ${station}`, unit: 'kHz' }),
  'fewest parts': () => ({ name: 'parts', unit: '', isWhole: true }),
};

/** The axis of a want. */
export const tradeOffAxis = (want: Want): TradeOffAxis => byKind(AXES, want);

const PER: { readonly [K in Want['kind']]?: number } = { band: 100, speech: 1e-3 };

/** What a set gives of a want, in the unit of its axis; undefined where a station is out of range. */
export const tradeOffValue = ({ want, figure }: WantValue): number | undefined =>
  figure === undefined || !Number.isFinite(figure) ? undefined : figure * (PER[want.kind] ?? 1);

/** The plot of found sets. */
export const tradeOffWords = {
  title: (x: string, y: string): string => `${y} against ${x}`,
  text: (sets: number, others: number): string =>
    `${counted(sets, 'set', 'sets')} worth building, as numbered points; ${counted(others, 'other', 'others')} calculated, as small circles.`,
} as const;

import type { BuiltSet } from '../../../../engine/built/built-set.ts';
import type { OhmPlace } from '../../../../engine/faults/ohmmeter.ts';
import { capital } from '../../../../engine/units/format.ts';
import { ohmPlaceText } from '../faults/checks.ts';

/** Of a hundred. */
const hundred = (probability: number): number => Math.round(100 * probability);
/** A line does not end here. */
const TOGETHER = '\u00a0';
/** No fault is certain. */
const share = (probability: number): string => `(${Math.min(hundred(probability), 99)}${TOGETHER}%)`;

const mind = (numbers: readonly number[]): string =>
  numbers.length === 1 ? `Caution${TOGETHER}${numbers[0]}.` : `Cautions ${numbers.join(', ')}.`;

/** Where the leads of the meter go off the set: in a step, and in the two columns of the table. */
const OFF_THE_SET: Readonly<
  Partial<Record<OhmPlace, { readonly step: string; readonly cells: readonly [string, string] }>>
> = {
  phones: { step: 'Leads: at the plugs.', cells: ['one plug', 'the other plug'] },
  'leads-apart': { step: 'Leads: the two leads, off the set.', cells: ['aerial lead', 'earth lead'] },
  'earth-lead': { step: 'Leads: at the two ends of the earth lead, off the set.', cells: ['plug', 'clamp'] },
};

interface StepNotes {
  /** Of a resistance: where it is read. */
  readonly place?: OhmPlace;
  /** The positive lead’s terminal, then the negative one’s. */
  readonly leads: readonly string[];
  readonly tags: readonly string[];
  readonly good: string;
  readonly cautions: readonly number[];
}

/** The sheet on which a fault is looked for. */
export const faultSheetWords = {
  title: 'Finding a fault',
  description: 'A decision tree of checks from a set that does not work to the likely faults, with expected values.',
  intro: ({ first, named }: { readonly first: number; readonly named: number }): string =>
    `Begin at step 1 and go where the answer leads: to another step, or to a fault (F) of the list. Expected values are calculated for this set; an ohmmeter reads them with everything disconnected. Of 100 faults, as common as they are, this tree names the right one first in about ${hundred(first)}, and among those it names in about ${hundred(named)}. Where several stand at an answer, the steps before it do not tell them apart; a dialogue that weighs all answers together (“faintwave fault”, or the view Faults) goes further.`,
  headings: {
    cautions: 'Cautions',
    steps: 'Steps',
    readings: 'Readings with nothing wrong',
    causes: 'Faults and remedies',
  },
  step: (number: number): string => `${number}`,
  fault: (number: number): string => `F${number}`,
  /** Where to touch, by the names of the wiring list; what to expect; which cautions to mind. */
  notes: ({ place, leads, tags, good, cautions }: StepNotes): string =>
    [
      (place && OFF_THE_SET[place]?.step) ??
        (leads.length === 2 ? `Leads: + ${leads[0]}, − ${leads[1]}.` : tags.length > 0 ? `On ${tags.join(', ')}.` : ''),
      `Good: ${good}.`,
      cautions.length > 0 ? mind(cautions) : '',
    ]
      .filter((sentence) => sentence !== '')
      .join(' '),
  degrees: (reading: number): string => `${Math.round(reading)}°`,
  toStep: (number: number): string => `→ step ${number}`,
  /** The first cause of an end in words, the others by their numbers. */
  toCauses: ({
    first,
    others,
    rest,
  }: {
    readonly first: { readonly number: number; readonly text: string; readonly probability: number };
    readonly others: readonly { readonly number: number; readonly probability: number }[];
    readonly rest: number;
  }): string =>
    [
      `→ F${first.number} ${first.text} ${share(first.probability)}`,
      ...others.map(({ number, probability }) => `F${number}${TOGETHER}${share(probability)}`),
      ...(rest >= 0.1 ? [`others${TOGETHER}${share(rest)}`] : []),
    ].join('; '),
  cause: (texts: readonly string[]): string => `${texts.join('; or ')}.`,
  remedy: (remedy: string, cautions: readonly number[]): string =>
    cautions.length === 0 ? remedy : `${remedy} ${mind(cautions)}`,
  place: (place: OhmPlace, built: BuiltSet): string => capital(ohmPlaceText(place, built)),
  /** The two leads of a reading that is taken off the set. */
  cellsOff: (place: OhmPlace): readonly [string, string] | undefined => OFF_THE_SET[place]?.cells,
  columns: { reading: 'Resistance', positive: '+ lead', negative: '− lead', good: 'Good', cautions: 'Cautions' },
  cautionNumbers: (numbers: readonly number[]): string => (numbers.length === 0 ? '—' : numbers.join(', ')),
  meter:
    'Readings that pass the detector depend on the meter: these are of one with 0.4 V behind 4 kΩ; one with 0.25 to 0.6 V behind 1 to 30 kΩ shows from a quarter to five times as much.',
  voltage: 'Direct voltage on the strongest station',
  mapAlt:
    'The tree as a drawing: steps as numbered circles, ends as numbered faults; thick lines are the answers of a set with nothing wrong.',
  mapNote: 'Circles: steps. Boxes: the likeliest fault. Thick lines: the answer of a set with nothing wrong.',
};

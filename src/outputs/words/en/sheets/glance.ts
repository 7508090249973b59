import type { ArrangementDescription } from '../../../../engine/kinds/arrangements/arrangement-schema.ts';
import { wholeDB } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { counted } from '../grammar.ts';

const ARRANGEMENTS: Readonly<Record<ArrangementDescription['kind'], string>> = {
  direct: 'One tuned circuit, the aerial connected to its top.',
  'series capacitor': 'One tuned circuit, fed by the aerial through a capacitor.',
  tapped: 'One tuned circuit, the aerial on a tap of its coil.',
  coupled: 'An aerial coil coupled to a tuned circuit.',
  'two circuits': 'Two loosely coupled tuned circuits: the aerial’s and the detector’s.',
  slider: 'A coil tuned by a slider.',
  variometer: 'Tuned by turning one coil within another.',
  frame: 'A frame aerial that is its own coil.',
  'ferrite rod': 'A ferrite rod that is its own aerial and coil.',
  elements: 'A circuit of the builder’s own.',
};

export const glanceSheetWords = {
  title: 'The set at a glance',
  planned: ({ place, kind }: { readonly place: string; readonly kind: ArrangementDescription['kind'] }): string =>
    place === '' ? ARRANGEMENTS[kind] : `Planned for ${printable(place)}. ${ARRANGEMENTS[kind]}`,
  assumed: (count: number): string =>
    `${counted(count, 'value is', 'values are')} assumed: typical ones that nobody has confirmed yet.`,
  headings: { cautions: 'Cautions first', heard: 'What should be heard', parts: 'Parts' },
  stations: {
    station: 'Station',
    frequency: 'kHz',
    dial: 'Dial',
    heard: 'Heard',
    level: 'At the ear',
    chance: 'Such sets',
    beside: 'Interference',
  },
  level: ({ level, range }: { readonly level: number; readonly range?: readonly [number, number] }): string =>
    range ? `${wholeDB(level)} dB (${wholeDB(range[0])} to ${wholeDB(range[1])})` : `${wholeDB(level)} dB`,
  chanceNote:
    'Such sets: how many sets built like this one, in a place like this, tune in the station and receive it audibly, not masked by another.',
  parts: {
    done: '✓',
    quantity: 'Qty',
    part: 'Part',
    value: 'What it must be',
    instead: 'What will serve instead',
  },
  description: (set: string): string => `${printable(set)}: what should be heard, and the list of parts.`,
};

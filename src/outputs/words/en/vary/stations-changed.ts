import type { HeardChange, HeardNames } from '../../../../engine/vary/suggestion-order.ts';
import { printable } from '../../printable.ts';
import { counted, listOf } from '../grammar.ts';

/** Named where there are no more than these. */
const MOST_NAMED = 2;

const stationsOf = (names: readonly string[]): string =>
  names.length <= MOST_NAMED ? listOf(names.map(printable)) : counted(names.length, 'station', 'stations');

/** Stations that a change takes away and adds: "loses Quayside", "loses 3 stations". */
export const stationsChanged = ({ names: { lost, gained } }: HeardChange): string[] => [
  ...(lost.length > 0 ? [`loses ${stationsOf(lost)}`] : []),
  ...(gained.length > 0 ? [`gains ${stationsOf(gained)}`] : []),
];

/** The same by their names, a sentence each. */
export const heardAfterWords = ({ lost, gained }: HeardNames): string[] => [
  ...(lost.length > 0 ? [`No longer heard then: ${listOf(lost.map(printable))}.`] : []),
  ...(gained.length > 0 ? [`Also heard then: ${listOf(gained.map(printable))}.`] : []),
];

const BY_EFFORT =
  'In order of the gain for the effort: turns of a knob first, then taps, wiring, winding, parts to buy and work outdoors';

/** The rule by which suggestions for one station stand in their order, and that of suggestions for wants. */
export const ORDER_FOR_STATION = `${BY_EFFORT}; changes that lose stations come last.`;
export const ORDER_FOR_WANTS = `${BY_EFFORT}; a change that loses stations comes later.`;

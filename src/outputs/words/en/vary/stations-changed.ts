import type { HeardAfter } from '../../../../engine/vary/heard-after.ts';
import type { HeardChange } from '../../../../engine/vary/suggestion-order.ts';
import { printable } from '../../printable.ts';
import { counted, listOf } from '../grammar.ts';

/** Stations that a change takes away and adds: "loses 3 stations". */
export const stationsChanged = ({ lost, gained }: HeardChange): string[] => [
  ...(lost.length > 0 ? [`loses ${counted(lost.length, 'station', 'stations')}`] : []),
  ...(gained.length > 0 ? [`gains ${counted(gained.length, 'station', 'stations')}`] : []),
];

/** The same by their names, a sentence each. */
export const heardAfterWords = ({ lost, gained }: HeardAfter): string[] => [
  ...(lost.length > 0 ? [`No longer heard then: ${listOf(lost.map(printable))}.`] : []),
  ...(gained.length > 0 ? [`Also heard then: ${listOf(gained.map(printable))}.`] : []),
];

const BY_EFFORT =
  'In order of the gain for the effort: turns of a knob first, then taps, wiring, winding, parts to buy and work outdoors';

/** The rule by which suggestions for one station stand in their order, and that of suggestions for wants. */
export const ORDER_FOR_STATION = `${BY_EFFORT}; changes that lose stations come last.`;
export const ORDER_FOR_WANTS = `${BY_EFFORT}; a change that loses stations comes later.`;

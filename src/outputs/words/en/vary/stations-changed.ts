import type { HeardChange } from '../../../../engine/vary/suggestion-order.ts';
import { counted } from '../grammar.ts';

/** Stations that a change takes away and adds: "loses 3 stations". */
export const stationsChanged = ({ lost, gained }: HeardChange): string[] => [
  ...(lost.length > 0 ? [`loses ${counted(lost.length, 'station', 'stations')}`] : []),
  ...(gained.length > 0 ? [`gains ${counted(gained.length, 'station', 'stations')}`] : []),
];

const BY_EFFORT =
  'In order of the gain for the effort: turns of a knob first, then taps, wiring, winding, parts to buy and work outdoors';

/** The rule by which suggestions for one station stand in their order, and that of suggestions for wants. */
export const ORDER_FOR_STATION = `${BY_EFFORT}; changes that lose stations come last.`;
export const ORDER_FOR_WANTS = `${BY_EFFORT}; a change that loses stations comes later.`;

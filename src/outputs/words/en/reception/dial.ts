import type { Dial, StationReception } from '../../../../engine/reception/path/types.ts';
import { bandSpan, wholeKHz } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { listOf, plural } from '../grammar.ts';

type Listed = Pick<StationReception, 'name' | 'frequency' | 'outOfRange'>;

const names = (stations: readonly Listed[]): string =>
  listOf(stations.map(({ name, frequency }) => `${printable(name)} (${wholeKHz(frequency)} kHz)`));

/** What the dial covers, with the range of both ends, and the stations beyond either. */
export function coverageSentences(
  { lowest, highest, lowestRange, highestRange }: Dial,
  stations: readonly Listed[],
): string[] {
  const on = (side: 'below' | 'above') => stations.filter(({ outOfRange }) => outOfRange?.side === side);
  const [below, above] = [on('below'), on('above')];
  const covers = `The dial covers ${bandSpan(lowest, highest)}.`;
  const span = ([low, high]: readonly [number, number]): string => bandSpan(low, high);
  return [
    lowestRange && highestRange
      ? `${covers} Range (90 %): the low end ${span(lowestRange)}, the high end ${span(highestRange)}.`
      : covers,
    ...(below.length > 0
      ? [
          `Below the low end of the dial: ${names(below)}. More turns or more capacitance would reach ${plural(below.length, 'it', 'them')}.`,
        ]
      : []),
    ...(above.length > 0
      ? [
          `Above the high end of the dial: ${names(above)}. Fewer turns, a smaller stray capacitance or a series capacitor in the aerial lead would reach ${plural(above.length, 'it', 'them')}.`,
        ]
      : []),
  ];
}

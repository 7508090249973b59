import { capital, formatNumber, inSeries } from '../units/format.ts';
import type { HeardWord, StationReception } from './types.ts';

/** What the summary needs to know of a station. */
export type Summed = Pick<StationReception, 'name' | 'frequency' | 'heard' | 'disturbance'>;

const WORDS: readonly HeardWord[] = ['loud', 'comfortable', 'quiet', 'faint'];

/** "You would hear six stations, best of all Saltmarsh Radio on 603 kHz: comfortable." and the rest, as one would say it. */
export function summaryOf(stations: readonly Summed[], best: readonly number[], time?: 'day' | 'night' | Date): string {
  if (stations.length === 0) return 'No stations are listed for this place yet: add those you know of.';
  const when = whenWords(time);
  const ranked = best.map((i) => stations[i]);
  const audible = ranked.filter((s) => verdictOf(s) !== 'not heard' && verdictOf(s) !== 'drowned');
  if (audible.length === 0)
    return `${when ? `${when} nothing` : 'Nothing'} would be heard on this set here as it stands; see what would help most.`;
  const [first, ...others] = audible;
  const many = others.length === 0 ? 'one station,' : `${numeral(audible.length)} stations, best of all`;
  const opening = `${when ? `${when} you` : 'You'} would hear ${many} ${first.name} on ${formatNumber(first.frequency / 1e3, 5)} kHz: ${first.heard}${behindWords(first)}.`;
  const rest = WORDS.flatMap((word) => {
    const names = others.filter((s) => s.heard === word).map((s) => s.name);
    if (names.length === 0) return [];
    return [`${inSeries(names)} ${names.length === 1 ? 'is' : 'are'} ${word}${word === first.heard ? ' too' : ''}`];
  });
  const drowned = ranked.filter((s) => verdictOf(s) === 'drowned').length;
  const silent = stations.length - audible.length - drowned;
  const lost = [
    ...(drowned > 0 ? [`${count(drowned)} ${drowned === 1 ? 'is' : 'are'} drowned by others`] : []),
    ...(silent > 0 ? [`${count(silent)} cannot be heard`] : []),
  ];
  return [opening, rest.join('; '), inSeries(lost)]
    .filter(Boolean)
    .map((sentence) => capital(sentence).replace(/([^.])$/, '$1.'))
    .join(' ');
}

/** How a station comes through in one word: as loud as it is heard, unless another drowns it. */
export const verdictOf = ({ heard, disturbance }: Pick<Summed, 'heard' | 'disturbance'>): HeardWord | 'drowned' =>
  heard !== 'not heard' && disturbance?.word === 'swamped' ? 'drowned' : heard;

/** In a few words, what else comes through with a station, and what it would be alone. */
export function besideWords({ heard, disturbance }: Pick<Summed, 'heard' | 'disturbance'>): string {
  if (!disturbance || disturbance.word === 'clear' || heard === 'not heard') return '';
  return disturbance.word === 'swamped'
    ? `by ${disturbance.by}; ${heard} if alone`
    : disturbance.word === 'troublesome'
      ? `${disturbance.by} talks through it`
      : `${disturbance.by} behind it, a murmur`;
}

/** What else is heard with a station that is not drowned. */
function behindWords({ disturbance }: Summed): string {
  if (!disturbance || disturbance.word === 'clear') return '';
  return disturbance.word === 'a murmur behind'
    ? `, with ${disturbance.by} murmuring behind it`
    : `, though ${disturbance.by} talks through it`;
}

function whenWords(time: 'day' | 'night' | Date | undefined): string {
  if (time instanceof Date) return `At ${time.toISOString().slice(11, 16)} UTC`;
  return time === 'night' ? 'By night' : '';
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const numeral = (n: number): string => NUMBERS[n] ?? String(n);
const count = (n: number): string => `${numeral(n)} more`;

import { capital, formatNumber, inSeries } from '../../units/format.ts';
import type { HeardWord, StationReception } from './types.ts';

/** What the summary needs to know of a station. */
export type Summed = Pick<StationReception, 'name' | 'frequency' | 'heard' | 'disturbance' | 'outOfReach'>;

/** How a station comes through, in one word or two. */
export type Verdict = HeardWord | 'drowned' | 'out of reach';

const WORDS: readonly HeardWord[] = ['loud', 'comfortable', 'quiet', 'faint'];

/** "You would hear six stations, best of all Saltmarsh Radio on 603 kHz: comfortable." and the rest, as one would say it. */
export function summaryOf(stations: readonly Summed[], best: readonly number[], time?: 'day' | 'night' | Date): string {
  if (stations.length === 0) return 'No stations are listed for this place yet: add those you know of.';
  const when = whenWords(time);
  const ranked = best.map((i) => stations[i]);
  const audible = ranked.filter((s) => isHeard(verdictOf(s)));
  if (audible.length === 0)
    return `${when ? `${when} nothing` : 'Nothing'} would be heard on this set here as it stands${lostWords(ranked)}; see what would help most.`;
  const [first, ...others] = audible;
  const many = others.length === 0 ? 'one station,' : `${numeral(audible.length)} stations, best of all`;
  const opening = `${when ? `${when} you` : 'You'} would hear ${many} ${first.name} on ${formatNumber(first.frequency / 1e3, 5)} kHz: ${first.heard}${behindWords(first)}.`;
  const rest = WORDS.flatMap((word) => {
    const names = others.filter((s) => s.heard === word).map((s) => s.name);
    if (names.length === 0) return [];
    return [`${inSeries(names)} ${names.length === 1 ? 'is' : 'are'} ${word}${word === first.heard ? ' too' : ''}`];
  });
  const those = (verdict: Verdict): number => ranked.filter((s) => verdictOf(s) === verdict).length;
  const drowned = those('drowned');
  const beyond = those('out of reach');
  const silent = those('not heard');
  const lost = [
    ...(drowned > 0 ? [`${count(drowned)} ${drowned === 1 ? 'is' : 'are'} drowned by others`] : []),
    ...(beyond > 0 ? [`${count(beyond)} ${beyond === 1 ? 'is' : 'are'} out of reach of the dial`] : []),
    ...(silent > 0 ? [`${count(silent)} cannot be heard`] : []),
  ];
  // A sentence may begin with a station's name, which stands as it was given.
  const sentences = [rest.join('; '), capital(inSeries(lost))].filter(Boolean);
  return [opening, ...sentences.map((sentence) => `${sentence}.`)].join(' ');
}

/** How a station comes through: as loud as it is heard, unless the dial does not reach it or another drowns it. */
export const verdictOf = ({
  heard,
  disturbance,
  outOfReach,
}: Pick<Summed, 'heard' | 'disturbance' | 'outOfReach'>): Verdict =>
  outOfReach !== undefined
    ? 'out of reach'
    : heard !== 'not heard' && disturbance?.word === 'swamped'
      ? 'drowned'
      : heard;

/** Whether it is more than a station that cannot be tuned in, or heard, or heard for another. */
export const isHeard = (verdict: Verdict): verdict is Exclude<HeardWord, 'not heard'> =>
  verdict !== 'not heard' && verdict !== 'drowned' && verdict !== 'out of reach';

/** Where nothing is heard: what others drown, and what is not tuned in at all. */
function lostWords(ranked: readonly Summed[]): string {
  const those = (verdict: Verdict) => ranked.filter((s) => verdictOf(s) === verdict);
  const [drowned, beyond] = [those('drowned'), those('out of reach')];
  const [first] = beyond;
  if (beyond.length === ranked.length)
    return beyond.length === 1
      ? `: ${first.name} is out of reach of the dial, ${first.outOfReach}`
      : `: ${beyond.length === 2 ? 'both' : `all ${numeral(beyond.length)}`} stations are out of reach of the dial, ${first.name} ${first.outOfReach}`;
  const are = (lost: readonly Summed[]): string => `${numeral(lost.length)} ${lost.length === 1 ? 'is' : 'are'}`;
  const lost = [
    ...(drowned.length > 0 ? [`${are(drowned)} drowned by others`] : []),
    ...(beyond.length > 0 ? [`${are(beyond)} out of reach of the dial`] : []),
  ];
  return lost.length > 0 ? `: ${inSeries(lost)}` : '';
}

/** In a few words, what else comes through with a station, and what it would be alone. */
export function besideWords({
  heard,
  disturbance,
  outOfReach,
}: Pick<Summed, 'heard' | 'disturbance' | 'outOfReach'>): string {
  if (!disturbance || disturbance.word === 'clear' || heard === 'not heard' || outOfReach !== undefined) return '';
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
/** A small number as one says it; "no" for none. */
const numeral = (n: number): string => NUMBERS[n] ?? String(n);
const count = (n: number): string => `${numeral(n)} more`;

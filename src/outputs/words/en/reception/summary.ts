import type { Loudness, Reception, StationReception } from '../../../../engine/reception/path/types.ts';
import { isHeard } from '../../../../engine/reception/verdict.ts';
import { capital, formatNumber } from '../../../../engine/units/format.ts';
import { printable } from '../../printable.ts';
import { listOf, numeral, plural } from '../grammar.ts';
import { outOfRangeWords } from './stations.ts';
import { verdictWords } from './verdicts.ts';

const LOUDNESS: readonly Loudness[] = ['loud', 'comfortable', 'quiet', 'faint'];

/** What the summary needs to know of a station. */
type Summed = Pick<StationReception, 'name' | 'frequency' | 'verdict' | 'disturbance' | 'outOfRange'>;

/**
 * What one would hear: how many stations, the best, the rest by loudness, and what is not heard.
 * @param options stations, which are best, and the time
 * @returns text of a few sentences
 */
export function receptionSummary({
  stations,
  best,
  time,
}: {
  readonly stations: readonly Summed[];
  readonly best: readonly number[];
  readonly time?: Reception['time'];
}): string {
  if (stations.length === 0) return 'No stations are listed for this place yet: add those you know of.';
  const ranked = best.map((i) => stations[i]);
  const audible = ranked.filter(({ verdict }) => isHeard(verdict));
  const [first, ...others] = audible;
  const lost = lostSentences(ranked);
  if (!first) return [nothing(time), ...lost, ...reach(ranked)].join(' ');
  const rest = LOUDNESS.flatMap((loudness) => {
    const names = others.filter(({ verdict }) => verdict === loudness).map(({ name }) => printable(name));
    return names.length === 0
      ? []
      : [`${listOf(names)} ${plural(names.length, 'is', 'are')} ${verdictWords[loudness]}.`];
  });
  return [opening(first, audible.length, time), ...beside(first), ...rest, ...lost].join(' ');
}

/**
 * The same in one line: how many of the stations are heard, and the best.
 * @param options as of `receptionSummary`
 * @param band the one that a band switch stands on; left out for a set without one
 * @returns one sentence
 */
export function receptionHeadline(options: Parameters<typeof receptionSummary>[0], band?: string): string {
  const { stations, best, time } = options;
  const heard = best.map((i) => stations[i]).filter(({ verdict }) => isHeard(verdict));
  const [first] = heard;
  if (!first) return stations.length === 0 ? receptionSummary(options) : nothing(time);
  const when = momentOf(time);
  const many = `${numeral(heard.length)} of ${numeral(stations.length)} ${plural(stations.length, 'station', 'stations')} heard${
    band === undefined ? '' : ` on ${printable(band)}`
  }`;
  const opening = when !== undefined ? `At ${when} ${many}` : time === 'night' ? `By night ${many}` : capital(many);
  const { name, frequency, verdict } = first;
  return `${opening}; best ${printable(name)}, ${formatNumber(frequency / 1e3, 5)} kHz: ${verdictWords[verdict]}.`;
}

/** The station heard best. */
function opening({ name, frequency, verdict }: Summed, count: number, time: Reception['time']): string {
  const best = `${printable(name)} on ${formatNumber(frequency / 1e3, 5)} kHz: ${verdictWords[verdict]}`;
  const stations = `${numeral(count)} ${plural(count, 'station', 'stations')}`;
  const when = momentOf(time);
  if (when !== undefined)
    return count === 1
      ? `At ${when} you would hear one station, ${best}.`
      : `At ${when} you would hear ${stations}, best of all ${best}.`;
  if (time === 'night')
    return count === 1
      ? `By night you would hear one station, ${best}.`
      : `By night you would hear ${stations}, best of all ${best}.`;
  return count === 1 ? `You would hear one station, ${best}.` : `You would hear ${stations}, best of all ${best}.`;
}

function nothing(time: Reception['time']): string {
  const when = momentOf(time);
  if (when !== undefined) return `At ${when} nothing would be heard on this set here; see what would help most.`;
  return time === 'night'
    ? 'By night nothing would be heard on this set here; see what would help most.'
    : 'Nothing would be heard on this set here; see what would help most.';
}

const momentOf = (time: Reception['time']): string | undefined =>
  time instanceof Date ? `${time.toISOString().slice(11, 16)} UTC` : undefined;

/** What else is heard with the best station. */
function beside({ disturbance }: Summed): string[] {
  switch (disturbance?.effect) {
    case 'behind':
      return [`${printable(disturbance.by)} is heard behind it.`];
    case 'interferes':
    case 'masks':
      return [`${printable(disturbance.by)} interferes with it.`];
    default:
      return [];
  }
}

/** How many stations are not heard, by the reason. */
function lostSentences(ranked: readonly Summed[]): string[] {
  const count = (wanted: Summed['verdict']): number => ranked.filter(({ verdict }) => verdict === wanted).length;
  const [masked, beyond, silent] = [count('masked'), count('out of range'), count('not heard')];
  return [
    ...(masked > 0 ? [`Masked by other stations: ${numeral(masked)}.`] : []),
    ...(beyond > 0 ? [`Out of range of the dial: ${numeral(beyond)}.`] : []),
    ...(silent > 0 && silent < ranked.length ? [`Too weak to be heard: ${numeral(silent)}.`] : []),
  ];
}

/** Where the dial reaches no station: on which side the first lies. */
function reach(ranked: readonly Summed[]): string[] {
  const [first] = ranked;
  return first.outOfRange && ranked.every(({ outOfRange }) => outOfRange)
    ? [`${printable(first.name)} is ${outOfRangeWords(first.outOfRange)}.`]
    : [];
}

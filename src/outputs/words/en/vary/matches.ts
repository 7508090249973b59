import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { Coverage, Match, Matched } from '../../../../engine/vary/match.ts';
import { bandSpan } from '../../figures.ts';
import { numeral, plural } from '../grammar.ts';

/** Heading of a matched thing. */
export const MATCHED_NAMES: Readonly<Record<Matched, string>> = {
  'aerial tap': 'Aerial tap',
  'detector tap': 'Detector tap',
  'distance of the coils': 'Distance of the coils',
  'coupling of the coils': 'Coupling of the coils',
  'series capacitor': 'Series capacitor',
  transformer: 'Transformer',
};

const VALUES: Readonly<Record<Matched, (value: number) => string>> = {
  'aerial tap': (turns) => `${formatNumber(turns, 3)} ${plural(turns, 'turn', 'turns')}`,
  'detector tap': (turns) => `${formatNumber(turns, 3)} ${plural(turns, 'turn', 'turns')}`,
  'distance of the coils': (metres) => formatQuantity(metres, 'length', 2),
  'coupling of the coils': (k) => formatQuantity(k, 'ratio', 2),
  'series capacitor': (farads) => formatQuantity(farads, 'capacitance', 2),
  transformer: (ratio) => `${formatNumber(ratio, 2)} to 1`,
};

const decibels = (x: number): string => `${formatNumber(x, x < 1 ? 1 : 2)} dB`;

/** The best value, what that gains, what others lose: one sentence each. */
export function matchWords(match: Match): string {
  const { what, of, now, value, gain, changes, before, after, atHand, louder, without } = match;
  const say = VALUES[what];
  const isBest = changes.length === 0;
  const level = after.level - before.level;
  const gained =
    of === 'clearance'
      ? `clearance ${Math.round(after.clearance)} dB (now ${Math.round(before.clearance)} dB), ${formatQuantity(level, 'level')} of loudness`
      : `${formatQuantity(gain, 'level')}`;
  const best =
    value === undefined
      ? 'Best as it is, with none.'
      : isBest
        ? `Best at ${say(now ?? value)}, as it is.`
        : now === undefined
          ? `Best at ${say(value)}: ${gained}.`
          : `Best at ${say(value)} (now ${say(now)}): ${gained}.`;
  const given = atHand.map(({ value: other, lost }) =>
    lost === undefined
      ? `At ${say(other)} the station is not clear of others, or it cannot be built.`
      : `At ${say(other)} it loses ${decibels(lost)}.`,
  );
  return [
    best,
    ...given,
    ...(louder
      ? [
          `Louder at ${say(louder.value)}, ${formatQuantity(louder.gain, 'level')}, but with a clearance of ${Math.round(louder.clearance)} dB (now ${Math.round(before.clearance)} dB).`,
        ]
      : []),
    ...(without === undefined || now === undefined
      ? []
      : [`Without a transformer: ${formatQuantity(without, 'level')} against the best.`]),
  ].join(' ');
}

/** An end of the dial moved by a smaller share than this is where it was. */
const MUCH = 0.05;

/** What the set as a whole loses by a match. @returns undefined where that is nothing much. */
export function coverageWords({ coverage }: Pick<Match, 'coverage'>): string | undefined {
  if (!coverage) return undefined;
  const { before, after } = coverage;
  const isMoved = (a: number, b: number): boolean => Math.abs(b / a - 1) > MUCH;
  const isFewer = after.stationsHeard < before.stationsHeard;
  const isOther = isMoved(before.lowest, after.lowest) || isMoved(before.highest, after.highest);
  if (isFewer && isOther) return `${fewerWords(before, after)}, and the dial then covers ${rangeWords(before, after)}.`;
  if (isFewer) return `${fewerWords(before, after)}.`;
  return isOther ? `The dial then covers ${rangeWords(before, after)}.` : undefined;
}

const rangeWords = (before: Coverage, after: Coverage): string =>
  `${bandSpan(after.lowest, after.highest)} instead of ${bandSpan(before.lowest, before.highest)}`;
const fewerWords = (before: Coverage, after: Coverage): string =>
  after.stationsHeard === 0
    ? `Of ${numeral(before.stationsHeard)} ${plural(before.stationsHeard, 'station', 'stations')} heard none remains`
    : `Of ${numeral(before.stationsHeard)} stations heard ${numeral(after.stationsHeard)} ${plural(after.stationsHeard, 'remains', 'remain')}`;

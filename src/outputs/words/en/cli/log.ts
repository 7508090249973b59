import { LIGHTS, type Light, type LoggedLight, type LoggedStation } from '../../../../engine/log/against-prediction.ts';
import {
  HEARD,
  type HeardAs,
  type LogColumn,
  type LogProblem,
  type LogProblemFacts,
} from '../../../../engine/log/entry.ts';
import { formatNumber } from '../../../../engine/units/format.ts';
import { hintText } from '../fields/hints.ts';
import { counted } from '../grammar.ts';
import { verdictWords } from '../reception/index.ts';
import { nameAndFrequency } from './answers.ts';

const LIGHT_WORDS: Readonly<Record<Light, string>> = { day: 'by day', night: 'by night' };

/** What a cell of each column holds. */
const COLUMN_TEXTS: Readonly<Record<LogColumn, string>> = {
  time: 'a time such as 2026-11-30T21:40Z',
  station: 'the name of a station of the place',
  frequency: 'a frequency such as 603 kHz',
  pointer: 'a reading of the scale such as 74°',
  heard: `one of ${HEARD.join(', ')}`,
  shunt: 'a resistance such as 270 Ω',
  conditions: 'text',
  spot: 'text',
  remark: 'text',
};

type Facts = { readonly [C in keyof LogProblemFacts]: (figures: LogProblemFacts[C]) => string };

const FACTS: Facts = {
  'no-column': ({ column }) =>
    `the heading has no column "${column}"; a log needs time and heard, and station, frequency or pointer`,
  'no-time': () => `expected ${COLUMN_TEXTS.time}`,
  'time-without-zone': () => 'the time has no zone; write Z for UTC, or an offset such as +01:00',
  'not-heard-word': () => `expected ${COLUMN_TEXTS.heard}`,
  'not-a-quantity': ({ hint }) => hintText(hint),
  'below-zero': () => 'it is below zero',
  'heard-what': () => 'expected a station, a frequency or a pointer reading',
  'unknown-station': () => 'no station of the place fits; add it to the list of stations, or give its name',
};

const factText = (fact: LogProblem['fact']): string =>
  (FACTS[fact.code] as (figures: LogProblem['fact']) => string)(fact);

/** Something about a row of a log, in one line. */
export function logProblemText({ row, column, given, fact, isLeftOut, more }: LogProblem): string {
  const where = column === undefined || fact.code === 'no-column' ? `row ${row}` : `row ${row}, ${column}`;
  const got = given === undefined ? '' : ` (got ${given})`;
  const others = more > 0 ? `; and ${more} more of the same kind` : '';
  return `${where}: ${factText(fact)}${got}${isLeftOut && fact.code !== 'no-column' ? '; the row is left out' : ''}${others}`;
}

const heardTimes = (heard: LoggedLight['heard']): string =>
  HEARD.filter((one): one is HeardAs => heard[one] !== undefined)
    .map((one) => `${verdictWords[one]} ${heard[one]}`)
    .join(', ');

const percent = (chance: number): number => Math.round(chance * 100);

/** `faintwave log`. */
export const logAnswer = {
  title: (set: string, place: string): string => `What was heard with ${set} at ${place}, beside what was predicted`,
  columns: {
    station: 'station',
    frequency: 'kHz',
    light: 'day or night',
    predicted: 'predicted',
    chance: 'chance',
    heard: 'heard',
  },
  light: (light: Light): string => LIGHT_WORDS[light],
  predicted: ({ verdict, level }: LoggedLight): string =>
    level === undefined
      ? verdictWords[verdict]
      : `${verdictWords[verdict]}, ${formatNumber(Math.round(level), 4)} dB SPL`,
  chance: ({ chance }: LoggedLight): string => (chance === undefined ? '' : `${percent(chance)} %`),
  heard: ({ heard, days }: LoggedLight): string => heardTimes(heard) || (days > 0 ? 'no entry' : ''),
  none: 'The log has no entry that can be read.',
  read: (entries: number, days: number): string =>
    `${counted(entries, 'entry', 'entries')} on ${counted(days, 'day', 'days')}.`,
  neverHeard: (station: LoggedStation, chance: number, days: number): string =>
    `${nameAndFrequency(station)}, was never heard on ${counted(days, 'day', 'days')} with entries, though ${percent(chance)} of 100 such sets hear it: off the air, a fault of the set, or the list of stations?`,
  heardThoughUnlikely: (station: LoggedStation, light: Light, chance: number): string =>
    `${nameAndFrequency(station)}, was heard ${LIGHT_WORDS[light]} on several days, though only ${percent(chance)} of 100 such sets hear it: the set or the place is better than described.`,
} as const;

/** What does not fit of a station, each a sentence; one never heard is said once, by the light in which it is likelier. */
export function logSurprises(station: LoggedStation): string[] {
  const silent = LIGHTS.map((light) => station.lights[light]).filter(({ surprise }) => surprise === 'never-heard');
  if (silent.length > 0)
    return [
      logAnswer.neverHeard(
        station,
        Math.max(...silent.map(({ chance = 0 }) => chance)),
        Math.max(...silent.map(({ days }) => days)),
      ),
    ];
  return LIGHTS.filter((light) => station.lights[light].surprise === 'heard-though-unlikely').map((light) =>
    logAnswer.heardThoughUnlikely(station, light, station.lights[light].chance ?? 0),
  );
}

import type { SunState } from '../../../../engine/place/sun.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { kHz } from '../../figures.ts';
import { counted } from '../grammar.ts';

const SUN: Readonly<Record<SunState['state'], string>> = { day: 'day', dusk: 'dusk', night: 'night', dawn: 'dawn' };

interface Named {
  readonly name: string;
  readonly frequency: number;
}
/** "Quayside, 1458 kHz". */
export const nameAndFrequency = ({ name, frequency }: Named): string => `${name}, ${kHz(frequency)} kHz`;

/** As written; of a row its own figures, of anything larger nothing. */
const plainValue = (value: unknown): string =>
  typeof value === 'object' && value !== null
    ? Object.values(value)
        .filter((one) => typeof one !== 'object')
        .join(', ')
    : String(value);

/** Work that takes long. */
const TASKS = {
  calculation: 'calculating',
  listening: 'calculating the sound',
  suggestions: 'looking for improvements',
  search: 'looking for sets',
  film: 'drawing the film',
} as const;
export type LongTask = keyof typeof TASKS;

/** What commands say beside their answer. */
export const cliNotes = {
  note: (text: string): string => `note: ${text}`,
  onBand: (band: string, others: readonly string[]): string =>
    `the band switch is on “${band}”; --switch ${others.map((one) => `"${one}"`).join(' or --switch ')} turns it`,
  written: (file: string): string => `Written to ${file}`,
  progress: (task: LongTask, percent: number): string => `${TASKS[task]} ${percent} % (Ctrl-C stops it)`,
  outOfRange: (station: string, where: string): string => `note: ${station} is ${where}; the dial is set to its end`,
  suggestionsFor: (advised: number, stations: number): string =>
    `note: suggestions are for the ${advised} stations received best of ${stations}; --station adds another`,
} as const;

/** `faintwave path`. */
export const pathAnswer = {
  title: (set: string, place: string): string => `${set} at ${place}`,
  station: (station: Named, sentence: string): string => `${nameAndFrequency(station)}: ${sentence}`,
  assumed: (values: readonly { readonly place: string; readonly value: unknown }[]): string =>
    [
      `Assumed (${counted(values.length, 'value', 'values')}; change or confirm them, then take them off the list "assumed"):`,
      ...values.map(({ place, value }) => `  ${place}: ${plainValue(value)}`),
    ].join('\n'),
  suggestions: 'What would help most',
  audio: 'Limits of the programme after the detector',
  stations: 'All stations',
} as const;

/** `faintwave stations`. */
export const stationsAnswer = {
  title: (place: string, set: string, time: string): string => `Stations at ${place} with ${set}, ${time}`,
  time: { day: 'by day', night: 'by night' },
  /** @param written the moment in UTC */
  moment: (written: string, sun: SunState['state'] | undefined): string =>
    sun === undefined ? `${written} UTC` : `${written} UTC (${SUN[sun]})`,
  none: 'No stations are listed yet.',
  first: (station: string, verdict: string, disturbedBy: string | undefined): string =>
    disturbedBy === undefined
      ? `► Try ${station} first: ${verdict}, without interference.`
      : `► Try ${station} first: ${verdict}; ${disturbedBy}.`,
  noneHeard: 'This set receives none of them.',
  columns: 'columns read as',
  column: (header: string, field: string | undefined, unit: string | undefined): string =>
    field === undefined
      ? `${header}: not used`
      : unit === undefined
        ? `${header}: ${field}`
        : `${header}: ${field}, ${unit}`,
  read: (stations: number): string => `${counted(stations, 'station', 'stations')} read`,
} as const;

/** `faintwave compare`. */
export const compareAnswer = {
  title: (station: Named, set: string): string => `${nameAndFrequency(station)}, on ${set}: loudest first`,
  severalOnly: (option: string): string => `${option} goes with two sets or more`,
  merits: 'What each is good for',
  merit: (detector: string, merit: string, detection: string): string => `${detector}: ${merit} ${detection}`,
  explanation:
    '“difference”: against the detector in the set. “loading loss”: the fall of the voltage at the detector’s tap when the detector is connected. “linear above”: the carrier voltage at which square law gives way to linear detection, in this set. “best load”: a resistor in place of the load in the set.',
} as const;

/** `faintwave match`. */
export const matchAnswer = {
  title: (station: Named, set: string): string => `${nameAndFrequency(station)}, on ${set}`,
  nothing:
    'There is nothing to match: no tap, no coupled coils, no transformer, or the station is out of range of the dial.',
  explanation:
    'Optimised separately, retuned each time. Best is the loudest at which the station stays clear of others; for a station with interference it is the clearest.',
} as const;

/** `faintwave wave`. */
export const waveAnswer = {
  title: (station: Named, set: string): string => `${nameAndFrequency(station)}, in ${set}`,
  pictureTitle: (title: string, span: number): string => `${title}: ${formatQuantity(span, 'time', 2)}`,
  toPicture: 'Add --out FILE.svg or FILE.png for the picture.',
  written: (title: string, points: readonly string[], span: number, file: string): string =>
    `${title}: ${points.join(', ')}, ${formatQuantity(span, 'time', 3)} written to ${file}`,
  otherPoints: (points: readonly string[]): string => `Other points: ${points.join('; ')}.`,
  toFiles: 'Add --out FILE.svg or FILE.png for the picture, --out FILE.csv for the numbers.',
  exactWritten: (title: string, points: readonly string[], file: string): string =>
    `${title}: ${points.join(', ')} written to ${file}`,
} as const;

/** `faintwave listen`. */
export const listenAnswer = {
  station: (station: Named, verdict: string): string => `${nameAndFrequency(station)}, ${verdict}`,
  sweep: 'the dial from its low end to its high end',
  band: 'the recorded band',
  loudness: { amplified: 'amplified', 'as in the phones': 'as in the phones' },
  written: (file: string, seconds: number, what: string, loudness: string): string =>
    `${file}: ${formatNumber(seconds, 4)} s of ${what}, ${loudness}.`,
  care: 'Start listening with the volume down.',
} as const;

const BANDS = { 'long wave': 'long wave', 'medium wave': 'medium wave' } as const;

/** `faintwave move`. */
export const moveAnswer = {
  title: (set: string, to: keyof typeof BANDS): string => `${set}, moved to ${BANDS[to]}`,
  /** The name of the moved set. */
  name: (set: string, to: keyof typeof BANDS): string => `${set}, on ${BANDS[to]}`,
  changes: 'Changes',
} as const;

/** `faintwave rework`. */
export const reworkAnswer = {
  title: (set: string, station: string): string => `${set}, for ${station}`,
  noTraps: 'The set has no wave trap.',
  oneOnly: '--stop does not go with --two-circuits: give one of them',
  notWritten: (file: string): string => `${file} is not written: there is nothing to change`,
} as const;

/** `faintwave sheets`. */
export const sheetsAnswer = {
  title: (set: string, sheets: readonly string[] | undefined): string =>
    sheets === undefined ? `${set}: sheets` : `${set}: ${sheets.join(', ')}`,
  sheets: (set: string, sheets: readonly string[]): string => `${set}: ${sheets.join('; ')}.`,
  written: (pages: number): string => `${counted(pages, 'page', 'pages')}, written to:`,
  printing: 'Print at 100 % (“actual size”), and check the ruler before you cut.',
} as const;

/** `faintwave share`. */
export const shareAnswer = {
  written: (files: readonly string[]): string => `Written: ${files.join(', ')}`,
  photo: (file: string): string => `${file}: expected a whole JPEG or PNG picture`,
  photoTooLarge: (file: string, most: number): string =>
    `${file}: expected at most ${most / 1e6} MB; make the picture smaller first`,
  writeUpOnly: (option: string): string => `${option} goes with --html or --markdown`,
  linkOnly: (option: string): string => `${option} does not go with --html or --markdown`,
  coarse:
    'note: the position of the place is rounded to 0.1° in the link, about 10 km; --exact-position leaves it as it is',
} as const;

/** `faintwave check`. */
export const checkAnswer = {
  fine: (file: string, set: string): string => `${file}: ${set}: no problems.`,
} as const;

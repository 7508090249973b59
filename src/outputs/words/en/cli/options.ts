import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import { counted } from '../grammar.ts';

/** How each want is written after --want. */
export const WANT_FORMS =
  '"loudest NAME", "clear NAME from NAME by 20 dB", "band 531-1602", "most stations", "speech NAME" or "fewest parts"';

/** What an option should have been: each code with its figures, SI. */
export interface OptionExpectations {
  readonly 'quantity.range': { readonly kind: QuantityKind; readonly min: number; readonly max: number };
  readonly 'number.range': { readonly min: number; readonly max: number };
  readonly 'one of': { readonly choices: readonly string[] };
  readonly 'a value': Record<never, never>;
  readonly 'no value': Record<never, never>;
  /** Options that a command has. */
  readonly options: { readonly options: readonly string[] };
  readonly 'size in px': Record<never, never>;
  readonly 'pixels at most': { readonly most: number };
  readonly 'size of board': Record<never, never>;
  /** Endings of a file's name, without the dot. */
  readonly ending: { readonly endings: readonly string[] };
  readonly 'sound file': Record<never, never>;
  readonly folder: Record<never, never>;
  readonly 'place or set': Record<never, never>;
  readonly 'frequency of band': Record<never, never>;
  readonly 'positive numbers': Record<never, never>;
  readonly moment: Record<never, never>;
  readonly want: Record<never, never>;
  /** The first stations of a place, and how many more there are. */
  readonly station: {
    readonly stations: readonly { readonly name: string; readonly frequency: number }[];
    readonly more: number;
  };
  /** Points of a set; the name given fits several. */
  readonly point: { readonly points: readonly string[]; readonly several: boolean };
  /** Titles of a set's scenes; the text given fits several. */
  readonly scene: { readonly scenes: readonly string[]; readonly several: boolean };
  readonly 'even size': Record<never, never>;
  readonly 'points at most': { readonly most: number };
}
export type OptionExpectation = {
  readonly [C in keyof OptionExpectations]: { readonly code: C } & Readonly<OptionExpectations[C]>;
}[keyof OptionExpectations];

const plain = (value: number): string => (Math.abs(value) < 1e-3 ? String(value) : formatNumber(value, 12));
const oneOf = (choices: readonly string[]): string =>
  new Intl.ListFormat('en-GB', { type: 'disjunction' }).format(choices);

const EXPECTED: { readonly [C in keyof OptionExpectations]: (figures: OptionExpectations[C]) => string } = {
  'quantity.range': ({ kind, min, max }) => `${formatQuantity(min, kind)} to ${formatQuantity(max, kind)}`,
  'number.range': ({ min, max }) => `a number from ${plain(min)} to ${plain(max)}`,
  'one of': ({ choices }) => oneOf(choices),
  'a value': () => 'a value',
  'no value': () => 'no value',
  options: ({ options }) => (options.length > 0 ? oneOf(options) : 'no option'),
  'size in px': () => '200x120 to 20000x20000, such as 1920x1080',
  'pixels at most': ({ most }) => `a picture of ${plain(most / 1e6)} million px at most`,
  'size of board': () => 'a width and a length of 20 mm to 2 m each, such as 200mmx300mm',
  ending: ({ endings }) => `a name ending in ${oneOf(endings.map((one) => `.${one}`))}`,
  'sound file': () => 'a file for the sound, such as heard.wav',
  'place or set': () => 'a place, or a set that stands in it, such as examples/medium-wave-galena.json',
  folder: () => 'a folder for the sheets',
  'frequency of band': () => 'a frequency in kHz with --band',
  'positive numbers': () => 'numbers above 0 and below 10000, such as 12,18',
  moment: () => 'a time such as 2026-01-15T21:00Z',
  want: () => WANT_FORMS,
  station: ({ stations, more }) => {
    const named = stations.map((s) => `${s.name} (${formatNumber(s.frequency / 1e3, 5)} kHz)`);
    return `part of a name or the frequency of one of ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  },
  point: ({ points, several }) =>
    several ? `a name that fits only one of ${points.join('; ')}` : `one of ${points.join('; ')}`,
  scene: ({ scenes, several }) =>
    several
      ? `a title that fits only one of ${scenes.join('; ')}`
      : `1 to ${scenes.length}, or part of one of ${scenes.join('; ')}`,
  'even size': () => 'an even width and an even height, such as 1280x720',
  'points at most': ({ most }) => `at most ${counted(most, 'point', 'points')}`,
};

const MOST_LETTERS = 60;
const quoted = (text: string | undefined): string =>
  text === undefined ? 'nothing' : `"${text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS)}…` : text}"`;

/**
 * What is wrong with an option: `--for: expected 50 ns to 5 s, got "75 mm"`.
 * @param given as it was written; undefined for nothing. @param hint a way out, where there is one.
 */
export const optionProblem = (
  option: string,
  expected: OptionExpectation,
  given: string | undefined,
  hint?: string,
): string => {
  const what = (EXPECTED[expected.code] as (figures: OptionExpectation) => string)(expected);
  return `${option}: expected ${what}, got ${quoted(given)}${hint ? ` (${hint})` : ''}`;
};

/** Other problems of a call. */
export const callProblems = {
  noCommand: (name: string, commands: readonly string[]): string =>
    `there is no command "${name}"; expected ${oneOf(commands)}`,
  /** Where the options of a call stand in `optionProblem`. */
  options: 'options',
  beginsWithDash: (option: string): string => `a value that begins with "-" is written ${option}=-…`,
  oneFile: (files: readonly string[]): string =>
    `expected one file, got ${files.map(quoted).join(', ')}; a name with spaces goes between quotes`,
  noFile: (file: string): string => `expected no file, got ${quoted(file)}; --out names the file to write`,
  nameSet: 'name a description file, such as examples/medium-wave-galena.json',
  setAndLog:
    'name a description file and a log: a table with the columns time, heard and station, frequency or pointer',
  mostSets: (most: number, given: number): string => `expected up to ${most} sets to compare, got ${given}`,
  noBandSwitch: '--switch is for a set with a band switch; this set has none',
  nameSets: 'name at least one description file',
  nameBox: 'name a box of parts, such as examples/boxes/beginner.json',
  dayAndNight: 'expected --day or --night, got both',
  needsExact: (option: string): string => `${option} goes with --exact`,
  notWithExact: (option: string): string => `${option} does not go with --exact, which shows the set as it is`,
  notWithSheet: (option: string): string => `${option} does not go with --sheet, which is of the set as it should be`,
  needsSheet: (option: string): string => `${option} goes with --sheet`,
  noStations: 'the place of this set lists no stations yet',
  noWave: 'this set receives no station, so there is no wave to draw',
  onePoint: '--out: a sound is of one point; name it with --point',
  filmOrFrames: '--out is for one file and --frames for a folder of pictures: give one of them',
  sceneOfGif: (count: number): string =>
    `a GIF of all ${count} scenes would be too large to be loaded: name one with --scene, by its number or title`,
  noFfmpeg: (program: string): string =>
    `${quoted(program)} could not be started, or is not ffmpeg, the program that encodes MP4 and WebM films. Install ffmpeg, or say where it is with --ffmpeg PROGRAM. Without it: --out FILE.gif for an animated picture, --frames FOLDER for the pictures and the sound to be joined in a video editor, or the view Explain of the page, which makes films by itself`,
  noEncoder: (program: string, encoders: readonly string[], ending: string): string =>
    `${quoted(program)} has none of the encoders ${encoders.join(', ')} that a film ending in .${ending} needs; use the other ending, or name another ffmpeg with --ffmpeg`,
  noSoundEncoder: (program: string, encoders: readonly string[], ending: string): string =>
    `${quoted(program)} has none of the encoders ${encoders.join(', ')} that the sound of a film ending in .${ending} needs; make the film without sound with --silent, use the other ending, or name another ffmpeg with --ffmpeg`,
  noTemporaryFiles: (folder: string, reason: string): string =>
    `temporary files cannot be written in ${folder}: ${reason}. Free some space there, or name another folder in the environment variable TMPDIR (on Windows TEMP)`,
  ffmpegFailed: (reason: string): string => `ffmpeg could not make the film: ${reason}`,
  /** @param others further options that it goes with, as they are written. */
  needsEnding: (option: string, endings: readonly string[], others: readonly string[]): string =>
    `${option} goes with ${oneOf([...endings.map((one) => `--out FILE.${one}`), ...others])}`,
  noHeater: '--heater is for a set whose detector is a valve; this set has another detector',
  noSheets: (sheets: readonly string[]): string =>
    `--only: this set has no ${oneOf(sheets)} sheet; leave --only out for those it has`,
  noCentre: (file: string): string =>
    `neither the header nor the name of ${file} gives its centre frequency: give --centre kHz`,
  onBandAlready: (band: string): string => `the set is on ${band} already`,
  nameCalculation: (names: readonly string[]): string => `name a calculation: ${oneOf(names)}`,
  oneInput: (file: string): string => `expected one file, got ${quoted(file)} too`,
  notJson: (file: string | undefined, reason: string): string => `${file ?? 'the input'} is not JSON: ${reason}`,
  rowsAtMost: (most: number): string => `expected at most ${most} rows in one call`,
  /** Of a description: how many, then each on a line of its own. */
  inFile: (file: string, count: number): string => `${file} has ${count === 1 ? 'a problem' : `${count} problems`}:`,
  inInput: (count: number): string => (count === 1 ? 'a problem:' : `${count} problems:`),
  inputExample: (json: string): string => `For example: ${json}`,
  notCalculable: (reason: string): string => `this cannot be calculated as described: ${reason}`,
  programFault: (reason: string): string => `a fault of the program itself: ${reason}`,
} as const;

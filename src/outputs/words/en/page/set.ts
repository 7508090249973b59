import type { QuantityKind } from '../../../../engine/units/parse.ts';
import { levelSpan, spanText } from '../../ranges.ts';
import { plural } from '../grammar.ts';

/** A station's frequency: whole kilohertz where it is whole. */
export const stationFrequency = (frequency: number): string => `${Number((frequency / 1e3).toFixed(1))} kHz`;

const FULL_DECIBELS = 10;
const SMALL_LOSS = 0.05;

/** The view of the set: answer, path, list of stations, suggestions, warnings. */
export const setWords = {
  answer: 'Result',
  notCalculated: 'This set could not be calculated.',
  calculating: 'Calculating…',
  firstFigures: 'First figures, of the set exactly as described; those of sets as they are built follow.',
  station: (name: string, frequency: number): string => `${name}, ${stationFrequency(frequency)}.`,
  failed: (reason: string, figuresStay: boolean): string =>
    figuresStay ? `${reason} The figures are those of the set before.` : reason,
  stations: 'Stations, best first',
  noStations: 'No stations yet: add some under “Field”.',
  leftOutSentence: 'Left out of the figures: give its field strength, or its power with its distance or position.',
  leftOut: 'left out: no field strength, or power with distance, is given',
  path: (station: string | undefined): string =>
    station === undefined ? 'Path from the field to the ear' : `Path of ${station}, from the field to the ear`,
  stages: {
    field: 'Field',
    aerial: 'Aerial',
    'tuned circuit': 'Tuned circuit',
    detector: 'Detector',
    audio: 'After detector',
    phones: 'Phones',
    ear: 'Ear',
  },
  workbenches: {
    field: 'Field: place and stations',
    aerial: 'Aerial and earth',
    'tuned circuit': 'Tuned circuit',
    detector: 'Detector',
    audio: 'After the detector',
    phones: 'Phones',
    ear: 'At the ear',
  },
  /** Loads that stand in the place of phones. */
  loads: { amplifier: 'Amplifier', 'crystal earpiece': 'Earpiece' },
  hasWarning: 'has a warning',
  /** @param change of the power at this stage, dB */
  powerLoss: (change: number): string =>
    change > -SMALL_LOSS
      ? 'no power loss'
      : `${change <= -FULL_DECIBELS ? Math.round(-change) : (-change).toFixed(1)} dB power loss`,
  /** Of a stage where no power is lost that the figure speaks of. */
  rangeInPath: (
    range: readonly [number, number],
    { id, kind }: { readonly id: string; readonly kind: QuantityKind },
  ): string => `90\u00a0%: ${id === 'ear' ? levelSpan(range) : spanText(range, kind)}`,
  lossBar: 'The bar is the power lost here, from none to 20 dB.',
  /** Before a change that is being tried. */
  was: (figure: string): string => `was ${figure}`,
  stageOf: (station: string): string => `${station}:`,
  /** Of the level of a stage, whose figure stands in the path. */
  range: (range: readonly [number, number], kind: QuantityKind): string => `(90\u00a0%: ${spanText(range, kind)})`,
  rangeAtEar: (range: readonly [number, number]): string => `(90\u00a0%: ${levelSpan(range)}\u00a0dB SPL)`,
  suggestionsHere: (suggestions: readonly string[]): string => `Suggested here: ${suggestions.join('; ')}.`,
} as const;

/** A change that is being tried. */
export const trialWords = {
  label: 'Change being tried',
  keep: 'Keep',
} as const;

/** The side of the set's view. */
export const sideWords = {
  label: 'Suggestions, warnings and cautions',
  suggestions: (station: string): string => `Suggestions for ${station}`,
  noSuggestions: 'None of the changes tried improves this station much.',
  trying: 'Trying changes…',
  showField: 'Show where this is changed',
  tryIt: 'Try',
  trySuggestion: (what: string): string => `Try: ${what}`,
  besides: (effects: string): string => ` ${effects}`,
  interference: 'Interference',
  noInterference: 'No listed station interferes.',
  warnings: 'Warnings and notes',
  cautions: (count: number): string => `Take care: ${count} ${plural(count, 'caution', 'cautions')}`,
} as const;

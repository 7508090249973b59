import { SPOT_SHARES, type Whisker } from '../../../../engine/parts/detector/surface.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { grainsText } from '../crystal-spots.ts';
import { plural } from '../grammar.ts';

/** The detector's workbench. */
export const detectorBenchWords = {
  title: (detector: string | undefined): string => (detector === undefined ? 'Detector' : `Detector: ${detector}`),
  kind: 'Kind of detector',
  zeroBiasResistance: 'Resistance at zero volts',
  inputResistance: (station: string): string => `Input resistance, on ${station}`,
  carrier: 'Carrier at the detector, peak',
  directVoltage: 'Direct voltage after the detector',
  facts: 'Facts about this kind',
  curve: (station: string): string => `Characteristic and operating point, on ${station}`,
  changeLabel: (detector: string): string => `Detector: ${detector}`,
  spotLabel: (touch: string): string => `Crystal: ${touch}`,
} as const;

/** Least difference that is given, dB. */
const LEAST = 0.5;
const turns = (n: number): string => `${formatNumber(n, 4)} ${plural(n, 'turn', 'turns')}`;
const level = (dB: number): string => formatQuantity(dB, 'level');

interface Louder {
  readonly label: string;
  /** Against the set's own detector, dB. */
  readonly difference: number;
}

/** The comparison of detectors on one station. */
export const compareWords = {
  title: (station: string): string => `Compare detectors on ${station}`,
  failed: (reason: string): string => `The detectors cannot be compared: ${reason}`,
  trying: 'Trying each detector…',
  table: 'Detectors compared',
  columns: {
    detector: 'Detector',
    sound: 'Sound',
    heard: 'Heard',
    directVoltage: 'Direct voltage',
    inputResistance: 'Input resistance',
    loadedQ: 'Loaded Q',
    distortion: 'Distortion',
    linearAbove: 'Linear above',
    bestTap: 'Best tap',
    bestLoad: 'Best load',
  },
  use: 'Use',
  useLabel: (detector: string): string => `Use ${detector}`,
  moreColumns: 'More columns',
  sound: (soundPressureLevel: number, difference: number): string =>
    `${Math.round(soundPressureLevel)} dB SPL (${level(difference)})`,
  /** @param loading change of the voltage at the tap, dB */
  inputResistance: (resistance: number, loading: number): string =>
    `${formatQuantity(resistance, 'resistance', 2)} (${formatQuantity(-loading, 'level', 2)})`,
  /** @param of what the gain is of: loudness, or the level above other stations */
  bestTap: (tap: number, gain: number, of: 'loudness' | 'clearance'): string =>
    gain < LEAST
      ? turns(tap)
      : of === 'clearance'
        ? `${turns(tap)}, ${level(gain)} against interference`
        : `${turns(tap)}, ${level(gain)}`,
  bestLoad: (resistance: number, gain: number): string =>
    gain < LEAST
      ? formatQuantity(resistance, 'resistance', 2)
      : `${formatQuantity(resistance, 'resistance', 2)}, ${level(gain)}`,
  /** @param own whether the loudest is in the set already */
  result: (best: Louder, least: Louder, own: boolean, gap: number): string =>
    own
      ? `Loudest here: ${best.label}, which is in the set. It is ${gap} dB louder than ${least.label}.`
      : best.difference >= LEAST
        ? `Loudest here: ${best.label}, ${level(best.difference)} against the detector in the set. It is ${gap} dB louder than ${least.label}.`
        : `Loudest here: ${best.label}, as loud as the detector in the set. It is ${gap} dB louder than ${least.label}.`,
  about:
    'The ticked detectors are drawn below. Input resistance is that of the detector at its tap; the figure in brackets is the loading loss there. A weak carrier is detected by square law: half the carrier gives a quarter of the sound. “Linear above” is the peak carrier at the detector above which detection is nearer to linear than to square law, in this set. Best load is a plain resistance in place of the load, with the tap and everything else unchanged.',
  curvesNearZero: 'Near zero: thick where the carrier swings, a dot at the mean operating point',
  curves: 'Characteristics: thick where the carrier swings, a dot at the mean operating point',
  merits: 'Uses of each',
  /** A detector at the head of its sentences. */
  heading: (label: string): string => `${label}:`,
} as const;

/** Searching the crystal. */
export const crystalWords = {
  title: 'Search the crystal for a good spot',
  how: 'Touch it with the pointer, or with the arrow keys (Shift: longer steps).',
  /** Until this crystal was surveyed. */
  usual: (): string => grainsText(SPOT_SHARES),
  face: 'Crystal face, to be probed with the arrow keys',
  spot: (touch: string): string => `${touch}.`,
  resistance: (resistance: number): string =>
    `Resistance at zero volts ${formatQuantity(resistance, 'resistance', 2)}.`,
  /** @param overGood dB over a good spot */
  heard: (station: string, soundPressureLevel: number, overGood: number): string =>
    Math.abs(overGood) < LEAST
      ? `${station}: ${Math.round(soundPressureLevel)} dB SPL, as loud as with a good spot;`
      : overGood > 0
        ? `${station}: ${Math.round(soundPressureLevel)} dB SPL, ${formatNumber(overGood, 2)} dB above a good spot;`
        : `${station}: ${Math.round(soundPressureLevel)} dB SPL, ${formatNumber(-overGood, 2)} dB below a good spot;`,
  verdict: (verdict: string): string => `${verdict}.`,
  pressure: 'Pressure',
  whisker: 'Whisker',
  whiskers: {
    'phosphor bronze': 'phosphor bronze',
    brass: 'brass',
    copper: 'copper',
    gold: 'gold',
    steel: 'steel',
    silver: 'silver',
  } satisfies Readonly<Record<Whisker, string>>,
  knock: 'Knock the table',
  use: 'Use this spot',
} as const;

/** A valve's heater, switched on and off. */
export const heaterPanelWords = {
  title: (station: string): string => `The heater, switched on and off, on ${station}`,
  failed: (reason: string): string => `The heater’s course cannot be calculated: ${reason}`,
  calculating: 'Calculating how it warms and cools…',
  plot: 'Loudness and anode current',
} as const;

/** Waves at any point of the set. */
export const wavesPanelWords = {
  title: (station: string): string => `Waves at any point of the set, on ${station}`,
  name: 'Waves',
  about:
    'The whole circuit, calculated through every cycle of the carrier: what a probe of infinite resistance would show.',
  points: (most: number): string => `Points (up to ${most})`,
  duration: 'Duration',
  begin: 'From',
  begins: { settled: 'after settling', 'coming on': 'when the carrier is switched on' },
  neighbours: 'with other stations',
  progress: 'Calculating the waves',
  stop: 'Stop',
  again: 'Calculate again',
  failed: (reason: string): string => `The waves cannot be calculated: ${reason}`,
  closer: 'Zoom in',
  farther: 'Zoom out',
  earlier: 'Earlier',
  later: 'Later',
  wholeRun: 'The whole run',
  singleCycles: 'Single cycles',
  canvas: 'The waves. Up and down arrows zoom, left and right move along, Home shows the whole run.',
  /** @param stretch what is in sight, a sentence */
  how: (stretch: string): string =>
    `${stretch} Drag to move along; + and − or the wheel (after a click into the picture) zoom.`,
  readings: 'Readings of a probe',
  saveCsv: 'Save as CSV',
  saveSvg: 'Save as SVG',
  savePng: 'Save as PNG',
} as const;

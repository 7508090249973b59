import { formatNumber } from '../../../../engine/units/format.ts';
import { bandSpan, bandwidthText } from '../../figures.ts';
import { levelSpan, numberSpan, spanBeside, spanText } from '../../ranges.ts';
import { stationFrequency } from './set.ts';

/** Aerial and earth: titles and figures. */
export const aerialWords = {
  title: 'Aerial',
  kind: 'Kind of aerial',
  capacitance: 'Capacitance',
  radiationResistanceAt: (frequency: number): string => `Radiation resistance at ${stationFrequency(frequency)}`,
  effectiveHeightAt: (frequency: number): string => `Effective height at ${stationFrequency(frequency)}`,
  inductance: 'Inductance',
  unloadedQAt: (frequency: number): string => `Unloaded Q at ${stationFrequency(frequency)}`,
  resistanceAt: (frequency: number): string => `Resistance at ${stationFrequency(frequency)}`,
  selfCapacitance: 'Self-capacitance',
  wireLength: 'Length of wire',
  noEarth: {
    frame: 'A frame aerial needs no earth: none is connected.',
    'ferrite rod': 'A ferrite rod needs no earth: none is connected.',
  },
} as const;

export const earthWords = {
  title: 'Earth',
  kind: 'Kind of earth',
  resistance: 'Resistance',
  range: (value: number, range: readonly [number, number]): string => spanBeside(value, range, 'resistance'),
} as const;

/** Coils, tuning capacitor and how they are connected. */
export const tunedCircuitWords = {
  loadedQ: (station: string): string => `Loaded Q, on ${station}`,
  unloadedQ: 'Unloaded Q (coil and capacitor)',
  bandwidth: 'Bandwidth (−3 dB)',
  bandwidthText,
  plots: 'Selectivity',
  resonance: (station: string): string => `Response tuned to ${station}`,
  resonanceOutOfRange: (station: string): string => `Response around ${station}, out of range`,
  band: 'Response across the band, at the same setting',
  arrangement: 'How it is connected',
  arrangementKind: 'Arrangement',
  addCoil: 'Add a coil',
  addCoilLabel: 'add a coil',
  removeCoil: 'Remove',
  removeCoilLabel: (name: string): string => `remove coil ${name}`,
  coil: (name: string | undefined): string => (name === undefined ? 'Coil' : `Coil “${name}”`),
  coilShape: 'Shape',
  inductance: 'Inductance',
  qAt: (frequency: number): string => `Q at ${stationFrequency(frequency)}`,
  qRange: (range: readonly [number, number]): string => `(${numberSpan(range)})`,
  selfCapacitance: 'Self-capacitance',
  selfResonance: 'Self-resonance',
  wireLength: 'Length of wire',
  dcResistance: 'Direct-current resistance',
  qPlot: 'Q against frequency',
  capacitor: 'Tuning capacitor',
  capacitorKind: 'Kind of capacitor',
  total: 'Total capacitance, fully open to fully meshed',
  totalRange: (low: number, high: number): string => spanText([low, high], 'capacitance'),
  covers: 'Tuning range',
  coversRange: bandSpan,
  coverage: 'Tuning range',
  coverageBand: 'as described',
} as const;

/** What stands between the detector and the phones. */
export const afterDetectorWords = {
  title: {
    amplifier: 'Between detector and amplifier',
    'crystal earpiece': 'Between detector and earpiece',
    phones: 'Between detector and phones',
  },
  directVoltage: 'Direct voltage',
  audioVoltage: 'Audio voltage',
  distortion: 'Distortion of a tone',
  programme: (station: string): string => `Effect on the programme, on ${station}`,
} as const;

export const loadWords = {
  title: 'Phones or other load',
  kind: 'Kind of load',
  directResistance: 'Direct-current resistance',
  impedance: 'Impedance at 1 kHz',
  power: (station: string): string => `Power from ${station}`,
} as const;

export const earWords = {
  title: 'Where you listen',
  atEar: (station: string): string => `${station} at the ear`,
  soundPressureLevel: (level: number | undefined): string =>
    level === undefined ? '—' : `${formatNumber(level, 2)} dB SPL`,
  levelRange: (range: readonly [number, number]): string => `(90\u00a0%: ${levelSpan(range)})`,
  margin: 'Above the hearing threshold here',
  decibels: (level: number | undefined): string => (level === undefined ? '—' : `${formatNumber(level, 2)} dB`),
  verdict: 'Result',
} as const;

/** Turns for a range of frequencies. */
export const bandWords = {
  title: 'Turns for a band, or for another band',
  about: 'On the same formers and with the same wire; taps in proportion.',
  band: 'Band',
  bands: { 'long wave': 'Long wave', 'medium wave': 'Medium wave', own: 'Own range' },
  from: 'From',
  to: 'To',
  notAFrequency: 'Write a frequency from 100 kHz to 30 MHz, as in “150 kHz”.',
  notRising: 'The upper end must lie above the lower.',
  trying: 'Calculating the turns…',
  notFound: (reason: string): string => `The turns cannot be calculated: ${reason}`,
  alike: 'The set has these turns already.',
  take: 'Use it',
  takeLabel: 'Use these turns in the set',
  undoLabel: (from: number, to: number): string => `turns for ${bandSpan(from, to)}`,
  taken: (from: number, to: number): string => `Wound for ${bandSpan(from, to)}.`,
} as const;

/** Best taps, coupling and transformer for one station. */
export const matchingWords = {
  findTaps: (station: string): string => `Find the best taps for ${station}`,
  find: {
    'aerial tap': (station: string): string => `Find the best aerial tap for ${station}`,
    'detector tap': (station: string): string => `Find the best detector tap for ${station}`,
    'distance of the coils': (station: string): string => `Find the best distance of the coils for ${station}`,
    'coupling of the coils': (station: string): string => `Find the best coupling of the coils for ${station}`,
    'series capacitor': (station: string): string => `Find the best series capacitor for ${station}`,
    transformer: (station: string): string => `Find the best transformer for ${station}`,
  },
  notFound: (reason: string): string => `The best values cannot be calculated: ${reason}`,
  trying: 'Trying one after another…',
  nothingToSet: 'This arrangement has none of these to set.',
  heading: (name: string): string => `${name}.`,
  take: 'Take it',
  takeLabel: (name: string): string => `Take the best: ${name}`,
  undoLabel: (name: string): string => `best ${name}`,
  about:
    'Optimised separately, retuned each time. Best is the loudest value at which no other station interferes; for a station with interference it is the value with the least.',
} as const;

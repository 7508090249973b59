import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { axisKHz, bandwidthText, wholeDB } from '../figures.ts';
import { numberSpan } from '../ranges.ts';
import { listOf } from './grammar.ts';
import { setLetter } from './set-letter.ts';

const khz = (f: number): string => `${axisKHz(f)} kHz`;
/** A bandwidth: one decimal below 100 kHz. */
const decibels = (x: number): string => `${wholeDB(x)} dB`;
const volts = (x: number): string => formatQuantity(x, 'voltage', 2);
const amperes = (x: number): string => formatQuantity(x, 'current', 2);
const field = (x: number): string => formatQuantity(x, 'field strength', 2);
const distance = (metres: number): string => `${formatNumber(metres / 1e3, 3)} km`;

/** A station as a plot names it. */
interface Named {
  readonly name: string;
  readonly frequency: number;
}
const station = ({ name, frequency }: Named): string => `${name} (${khz(frequency)})`;

/** Axes, by what they show. */
export const axisNames = {
  level: 'level',
  voltage: 'voltage',
  current: 'current',
  loudness: 'loudness',
  time: 'time',
  sinceSwitched: 'time since switched',
  distance: 'distance',
  fieldStrength: 'field strength',
  q: 'Q',
} as const;

export const bandPlotWords = {
  title: (tunedTo: string | undefined): string =>
    tunedTo === undefined
      ? 'Response across the band at the detector'
      : `Response across the band, tuned to ${tunedTo}`,
  range: (from: number, to: number): string => `From ${axisKHz(from)} to ${khz(to)}.`,
  strongest: (stations: readonly Named[]): string => `Strongest at the detector: ${listOf(stations.map(station))}.`,
  isStrongest: (wanted: Named): string => `At the detector ${station(wanted)} is the strongest.`,
  isBelow: (wanted: Named, below: number): string =>
    `At the detector ${station(wanted)} is ${decibels(below)} below the strongest.`,
  others: (others: readonly (Named & { readonly over: number })[]): string =>
    `Relative to it: ${listOf(others.map((s) => `${station(s)} ${s.over > 0 ? '+' : ''}${decibels(s.over)}`))}.`,
  notch: (frequency: number): string =>
    `There is a notch near ${khz(frequency)}: a part of the circuit is series resonant there (the coil above a tap with the capacitor, or a wave trap).`,
  notchLabel: 'notch: series resonance',
  notchShort: 'notch',
  stem: (s: Named, level: number): string => `${s.name}, ${khz(s.frequency)}: ${decibels(level)}`,
} as const;

export const coveragePlotWords = {
  title: 'Tuning range',
  longWave: 'long wave',
  mediumWave: 'medium wave',
  range: (
    label: string | undefined,
    lowest: number,
    highest: number,
    lowestRange: readonly [number, number] | undefined,
    highestRange: readonly [number, number] | undefined,
  ): string => {
    const spread = (r: readonly [number, number] | undefined): string =>
      r && r[1] > r[0] ? ` (range ${axisKHz(r[0])}–${axisKHz(r[1])})` : '';
    return `${label === undefined ? 'Tunes' : `${label} tunes`} from ${axisKHz(lowest)}${spread(lowestRange)} to ${khz(highest)}${spread(highestRange)}.`;
  },
  gaps: (gaps: readonly (readonly [number, number])[]): string =>
    `Not covered: ${listOf(gaps.map(([a, b]) => `${axisKHz(a)} to ${khz(b)}`))}.`,
  gap: (from: number, to: number): string => `Not covered: ${axisKHz(from)} to ${khz(to)}`,
  gapLabel: 'gap',
  allInRange: 'Every station is within the tuning range.',
  outOfRange: (stations: readonly Named[]): string => `Out of range: ${listOf(stations.map(station))}.`,
  mark: (s: Named, inRange: boolean): string =>
    inRange ? `${s.name}, ${khz(s.frequency)}` : `${s.name}, ${khz(s.frequency)}: out of range`,
  bar: (label: string, lowest: number, highest: number): string => `${label}, ${axisKHz(lowest)}–${khz(highest)}`,
} as const;

interface Operating {
  readonly voltage: number;
  readonly amplitude: number;
  readonly current: number;
}

export const detectorPlotWords = {
  title: 'Detector characteristic near zero',
  description: (own: string, others: readonly string[]): string =>
    others.length === 0
      ? `Current against voltage of the ${own} detector near zero.`
      : `Current against voltage of the ${own} detector near zero, compared with ${listOf(others)}.`,
  operating: ({ voltage, amplitude, current }: Operating): string =>
    `The carrier moves its voltage by ±${volts(amplitude)} about ${volts(voltage)}; the mean current is ${amperes(current)}.`,
  swept: 'Range swept by the carrier',
  point: 'Operating point',
  swing: (amplitude: number): string => `carrier ±${volts(amplitude)}`,
  mean: (current: number, voltage: number): string => `mean ${amperes(current)} at ${volts(voltage)}`,
  compared: (nearZero: boolean): string => (nearZero ? 'Detectors compared near zero' : 'Detectors compared'),
  comparedOperating: (name: string, { voltage, amplitude, current }: Operating): string =>
    `${name}: carrier ±${volts(amplitude)} about ${volts(voltage).replace('-', '−')}, mean current ${amperes(current)}.`,
  comparedSwept: (name: string): string => `${name}: range swept by the carrier`,
} as const;

export const heaterPlotWords = {
  title: 'Heater switched on and off',
  on: 'heater on',
  off: 'heater off',
} as const;

interface Site {
  readonly name?: string;
  readonly distance: number;
  readonly field: number;
}

export const profileWords = {
  title: (name: string): string => `Field strength of ${name} along its path`,
  description: (s: Named, site: Site, ground: readonly { readonly name: string; readonly length: number }[]): string =>
    `${station(s)}: ${field(site.field)} at ${site.name ?? 'the site'}, ${distance(site.distance)} away, over ${listOf(ground.map((g) => `${formatNumber(g.length / 1e3, 2)} km of ${g.name}`))}.`,
  ground: (name: string, from: number, to: number): string => `${name}, ${distance(from)} to ${distance(to)}`,
  boundary: (at: number): string => `coast or change of ground, ${distance(at)}`,
  noise: (noise: number): string => `noise ${field(noise)}`,
  site: (site: Site): string => `${site.name ?? 'here'}: ${field(site.field)}`,
} as const;

export const qWords = {
  title: 'Q against frequency',
  coil: (
    name: string,
    first: { readonly q: number; readonly frequency: number },
    best: { readonly q: number; readonly frequency: number; readonly range?: readonly [number, number] },
    last: { readonly q: number; readonly frequency: number },
  ): string => {
    const q = (x: number): string => formatNumber(x, 2);
    const range = best.range ? ` (range ${numberSpan(best.range)})` : '';
    return `${name}: Q ${q(first.q)} at ${khz(first.frequency)}, highest ${q(best.q)}${range} at ${khz(best.frequency)}, ${q(last.q)} at ${khz(last.frequency)}.`;
  },
  covered: (from: number, to: number): string => `Tuning range ${axisKHz(from)} to ${khz(to)}`,
  range: (name: string): string => `${name}: range of Q`,
  measured: (q: number, frequency: number): string => `measured: Q ${formatNumber(q, 3)} at ${khz(frequency)}`,
} as const;

export const resonanceWords = {
  title: (frequency: number): string => `Resonance curve, ${khz(frequency)}`,
  peak: (tunedTo: Named, peak: number): string =>
    `Tuned to ${tunedTo.name}, ${khz(tunedTo.frequency)}: the level at the detector is highest at ${khz(peak)}.`,
  width: (low: number, high: number, width: number): string =>
    `Bandwidth ${bandwidthText(width)} (−3 dB), from ${axisKHz(low)} to ${khz(high)}.`,
  wide: 'The −3 dB points lie outside the range drawn.',
  loadedQ: (q: number): string => `Loaded Q ${formatNumber(q, 2)}.`,
  attenuated: (stations: readonly (Named & { readonly by: number })[]): string =>
    `The tuned circuit attenuates ${listOf(stations.map((s) => `${station(s)} by ${decibels(s.by)}`))}.`,
  passed: (stations: readonly Named[]): string => `It does not attenuate ${listOf(stations.map(station))}.`,
  caption: (loadedQ: number | undefined, width: number | undefined): string =>
    loadedQ !== undefined && width !== undefined
      ? `loaded Q ${formatNumber(loadedQ, 2)}, bandwidth ${bandwidthText(width)} (−3 dB)`
      : loadedQ !== undefined
        ? `loaded Q ${formatNumber(loadedQ, 2)}`
        : width !== undefined
          ? `bandwidth ${bandwidthText(width)} (−3 dB)`
          : '',
  halfPower: '−3 dB',
  neighbour: (name: string, level: number): string => `${name} ${decibels(level)}`,
} as const;

/** Plots of several sets; each is named by a letter and its name. */
export const setsPlotWords = {
  setLetter,
  setLabel: (index: number, name: string): string => `${setLetter(index)}  ${name}`,
  resonancesTitle: (frequency: number): string => `Resonance curves, ${khz(frequency)}`,
  resonances: (tunedTo: Named): string =>
    `Level at the detector, each set tuned to ${station(tunedTo)}, relative to its own maximum.`,
  bandwidth: (index: number, name: string, width: number): string =>
    `${setLetter(index)}, ${name}: bandwidth ${bandwidthText(width)} (−3 dB).`,
  doesNotTune: (index: number, name: string): string => `${setLetter(index)}, ${name}, does not tune to it.`,
  halfPower: '−3 dB',
  dialsTitle: 'Dials on one scale of frequency',
  dial: (
    { index, name, lowest, highest }: { index: number; name: string; lowest: number; highest: number },
    stations: readonly string[],
  ): string =>
    `${setLetter(index)}, ${name}, tunes ${axisKHz(lowest)} to ${khz(highest)}${stations.length > 0 ? `: ${stations.join('; ')}` : ''}.`,
  covers: (lowest: number, highest: number): string => `${axisKHz(lowest)} to ${khz(highest)}`,
  degrees: (degrees: number): string => `${degrees}°`,
  /** One line of what stands at a frequency. @param of what each set gives there @param named stations there */
  readOff: (frequency: number, of: readonly string[], named: readonly string[]): string =>
    `${khz(frequency)}: ${[...of, ...named].join('; ')}`,
  levelOf: (index: number, level: number): string => `${setLetter(index)} ${decibels(level)}`,
  noLevelOf: (index: number): string => `${setLetter(index)} not calculated`,
  scaleOf: (index: number, degrees: number | undefined): string =>
    `${setLetter(index)} ${degrees === undefined ? 'does not tune to it' : `${Math.round(degrees)}°`}`,
  onDial: (of: Named, degrees: number, verdict: string): string =>
    `${station(of)} at ${Math.round(degrees)}°, ${verdict}`,
} as const;

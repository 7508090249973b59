import type { SCENE_POINTS } from '../../../../engine/set/scenes.ts';
import { formatNumber } from '../../../../engine/units/format.ts';
import { listOf } from '../grammar.ts';
import { duration, hertz, kilohertz, percent, volts } from './format.ts';
import { pointTitles } from './points.ts';

type PointId = (typeof SCENE_POINTS)[number];

/** A row of the wave window, as facts. */
export interface WaveRowFacts {
  readonly point: PointId;
  /** In place of the point’s own title. */
  readonly title?: string;
  /** Hz. */
  readonly carrier: number;
  readonly depth: number;
  /** Peak of the carrier in the aerial, V. */
  readonly aerialVoltage: number;
  /** V. */
  readonly low: number;
  readonly high: number;
  /** V, of an output, at a crest of the programme. */
  readonly meanAtCrest?: number;
  /** Extremes of the average with the lower half covered, V. */
  readonly covered?: readonly [low: number, high: number];
}

function averageSentence({ covered }: WaveRowFacts): string {
  if (!covered) return 'The average is zero.';
  const [low, high] = covered.map(volts);
  return low === high
    ? `With the lower half covered the average is a steady ${high}.`
    : `With the lower half covered the average follows the programme, from ${low} to ${high}.`;
}

function rowSentences(row: WaveRowFacts): string {
  const { point, carrier, depth, aerialVoltage, low, high, meanAtCrest = 0 } = row;
  const name = row.title ?? pointTitles[point];
  switch (point) {
    case 'programme':
      return `${name}: up to ${percent(depth)} of the carrier.`;
    case 'carrier':
      return `${name}: ${kilohertz(carrier)}, ±${volts(aerialVoltage)}. ${averageSentence(row)}`;
    case 'modulated':
    case 'tuned':
      return `${name}: ${kilohertz(carrier)}, up to ±${volts(high)}. ${averageSentence(row)}`;
    case 'detector':
    case 'phones':
      return `${name}: from ${volts(low)} to ${volts(high)}; the average is ${volts(meanAtCrest)} at a crest of the programme.`;
  }
}

/** What is drawn on the wave window and said about it. */
export const waveTexts = {
  title: (span: number): string => `Waves over ${duration(span)}`,
  description: (rows: readonly WaveRowFacts[], span: number, caption = ''): string =>
    [`${duration(span)} from left to right.`, ...rows.map(rowSentences), caption].filter(Boolean).join(' '),
  row: rowSentences,
  average: 'average',
  covered: 'covered',
  range: (low: number, high: number): string => `${volts(low)} to ${volts(high)}`,
  fromZero: (high: number): string => `0 to ${volts(high)}`,
  eitherWay: (high: number): string => `±${volts(high)}`,
  eitherWayShare: (high: number): string => `±${percent(high, 3)}`,
  span: (span: number): string => duration(span),
  across: (span: number): string => `${duration(span)} from left to right`,
  acrossFrom: (span: number, base: string): string => `${duration(span)} from left to right, counted from ${base}`,
  /** Headings of a table. */
  timeColumn: 'time (s)',
  voltageColumn: (name: string): string => `${name} (V)`,
  shareColumn: (name: string): string => `${name} (share of the carrier)`,
  leastColumn: (name: string): string => `${name}, minimum`,
  greatestColumn: (name: string): string => `${name}, maximum`,
} as const;

/** Beside a trace: the waves it is the sum of. Several texts are given longest first, to be chosen by room. */
export const spectrumTexts = {
  audible: 'audible',
  tones: (frequencies: readonly number[]): string => listOf(frequencies.map((f) => hertz(f))),
  recording: 'speech or music',
  carrierAlone: (amplitude: number): string => `one line, ${volts(amplitude)}`,
  carrierWithout: (amplitude: number): string => `carrier ${volts(amplitude)}`,
  sidebands: (carrier: number, sideband: number): readonly string[] => {
    const share = `${formatNumber((100 * sideband) / carrier, 2)} %`;
    return [
      `carrier ${volts(carrier)}, sidebands ${volts(sideband)}: ${share} each`,
      `sidebands ${volts(sideband)}, ${share} each`,
      `sidebands ${volts(sideband)}`,
    ];
  },
  output: (audio: number, ripple: number): readonly string[] => [
    `audio ${volts(audio)}, carrier ripple ${volts(ripple)}`,
    `audio ${volts(audio)}, ripple ${volts(ripple)}`,
    `audio ${volts(audio)}`,
  ],
  outputOfRecording: 'audio',
} as const;

/** What cannot be drawn, as a person reads it. */
export const waveProblems = {
  outOfRange:
    'These settings cannot be drawn. Expected a carrier of 20 kHz to 10 MHz, a depth of modulation of 0 to 300 %, a loaded Q and voltages above 0: put some of them back to the values of the set.',
  failed: 'The waves could not be calculated. Put the settings back to the values of the set, or reload the page.',
} as const;

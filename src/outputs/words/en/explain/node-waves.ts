import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { WavePoint } from '../../../../engine/waves/wave-places.ts';
import { listOf, plural } from '../grammar.ts';
import { wavePointText } from '../wave-points.ts';
import { duration, hertz, kilohertz } from './format.ts';

/** One run through the whole circuit. SI. */
export interface RunFacts {
  readonly station: string;
  readonly carrier: number;
  readonly tone: number;
  readonly duration: number;
  /** Since the stations came on. */
  readonly start: number;
  readonly neighbours: readonly string[];
}

/** What a probe reads at one point. */
export interface ReadingFacts {
  readonly point: WavePoint;
  readonly measure: 'voltage' | 'current';
  readonly reading: {
    readonly least: number;
    readonly greatest: number;
    readonly mean: number;
    readonly carrier: number;
    readonly audio: number;
    readonly secondHarmonic: number;
    readonly depth: number;
  };
}

const FEW = 3;

function runSentence({ station, carrier, tone, duration: length, start, neighbours }: RunFacts): string {
  const what = `${station}, ${kilohertz(carrier)}, with a tone of ${hertz(tone, 3)}`;
  const cycles = formatNumber(Math.round(length * carrier), 3);
  const others =
    neighbours.length === 0
      ? 'no other station is on the air'
      : neighbours.length > FEW
        ? `${neighbours.length} other stations are on the air, among them ${listOf(neighbours.slice(0, FEW))}`
        : `${neighbours.length} other ${plural(neighbours.length, 'station is', 'stations are')} on the air (${listOf(neighbours)})`;
  const began = start < 1e-4 ? 'from switch-on' : `from ${duration(start)} after switch-on`;
  return `${what}; ${others}. Calculated: ${duration(length)}, ${cycles} cycles, ${began}.`;
}

function stretchSentence(carrier: number, from: number, span: number): string {
  const cycles = span * carrier;
  const count = cycles < 10 ? Number(cycles.toPrecision(2)) : Math.round(cycles);
  return `Drawn: ${duration(span)} from ${from === 0 ? 'the start' : duration(from, 3)}, ${formatNumber(count, 3)} ${plural(count, 'cycle', 'cycles')} of the carrier.`;
}

function modulation(depth: number): string {
  const share = Math.round(100 * Math.min(depth, 9.99));
  return share > 100
    ? `modulated ${share} % (over-modulation: an envelope detector gives negative-peak clipping)`
    : `modulated ${share} %`;
}

function readingSentence({ point, measure, reading }: ReadingFacts): string {
  const show = (v: number) => formatQuantity(v, measure, 2);
  const { least, greatest, mean, carrier, audio, secondHarmonic, depth } = reading;
  const size = Math.max(Math.abs(least), Math.abs(greatest));
  const figures = [
    `${show(least)} to ${show(greatest)}`,
    Math.abs(mean) < 2e-3 * size ? 'mean 0' : `mean ${show(mean)}`,
  ];
  if (carrier > 2e-3 * size)
    figures.push(
      depth > 5e-3 ? `carrier ${show(carrier)} peak, ${modulation(depth)}` : `carrier ${show(carrier)} peak`,
    );
  if (audio > 5e-3 * size)
    figures.push(
      secondHarmonic > 5e-3
        ? `audio ${show(audio)} peak with ${formatNumber(100 * secondHarmonic, 2)} % second harmonic`
        : `audio ${show(audio)} peak`,
    );
  return `${wavePointText(point)}: ${figures.join(', ')}.`;
}

/** Waves calculated through the whole circuit. */
export const nodeWaveTexts = {
  title: (station: string): string => `Waves in the set on ${station}`,
  run: runSentence,
  stretch: stretchSentence,
  reading: readingSentence,
  description: (run: RunFacts, from: number, span: number, readings: readonly ReadingFacts[]): string =>
    [runSentence(run), stretchSentence(run.carrier, from, span), ...readings.map(readingSentence)].join(' '),
  range: (measure: ReadingFacts['measure'], least: number, greatest: number): string =>
    `${formatQuantity(least, measure, 2)} to ${formatQuantity(greatest, measure, 2)}`,
  timeColumn: 'time (s)',
  column: (point: WavePoint, measure: ReadingFacts['measure']): string =>
    `${wavePointText(point)} (${measure === 'current' ? 'A' : 'V'})`,
  leastColumn: (point: WavePoint, measure: ReadingFacts['measure']): string =>
    `${wavePointText(point)}, minimum (${measure === 'current' ? 'A' : 'V'})`,
  greatestColumn: (point: WavePoint, measure: ReadingFacts['measure']): string =>
    `${wavePointText(point)}, maximum (${measure === 'current' ? 'A' : 'V'})`,
} as const;

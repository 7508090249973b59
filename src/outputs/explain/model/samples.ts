import type { Hertz, Seconds } from '../../../engine/units/quantities.ts';
import { quotedField } from '../../tables/csv.ts';
import { pointTitles, waveTexts } from '../../words/index.ts';
import type { WaveRow } from '../stage/wave-row.ts';
import { measureAt, type PointId } from './points.ts';
import type { View } from './view.ts';
import type { Waves } from './waves.ts';

/**
 * What an ear would get of a point: its running average without the steady part, as loud as can be without clipping.
 * Before the detector that is nothing at all, and nothing it stays.
 * @returns samples from −1 to 1.
 */
export function audible(
  waves: Waves,
  point: PointId,
  seconds: Seconds,
  rate: Hertz,
  loudest = 0.5,
  from: Seconds = 0,
): Float32Array {
  const { samples, peak } = audioOf(waves, point, seconds, rate, from);
  return Float32Array.from(samples, (v) => (peak > 0 ? (loudest * v) / peak : 0));
}

/** Running average without its steady part, V, and the greatest distance from 0: 0 where it is lost in rounding. */
function audioOf(waves: Waves, point: PointId, seconds: Seconds, rate: Hertz, from: Seconds = 0) {
  const n = Math.max(1, Math.round(seconds * rate));
  const samples = new Float64Array(n);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    samples[i] = waves.meanAt(point, from + i / rate);
    sum += samples[i];
  }
  const steady = sum / n;
  let peak = 0;
  for (let i = 0; i < n; i++) {
    samples[i] -= steady;
    peak = Math.max(peak, Math.abs(samples[i]));
  }
  const { low, high } = waves.scale(point);
  return { samples, peak: peak < 1e-5 * Math.max(Math.abs(low), high) ? 0 : peak };
}

/** Peak of the audio at a point. @param seconds of it that are looked at. @returns V, at the programme a share. */
export const audioPeak = (waves: Waves, point: PointId, seconds: Seconds, rate: Hertz): number =>
  audioOf(waves, point, seconds, rate).peak;

const LARGEST = 400_000;

/** A plain table of numbers: time, and each row's value, or its least and greatest where the waves are closer than the lines. */
export function csvOf(rows: readonly WaveRow[], view: View, lines?: number): string {
  const carrier = Math.max(...rows.map((r) => r.waves.spec.carrier));
  const n = Math.min(LARGEST, lines ?? Math.max(200, Math.min(20_000, Math.ceil(view.span * carrier * 32))));
  const close = view.span * carrier * 8 <= n;
  const heading = ({ title, point }: WaveRow): string => {
    const name = (title ?? pointTitles[point]).replace(/[",\n]/g, ' ');
    return measureAt(point) === 'ratio' ? waveTexts.shareColumn(name) : waveTexts.voltageColumn(name);
  };
  const head = [
    waveTexts.timeColumn,
    ...rows.flatMap((r) => {
      const name = heading(r);
      return close ? [name] : [waveTexts.leastColumn(name), waveTexts.greatestColumn(name)];
    }),
  ].map(quotedField);
  const columns: Float64Array[] = [];
  for (const { waves, point } of rows) {
    if (close)
      columns.push(Float64Array.from({ length: n }, (_, i) => waves.at(point, view.from + (i * view.span) / n)));
    else {
      const min = new Float64Array(n);
      const max = new Float64Array(n);
      waves.extent(point, view.from, view.from + view.span, n, min, max);
      columns.push(min, max);
    }
  }
  const digits = (v: number) => (v === 0 ? '0' : Number(v.toPrecision(7)).toString());
  const body = Array.from({ length: n }, (_, i) =>
    [Number((view.from + (i * view.span) / n).toPrecision(12)).toString(), ...columns.map((c) => digits(c[i]))].join(
      ',',
    ),
  );
  return `${head.join(',')}\n${body.join('\n')}\n`;
}

/** Sound as a WAV file: one channel, 16 bits. @param samples from −1 to 1. */
export function wavOf(samples: Float32Array, rate: Hertz): Uint8Array {
  const bytes = new Uint8Array(44 + 2 * samples.length);
  const view = new DataView(bytes.buffer);
  const ascii = (at: number, words: string) => {
    for (let i = 0; i < words.length; i++) bytes[at + i] = words.charCodeAt(i);
  };
  ascii(0, 'RIFF');
  view.setUint32(4, 36 + 2 * samples.length, true);
  ascii(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  ascii(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((v, i) => {
    view.setInt16(44 + 2 * i, Math.round(32767 * Math.max(-1, Math.min(1, v))), true);
  });
  return bytes;
}

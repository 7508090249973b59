import type { Hertz, Volts } from '../../../engine/units/quantities.ts';
import type { Passing, WaveProgramme } from './wave-programme.ts';

/** One line of a spectrum: a steady wave that the whole is made of. */
export interface Line {
  readonly frequency: Hertz;
  /** Peak. */
  readonly amplitude: Volts;
  /** At time 0, of a cosine. */
  readonly phase?: number;
  readonly what: 'direct' | 'programme' | 'carrier' | 'sideband' | 'neighbour' | 'ripple';
}

/** A spread of frequencies where a recorded programme lies, for want of single lines. */
export interface RecordedBand {
  readonly from: Hertz;
  readonly to: Hertz;
  readonly what: 'programme' | 'sideband';
}

/** Where speech and music carry most of what a medium-wave station sends; common practice, no source. */
const RECORDED_LOWEST: Hertz = 100;
const RECORDED_HIGHEST: Hertz = 4500;

/** Carrier and a pair of sidebands for each tone: A·m/2 above and below, by cos a·cos b = ½cos(a+b) + ½cos(a−b). */
export function sidebandLines(
  carrier: Hertz,
  amplitude: Volts,
  depth: number,
  programme: WaveProgramme,
  passing: (f: Hertz) => Passing = () => ({ gain: 1, lag: 0 }),
): Line[] {
  const lines: Line[] = [{ frequency: carrier, amplitude, what: 'carrier' }];
  if (programme.kind === 'recording') return lines;
  for (const { frequency: f, share, phase = 0 } of programme.tones) {
    const { gain, lag } = passing(f);
    const half = (amplitude * depth * share * gain) / 2;
    lines.push({ frequency: carrier - f, amplitude: half, phase: lag - phase, what: 'sideband' });
    lines.push({ frequency: carrier + f, amplitude: half, phase: phase - lag, what: 'sideband' });
  }
  return lines.sort((a, b) => a.frequency - b.frequency);
}

export const recordedBand = (carrier: Hertz): RecordedBand[] =>
  carrier === 0
    ? [{ from: RECORDED_LOWEST, to: RECORDED_HIGHEST, what: 'programme' }]
    : [
        { from: carrier - RECORDED_HIGHEST, to: carrier - RECORDED_LOWEST, what: 'sideband' },
        { from: carrier + RECORDED_LOWEST, to: carrier + RECORDED_HIGHEST, what: 'sideband' },
      ];

/** Peak of one frequency in a wave of one period, exact when the frequency is a whole multiple of 1/period. */
export function amplitudeAt(samples: ArrayLike<number>, period: number, frequency: Hertz): number {
  const n = samples.length;
  const cycles = Math.round(frequency * period);
  if (cycles === 0) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += samples[i];
    return sum / n;
  }
  // Goertzel's recursion, started afresh every thousand samples lest rounding builds up.
  const turn = (2 * Math.PI * cycles) / n;
  let re = 0;
  let im = 0;
  const CHUNK = 1024;
  for (let from = 0; from < n; from += CHUNK) {
    const to = Math.min(n, from + CHUNK);
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    let x = Math.cos(turn * from);
    let y = Math.sin(turn * from);
    for (let i = from; i < to; i++) {
      re += samples[i] * x;
      im -= samples[i] * y;
      const next = x * c - y * s;
      y = x * s + y * c;
      x = next;
    }
  }
  return (2 * Math.hypot(re, im)) / n;
}

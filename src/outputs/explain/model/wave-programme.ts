import type { Hertz, Radians, Ratio } from '../../../engine/units/quantities.ts';
import { constant, type Range, type Trace } from './range.ts';
import { SampledWave } from './sampled-wave.ts';

/** One steady tone of a programme; the shares of all tones add up to the peak. */
export interface ProgrammeTone {
  readonly frequency: Hertz;
  readonly share: Ratio;
  readonly phase?: Radians;
}

export type WaveProgramme =
  | { readonly kind: 'tones'; readonly tones: readonly ProgrammeTone[] }
  /** Samples from −1 to 1, once: silence before and after. */
  | { readonly kind: 'recording'; readonly name: string; readonly samples: Float32Array; readonly rate: Hertz };

/** The tone that stands for a programme where nothing else is chosen. */
export const USUAL_TONE: Hertz = 1000;

/** All tones and carriers are whole multiples of this, so that every picture repeats soon and is the same each time round. */
export const GRID: Hertz = 50;

export const onGrid = (frequency: Hertz): Hertz => Math.max(GRID, Math.round(frequency / GRID) * GRID);

/** Share of a tone that passes a tuned circuit, and how far it lags: the sidebands lie off its peak. */
export interface Passing {
  readonly gain: number;
  readonly lag: Radians;
}

/**
 * Single tuned circuit of loaded Q at its own frequency, for a modulation of frequency f: 1/(1 + j·2Q·f/f0).
 * Textbook, exact for the sidebands together when the circuit is on tune and f is small against f0.
 */
export function sidebandPassing(q: number, carrier: Hertz, f: Hertz): Passing {
  const x = (2 * q * f) / carrier;
  return { gain: 1 / Math.hypot(1, x), lag: Math.atan(x) };
}

/** Samples to a cycle of the highest tone. */
const PER_CYCLE = 64;

/**
 * `1 + depth·programme` as a trace: what multiplies the carrier. Tones pass through `passing` one by one.
 * @param offset 1 for an envelope, 0 for the programme alone.
 */
export function envelopeOf(
  programme: WaveProgramme,
  depth: Ratio,
  offset: 0 | 1,
  passing: (f: Hertz) => Passing = () => ({ gain: 1, lag: 0 }),
  cornerForRecording = Number.POSITIVE_INFINITY,
): Trace {
  if (programme.kind === 'recording') return recorded(programme, depth, offset, cornerForRecording);
  const tones = programme.tones.filter((t) => t.share > 0 && t.frequency > 0);
  const parts = tones.map((t) => {
    const { gain, lag } = passing(t.frequency);
    return { w: 2 * Math.PI * t.frequency, a: depth * t.share * gain, phase: (t.phase ?? 0) - lag };
  });
  if (parts.length === 0 || depth === 0) return constant(offset);
  if (parts.length === 1) return oneTone(offset, parts[0].a, parts[0].w, parts[0].phase);
  const step = commonStep(tones.map((t) => t.frequency));
  const highest = Math.max(...tones.map((t) => t.frequency));
  const n = Math.ceil((PER_CYCLE * highest) / step / 8) * 8;
  const samples = new Float64Array(n).fill(offset);
  for (const { w, a, phase } of parts) {
    for (let i = 0; i < n; i++) samples[i] += a * Math.cos((w * i) / (n * step) + phase);
  }
  return new SampledWave(samples, 1 / step);
}

const TURN = 2 * Math.PI;

/** c + a·cos(wt + phase), extremes in closed form. */
function oneTone(c: number, a: number, w: number, phase: number): Trace {
  const size = Math.abs(a);
  // Counted from the crest.
  const start = a < 0 ? phase + Math.PI : phase;
  return {
    at: (t) => c + size * Math.cos(w * t + start),
    extent(t0, t1, out: Range) {
      const p0 = (w * t0 + start) / TURN;
      const p1 = (w * t1 + start) / TURN;
      const v0 = Math.cos(TURN * (p0 - Math.floor(p0)));
      const v1 = Math.cos(TURN * (p1 - Math.floor(p1)));
      const top = Math.ceil(p0) <= p1 ? 1 : Math.max(v0, v1);
      const bottom = Math.ceil(p0 - 0.5) <= p1 - 0.5 ? -1 : Math.min(v0, v1);
      out.max = c + size * top;
      out.min = c + size * bottom;
    },
  };
}

function recorded(
  { samples, rate }: Extract<WaveProgramme, { kind: 'recording' }>,
  depth: Ratio,
  offset: 0 | 1,
  corner: Hertz,
): Trace {
  const n = samples.length;
  const out = new Float64Array(n);
  if (corner < rate / 4) {
    // One pole.
    const k = 1 - Math.exp((-TURN * corner) / rate);
    let y = 0;
    for (let i = 0; i < n; i++) {
      y += k * (samples[i] - y);
      out[i] = offset + depth * y;
    }
  } else {
    for (let i = 0; i < n; i++) out[i] = offset + depth * samples[i];
  }
  return new SampledWave(out, n / rate, { rest: offset });
}

/** Greatest step in Hz that all frequencies are whole multiples of, in units of `GRID`. */
export function commonStep(frequencies: readonly Hertz[]): Hertz {
  const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
  const whole = frequencies.map((f) => Math.round(f / GRID)).filter((f) => f > 0);
  return GRID * whole.reduce(gcd, whole[0] ?? 1);
}

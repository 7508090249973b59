import { type AveragedDetector, averaged, averagedCurrents } from '../../../engine/parts/detector/averaged.ts';
import type { Volts } from '../../../engine/units/quantities.ts';
import { settledVoltage } from './one-way.ts';
import type { Range, Trace } from './range.ts';
import { SampledWave } from './sampled-wave.ts';
import { integrated, smoothed } from './smoothing.ts';
import type { WaveSpec } from './wave-spec.ts';

/** Steps a second where a whole recording is followed: the audio is slow. */
const RATE = 20_000;
/** Cycles shown at most for the capacitor to be followed through every one of them. */
const MOST_CYCLES = 800;
const PER_CYCLE = 48;
const RIPPLE_LEVELS = 16;

/** How far the carrier's ripple reaches above and below the mean, by amplitude. */
export interface RippleTables {
  readonly above: Float64Array;
  readonly below: Float64Array;
}

/**
 * The voltage on the load capacitor for a recorded programme: minutes of carrier cannot be kept, so its mean is followed
 * once by the averaged detector, the ripple about it comes from a table by amplitude, and a stretch short enough to show
 * single cycles is followed cycle by cycle.
 */
export function recordedSmoothing(
  spec: WaveSpec,
  envelope: Trace,
  mean: SampledWave,
  { above, below }: RippleTables,
): Trace {
  const { atDetector, carrier } = spec;
  const most = greatest(spec);
  const lookUp = (table: Float64Array, amplitude: number): number => {
    const x = Math.min((amplitude / most) * RIPPLE_LEVELS, RIPPLE_LEVELS - 1e-9);
    const i = Math.max(0, x | 0);
    return table[i] + (x - i) * (table[i + 1] - table[i]);
  };

  let close: { wave: SampledWave; from: number; to: number } | undefined;
  const followed = (t0: number, t1: number) => {
    const lead = 24 / carrier;
    const from = t0 - lead;
    const length = t1 - t0 + 2 * lead;
    const count = 8 * Math.ceil((length * carrier * PER_CYCLE) / 8);
    const h = length / count;
    const w = 2 * Math.PI * carrier;
    const drive = Float64Array.from({ length: count }, (_, i) => {
      const t = from + i * h;
      return atDetector * envelope.at(t) * Math.cos(w * t);
    });
    const v = smoothed(drive, h, { ...spec, start: mean.at(from), rounds: 1 });
    return { wave: new SampledWave(v, length), from, to: from + length };
  };
  const whole: Range = { min: 0, max: 0 };
  return {
    at(t) {
      if (!close || t < close.from || t > close.to) close = followed(t - 1 / carrier, t + 1 / carrier);
      return close.wave.at(t - close.from);
    },
    prepare(t0, t1) {
      if ((t1 - t0) * carrier > MOST_CYCLES) close = undefined;
      else if (!close || t0 < close.from || t1 > close.to || close.to - close.from > 3 * (t1 - t0) + 60 / carrier)
        close = followed(t0, t1);
    },
    extent(a, b, out) {
      if (close && a >= close.from && b <= close.to) {
        close.wave.extent(a - close.from, b - close.from, out);
        return;
      }
      mean.extent(a, b, out);
      envelope.extent(a, b, whole);
      const amplitude = atDetector * Math.max(Math.abs(whole.min), Math.abs(whole.max));
      out.min -= lookUp(below, amplitude);
      out.max += lookUp(above, amplitude);
    },
  };
}

const greatest = ({ atDetector, depth, deepening = 1 }: WaveSpec) => atDetector * (1 + depth * Math.max(deepening, 1));

/** The mean voltage on the load capacitor through a whole recording. */
export function recordedMean(spec: WaveSpec, envelope: Trace): SampledWave {
  const { programme, atDetector, load } = spec;
  if (programme.kind !== 'recording') throw new RangeError('only for recordings');
  const seconds = programme.samples.length / programme.rate;
  const n = Math.max(64, Math.round(seconds * RATE));
  const step = seconds / n;
  // The carrier was there before anybody spoke.
  const start = settledAt(spec, atDetector);
  const current = tabulated(meanCurrent(spec), greatest(spec));
  const values = integrated(n, step, { load, start, rounds: 1 }, (k, g, constant, guess) =>
    falling(current, atDetector * Math.abs(envelope.at(k * step)), g, constant, guess),
  );
  return new SampledWave(values, seconds, { rest: start });
}

const settledAt = (spec: WaveSpec, amplitude: number) =>
  settledVoltage({ ...spec, resistance: spec.load.resistance, amplitude });

/** The ripple at equally spaced amplitudes. */
export function rippleTables(spec: WaveSpec): RippleTables {
  const { carrier, load } = spec;
  const most = greatest(spec);
  const above = new Float64Array(RIPPLE_LEVELS + 1);
  const below = new Float64Array(RIPPLE_LEVELS + 1);
  for (let k = 1; k <= RIPPLE_LEVELS; k++) {
    const amplitude = (most * k) / RIPPLE_LEVELS;
    const drive = Float64Array.from(
      { length: PER_CYCLE },
      (_, i) => amplitude * Math.cos((2 * Math.PI * i) / PER_CYCLE),
    );
    const settled = smoothed(drive, 1 / (carrier * PER_CYCLE), {
      ...spec,
      load: { ...load, inductance: 0, coupled: undefined },
      start: settledAt(spec, amplitude),
      rounds: 200,
    });
    const middle = settled.reduce((sum, v) => sum + v, 0) / PER_CYCLE;
    above[k] = Math.max(...settled) - middle;
    below[k] = middle - Math.min(...settled);
  }
  return { above, below };
}

/** Mean current over a cycle for an amplitude and a voltage already on the capacitor, with its slope. */
type MeanCurrent = (amplitude: number, v: number, out: { mean: number; slope: number }) => void;

function meanCurrent({ detector, bias = 0, bothHalves = false }: WaveSpec): MeanCurrent {
  const share = bothHalves ? 2 : 1;
  if (detector === 'perfect') {
    // One ohm forwards: a pulse of half-angle θ where the carrier stands above v.
    return (V, v, out) => {
      const theta = V > 0 ? Math.acos(Math.max(-1, Math.min(1, v / V))) : v < 0 ? Math.PI : 0;
      out.mean = (share * (V * Math.sin(theta) - v * theta)) / Math.PI;
      out.slope = (share * theta) / Math.PI;
    };
  }
  const device: AveragedDetector = averaged(detector);
  const currents = averagedCurrents();
  return (V, v, out) => {
    device.at(V, bias - v, currents);
    out.mean = share * currents.mean;
    out.slope = share * currents.meanByDirect;
  };
}

const LEVELS = 320;
/** The phones' inductance can swing the voltage below zero: the table reaches from −half of the peak to all of it. */
const DEPTHS = 192;

/**
 * The same from a table over amplitude and voltage, cubic in the voltage by its slopes and linear in the amplitude: a
 * minute is a million steps, and the averaged current of a diode takes microseconds.
 */
function tabulated(current: MeanCurrent, most: Volts): MeanCurrent {
  const low = -most / 2;
  const dV = most / LEVELS;
  const dv = (most - low) / DEPTHS;
  const means = new Float64Array((LEVELS + 1) * (DEPTHS + 1));
  const slopes = new Float64Array(means.length);
  for (let i = 0, at = 0; i <= LEVELS; i++)
    for (let j = 0; j <= DEPTHS; j++, at++) {
      current(i * dV, low + j * dv, point);
      means[at] = point.mean;
      slopes[at] = point.slope * dv;
    }
  const along = { value: 0, rise: 0 };
  const cubic = (at: number, f: number): void => {
    const a = means[at];
    const b = means[at + 1];
    // The slope that `falling` uses is of the current against a rising bias: the voltage on the capacitor counts down.
    const p = -slopes[at];
    const q = -slopes[at + 1];
    const c = 3 * (b - a) - 2 * p - q;
    const d = 2 * (a - b) + p + q;
    along.value = a + f * (p + f * (c + f * d));
    along.rise = p + f * (2 * c + 3 * f * d);
  };
  return (V, v, out) => {
    const x = V / dV;
    const y = (v - low) / dv;
    if (!(x >= 0 && x < LEVELS && y >= 0 && y < DEPTHS)) {
      current(V, v, out);
      return;
    }
    const i = x | 0;
    const j = y | 0;
    const at = i * (DEPTHS + 1) + j;
    cubic(at, y - j);
    const { value, rise } = along;
    cubic(at + DEPTHS + 1, y - j);
    out.mean = value + (x - i) * (along.value - value);
    out.slope = -(rise + (x - i) * (along.rise - rise)) / dv;
  };
}

const point = { mean: 0, slope: 0 };

/** Solve mean(V, v) = g·v − constant for v: the left side falls, the right rises. */
function falling(current: MeanCurrent, V: number, g: number, constant: number, guess: number): number {
  let v = guess;
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 40; k++) {
    current(V, v, point);
    const f = g * v - constant - point.mean;
    if (f > 0) high = v;
    else low = v;
    let next = v - f / (g + point.slope);
    if (!(next > low && next < high)) next = Number.isFinite(low + high) ? (low + high) / 2 : next;
    if (Math.abs(next - v) <= 1e-6 * Math.abs(v) + 1e-9) return next;
    v = next;
  }
  return v;
}

import { besselTable, lookUpBessel } from '../../numerics/bessel-table.ts';
import { type Decibels, decibels, type Hertz, type Ratio, type Seconds, type Volts } from '../../units/quantities.ts';
import type { Disturbance } from '../path/types.ts';

export interface CarrierAtDetector {
  readonly index: number;
  readonly name: string;
  readonly frequency: Hertz;
  /** Peak volts at the detector, the set tuned to the wanted one. */
  readonly voltage: Volts;
  readonly modulation: Ratio;
}

export interface SeparationOptions {
  /** n·kT/e of the detector, V. */
  readonly slopeVoltage: Volts;
  /** Of the detector's load and by-pass: whether it can follow the beat of the two carriers. */
  readonly loadTime: Seconds;
  /**
   * Wanted over unwanted programme of one of the others, by its place, evaluated in full; undefined where it cannot be.
   * Left out: the estimate stands.
   */
  readonly inFull?: (other: number) => Decibels | undefined;
  /** Others evaluated in full at most: those that the estimate has least clear. Default all. */
  readonly mostInFull?: number;
}

/** Voltage ratio to the wanted carrier below which a carrier is inaudible. */
export const NEGLIGIBLE = 10 ** (-40 / 20);
/** A whistle beyond this is above what phones give. */
export const HIGHEST_WHISTLE = 10_000;
const ANGLES = Float64Array.from({ length: 16 }, (_, i) => Math.cos(((i + 0.5) * Math.PI) / 16));

/** Wanted over unwanted programme below which the other masks it, dB. */
export const MASKED: Decibels = 3;

/** Outside these an estimate is enough: nothing but the other is heard, or nothing of it, dB. */
const [BURIED, FAR_BELOW] = [-30, 50];

/**
 * What other stations leave behind at the detector, strongest first. Each is estimated: the detector works on the sum of two carriers. Where its load follows their beat it answers the envelope, and the
 * stronger suppresses the weaker; where it cannot, it averages the current, ln I0(x1) + ln I0(x2), and both come
 * through by their own slope. The two are joined by how much of the beat the load lets pass. Good to some dB, 14 at the
 * worst, and so those least clear are evaluated in full.
 */
export function disturbances(
  own: Omit<CarrierAtDetector, 'index'>,
  others: readonly CarrierAtDetector[],
  options: SeparationOptions,
): Disturbance[] {
  const estimated: Estimated[] = [];
  for (const [place, other] of others.entries())
    if (other.voltage > own.voltage * NEGLIGIBLE)
      estimated.push({ other, place, audioRatio: estimatedRatio(own, other, options) });
  return replacedInFull(estimated, options)
    .map(({ other, audioRatio }) => disturbance(own, other, audioRatio))
    .sort((a, b) => a.audioRatio - b.audioRatio);
}

interface Estimated {
  readonly other: CarrierAtDetector;
  readonly place: number;
  readonly audioRatio: Decibels;
}

function replacedInFull(
  estimated: readonly Estimated[],
  { inFull, mostInFull = Number.POSITIVE_INFINITY }: SeparationOptions,
): readonly Estimated[] {
  if (!inFull) return estimated;
  const least = estimated
    .filter(({ audioRatio }) => audioRatio > BURIED && audioRatio < FAR_BELOW)
    .sort((a, b) => a.audioRatio - b.audioRatio)
    .slice(0, mostInFull);
  const full = new Set(least);
  return estimated.map((one) => (full.has(one) ? { ...one, audioRatio: inFull(one.place) ?? one.audioRatio } : one));
}

function estimatedRatio(
  own: Omit<CarrierAtDetector, 'index'>,
  other: CarrierAtDetector,
  { slopeVoltage, loadTime }: SeparationOptions,
): Decibels {
  const beat = Math.abs(other.frequency - own.frequency);
  const follows = 1 / (1 + (2 * Math.PI * beat * loadTime) ** 2);
  const x1 = own.voltage / slopeVoltage;
  const x2 = other.voltage / slopeVoltage;
  const coherent = envelopeSlopes(x1, x2);
  const separate = { first: x1 * slopeAt(x1), second: x2 * slopeAt(x2) };
  const first = own.modulation * (follows * coherent.first + (1 - follows) * separate.first);
  const second = other.modulation * (follows * coherent.second + (1 - follows) * separate.second);
  return decibels(Math.abs(first) / Math.max(Math.abs(second), 1e-12));
}

/** Beats below it are a flutter, no tone. */
const LOWEST_WHISTLE: Hertz = 30;

/** What the wanted programme stands over the whistle of two carriers, dB; ∞ where their beat is no tone that phones give. */
export function overWhistle(beat: Hertz, modulation: Ratio, carriers: Ratio): Decibels {
  const isHeard = beat > LOWEST_WHISTLE && beat < HIGHEST_WHISTLE;
  return isHeard ? decibels(modulation * carriers) : Number.POSITIVE_INFINITY;
}

function disturbance(
  own: Omit<CarrierAtDetector, 'index'>,
  other: CarrierAtDetector,
  audioRatio: Decibels,
): Disturbance {
  const beat = Math.abs(other.frequency - own.frequency);
  const whistle = overWhistle(beat, own.modulation, own.voltage / other.voltage);
  const separation = Math.min(audioRatio, whistle);
  return {
    index: other.index,
    by: other.name,
    frequency: other.frequency,
    carrierRatio: decibels(own.voltage / other.voltage),
    audioRatio,
    separation,
    effect: effectOf(separation),
    whistle: whistle < audioRatio + 10 ? beat : undefined,
  };
}

const bessel = new Float64Array(2);

/** I1/I0. */
function slopeAt(x: number): number {
  lookUpBessel(x, besselTable(), bessel);
  return bessel[1];
}

/** d⟨ln I0(|x1 + x2 e^jθ|)⟩ / d ln x1 and x2, averaged over the beat. */
function envelopeSlopes(x1: number, x2: number): { first: number; second: number } {
  let first = 0;
  let second = 0;
  for (let i = 0; i < ANGLES.length; i++) {
    const c = ANGLES[i];
    const x = Math.sqrt(Math.max(x1 * x1 + x2 * x2 + 2 * x1 * x2 * c, 1e-30));
    const r = slopeAt(x) / x;
    first += r * x1 * (x1 + x2 * c);
    second += r * x2 * (x2 + x1 * c);
  }
  return { first: first / ANGLES.length, second: second / ANGLES.length };
}

/**
 * Clear from 30 dB: the co-channel ratio of the 1974 LF/MF conference for a steady disturber (reference/reception.json).
 * The other boundaries are common practice, no source.
 */
function effectOf(ratio: Decibels): Disturbance['effect'] {
  return ratio >= 30 ? 'none' : ratio >= 15 ? 'behind' : ratio >= MASKED ? 'interferes' : 'masks';
}

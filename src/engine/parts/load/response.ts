import { type Complex, complex, divide, magnitude, ONE, subtract } from '../../numerics/complex.ts';
import { monotoneCurve } from '../../numerics/monotone.ts';
import { type Decibels, decibels, type Hertz } from '../../units/quantities.ts';

/** Level of the sound against frequency with the drive held constant, dB, 0 at 1 kHz. */
export type SoundResponse = (frequency: Hertz) => Decibels;

/** A measured response; between points it is a smooth curve over the logarithm of frequency. */
export type ResponsePoints = readonly { readonly frequency: Hertz; readonly level: Decibels }[];

export const REFERENCE_FREQUENCY: Hertz = 1000;

const zeroAtReference = (level: SoundResponse): SoundResponse => {
  const at = level(REFERENCE_FREQUENCY);
  return (f) => level(f) - at;
};

/** @throws RangeError unless frequencies rise from above 0. */
export function measuredResponse(points: ResponsePoints): SoundResponse {
  const curve = monotoneCurve(
    points.map((p) => Math.log(p.frequency)),
    points.map((p) => p.level),
  );
  return zeroAtReference((f) => curve.at(Math.log(f)));
}

/** Second-order low-pass with unit gain at rest: displacement of a diaphragm driven by a force. */
const resonance = (f: Hertz, f0: Hertz, Q: number): Complex => {
  const x = f / f0;
  return divide(ONE, complex(1 - x * x, x / Q));
};
/** Second-order high-pass, Butterworth: air leaking past an ear cushion. */
const highPass = (f: Hertz, corner: Hertz): number => 1 / Math.sqrt(1 + (corner / f) ** 4);
const lowPass = (f: Hertz, corner: Hertz): number => 1 / Math.sqrt(1 + (f / corner) ** 4);

export interface Diaphragm {
  /** Main resonance. */
  readonly resonance: Hertz;
  readonly q: number;
  /** Second mode: its frequency over the first's, and its share of the motion. */
  readonly second: readonly [number, number];
  /** Below this the sound leaks away past the ear. */
  readonly leak: Hertz;
}

/**
 * Two modes of a diaphragm over a leaky ear, current held constant. The second mode moves against the first, so there is
 * a dip but no hole between them. Shape from memory of telephone receivers; no two pairs are alike.
 */
export const diaphragmResponse = ({ resonance: f0, q, second: [ratio, share], leak }: Diaphragm): SoundResponse =>
  zeroAtReference((f) => {
    const other = resonance(f, ratio * f0, q);
    const motion = subtract(resonance(f, f0, q), complex(share * other.re, share * other.im));
    return decibels(magnitude(motion) * highPass(f, leak));
  });

/** Flat between two corners, second order at both. */
export const flatBetween = (low: Hertz, high: Hertz): SoundResponse =>
  zeroAtReference((f) => decibels(highPass(f, low) * lowPass(f, high)));

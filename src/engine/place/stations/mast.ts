import { type Decibels, type Degrees, type Hertz, LIGHT_SPEED, type Metres } from '../../units/quantities.ts';
import { MEAN_RADIUS } from '../geodesy.ts';

const PANELS = 64;
/** A mast never quite has a null: current on it is not quite a sine and the ground is not perfect (no source). */
const FLOOR: Decibels = -20;

/**
 * Gain of a vertical mast over a lossless short one, dB, sinusoidal current, perfect ground, no losses:
 * f(ψ) = [cos(βh sin ψ) − cos βh]/cos ψ, its power from the integral of f² cos ψ over the upper half space.
 * A quarter wave gives 0.39 dB along the ground (reference/propagation-checks.json, "conv-2"), 5/8 wave about 3 dB.
 * @param height m, above 0; meant for up to 0.7 wavelength.
 * @param elevation degrees above the horizon; 0 for the ground wave.
 */
export function mastGain(height: Metres, frequency: Hertz, elevation: Degrees = 0): Decibels {
  if (!(height > 0 && height < Number.POSITIVE_INFINITY))
    throw new RangeError(`height must be above 0 m, got ${height}`);
  const electrical = (2 * Math.PI * frequency * height) / LIGHT_SPEED;
  const shape = (psi: number): number => {
    const c = Math.cos(psi);
    if (c < 1e-9) return 0;
    if (electrical < 0.02) return c; // the limit for short masts, whose two cosines cancel
    return (Math.cos(electrical * Math.sin(psi)) - Math.cos(electrical)) / c;
  };
  // Simpson's rule for the integral of f² cos ψ.
  let sum = 0;
  for (let n = 0; n <= PANELS; n++) {
    const psi = (n * Math.PI) / (2 * PANELS);
    sum += (n === 0 || n === PANELS ? 1 : n % 2 === 1 ? 4 : 2) * shape(psi) ** 2 * Math.cos(psi);
  }
  const integral = (sum * Math.PI) / (6 * PANELS);
  const ratio = ((2 / 3) * shape((elevation * Math.PI) / 180) ** 2) / integral;
  return Math.max(FLOOR, 10 * Math.log10(ratio));
}

/** Farthest that one hop from the E layer reaches, m; longer paths are taken as several equal hops. */
const LONGEST_HOP: Metres = 2.2e6;

/** Angle at which a sky wave leaves, degrees above the horizon, by the triangle with the layer over the round earth. */
export function departureAngle(distance: Metres, height: Metres): Degrees {
  if (!(distance > 0)) return 90;
  const half = distance / Math.ceil(distance / LONGEST_HOP) / (2 * MEAN_RADIUS);
  const angle = Math.atan2(Math.cos(half) - MEAN_RADIUS / (MEAN_RADIUS + height), Math.sin(half));
  return Math.max(0, (angle * 180) / Math.PI);
}

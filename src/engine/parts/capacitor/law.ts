import type { Farads, Metres, Radians } from '../../units/quantities.ts';

/** How capacitance follows the scale, by the shape of the vanes. */
export type VaneLaw = 'semicircular' | 'square-law' | 'straight-line frequency' | 'logarithmic';

/**
 * Capacitance at position p (0 open, 1 meshed) of a capacitor that follows its law exactly from `min` to `max`:
 * semicircular C linear, square-law √C linear (wavelength), straight-line frequency 1/√C linear, logarithmic ln C linear.
 */
export function lawCapacitance(law: VaneLaw, min: Farads, max: Farads, p: number): Farads {
  switch (law) {
    case 'semicircular':
      return min + (max - min) * p;
    case 'square-law':
      return (Math.sqrt(min) + (Math.sqrt(max) - Math.sqrt(min)) * p) ** 2;
    case 'straight-line frequency':
      return (min ** -0.5 + (max ** -0.5 - min ** -0.5) * p) ** -2;
    case 'logarithmic':
      return min * (max / min) ** p;
  }
}

/** The position at which the law gives this capacitance; the inverse of `lawCapacitance`. */
export function lawPosition(law: VaneLaw, min: Farads, max: Farads, C: Farads): number {
  switch (law) {
    case 'semicircular':
      return (C - min) / (max - min);
    case 'square-law':
      return (Math.sqrt(C) - Math.sqrt(min)) / (Math.sqrt(max) - Math.sqrt(min));
    case 'straight-line frequency':
      return (C ** -0.5 - min ** -0.5) / (max ** -0.5 - min ** -0.5);
    case 'logarithmic':
      return Math.log(C / min) / Math.log(max / min);
  }
}

/** dC/dp over max − min; its mean over the swing is 1. @param ratio max/min, above 1. */
export function lawSlope(law: VaneLaw, ratio: number, p: number): number {
  const s = Math.sqrt(ratio);
  switch (law) {
    case 'semicircular':
      return 1;
    case 'square-law':
      return (2 * (1 + (s - 1) * p)) / (s + 1);
    case 'straight-line frequency':
      return (2 / (s * (s + 1))) * (1 - (1 - 1 / s) * p) ** -3;
    case 'logarithmic':
      return (Math.log(ratio) * ratio ** p) / (ratio - 1);
  }
}

/** A point of a vane's outline, from the spindle's centre; angle from the leading edge, the first to mesh. */
export interface VanePoint {
  readonly angle: Radians;
  readonly radius: Metres;
  readonly x: Metres;
  readonly y: Metres;
}

export interface Vane {
  /** Radius of the edge that is `p` of the vane's angle behind the leading edge. */
  radiusAt(p: number): Metres;
  /** Area that counts when fully meshed, one face, beyond the cut-out round the spindle, m². */
  readonly area: number;
  /** Narrowest part of the vane outside the cut-out. */
  readonly narrowest: Metres;
  readonly outerRadius: Metres;
  readonly innerRadius: Metres;
  readonly angle: Radians;
  outline(points?: number): VanePoint[];
}

/**
 * The moving vane that follows a law over fixed vanes with a straight edge through the spindle and a round cut-out.
 * Turning by dα meshes ½(r² − r₀²)dα, so r(α) = √(r₀² + 2 dA/dα), exactly.
 * @param ratio max/min for which the law holds (strays it was designed with included), above 1.
 */
export function vane(law: VaneLaw, ratio: number, innerRadius: Metres, outerRadius: Metres, angle: Radians): Vane {
  // Every law's slope rises with p, so the widest place is the trailing edge.
  const peak = lawSlope(law, ratio, 1);
  const span = outerRadius ** 2 - innerRadius ** 2;
  const radiusAt = (p: number): Metres => Math.sqrt(innerRadius ** 2 + (span * lawSlope(law, ratio, p)) / peak);
  const at = (r: Metres, a: Radians): VanePoint => ({ angle: a, radius: r, x: r * Math.cos(a), y: r * Math.sin(a) });
  return {
    radiusAt,
    area: ((angle / 2) * span) / peak,
    narrowest: radiusAt(0) - innerRadius,
    outerRadius,
    innerRadius,
    angle,
    // The edge, then back round the boss on the other side of the spindle: a closed shape to cut along.
    outline: (points = 121) => [
      ...Array.from({ length: points }, (_, i) => at(radiusAt(i / (points - 1)), (angle * i) / (points - 1))),
      ...Array.from({ length: 37 }, (_, i) => at(innerRadius, angle + ((2 * Math.PI - angle) * i) / 36)),
    ],
  };
}

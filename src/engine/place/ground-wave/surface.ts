import { type Complex, complex, divide, multiply, scale, squareRoot } from '../../numerics/complex.ts';
import { EPSILON_0, type Hertz, LIGHT_SPEED, type Metres, type Ratio } from '../../units/quantities.ts';
import { type GroundConstants, groundConstants } from '../ground.ts';

/** Radius of the earth in Rec. ITU-R P.368, m. */
export const EARTH_RADIUS: Metres = 6_370_000;
/** Effective radius factor of Rec. ITU-R P.368-10 (surface refractivity 315 N-units); 4/3 belongs to 301. */
export const STANDARD_RADIUS_FACTOR = 1.370373;

/** What a frequency, a ground and an effective earth radius come to; textbook letters. */
export interface Surface {
  /** Wave number, rad/m. */
  readonly k: number;
  /** Normalised surface impedance Δ. */
  readonly delta: Complex;
  /** (ka/2)^(1/3). */
  readonly nu: number;
  /** −jνΔ, argument between −90° and −45° for real grounds. */
  readonly q: Complex;
  /** Effective earth radius, m. */
  readonly a: Metres;
  /** Where the short form gives way to the residue series, m: 80/f^(1/3) km, f in MHz (47 CFR 73.184). */
  readonly switchDistance: Metres;
}

/**
 * Surface impedance and curvature parameters, vertical polarisation, time factor exp(+jωt).
 * Source: J. R. Wait, "Electromagnetic Surface Waves", Advances in Radio Research 1 (1964).
 * @throws RangeError for impossible frequency, ground or radius factor.
 */
export function surface(frequency: Hertz, ground: GroundConstants, earthRadiusFactor: Ratio): Surface {
  if (!(frequency > 0 && frequency < Number.POSITIVE_INFINITY))
    throw new RangeError(`frequency must be above 0 Hz, got ${frequency}`);
  if (!(earthRadiusFactor > 0 && earthRadiusFactor < Number.POSITIVE_INFINITY))
    throw new RangeError(`earth radius factor must be above 0, got ${earthRadiusFactor}`);
  const { conductivity, permittivity } = groundConstants(ground);
  const w = 2 * Math.PI * frequency;
  const k = w / LIGHT_SPEED;
  const eta = complex(permittivity, -conductivity / (w * EPSILON_0));
  const delta = divide(squareRoot(complex(eta.re - 1, eta.im)), eta);
  const a = earthRadiusFactor * EARTH_RADIUS;
  const nu = Math.cbrt((k * a) / 2);
  const q = multiply(complex(0, -nu), delta);
  return { k, delta, nu, q, a, switchDistance: 80e3 / Math.cbrt(frequency / 1e6) };
}

/** z with z² = p = −jkdΔ²/2, Sommerfeld's numerical distance. */
export const numericalRoot = ({ k, delta }: Surface, distance: Metres): Complex =>
  scale(multiply(complex(Math.SQRT1_2, -Math.SQRT1_2), delta), Math.sqrt((k * distance) / 2));

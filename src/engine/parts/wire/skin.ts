import { besselRatios } from '../../numerics/bessel-ratio.ts';
import type { Complex } from '../../numerics/complex.ts';
import {
  type Hertz,
  type Kelvins,
  type Metres,
  MU_0,
  type OhmMetres,
  type OhmsPerMetre,
} from '../../units/quantities.ts';
import { type Metal, resistivity } from './metal.ts';

/**
 * Thickness of a round wire measured in skin depths: x = (d/2)·√(ωμ₀/ρ) = d/(√2 δ), the x of the old tables.
 * @param diameter bare, m.
 */
export const skinParameter = (diameter: Metres, frequency: Hertz, rho: OhmMetres): number =>
  (diameter / 2) * Math.sqrt((2 * Math.PI * frequency * MU_0) / rho);

const q = { re: new Float64Array(3), im: new Float64Array(3) };

/**
 * Internal impedance of a straight round wire over its direct-current resistance: (z/2)·J₀(z)/J₁(z), z = x·e^{−jπ/4}.
 * The real part is R/R₀; the imaginary part is ωL_i/R₀ and tends to x²/8.
 * Source: Bureau of Standards Circular 74, table of R/R₀; Bessel form in any text on eddy currents.
 */
export function skinImpedance(x: number): Complex {
  if (!(x >= 0)) throw new RangeError(`skin parameter ${x} is not a number of at least 0`);
  if (x < 1e-3) return { re: 1 + x ** 4 / 192, im: (x * x) / 8 };
  besselRatios(x, q.re, q.im);
  // z/(2 q0)
  const zr = (x * Math.SQRT1_2) / 2;
  const p = q.re[0] * q.re[0] + q.im[0] * q.im[0];
  return { re: (zr * (q.re[0] - q.im[0])) / p, im: (zr * (-q.re[0] - q.im[0])) / p };
}

/**
 * Butterworth's G: loss of a round wire across a uniform transverse field, P = 8πρ·G·H² per metre (H peak, P mean).
 * G = (x²/8)·|Im J₂(z)/J₀(z)|; x⁴/64 for thin wire, (√2·x − 1)/8 for thick.
 * Source: Butterworth 1926, tabulated in Terman's Radio Engineers' Handbook, section 2.
 */
export function transverseLoss(x: number): number {
  if (!(x >= 0)) throw new RangeError(`skin parameter ${x} is not a number of at least 0`);
  if (x < 1e-2) return x ** 4 / 64;
  besselRatios(x, q.re, q.im);
  return ((x * x) / 8) * Math.abs(q.re[0] * q.im[1] + q.im[0] * q.re[1]);
}

export interface StraightWire {
  /** Bare, m; above 0. */
  readonly diameter: Metres;
  readonly frequency: Hertz;
  /** K; default 293.15. */
  readonly temperature?: Kelvins;
  readonly metal?: Metal;
}

/**
 * Resistance of a straight isolated round wire.
 * @param options diameter (m), frequency (Hz; 0 for direct current), temperature (K) and metal
 * @returns Ω/m at the frequency, and its ratio to that of direct current.
 */
export function wireResistance({ diameter, frequency, temperature, metal }: StraightWire): {
  resistancePerMetre: OhmsPerMetre;
  directPerMetre: OhmsPerMetre;
  acToDcRatio: number;
} {
  if (!(diameter > 0)) throw new RangeError(`wire diameter ${diameter} m is not above 0`);
  if (!(frequency >= 0)) throw new RangeError(`frequency ${frequency} Hz is not at least 0`);
  const rho = resistivity(metal, temperature);
  const directPerMetre = rho / ((Math.PI / 4) * diameter * diameter);
  const acToDcRatio = skinImpedance(skinParameter(diameter, frequency, rho)).re;
  return { resistancePerMetre: directPerMetre * acToDcRatio, directPerMetre, acToDcRatio };
}

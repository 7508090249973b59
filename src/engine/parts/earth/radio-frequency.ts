import { add, type Complex, complex, divide, multiply, reciprocal, scale, squareRoot } from '../../numerics/complex.ts';
import { EPSILON_0, type Hertz, type Metres, MU_0, type OhmMetres } from '../../units/quantities.ts';
import { wireResistance } from '../wire/skin.ts';
import { type RodGroup, rodFactor } from './rods.ts';

/** Relative permittivity of moist soil at medium wave, ×/÷ 2 (Rec. ITU-R P.527, from memory). */
const PERMITTIVITY = 20;
/** Water does both: permittivity goes as conductivity to this power between the classes of ground of the same source. */
const WITH_WATER = 0.4;

/** Soil at one frequency. */
export interface SoilAt {
  /** Complex conductivity, S/m: what conducts and what is displaced. */
  readonly y: Complex;
  /** Propagation constant, 1/m. */
  readonly gamma: Complex;
  readonly omega: number;
}

/**
 * Soil at a frequency.
 * @param resistivity Ω·m
 * @param frequency Hz
 * @param usual resistivity of the same soil as it usually is, Ω·m: wetter soil has more permittivity, drier less
 * @returns what fields in it need
 */
export function soilAt(resistivity: OhmMetres, frequency: Hertz, usual = resistivity): SoilAt {
  const omega = 2 * Math.PI * frequency;
  const permittivity = Math.max(3, PERMITTIVITY * (usual / resistivity) ** WITH_WATER);
  const y = complex(1 / resistivity, omega * EPSILON_0 * permittivity);
  return { y, gamma: squareRoot(multiply(complex(0, omega * MU_0), y)), omega };
}

/** √(z/Y′)·coth(l√(zY′)): a leaky line open at its far end. `leak` is 1/Y′, Ω·m; `series` z, Ω/m. */
function leakyLine(series: Complex, leak: Complex, length: Metres): { impedance: Complex; gamma: Complex } {
  const gamma = squareRoot(divide(series, leak));
  const x = scale(gamma, 2 * length);
  // coth a = (1 + e^−2a)/(1 − e^−2a)
  const fall = Math.exp(-x.re);
  const e = complex(fall * Math.cos(x.im), -fall * Math.sin(x.im));
  const coth = divide(complex(1 + e.re, e.im), complex(1 - e.re, -e.im));
  return { impedance: multiply(squareRoot(multiply(series, leak)), coth), gamma };
}

/**
 * Driven rods at radio frequency: each a leaky line of Dwight's resistance in soil of complex conductivity; the others
 * raise its potential by their mean one, less what the soil absorbs on the way.
 * @returns Ω, metal to soil.
 */
export function rodsAt(
  length: Metres,
  diameter: Metres,
  { count, apart }: RodGroup,
  { y, gamma, omega }: SoilAt,
): Complex {
  const own = rodFactor(length, diameter);
  const series = complex(
    wireResistance({ diameter, frequency: omega / (2 * Math.PI) }).resistancePerMetre,
    (omega * MU_0 * (Math.log((4 * length) / diameter) - 1)) / (2 * Math.PI),
  );
  const one = leakyLine(series, scale(reciprocal(y), own * length), length).impedance;
  let others = complex(0);
  for (const { distance, pairs, shared } of apart) {
    const fall = Math.exp(-gamma.re * distance) * shared * pairs;
    others = add(others, complex(fall * Math.cos(gamma.im * distance), -fall * Math.sin(gamma.im * distance)));
  }
  return add(scale(one, 1 / count), scale(multiply(others, reciprocal(y)), 2 / count ** 2));
}

/** ⟨1/distance⟩ of the points of two arms of unit length from one foot, at an angle. */
function meanNearness(angle: number): number {
  const [c, s] = [Math.cos(angle), Math.abs(Math.sin(angle))];
  if (s < 1e-6) return 2 * Math.LN2;
  return 2 * (Math.asinh((1 - c) / s) + Math.asinh(c / s));
}

/**
 * Wires buried from one foot, evenly round, at radio frequency: leaky lines (E. D. Sunde, Earth Conduction Effects in
 * Transmission Systems, 1949, from memory); the part of an arm beyond the skin depth does nothing. At low frequency it is
 * Dwight's star.
 */
export function wiresAt(
  { arms, length, depth, wireDiameter }: { arms: number; length: Metres; depth: Metres; wireDiameter: Metres },
  { y, gamma, omega }: SoilAt,
): Complex {
  const a = wireDiameter / 2;
  const spread = Math.sqrt(2 * a * depth);
  let leakShared = 0;
  let fluxShared = 0;
  for (let k = 1; k < arms; k++) {
    const angle = (2 * Math.PI * k) / arms;
    const near = meanNearness(angle) / 2;
    leakShared += near;
    fluxShared += near * Math.cos(angle);
  }
  const reach = 1 / Math.hypot(gamma.re, gamma.im);
  const perMetre = wireResistance({ diameter: wireDiameter, frequency: omega / (2 * Math.PI) }).resistancePerMetre;
  let active = length;
  let sum = complex(0);
  for (let i = 0; i < 12; i++) {
    const leak = scale(reciprocal(y), Math.max(0.5, Math.log((2 * active) / spread) - 1 + leakShared) / Math.PI);
    const flux = Math.max(0.5, Math.log((2 * Math.min(active, reach)) / a) + fluxShared);
    const series = complex(perMetre + (omega * MU_0) / 8, (omega * MU_0 * flux) / (2 * Math.PI));
    const line = leakyLine(series, leak, length);
    sum = scale(line.impedance, 1 / arms);
    const next = Math.min(length, 1 / line.gamma.re);
    if (Math.abs(next / active - 1) < 1e-6) break;
    active = next;
  }
  return sum;
}

/**
 * Loss of the current that returns to the foot through the surface of the ground, under the upright part of an aerial.
 * @param height of the upright part. @returns Ω, to be added to the metal's.
 */
export function returnLoss(height: Metres, { y, gamma }: SoilAt): number {
  const surface = divide(gamma, y).re;
  const nearest = 1 / (2 * gamma.re);
  return (surface / (4 * Math.PI)) * Math.log1p((height / nearest) ** 2);
}

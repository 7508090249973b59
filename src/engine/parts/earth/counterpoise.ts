import { add, type Complex, divide, magnitude, phase, scale } from '../../numerics/complex.ts';
import { type Farads, type Hertz, type Metres, MU_0, type OhmMetres } from '../../units/quantities.ts';
import { staticCharge } from '../aerial/static-charge.ts';

export interface Counterpoise {
  readonly capacitance: Farads;
  readonly impedanceAt: (frequency: Hertz, soil: OhmMetres) => Complex;
}

/**
 * A wire, or several spread evenly round, a little above the ground and joined to the set instead of an earth.
 * Capacitance and inductance by moments over perfect ground. Losses of the real ground beneath, while its conduction
 * outweighs its displacement current: the field enters it as from buried images, ρ/2π × mean 1/distance; the returning
 * current spreads to the complex depth √(ρ/jωµ₀) (Deri et al., IEEE Trans. PAS-100, 1981; its limit is Carson's ωµ₀/8 a metre).
 */
export function counterpoise(wires: number, length: Metres, height: Metres, wireDiameter: Metres): Counterpoise {
  const points: [number, number, number][] = [[0, 0, height]];
  for (let i = 0; i < wires; i++) {
    const angle = (2 * Math.PI * i) / wires;
    points.push([length * Math.cos(angle), length * Math.sin(angle), height]);
  }
  const charge = staticCharge({ points, parents: points.map((_, i) => (i === 0 ? -1 : 0)) }, wireDiameter / 2, 24);
  const carrying = charge.segments.reduce((sum, s) => sum + s.length * s.share ** 2, 0);
  return {
    capacitance: charge.capacitance,
    impedanceAt(frequency, soil) {
      const w = 2 * Math.PI * frequency;
      // ln(1 + p/h), p = √(ρ/ωµ₀)·(1 − j)/√2.
      const depth = Math.sqrt(soil / (w * MU_0) / 2) / height;
      const ratio = { re: 1 + depth, im: -depth };
      const spread: Complex = { re: -phase(ratio), im: Math.log(magnitude(ratio)) };
      const ground = scale(spread, ((w * MU_0) / (2 * Math.PI)) * carrying);
      const ideal = divide(
        { re: 1 - w * w * charge.inductance * charge.capacitance, im: 0 },
        { re: 0, im: w * charge.capacitance },
      );
      return add(add(ideal, ground), { re: (soil * charge.meanImageDistanceInverse) / (2 * Math.PI), im: 0 });
    },
  };
}

import type { AerialDescription } from '../kinds/aerials/aerial-schema.ts';
import { isGivenAerial } from '../kinds/given-aerials.ts';
import { isLoop } from '../kinds/loops.ts';
import type { Element } from '../network/elements.ts';
import { PART } from '../network/part-ids.ts';
import { add, complex } from '../numerics/complex.ts';
import { surroundingsEffect } from '../parts/aerial/surroundings.ts';
import { type Farads, fromDecibels, type Hertz, type Ohms, type Ratio } from '../units/quantities.ts';
import type { AerialInCircuit } from './aerial-elements.ts';

/** What of an aerial is otherwise: factors, and the tan δ that its capacitance then has. */
export interface AerialChanges {
  readonly effectiveHeight: Ratio;
  readonly capacitance: Ratio;
  readonly lossTangent: number;
}

/** Series resistance that a lossy capacitance has. */
const lost = (lossTangent: number, capacitance: Farads, f: Hertz): Ohms =>
  f > 0 && capacitance > 0 ? lossTangent / (2 * Math.PI * f * capacitance) : 0;

/**
 * An aerial with more or less height, capacitance and loss.
 * @param aerial as it was.
 * @param changes factors on effective height and capacitance; the tan δ it has instead of its own.
 * @returns the aerial so changed: elements, height and resistance alike.
 */
export function changedAerial(aerial: AerialInCircuit, changes: AerialChanges): AerialInCircuit {
  const { effectiveHeight, lossTangent } = changes;
  if (effectiveHeight === 1 && changes.capacitance === 1 && lossTangent === aerial.lossTangent) return aerial;
  const capacitance = aerial.capacitance * changes.capacitance;
  const more = (f: Hertz): Ohms => lost(lossTangent, capacitance, f) - lost(aerial.lossTangent, aerial.capacitance, f);
  return {
    ...aerial,
    capacitance,
    lossTangent,
    effectiveHeightAt: (f) => effectiveHeight * aerial.effectiveHeightAt(f),
    resistanceAt: (f) => aerial.resistanceAt(f) + more(f),
    elements: aerial.elements.map((e): Element => {
      if (e.kind === 'mutual' || e.owner.part !== PART.aerial) return e;
      if (e.kind === 'capacitor') return { ...e, capacitance: e.capacitance * changes.capacitance, lossTangent };
      if (e.kind !== 'impedance') return e;
      // Of a long wire more or less capacitance shows as more or less of its reactance below resonance.
      const share = aerial.capacitance > 0 ? (1 / changes.capacitance - 1) / aerial.capacitance : 0;
      return {
        ...e,
        impedance: (f) => (f > 0 ? add(e.impedance(f), complex(more(f), -share / (2 * Math.PI * f))) : e.impedance(f)),
      };
    }),
  };
}

/** What is around an aerial of this description; of one that was measured nothing is taken off, it was there already. */
export const surroundingsOf = (
  aerial: AerialDescription,
): { readonly effectiveHeight: Ratio; readonly lossTangent: number } => {
  if (isGivenAerial(aerial)) return { effectiveHeight: 1, lossTangent: 0 };
  const { height, lossTangent } = surroundingsEffect(isLoop(aerial), aerial.surroundings);
  return { effectiveHeight: fromDecibels(height[1]), lossTangent };
};

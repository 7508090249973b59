import type { AerialDescription } from '../kinds/aerials/aerial-schema.ts';
import { isGivenAerial } from '../kinds/given-aerials.ts';
import { isLoop, type LoopDescription } from '../kinds/loops.ts';
import { USUAL_FREQUENCY } from '../kinds/measured/usual-errors.ts';
import type { Element } from '../network/elements.ts';
import { PART } from '../network/part-ids.ts';
import { add, complex } from '../numerics/complex.ts';
import { surroundingsEffect } from '../parts/aerial/surroundings.ts';
import { type Farads, fromDecibels, type Hertz, type Ohms, type Ratio } from '../units/quantities.ts';
import type { AerialInCircuit } from './aerial-elements.ts';

type SurroundedDescription = Exclude<AerialDescription, LoopDescription>;

/** What of an aerial is otherwise: factors, and the tan δ that its capacitance then has. */
export interface AerialChanges {
  readonly effectiveHeight: Ratio;
  readonly capacitance: Ratio;
  readonly lossTangent: number;
}

/** Series resistance that a lossy capacitance has. */
const seriesResistance = (lossTangent: number, capacitance: Farads, f: Hertz): Ohms =>
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
  const more = (f: Hertz): Ohms =>
    seriesResistance(lossTangent, capacitance, f) - seriesResistance(aerial.lossTangent, aerial.capacitance, f);
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

/**
 * Share of the calculated resistance of aerial and earth together that was measured.
 * @param description of the aerial
 * @param aerial as calculated, among what is around it
 * @param earthAt resistance of the earth by frequency, Ω
 * @returns a factor; 1 where it was not measured
 */
export function resistanceShare(
  { measured }: SurroundedDescription,
  aerial: AerialInCircuit,
  earthAt: (f: Hertz) => Ohms,
): Ratio {
  const resistance = measured?.resistance;
  if (!resistance) return 1;
  const f = resistance.at ?? USUAL_FREQUENCY;
  return resistance.value / (aerial.resistanceAt(f) + earthAt(f));
}

/**
 * An aerial whose measured figures win over the calculated ones. What is measured is measured among what is around it.
 * @param description of the aerial
 * @param aerial as calculated, among what is around it
 * @param earthAt resistance of its earth by frequency as it is in the set, Ω: it is taken off a measured resistance
 * @returns the aerial with those figures
 */
export function aerialAsMeasured(
  { measured }: SurroundedDescription,
  aerial: AerialInCircuit,
  earthAt: (f: Hertz) => Ohms,
): AerialInCircuit {
  if (!measured) return aerial;
  const { capacitance, resistance, effectiveHeight } = measured;
  const factor = capacitance && aerial.capacitance > 0 ? capacitance.value / aerial.capacitance : 1;
  const tall = effectiveHeight && aerial.effectiveHeightAt(effectiveHeight.at ?? USUAL_FREQUENCY);
  let lossTangent = aerial.lossTangent;
  if (resistance) {
    const f = resistance.at ?? USUAL_FREQUENCY;
    const more = resistance.value - earthAt(f) - aerial.resistanceAt(f);
    // Of what its wire loses nothing can be taken away.
    lossTangent = Math.max(0, lossTangent * factor + more * 2 * Math.PI * f * aerial.capacitance * factor);
  }
  return changedAerial(aerial, {
    effectiveHeight: effectiveHeight && tall! > 0 ? effectiveHeight.value / tall! : 1,
    capacitance: factor,
    lossTangent,
  });
}

/** What is around an aerial of this description; of one that was measured nothing is taken off, it was there already. */
export const surroundingsOf = (
  aerial: AerialDescription,
): { readonly effectiveHeight: Ratio; readonly lossTangent: number } => {
  if (isGivenAerial(aerial)) return { effectiveHeight: 1, lossTangent: 0 };
  const { height, lossTangent } = surroundingsEffect(isLoop(aerial), aerial.surroundings);
  return { effectiveHeight: fromDecibels(height[1]), lossTangent };
};

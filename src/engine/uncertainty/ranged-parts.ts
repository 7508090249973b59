import { changedParts } from '../built/changed-parts.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { magnitude } from '../numerics/complex.ts';
import type { PartFigures } from '../reception/path/types.ts';
import type { PartInput } from './input.ts';
import { setInputs } from './inputs.ts';
import type { Spread } from './spread.ts';

type Range = readonly [low: number, high: number];

/**
 * Figures of aerial and load with the ranges of what is not measured of them; those of coils, capacitor and earth come
 * with the parts.
 * @param circuit the set as parts made and joined.
 * @param parts its figures, in SI units.
 * @returns a copy; an aerial or load whose figure is not spread has no range there.
 */
export function rangedParts(circuit: SetCircuit, parts: PartFigures): PartFigures {
  const inputs = setInputs(circuit);
  const find = (id: PartInput) => inputs.find((input) => input.id === id);
  const height = find('effective height')?.spread;
  const capacitance = find('aerial capacitance')?.spread;
  const impedance = find('load impedance');
  const { aerial, load } = parts;
  const at1kHz = (value: number): number =>
    magnitude(changedParts(circuit.set, circuit, impedance!.changes!(value)).load.impedanceAt(1000));
  return {
    ...parts,
    aerial: {
      ...aerial,
      ...(capacitance && { capacitanceRange: about(aerial.capacitance, capacitance) }),
      ...(height && { effectiveHeightRange: about(aerial.effectiveHeight, height) }),
      ...(height &&
        aerial.radiationResistance > 0 && { radiationResistanceRange: about(aerial.radiationResistance, height, 2) }),
    },
    load: {
      ...load,
      ...(impedance && { impedanceRange: rising(at1kHz(impedance.spread.low), at1kHz(impedance.spread.high)) }),
    },
  };
}

/** Of a figure that goes as a power of a factor. */
const about = (value: number, { low, middle, high }: Spread, power = 1): Range => [
  value * (low / middle) ** power,
  value * (high / middle) ** power,
];

const rising = (a: number, b: number): Range => [Math.min(a, b), Math.max(a, b)];

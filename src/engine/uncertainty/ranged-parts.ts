import { changedParts } from '../built/changed-parts.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { magnitude } from '../numerics/complex.ts';
import { slopeResistance } from '../parts/detector/detector.ts';
import type { PartFigures } from '../reception/path/types.ts';
import { detectorRanges } from './detector-ranges.ts';
import { type KnownDevice, knownDetector } from './detector-spreads.ts';
import type { PartInput } from './input.ts';
import { setInputs } from './inputs.ts';
import { productRange } from './product-range.ts';
import type { Spread } from './spread.ts';

type Range = readonly [low: number, high: number];

/**
 * Figures of aerial, detector and load with the ranges of what is not measured of them, and self-resonances with theirs;
 * the other ranges of coils, capacitor and earth come with the parts.
 * @param circuit the set as parts made and joined.
 * @param parts its figures, in SI units.
 * @returns a copy; a part whose figure is not spread has no range there.
 */
export function rangedParts(circuit: SetCircuit, parts: PartFigures): PartFigures {
  const inputs = setInputs(circuit);
  const find = (id: PartInput) => inputs.find((input) => input.id === id);
  const height = find('effective height')?.spread;
  const capacitance = find('aerial capacitance')?.spread;
  const impedance = find('load impedance');
  const device = knownDetector(circuit.set, circuit.detector);
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
    coils: parts.coils.map((coil) => ({
      ...coil,
      selfResonanceRange: productRange(coil.selfResonance, [
        { value: coil.inductance, range: coil.inductanceRange, power: -0.5 },
        { value: coil.selfCapacitance, range: coil.selfCapacitanceRange, power: -0.5 },
      ]),
    })),
    detector: { ...parts.detector, ...(device && { zeroBiasResistanceRange: zeroBiasOf(device) }) },
    load: {
      ...load,
      ...(impedance && { impedanceRange: rising(at1kHz(impedance.spread.low), at1kHz(impedance.spread.high)) }),
    },
  };
}

const zeroBiasOf = (device: KnownDevice): Range =>
  detectorRanges(device, (one) => ({ zeroBias: slopeResistance(one) })).zeroBias.range;

/** Of a figure that goes as a power of a factor. */
const about = (value: number, { low, middle, high }: Spread, power = 1): Range => [
  value * (low / middle) ** power,
  value * (high / middle) ** power,
];

const rising = (a: number, b: number): Range => [Math.min(a, b), Math.max(a, b)];

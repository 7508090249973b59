import type { SelfCapacitanceMethod } from '../../../engine/parts/coil/model.ts';
import type { MixedPath } from '../../../engine/place/ground-wave/mixed-path.ts';

/** How a coil's self-capacitance was found. */
export const selfCapacitanceMethods: Readonly<Record<SelfCapacitanceMethod, string>> = {
  'single-layer-table': 'Medhurst’s measurements of single-layer coils, one end earthed',
  'field-energy': 'energy of the field with the voltage rising evenly along the wire',
  typical: 'typical value, not calculated: measure it where it matters',
  given: 'as given',
};

/** How the field of a ground wave was found. */
export const groundWaveMethods: Readonly<Record<MixedPath['method'], string>> = {
  'flat-earth-with-curvature': 'flat earth with curvature terms',
  'residue-series': 'residue series',
  'mixed-path': 'mixed path by Millington’s method',
};

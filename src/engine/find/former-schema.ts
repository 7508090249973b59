import * as v from 'valibot';
import { choice, length, number, object, variantMessage, whole, withDefault } from '../fields/fields.ts';
import { LIMITS } from '../fields/limits.ts';
import { FORMERS } from '../parts/coil/dielectrics.ts';

const material = withDefault(choice('former.material', FORMERS), 'card');

/** Round, to be wound on the outside. */
const tube = object({
  kind: v.literal('tube'),
  diameter: length('former.diameter', { ...LIMITS.former, typical: [0.02, 0.15] }),
  length: length('former.length', { ...LIMITS.plate, typical: [0.05, 0.3] }),
  material,
});
/** Flat, to be wound as a spiral; with slots as a spider coil. */
const plate = object({
  kind: v.literal('plate'),
  innerDiameter: length('former.innerDiameter', { ...LIMITS.former, typical: [0.02, 0.1] }),
  outerDiameter: length('former.outerDiameter', { ...LIMITS.former, typical: [0.06, 0.25] }),
  slots: v.optional(whole('former.slots', 3, 41, [5, 17])),
  thickness: withDefault(length('former.thickness', { min: 1e-4, max: 0.02, typical: [5e-4, 5e-3] }), '1.5 mm'),
  material,
});
/** Of ferrite. */
const rod = object({
  kind: v.literal('rod'),
  diameter: length('former.rod.diameter', { min: 5e-4, max: 0.1, typical: [0.006, 0.02] }),
  length: length('former.rod.length', { min: 5e-3, max: 1, typical: [0.05, 0.25] }),
  permeability: withDefault(number('former.permeability', 1, 20000, [50, 500]), 125),
});
/** A loop aerial to be wound. */
const frame = object({
  kind: v.literal('frame'),
  outline: withDefault(choice('former.outline', ['square', 'round']), 'square'),
  side: length('former.side', { min: 0.01, max: 10, typical: [0.2, 2] }),
  depth: length('former.depth', { min: 1e-3, max: 2, typical: [0.05, 0.3] }),
});

/** What a coil is wound on. */
export const formerSchema = v.variant('kind', [tube, plate, rod, frame], variantMessage('kind'));

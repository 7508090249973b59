import * as v from 'valibot';
import {
  COVERINGS,
  closePitch,
  METALS,
  overallDiameter,
  quantity,
  wireResistance,
  wireWeight,
} from '../../engine/index.ts';
import { calculation, figure } from './calculation.ts';

export const wire = calculation({
  name: 'wire',
  example: { diameter: '28 SWG', frequency: '1 MHz', covering: 'enamel' },
  schema: v.object(
    {
      diameter: quantity('length', { min: 1e-7, max: 1 }),
      frequency: quantity('frequency', { min: 0, max: 1e12 }),
      temperature: v.optional(quantity('temperature', { min: 200, max: 500 })),
      metal: v.optional(v.picklist(METALS, 'expected "copper" or "aluminium"')),
      covering: v.optional(
        v.picklist(COVERINGS, `expected one of ${COVERINGS.map((option) => `"${option}"`).join(', ')}`),
      ),
    },
    'expected { "diameter": "0.5 mm", "frequency": "1 MHz" }',
  ),
  answer(input) {
    const { resistancePerMetre, directPerMetre, acToDcRatio } = wireResistance(input);
    return {
      resistancePerMetre: { value: resistancePerMetre, unit: 'Ω/m' },
      dcResistancePerMetre: { value: directPerMetre, unit: 'Ω/m' },
      acToDcRatio: figure(acToDcRatio, 'ratio'),
      overallDiameter: figure(overallDiameter(input), 'length'),
      closePitch: figure(closePitch(input), 'length'),
      weightPerMetre: { value: wireWeight(input, 1), unit: 'kg/m' },
      warnings: [],
    };
  },
});

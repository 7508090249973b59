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
import { expected, oneOf } from './expect.ts';

export const wireCalculation = calculation({
  name: 'wire',
  example: { diameter: '28 SWG', frequency: '1 MHz', covering: 'enamel' },
  schema: v.object(
    {
      diameter: quantity('length', { min: 1e-7, max: 1 }),
      frequency: quantity('frequency', { min: 0, max: 1e12 }),
      temperature: v.optional(quantity('temperature', { min: 200, max: 500 })),
      metal: v.optional(oneOf(METALS)),
      covering: v.optional(oneOf(COVERINGS)),
    },
    expected('wire'),
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

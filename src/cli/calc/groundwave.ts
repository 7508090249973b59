import * as v from 'valibot';
import {
  GROUND_KINDS,
  type GroundKind,
  groundField,
  groundFieldRange,
  quantity,
  refuse,
  STANDARD_RADIUS_FACTOR,
} from '../../engine/index.ts';
import { groundWaveMethods } from '../../outputs/words/index.ts';
import { calculation, figure, figureIn, levelRange } from './calculation.ts';
import { expected, numberIn } from './expect.ts';

const kinds = Object.keys(GROUND_KINDS) as GroundKind[];

const ground = v.union(
  [
    v.picklist(kinds),
    v.object({ conductivity: quantity('conductivity', { above: 0, max: 1e12 }), permittivity: numberIn(1, 1000) }),
  ],
  refuse({ code: 'one-of-or-object', options: kinds, keys: ['conductivity', 'permittivity'] }),
);
const length = quantity('length', { above: 0, max: 4.1e7 });

const schema = v.pipe(
  v.object({
    frequency: quantity('frequency', { min: 1e3, max: 1e9 }),
    distance: v.optional(length),
    ground: v.optional(ground),
    sections: v.optional(
      v.pipe(
        v.array(v.object({ length, ground })),
        v.minLength(1, refuse({ code: 'list.at-least', of: 'sections', count: 1 })),
        v.maxLength(1000, refuse({ code: 'list.at-most', of: 'sections', count: 1000 })),
      ),
    ),
    power: v.optional(quantity('power', { min: 0, max: 1e9 }), 1000),
    earthRadiusFactor: v.optional(numberIn(0.1, 100), STANDARD_RADIUS_FACTOR),
  }),
  v.forward(
    v.check(
      ({ sections, ground }) => (sections === undefined) !== (ground === undefined),
      expected('ground-or-sections'),
    ),
    ['ground'],
  ),
  v.forward(
    v.check(({ sections, distance }) => {
      if (sections === undefined) return distance !== undefined;
      const total = sections.reduce((sum, section) => sum + section.length, 0);
      return distance === undefined || Math.abs(distance / total - 1) < 1e-3;
    }, expected('distance')),
    ['distance'],
  ),
);

/** `calc groundwave`: field strength over one kind of ground, or over sections by Millington. */
export const groundwaveCalculation = calculation({
  name: 'groundwave',
  example: {
    frequency: '1 MHz',
    power: '10 kW',
    sections: [
      { length: '60 km', ground: 'average' },
      { length: '40 km', ground: { conductivity: '5 S/m', permittivity: 70 } },
    ],
  },
  schema,
  answer(input) {
    const field = groundField(input);
    const range = groundFieldRange(input);
    return {
      fieldStrength: figure(field.fieldStrength, 'field strength', range),
      level: figureIn(field.level, 'dB(µV/m)', levelRange(field.level, field.fieldStrength, range)),
      distance: figure(field.distance, 'length'),
      method: groundWaveMethods[field.method],
      warnings: field.warnings,
    };
  },
});

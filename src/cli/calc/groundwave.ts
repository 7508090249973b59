import * as v from 'valibot';
import {
  GROUND_KINDS,
  type GroundKind,
  groundField,
  groundFieldRange,
  quantity,
  STANDARD_RADIUS_FACTOR,
} from '../../engine/index.ts';
import { groundWaveMethods } from '../../outputs/words/index.ts';
import { calculation, figure, figureIn } from './calculation.ts';

const kinds = Object.keys(GROUND_KINDS) as GroundKind[];
const between = (min: number, max: number) => `expected a number from ${min} to ${max}`;
const plain = (min: number, max: number) =>
  v.pipe(v.number(between(min, max)), v.minValue(min, between(min, max)), v.maxValue(max, between(min, max)));

const ground = v.union(
  [
    v.picklist(kinds),
    v.object({ conductivity: quantity('conductivity', { above: 0, max: 1e12 }), permittivity: plain(1, 1000) }),
  ],
  (issue) =>
    `expected { conductivity, permittivity } or one of ${kinds.map((kind) => `"${kind}"`).join(', ')}, got ${
      JSON.stringify(issue.input)?.slice(0, 80) ?? 'nothing'
    }`,
);
const length = quantity('length', { above: 0, max: 4.1e7 });

const schema = v.pipe(
  v.object({
    frequency: quantity('frequency', { min: 1e3, max: 1e9 }),
    distance: v.optional(length),
    ground: v.optional(ground),
    sections: v.optional(
      v.pipe(v.array(v.object({ length, ground })), v.minLength(1, 'expected at least one section'), v.maxLength(1000)),
    ),
    power: v.optional(quantity('power', { min: 0, max: 1e9 }), 1000),
    earthRadiusFactor: v.optional(plain(0.1, 100), STANDARD_RADIUS_FACTOR),
  }),
  v.forward(
    v.check(
      ({ sections, ground }) => (sections === undefined) !== (ground === undefined),
      'expected either "ground" with "distance", or "sections" from the transmitter',
    ),
    ['ground'],
  ),
  v.forward(
    v.check(({ sections, distance }) => {
      if (sections === undefined) return distance !== undefined;
      const total = sections.reduce((sum, section) => sum + section.length, 0);
      return distance === undefined || Math.abs(distance / total - 1) < 1e-3;
    }, 'expected a length; with "sections" leave it out or give their sum'),
    ['distance'],
  ),
);

/** `calc groundwave`: field strength over one kind of ground, or over sections by Millington. */
export const groundwave = calculation({
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
    return {
      fieldStrength: figure(field.fieldStrength, 'field strength', groundFieldRange(input)),
      level: figureIn(field.level, 'dB(µV/m)'),
      distance: figure(field.distance, 'length'),
      method: groundWaveMethods[field.method],
      warnings: field.warnings,
    };
  },
});

import * as v from 'valibot';
import { count, earth as earthModel, quantity, SOIL_NAMES } from '../../engine/index.ts';
import { calculation, figure } from './calculation.ts';
import { byShape, expected, oneOf } from './expect.ts';
import { buildable } from './shape.ts';

const length = quantity('length', { above: 0, max: 1000 });
const thickness = quantity('length', { above: 0, max: 10 });
const wire = v.object({ diameter: thickness }, expected('aerial-wire'));
const resistivity = quantity('resistivity', { above: 0, max: 1e6 });
const soil = {
  soilResistivity: v.optional(resistivity),
  soil: v.optional(oneOf(SOIL_NAMES)),
  soilResistivityRange: v.optional(v.tuple([resistivity, resistivity], expected('range'))),
  frequency: v.optional(quantity('frequency', { min: 1e3, max: 3e7 })),
};
const given = {
  resistance: quantity('resistance', { min: 0, max: 1e8 }),
  range: v.optional(
    v.tuple([quantity('resistance', { min: 0 }), quantity('resistance', { min: 0 })], expected('range')),
  ),
};

const schema = byShape([
  v.object({ shape: v.literal('rod'), length, diameter: thickness, ...soil }),
  v.object({
    shape: v.literal('rods'),
    length,
    diameter: thickness,
    count: v.optional(count(2, 100)),
    spacing: v.optional(length),
    layout: v.optional(oneOf(['row', 'ring', 'square'])),
    ...soil,
  }),
  v.object({
    shape: v.literal('plate'),
    side: v.optional(length),
    diameter: v.optional(length),
    depth: quantity('length', { min: 0, max: 100 }),
    lie: v.optional(oneOf(['level', 'upright'])),
    ...soil,
  }),
  v.object({ shape: v.literal('buried wire'), length, depth: length, wire, ...soil }),
  v.object({ shape: v.literal('radials'), count: count(1, 240), length, depth: length, wire, ...soil }),
  v.object({
    shape: v.literal('counterpoise'),
    count: v.optional(count(1, 60)),
    length,
    height: length,
    wire,
    ...soil,
  }),
  v.object({ shape: v.literal('measured'), ...given }),
  v.object({ shape: v.literal('water pipe'), ...given }),
]);

export const earth = calculation({
  name: 'earth',
  example: { shape: 'rod', length: '1.2 m', diameter: '16 mm', soilResistivity: '100 ohm m' },
  schema: buildable(schema, earthModel),
  answer(input) {
    const model = earthModel(input);
    return {
      resistance: figure(model.resistance, 'resistance', model.range),
      range: model.range.map((end) => figure(end, 'resistance')),
      ...(model.capacitance === undefined ? {} : { capacitance: figure(model.capacitance, 'capacitance') }),
      warnings: model.warnings,
    };
  },
});

import * as v from 'valibot';
import {
  count,
  type EarthSpec,
  earth as earthModel,
  quantity,
  SOIL_NAMES,
  soilOverGround,
} from '../../engine/index.ts';
import { calculation, figure } from './calculation.ts';
import { byShape, expected, oneOf } from './expect.ts';
import { buildable } from './shape.ts';

const length = quantity('length', { above: 0, max: 1000 });
const thickness = quantity('length', { above: 0, max: 10 });
const wire = v.object({ diameter: thickness }, expected('aerial-wire'));
const resistivity = quantity('resistivity', { above: 0, max: 1e6 });
/** As a description has it: the same as leaving the soil out. */
const AS_THE_PLACE = 'as the place';
const soil = {
  soilResistivity: v.optional(resistivity),
  soil: v.optional(oneOf([...SOIL_NAMES, AS_THE_PLACE])),
  soilResistivityRange: v.optional(v.tuple([resistivity, resistivity], expected('range'))),
  groundConductivity: v.optional(quantity('conductivity', { above: 0, max: 10 })),
  frequency: v.optional(quantity('frequency', { min: 1e3, max: 3e7 })),
};
const ohms = quantity('resistance', { min: 0, max: 1e8 });
const given = {
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
  v.object({ shape: v.literal('measured'), resistance: ohms, ...given }),
  // One published pipe of 46 m: 20 Ω at 180 kHz.
  v.object({ shape: v.literal('water pipe'), resistance: v.optional(ohms, 20), ...given }),
]);

type Written = v.InferOutput<typeof schema>;

/** Where the soil is not said, what is usual over the ground, which is average unless it is given. */
function withSoil(input: Written): EarthSpec {
  if (input.shape === 'measured' || input.shape === 'water pipe') return input;
  const { groundConductivity, soil, ...rest } = input;
  const spec = { ...rest, soil: soil === AS_THE_PLACE ? undefined : soil };
  if (spec.soil !== undefined || spec.soilResistivity !== undefined) return spec;
  const { resistivity, range } = soilOverGround(groundConductivity);
  return { ...spec, soilResistivity: resistivity, soilResistivityRange: range };
}

export const earthCalculation = calculation({
  name: 'earth',
  example: { shape: 'rod', length: '1.2 m', diameter: '16 mm', soilResistivity: '100 ohm m' },
  schema: buildable(schema, (input) => earthModel(withSoil(input))),
  answer(input) {
    const model = earthModel(withSoil(input));
    return {
      resistance: figure(model.resistance, 'resistance', model.range),
      range: model.range.map((end) => figure(end, 'resistance')),
      ...(model.capacitance === undefined ? {} : { capacitance: figure(model.capacitance, 'capacitance') }),
      warnings: model.warnings,
    };
  },
});

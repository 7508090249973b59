import * as v from 'valibot';
import { choice, length, object, resistance, variantMessage, whole, withDefault } from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { SOIL_NAMES } from '../../parts/earth/soil.ts';
import { quantity } from '../../units/schema.ts';

const soilResistivity = withDefault(
  quantity('resistivity', {
    ...LIMITS.resistivity,
    label: 'Soil resistivity',
    typical: [5, 2000],
    about: 'Clay 10–60, loam 50–150, sand 200–3000 Ω·m: it varies tenfold with wet and dry.',
  }),
  '100 Ω·m',
);
const soil = withDefault(
  choice(
    'Soil',
    ['as its resistivity', ...SOIL_NAMES],
    'A kind of soil has its published usual resistivity and spread; the figure below is then not used.',
  ),
  'as its resistivity',
);
const inSoil = { soil, soilResistivity };
const rodLength = length('Rod length', { min: 0.02, max: 30, typical: [0.3, 3] });
const diameter = withDefault(length('Diameter', { min: 5e-4, max: 1, typical: [5e-3, 0.05] }), '12 mm');
const depth = withDefault(length('Depth', { min: 0.01, max: 5, typical: [0.1, 1] }), '0.3 m');
const wireDiameter = withDefault(length('Wire diameter', { ...LIMITS.aerialWire, typical: [1e-3, 6e-3] }), '2 mm');

const rod = object({ kind: v.literal('rod'), length: rodLength, diameter, ...inSoil });
const rods = object({
  kind: v.literal('rods'),
  length: rodLength,
  diameter,
  ...inSoil,
  count: whole('Rods', 2, 50, '', [2, 6]),
  spacing: length('Spacing', { min: 0.02, max: 100, typical: [1, 6] }),
  layout: withDefault(choice('Layout', ['row', 'ring', 'square']), 'row'),
});
const plate = object({
  kind: v.literal('plate'),
  side: length('Side', { min: 0.01, max: 10, typical: [0.2, 1.5] }),
  lie: withDefault(
    choice('Lies', ['level', 'upright'], 'Upright: its middle must be deeper than half its height.'),
    'level',
  ),
  depth,
  ...inSoil,
});
const buried = object({
  kind: v.literal('buried wire'),
  length: length('Length', { ...LIMITS.span, typical: [2, 50] }),
  depth,
  wire: wireDiameter,
  ...inSoil,
});
const radials = object({
  kind: v.literal('radials'),
  count: whole('Radials', 2, 120, '', [3, 16]),
  length: length('Length of each', { min: 0.05, max: 200, typical: [2, 30] }),
  depth,
  wire: wireDiameter,
  ...inSoil,
});
const counterpoise = object({
  kind: v.literal('counterpoise'),
  count: withDefault(whole('Wires', 1, 60, 'From the set outwards.', [1, 8]), 1),
  length: length('Length', { min: 0.05, max: 200, typical: [2, 30] }),
  height: length('Height', { min: 0.01, max: 10, typical: [0.1, 3] }),
  wire: wireDiameter,
  ...inSoil,
});
const measured = object({
  kind: v.literal('measured'),
  resistance: resistance('Resistance', { max: 1e5, typical: [5, 500] }),
});

const pipe = v.pipe(
  object({
    kind: v.literal('water pipe'),
    resistance: withDefault(
      resistance('Resistance', {
        max: 1e5,
        typical: [1, 100],
        about: 'Only a metal pipe that runs into the ground, never one for gas or heating.',
      }),
      '20 Ω',
    ),
  }),
  // From here on it is an earth of measured resistance like any other.
  v.transform((written) => ({ ...written, kind: 'measured' as const })),
);

export const earth = v.variant(
  'kind',
  [rod, rods, plate, buried, radials, counterpoise, measured, pipe],
  variantMessage('kind'),
);
export type EarthDescription = v.InferOutput<typeof earth>;

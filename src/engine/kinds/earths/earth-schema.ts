import * as v from 'valibot';
import {
  choice,
  length,
  object,
  quantityField,
  resistance,
  variantMessage,
  whole,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { SOIL_NAMES } from '../../parts/earth/soil.ts';
import { measuredEarth } from '../measured/measured-schema.ts';

// Left out, it is what is usual over the ground of the place: see soil-of-place.
const soilResistivity = v.optional(
  quantityField('earth.soilResistivity', 'resistivity', { ...LIMITS.resistivity, typical: [5, 2000] }),
);
const soil = withDefault(
  choice('earth.soil', ['as its resistivity', 'as the place', ...SOIL_NAMES]),
  'as its resistivity',
);
const inSoil = { soil, soilResistivity, measured: measuredEarth };
const rodLength = length('earth.rod.length', { min: 0.02, max: 30, typical: [0.3, 3] });
const diameter = withDefault(length('earth.diameter', { min: 5e-4, max: 1, typical: [5e-3, 0.05] }), '12 mm');
const depth = withDefault(length('earth.depth', { min: 0.01, max: 5, typical: [0.1, 1] }), '0.3 m');
const wireDiameter = withDefault(length('earth.wire', { ...LIMITS.aerialWire, typical: [1e-3, 6e-3] }), '2 mm');

const rod = object({ kind: v.literal('rod'), length: rodLength, diameter, ...inSoil });
const rods = object({
  kind: v.literal('rods'),
  length: rodLength,
  diameter,
  ...inSoil,
  count: whole('earth.count', 2, 50, [2, 6]),
  spacing: length('earth.spacing', { min: 0.02, max: 100, typical: [1, 6] }),
  layout: withDefault(choice('earth.layout', ['row', 'ring', 'square']), 'row'),
});
const plate = object({
  kind: v.literal('plate'),
  side: length('earth.side', { min: 0.01, max: 10, typical: [0.2, 1.5] }),
  lie: withDefault(choice('earth.lie', ['level', 'upright']), 'level'),
  depth,
  ...inSoil,
});
const buried = object({
  kind: v.literal('buried wire'),
  length: length('earth.length', { ...LIMITS.span, typical: [2, 50] }),
  depth,
  wire: wireDiameter,
  ...inSoil,
});
const radials = object({
  kind: v.literal('radials'),
  count: whole('earth.radials.count', 2, 120, [3, 16]),
  length: length('earth.radials.length', { min: 0.05, max: 200, typical: [2, 30] }),
  depth,
  wire: wireDiameter,
  ...inSoil,
});
const counterpoise = object({
  kind: v.literal('counterpoise'),
  count: withDefault(whole('earth.counterpoise.count', 1, 60, [1, 8]), 1),
  length: length('earth.length', { min: 0.05, max: 200, typical: [2, 30] }),
  height: length('earth.height', { min: 0.01, max: 10, typical: [0.1, 3] }),
  wire: wireDiameter,
  ...inSoil,
});
const measured = object({
  kind: v.literal('measured'),
  resistance: resistance('earth.resistance', { max: 1e5, typical: [5, 500] }),
  measured: measuredEarth,
});

const pipe = v.pipe(
  object({
    kind: v.literal('water pipe'),
    resistance: withDefault(
      resistance('earth.resistance:waterPipe', {
        max: 1e5,
        typical: [1, 100],
      }),
      '20 Ω',
    ),
    measured: measuredEarth,
  }),
  // From here on it is an earth of measured resistance like any other.
  v.transform((written) => ({ ...written, kind: 'measured' as const, pipe: true as const })),
);

export const earth = v.variant(
  'kind',
  [rod, rods, plate, buried, radials, counterpoise, measured, pipe],
  variantMessage('kind'),
);
export type EarthDescription = v.InferOutput<typeof earth>;

import * as v from 'valibot';
import { wireTree } from '../../engine/parts/aerial/shapes.ts';
import { wireAerial } from '../../engine/parts/aerial/wire-aerial.ts';
import { count, quantity } from '../../engine/units/schema.ts';
import { calculation, figure } from './calculation.ts';
import { buildable, shapeMessage } from './shape.ts';

const length = (above = 0) => quantity('length', above === 0 ? { above: 0, max: 2000 } : { min: 0, max: 2000 });
const wire = v.object(
  { diameter: quantity('length', { min: 1e-5, max: 0.1 }) },
  'expected wire: { "diameter": "2 mm" }',
);
/** Where the lead-in ends, at the set. */
const base = v.nullish(quantity('length', { min: 0, max: 2000 }), '1 m');
const top = quantity('length', { min: 0, max: 2000 });
const coordinate = v.pipe(v.number('expected metres'), v.finite('expected metres'));
const points = v.pipe(
  v.array(
    v.tuple([coordinate, coordinate, coordinate], 'expected [along, across, up] in metres'),
    'expected a list of points',
  ),
  v.minLength(2, 'expected at least two points'),
  v.maxLength(100, 'expected at most 100 points'),
);
const use = {
  frequency: v.optional(quantity('frequency', { min: 1e3, max: 3e7 })),
  /** In series with the aerial in the impedance answered. */
  earthResistance: v.optional(quantity('resistance', { min: 0, max: 1e6 }), 0),
};
const several = { wires: v.optional(count(1, 16)), spacing: v.optional(length()) };

const wires = v.variant(
  'shape',
  [
    v.object({ shape: v.literal('inverted-L'), height: length(), length: top, base, wire, ...several, ...use }),
    v.object({ shape: v.literal('T'), height: length(), length: top, base, wire, ...several, ...use }),
    v.object({ shape: v.literal('vertical'), height: length(), base, wire, ...use }),
    v.object({ shape: v.literal('horizontal'), height: length(), length: length(), wire, ...use }),
    v.object({
      shape: v.literal('sloping'),
      height: length(),
      length: length(),
      farHeight: length(),
      base,
      wire,
      ...use,
    }),
    v.object({ shape: v.literal('bent'), points, wire, ...use }),
    v.object({ shape: v.literal('branched'), points, joins: v.array(count(0, 100)), wire, ...use }),
  ],
  shapeMessage,
);

export const aerial = calculation({
  name: 'aerial',
  about: 'Capacitance, effective height and impedance of an aerial over ground.',
  example: {
    shape: 'inverted-L',
    height: '10 m',
    length: '30 m',
    base: '1 m',
    wire: { diameter: '2 mm' },
    frequency: '549 kHz',
  },
  schema: buildable(wires, wireTree),
  answer(input) {
    const model = wireAerial(input);
    const still = {
      capacitance: figure(model.capacitance, 'capacitance'),
      effectiveHeight: figure(model.effectiveHeight, 'length'),
      wireLength: figure(model.wireLength, 'length'),
      inductance: figure(model.inductance, 'inductance'),
      naturalFrequency: figure(model.naturalFrequency, 'frequency'),
    };
    const { frequency, earthResistance } = input;
    if (frequency === undefined) return { ...still, warnings: model.warnings };
    const z = model.impedanceAt(frequency);
    return {
      ...still,
      radiationResistance: figure(model.radiationResistanceAt(frequency), 'resistance'),
      effectiveHeightAtFrequency: figure(model.effectiveHeightAt(frequency), 'length'),
      impedance: { resistance: figure(z.re + earthResistance, 'resistance'), reactance: figure(z.im, 'resistance') },
      warnings: model.warningsAt(frequency),
    };
  },
});

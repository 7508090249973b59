import * as v from 'valibot';
import {
  capacitance,
  choice,
  frequency,
  inductance,
  length,
  number,
  object,
  turns,
  variantMessage,
  whole,
  withDefault,
  words,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { FORMERS } from '../../parts/coil/dielectrics.ts';
import { measuredCoil } from '../measured/measured-schema.ts';
import { wire } from './wire-schema.ts';

const name = words('coil.name', 60);
const former = withDefault(choice('coil.former', FORMERS), 'card');
const formerDiameter = length('coil.formerDiameter', {
  ...LIMITS.former,
  typical: [0.02, 0.15],
});

const solenoid = object({
  shape: v.literal('solenoid'),
  name,
  measured: measuredCoil,
  formerDiameter,
  turns: turns('coil.turns'),
  wire,
  former,
  pitch: v.optional(
    length('coil.pitch', {
      ...LIMITS.turnSpacing,
      typical: [2e-4, 5e-3],
    }),
  ),
});
const bankWound = object({
  shape: v.literal('bank-wound'),
  name,
  measured: measuredCoil,
  formerDiameter,
  turns: turns('coil.turns'),
  wire,
  former,
  layers: whole('coil.layers', 2, 8, [2, 4]),
});
const multilayer = object({
  shape: v.literal('multilayer'),
  name,
  measured: measuredCoil,
  formerDiameter,
  wire,
  former,
  turnsPerLayer: whole('coil.turnsPerLayer', 1, 2000, [5, 100]),
  layers: whole('coil.multilayer.layers', 1, 200, [2, 12]),
  layerSpacing: v.optional(
    length('coil.layerSpacing', {
      ...LIMITS.layerSpacing,
      typical: [2e-4, 3e-3],
    }),
  ),
});
const spiral = object({
  shape: v.literal('spiral'),
  name,
  measured: measuredCoil,
  wire,
  former,
  turns: turns('coil.turns'),
  innerDiameter: length('coil.innerDiameter', {
    ...LIMITS.former,
    typical: [0.02, 0.2],
  }),
  pitch: v.optional(
    length('coil.pitch:spiral', {
      ...LIMITS.turnSpacing,
      typical: [3e-4, 1e-2],
    }),
  ),
});
const spider = object({
  shape: v.literal('spider'),
  name,
  measured: measuredCoil,
  wire,
  former,
  turns: turns('coil.turns'),
  innerDiameter: length('coil.innerDiameter:spider', {
    ...LIMITS.former,
    typical: [0.02, 0.1],
  }),
  slots: withDefault(whole('coil.slots', 3, 41, [5, 17]), 9),
  over: withDefault(whole('coil.over', 1, 2), 1),
  discThickness: withDefault(length('coil.discThickness', { min: 1e-4, max: 0.02, typical: [5e-4, 5e-3] }), '1.5 mm'),
});
const basket = object({
  shape: v.literal('basket'),
  name,
  measured: measuredCoil,
  wire,
  former,
  turns: turns('coil.turns'),
  pegCircle: length('coil.pegCircle', {
    ...LIMITS.former,
    typical: [0.03, 0.15],
  }),
  pegs: withDefault(whole('coil.pegs', 5, 41, [9, 21]), 13),
  over: withDefault(whole('coil.basket.over', 1, 4), 2),
  pegDiameter: withDefault(length('coil.pegDiameter', { min: 1e-4, max: 0.02, typical: [1e-3, 6e-3] }), '3 mm'),
});
const core = object({
  shape: v.literal('core'),
  name,
  measured: measuredCoil,
  wire,
  turns: turns('coil.turns'),
  perTurnSquared: inductance('coil.perTurnSquared', {
    typical: [1e-8, 5e-6],
  }),
  turnLength: withDefault(length('coil.turnLength', { min: 1e-3, max: 1, typical: [0.01, 0.2] }), '40 mm'),
  coreQ: withDefault(number('coil.coreQ', 1, 2000, [30, 400]), 150),
  form: withDefault(choice('coil.form', ['toroid', 'pot core']), 'toroid'),
});
const measured = object({
  shape: v.literal('measured'),
  name,
  measured: measuredCoil,
  inductance: inductance('coil.inductance', { typical: [2e-5, 5e-3] }),
  q: number('coil.q', 1, 2000, [10, 400]),
  at: frequency('coil.at', { typical: [1.5e5, 1.6e6] }),
  selfCapacitance: withDefault(capacitance('coil.selfCapacitance', { max: 1e-9, typical: [0, 3e-11] }), '5 pF'),
  turns: withDefault(turns('coil.turns:measured'), 100),
});

export const coil = v.variant(
  'shape',
  [solenoid, bankWound, multilayer, spiral, spider, basket, core, measured],
  variantMessage('shape'),
);
export type CoilDescription = v.InferOutput<typeof coil>;

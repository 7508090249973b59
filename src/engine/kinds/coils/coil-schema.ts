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
import { wire } from './wire-schema.ts';

const FORMERS = ['air', 'card', 'damp card', 'wood', 'phenolic', 'styrene', 'ebonite', 'glass', 'ceramic'] as const;

const name = words('Name', 'What you call it; an arrangement refers to it.', 60);
const former = withDefault(choice('Former', FORMERS, 'What it is wound on; damp card is lossy.'), 'card');
const formerDiameter = length('Former diameter', {
  ...LIMITS.former,
  typical: [0.02, 0.15],
  about: 'Outside of the former, where the wire lies.',
});

const solenoid = object({
  shape: v.literal('solenoid'),
  name,
  formerDiameter,
  turns: turns('Turns'),
  wire,
  former,
  pitch: v.optional(
    length('Turn spacing', {
      ...LIMITS.turnSpacing,
      typical: [2e-4, 5e-3],
      about: 'Wire centre to wire centre; left out: wound close.',
    }),
  ),
});
const bankWound = object({
  shape: v.literal('bank-wound'),
  name,
  formerDiameter,
  turns: turns('Turns'),
  wire,
  former,
  layers: whole('Banks', 2, 8, 'Layers piled up turn by turn as the winding goes along.', [2, 4]),
});
const multilayer = object({
  shape: v.literal('multilayer'),
  name,
  formerDiameter,
  wire,
  former,
  turnsPerLayer: whole('Turns in a layer', 1, 2000, '', [5, 100]),
  layers: whole('Layers', 1, 200, '', [2, 12]),
  layerSpacing: v.optional(
    length('Layer spacing', {
      ...LIMITS.layerSpacing,
      typical: [2e-4, 3e-3],
      about: 'Wire centre to wire centre, outward; left out: layers touch.',
    }),
  ),
});
const spiral = object({
  shape: v.literal('spiral'),
  name,
  wire,
  former,
  turns: turns('Turns'),
  innerDiameter: length('Inner diameter', {
    ...LIMITS.former,
    typical: [0.02, 0.2],
    about: 'Of the first turn, wire centre.',
  }),
  pitch: v.optional(
    length('Turn spacing', {
      ...LIMITS.turnSpacing,
      typical: [3e-4, 1e-2],
      about: 'Outward, wire centre to wire centre; left out: wound close.',
    }),
  ),
});
const spider = object({
  shape: v.literal('spider'),
  name,
  wire,
  former,
  turns: turns('Turns'),
  innerDiameter: length('Inner diameter', {
    ...LIMITS.former,
    typical: [0.02, 0.1],
    about: 'Of the hub where winding begins.',
  }),
  slots: withDefault(whole('Slots', 3, 41, 'An odd number.', [5, 17]), 9),
  over: withDefault(whole('Vanes passed at a time', 1, 2), 1),
  discThickness: withDefault(length('Disc thickness', { min: 1e-4, max: 0.02, typical: [5e-4, 5e-3] }), '1.5 mm'),
});
const basket = object({
  shape: v.literal('basket'),
  name,
  wire,
  former,
  turns: turns('Turns'),
  pegCircle: length('Peg circle', {
    ...LIMITS.former,
    typical: [0.03, 0.15],
    about: 'Diameter of the circle of pegs.',
  }),
  pegs: withDefault(whole('Pegs', 5, 41, 'An odd number.', [9, 21]), 13),
  over: withDefault(whole('Pegs passed at a time', 1, 4), 2),
  pegDiameter: withDefault(length('Peg diameter', { min: 1e-4, max: 0.02, typical: [1e-3, 6e-3] }), '3 mm'),
});
const core = object({
  shape: v.literal('core'),
  name,
  wire,
  turns: turns('Turns'),
  perTurnSquared: inductance('A_L', {
    typical: [1e-8, 5e-6],
    about: 'Inductance of one turn, from the maker’s sheet or a trial winding: "250 nH".',
  }),
  turnLength: withDefault(length('Length of a turn', { min: 1e-3, max: 1, typical: [0.01, 0.2] }), '40 mm'),
  coreQ: withDefault(number('Q of the core alone', 1, 2000, 'At the frequencies of interest.', [30, 400]), 150),
  form: withDefault(choice('Kind of core', ['toroid', 'pot core']), 'toroid'),
});
const measured = object({
  shape: v.literal('measured'),
  name,
  inductance: inductance('Inductance', { typical: [2e-5, 5e-3] }),
  q: number('Q', 1, 2000, 'As measured.', [10, 400]),
  at: frequency('Measured at', { typical: [1.5e5, 1.6e6] }),
  selfCapacitance: withDefault(capacitance('Self-capacitance', { max: 1e-9, typical: [0, 3e-11] }), '5 pF'),
  turns: withDefault(turns('Turns', 'Only for the places of taps.'), 100),
});

export const coil = v.variant(
  'shape',
  [solenoid, bankWound, multilayer, spiral, spider, basket, core, measured],
  variantMessage('shape'),
);
export type CoilDescription = v.InferOutput<typeof coil>;

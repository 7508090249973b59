import * as v from 'valibot';
import type { FieldId } from '../../fields/field-ids.ts';
import {
  capacitance,
  choice,
  inductance,
  number,
  object,
  part,
  quantityField,
  ratio,
  resistance,
  variantMessage,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { measuredEarpiece, measuredMovingCoil, measuredPhones } from '../measured/measured-schema.ts';

const level = (field: FieldId, typical: readonly [number, number]) =>
  quantityField(field, 'level', { min: -60, max: 160, typical });

export const transformer = object({
  ratio: number('transformer.ratio', 0.1, 1000, [1, 60]),
  primaryResistance: withDefault(resistance('transformer.primaryResistance', { typical: [10, 2000] }), '500 Ω'),
  secondaryResistance: withDefault(resistance('transformer.secondaryResistance', { typical: [0.1, 100] }), '1 Ω'),
  primaryInductance: withDefault(inductance('transformer.primaryInductance', { typical: [1, 200] }), '30 H'),
  leakage: withDefault(
    ratio('transformer.leakage', {
      min: 0,
      max: 0.5,
      typical: [0, 0.05],
    }),
    '1 %',
  ),
  coreLoss: v.optional(
    resistance('transformer.coreLoss', {
      min: LIMITS.resistance.min,
      typical: [2e4, 2e6],
    }),
  ),
  windingCapacitance: v.optional(capacitance('transformer.windingCapacitance', { max: 1e-7, typical: [0, 1e-9] })),
});
const common = {
  bypass: withDefault(
    capacitance('load.bypass', {
      typical: [0, 1e-8],
    }),
    '1 nF',
  ),
  equalizer: v.optional(
    part(
      'load.equalizer',
      object({
        resistance: resistance('load.equalizer.resistance', {
          min: LIMITS.resistance.min,
          typical: [1e3, 1e5],
        }),
        capacitance: capacitance('load.equalizer.capacitance', { min: LIMITS.capacitance.min, typical: [1e-8, 1e-5] }),
      }),
    ),
  ),
  transformer: v.optional(part('load.transformer', transformer)),
};

const phones = object({
  kind: v.literal('phones'),
  make: withDefault(choice('load.make', ['magnetic', 'balanced armature']), 'magnetic'),
  resistance: withDefault(
    resistance('load.resistance', {
      min: LIMITS.resistance.min,
      typical: [60, 8000],
    }),
    '2 kΩ',
  ),
  inductance: v.optional(inductance('load.inductance', { typical: [0.05, 4] })),
  sensitivity: v.optional(level('load.sensitivity', [80, 130])),
  measured: measuredPhones,
  ...common,
});
const earpiece = object({
  kind: v.literal('crystal earpiece'),
  capacitance: withDefault(
    capacitance('load.capacitance', { min: LIMITS.capacitance.min, typical: [5e-10, 3e-8] }),
    '2 nF',
  ),
  resistor: v.optional(
    resistance('load.resistor', {
      min: LIMITS.resistance.min,
      typical: [1e4, 1e6],
    }),
  ),
  sensitivity: v.optional(level('load.earpiece.sensitivity', [80, 130])),
  measured: measuredEarpiece,
  ...common,
});
const movingCoil = object({
  kind: v.literal('moving-coil phones'),
  impedance: withDefault(resistance('load.impedance', { min: LIMITS.resistance.min, typical: [8, 600] }), '32 Ω'),
  sensitivity: v.optional(level('load.sensitivity', [80, 120])),
  measured: measuredMovingCoil,
  ...common,
});
const amplifier = object({
  kind: v.literal('amplifier'),
  inputResistance: withDefault(
    resistance('load.inputResistance', { min: LIMITS.resistance.min, typical: [1e4, 2e6] }),
    '100 kΩ',
  ),
  inputCapacitance: withDefault(capacitance('load.inputCapacitance', { max: 1e-8, typical: [0, 1e-9] }), '100 pF'),
  couplingCapacitor: v.optional(
    capacitance('load.couplingCapacitor', {
      min: LIMITS.capacitance.min,
      typical: [1e-8, 1e-6],
    }),
  ),
  loadResistor: v.optional(
    resistance('load.loadResistor', {
      min: LIMITS.resistance.min,
      typical: [1e4, 1e6],
    }),
  ),
  soundAtFullInput: withDefault(level('load.soundAtFullInput', [40, 100]), '80 dB'),
  supply: withDefault(choice('load.supply', ['battery', 'mains']), 'battery'),
  ...common,
});

export const load = v.variant('kind', [phones, earpiece, movingCoil, amplifier], variantMessage('kind'));
export type LoadDescription = v.InferOutput<typeof load>;
export type TransformerDescription = v.InferOutput<typeof transformer>;

import * as v from 'valibot';
import {
  capacitance,
  choice,
  inductance,
  number,
  object,
  ratio,
  resistance,
  variantMessage,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { quantity } from '../../units/schema.ts';

const level = (label: string, about: string, typical: readonly [number, number]) =>
  quantity('level', { min: -60, max: 160, label, about, typical });

const transformer = object({
  ratio: number('Turns ratio', 0.1, 1000, 'Detector side to phones side.', [1, 60]),
  primaryResistance: withDefault(resistance('Primary resistance', { typical: [10, 2000] }), '500 Ω'),
  secondaryResistance: withDefault(resistance('Secondary resistance', { typical: [0.1, 100] }), '1 Ω'),
  primaryInductance: withDefault(inductance('Primary inductance', { typical: [1, 200] }), '30 H'),
  leakage: withDefault(
    ratio('Leakage', {
      min: 0,
      max: 0.5,
      typical: [0, 0.05],
      about: 'Share of the primary’s inductance that the secondary does not link.',
    }),
    '1 %',
  ),
  coreLoss: v.optional(
    resistance('Iron loss', {
      min: LIMITS.resistance.min,
      typical: [2e4, 2e6],
      about: 'As a resistance across the primary; left out: usual for its inductance.',
    }),
  ),
  windingCapacitance: v.optional(
    capacitance('Winding capacitance', { max: 1e-7, typical: [0, 1e-9], about: 'Across the primary.' }),
  ),
});
const common = {
  bypass: withDefault(
    capacitance('By-pass capacitor', {
      typical: [0, 1e-8],
      about: 'Across the load, for what is left of the carrier; 0 if none: the cord’s own remains.',
    }),
    '1 nF',
  ),
  equalizer: v.optional(
    object({
      resistance: resistance('Series resistor', {
        min: LIMITS.resistance.min,
        typical: [1e3, 1e5],
        about: 'Makes the direct load like the audio load.',
      }),
      capacitance: capacitance('Its by-pass', { min: LIMITS.capacitance.min, typical: [1e-8, 1e-5] }),
    }),
  ),
  transformer: v.optional(transformer),
};

const phones = object({
  kind: v.literal('phones'),
  make: withDefault(
    choice('Movement', ['magnetic', 'balanced armature'], 'Balanced armature: more sensitive, and easier to match.'),
    'magnetic',
  ),
  resistance: withDefault(
    resistance('Resistance', {
      min: LIMITS.resistance.min,
      typical: [60, 8000],
      about: 'Direct-current resistance of the pair, as marked.',
    }),
    '2 kΩ',
  ),
  inductance: v.optional(
    inductance('Inductance', { typical: [0.05, 4], about: 'Left out: usual for the resistance.' }),
  ),
  sensitivity: v.optional(level('Sensitivity', 'dB SPL at 1 mW; left out: usual for its kind.', [80, 130])),
  ...common,
});
const earpiece = object({
  kind: v.literal('crystal earpiece'),
  capacitance: withDefault(capacitance('Capacitance', { min: LIMITS.capacitance.min, typical: [5e-10, 3e-8] }), '2 nF'),
  resistor: v.optional(
    resistance('Resistor across it', {
      min: LIMITS.resistance.min,
      typical: [1e4, 1e6],
      about: 'Drains what the detector pumps in; without one it chokes itself.',
    }),
  ),
  sensitivity: v.optional(level('Sensitivity', 'dB SPL at 1 V; left out: usual for its kind.', [80, 130])),
  ...common,
});
const movingCoil = object({
  kind: v.literal('moving-coil phones'),
  impedance: withDefault(resistance('Impedance', { min: LIMITS.resistance.min, typical: [8, 600] }), '32 Ω'),
  sensitivity: v.optional(level('Sensitivity', 'dB SPL at 1 mW; left out: usual for its kind.', [80, 120])),
  ...common,
});
const amplifier = object({
  kind: v.literal('amplifier'),
  inputResistance: withDefault(
    resistance('Input resistance', { min: LIMITS.resistance.min, typical: [1e4, 2e6] }),
    '100 kΩ',
  ),
  inputCapacitance: withDefault(
    capacitance('Input capacitance', { max: 1e-8, typical: [0, 1e-9], about: 'With its lead.' }),
    '100 pF',
  ),
  couplingCapacitor: v.optional(
    capacitance('Coupling capacitor', {
      min: LIMITS.capacitance.min,
      typical: [1e-8, 1e-6],
      about: 'In series with the input; a resistor must then carry the direct current.',
    }),
  ),
  loadResistor: v.optional(
    resistance('Load resistor', {
      min: LIMITS.resistance.min,
      typical: [1e4, 1e6],
      about: 'Across the detector’s output.',
    }),
  ),
  soundAtFullInput: withDefault(
    level(
      'Sound at 10 mV in',
      'dB SPL that the amplifier and its speaker or phones give for 10 mV at its input.',
      [40, 100],
    ),
    '80 dB',
  ),
  supply: withDefault(choice('Runs from', ['battery', 'mains']), 'battery'),
  ...common,
});

export const load = v.variant('kind', [phones, earpiece, movingCoil, amplifier], variantMessage('kind'));
export type LoadDescription = v.InferOutput<typeof load>;
export type TransformerDescription = v.InferOutput<typeof transformer>;

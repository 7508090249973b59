import * as v from 'valibot';
import type { FieldId } from '../../fields/field-ids.ts';
import {
  capacitance,
  choice,
  inductance,
  length,
  list,
  number,
  object,
  part,
  ratio,
  resistance,
  turns,
  variantMessage,
  withDefault,
  words,
  yes,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { refuse } from '../../fields/refusal.ts';
import { measuredPlacing } from '../measured/measured-schema.ts';
import { tuning } from '../tunings/tuning-schema.ts';

const coilName = (field: FieldId) => words(field, 60);
const seriesCapacitor = capacitance('arrangement.seriesCapacitor', {
  min: LIMITS.capacitance.min,
  typical: [1e-11, 1e-9],
});
const aerialTap = turns('arrangement.aerialTap', [1, 100]);
const detectorTap = v.optional(turns('arrangement.detectorTap', [1, 200]));
const coil = coilName('arrangement.coil');
/** Part of the coil only, from its earthed end: on one band of a switch, say. */
const partly = {
  usedTurns: v.optional(turns('arrangement.usedTurns', [1, 400])),
  unusedTurns: v.optional(choice('arrangement.unusedTurns', ['shorted', 'open'])),
};

/** A wave trap: a tuned circuit that keeps one station out. */
const trap = object({
  kind: choice('trap.kind', ['series', 'parallel', 'absorption']),
  // The station that it is tuned to; left out: what its parts give.
  stops: v.optional(v.pipe(words('trap.stops', 80), v.minLength(1, refuse({ code: 'a-name' })))),
  // One of the set's coils, or one known by its inductance alone.
  coil: v.optional(coilName('trap.coil')),
  inductance: v.optional(inductance('trap.inductance', { typical: [5e-5, 3e-3] })),
  q: withDefault(number('trap.q', 5, 1000, [30, 250]), 100),
  capacitor: v.optional(part('trap.capacitor', tuning)),
  capacitance: v.optional(capacitance('trap.capacitance', { min: LIMITS.capacitance.min, typical: [3e-11, 1e-9] })),
  coupling: withDefault(
    ratio('trap.coupling', {
      min: 1e-4,
      max: 0.99,
      typical: [0.01, 0.3],
    }),
    '5 %',
  ),
});
export type TrapDescription = v.InferOutput<typeof trap>;
/** By name, or the type of a whole description is longer than the compiler writes. */
type TrapsSchema = v.GenericSchema<readonly v.InferInput<typeof trap>[], TrapDescription[]>;
const traps = v.optional(list('arrangement.traps', 'traps', trap, { max: 6 }) as TrapsSchema);

const direct = object({ kind: v.literal('direct'), coil, detectorTap, ...partly, traps });
const seriesFed = object({
  kind: v.literal('series capacitor'),
  coil,
  seriesCapacitor,
  detectorTap,
  ...partly,
  traps,
});
const tapped = object({
  kind: v.literal('tapped'),
  coil,
  aerialTap,
  detectorTap,
  seriesCapacitor: v.optional(seriesCapacitor),
  ...partly,
  traps,
});
const placing = {
  distance: withDefault(
    length('arrangement.distance', {
      min: 0,
      max: 2,
      typical: [0, 0.2],
    }),
    '50 mm',
  ),
  tilt: withDefault(number('arrangement.tilt', 0, 180, [0, 90]), 0),
  coupling: v.optional(
    ratio('arrangement.coupling', {
      min: 1e-4,
      max: 0.999,
      typical: [0.01, 0.6],
    }),
  ),
  measured: measuredPlacing,
};
const coupled = object({
  kind: v.literal('coupled'),
  aerialCoil: coilName('arrangement.aerialCoil'),
  coil,
  ...placing,
  seriesCapacitor: v.optional(seriesCapacitor),
  detectorTap,
  traps,
});
const twoCircuits = object({
  kind: v.literal('two circuits'),
  aerialCoil: coilName('arrangement.twoCircuits.aerialCoil'),
  coil,
  ...placing,
  aerialTuning: v.optional(part('arrangement.aerialTuning', tuning)),
  ganged: withDefault(yes('arrangement.ganged'), false),
  aerialTap: v.optional(aerialTap),
  seriesCapacitor: v.optional(seriesCapacitor),
  detectorTap,
  traps,
});
const slider = object({
  kind: v.literal('slider'),
  coil,
  detectorTap: v.optional(turns('arrangement.detectorTap:slider')),
  fewest: withDefault(turns('arrangement.fewest'), 10),
  parallelCapacitor: withDefault(capacitance('arrangement.parallelCapacitor', { typical: [0, 5e-10] }), '0 pF'),
  traps,
});
const variometer = object({
  kind: v.literal('variometer'),
  coil: coilName('arrangement.variometer.coil'),
  rotor: coilName('arrangement.rotor'),
  parallelCapacitor: withDefault(capacitance('arrangement.parallelCapacitor', { typical: [0, 5e-10] }), '0 pF'),
  traps,
});
const frame = object({ kind: v.literal('frame'), detectorTap, traps });
const ferrite = object({ kind: v.literal('ferrite rod'), detectorTap, traps });

const node = (field: FieldId) => words(field, 40);
const twoEnds = { name: words('element.name', 40), from: node('element.from'), to: node('element.to') };
const element = v.variant(
  'kind',
  [
    object({ kind: v.literal('resistor'), ...twoEnds, resistance: resistance('element.resistance') }),
    object({
      kind: v.literal('capacitor'),
      ...twoEnds,
      capacitance: capacitance('element.capacitance', { min: LIMITS.capacitance.min }),
    }),
    object({
      kind: v.literal('inductor'),
      ...twoEnds,
      inductance: inductance('element.inductance'),
      q: withDefault(number('element.q', 1, 1e4), 100),
    }),
    object({ kind: v.literal('coil'), ...twoEnds, coil: coilName('element.coil') }),
    object({ kind: v.literal('tuning'), ...twoEnds }),
    object({
      kind: v.literal('mutual'),
      name: words('element.name', 40),
      first: node('element.first'),
      second: node('element.second'),
      mutual: inductance('element.mutual', { min: 1e-12 }),
    }),
    object({ kind: v.literal('detector'), ...twoEnds }),
  ],
  variantMessage('kind'),
);
/** Anything else: a plain list of elements. The aerial feeds "aerial", the load hangs from "out" to "earth". */
const elements = object({
  kind: v.literal('elements'),
  elements: list('arrangement.elements', 'elements', element, { min: 1, max: 100 }),
});

export const arrangement = v.variant(
  'kind',
  [direct, seriesFed, tapped, coupled, twoCircuits, slider, variometer, frame, ferrite, elements],
  variantMessage('kind'),
);
export type ArrangementDescription = v.InferOutput<typeof arrangement>;

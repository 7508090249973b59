import * as v from 'valibot';
import {
  capacitance,
  choice,
  inductance,
  length,
  number,
  object,
  ratio,
  resistance,
  turns,
  variantMessage,
  withDefault,
  words,
  yes,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { refuse } from '../../units/refusal.ts';
import { tuning } from '../tunings/tuning-schema.ts';

const coilName = (label: string, about = '') => words(label, about || 'Name of one of the coils.', 60);
const seriesCapacitor = capacitance('Series capacitor', {
  min: LIMITS.capacitance.min,
  typical: [1e-11, 1e-9],
  about: 'In the aerial lead.',
});
const aerialTap = turns('Aerial tap', 'Turns from the earthed end.', [1, 100]);
const detectorTap = v.optional(
  turns('Detector tap', 'Turns from the earthed end; left out: the top of the coil.', [1, 200]),
);
const coil = coilName('Tuning coil');

/** A wave trap: a tuned circuit that keeps one station out. */
export const trap = object({
  kind: choice(
    'Trap',
    ['series', 'parallel', 'absorption'],
    'Series: across the aerial and earth; parallel: in the aerial lead; absorption: loosely coupled to the tuning coil.',
  ),
  inductance: inductance('Inductance', { typical: [5e-5, 3e-3] }),
  capacitance: capacitance('Capacitance', { min: LIMITS.capacitance.min, typical: [3e-11, 1e-9] }),
  q: withDefault(number('Q', 5, 1000, 'Of the trap’s coil.', [30, 250]), 100),
  coupling: withDefault(
    ratio('Coupling', {
      min: 1e-4,
      max: 0.99,
      typical: [0.01, 0.3],
      about: 'Coupling coefficient k, absorption traps only.',
    }),
    '5 %',
  ),
});
const traps = v.optional(v.pipe(v.array(trap, refuse('a list of traps')), v.maxLength(6, refuse('at most 6 traps'))));

const direct = object({ kind: v.literal('direct'), coil, detectorTap, traps });
const seriesFed = object({ kind: v.literal('series capacitor'), coil, seriesCapacitor, detectorTap, traps });
const tapped = object({
  kind: v.literal('tapped'),
  coil,
  aerialTap,
  detectorTap,
  seriesCapacitor: v.optional(seriesCapacitor),
  traps,
});
const placing = {
  distance: withDefault(
    length('Distance', {
      min: 0,
      max: 2,
      typical: [0, 0.2],
      about: 'Along the axis, middle to middle.',
    }),
    '50 mm',
  ),
  tilt: withDefault(number('Tilt, degrees', 0, 180, 'Between the axes.', [0, 90]), 0),
  coupling: v.optional(
    ratio('Coupling', {
      min: 1e-4,
      max: 0.999,
      typical: [0.01, 0.6],
      about: 'Coupling coefficient k, where it was measured or the coils are cores; it wins over the distance.',
    }),
  ),
};
const coupled = object({
  kind: v.literal('coupled'),
  aerialCoil: coilName('Aerial coil'),
  coil,
  ...placing,
  seriesCapacitor: v.optional(seriesCapacitor),
  detectorTap,
  traps,
});
const twoCircuits = object({
  kind: v.literal('two circuits'),
  aerialCoil: coilName('Aerial circuit’s coil'),
  coil,
  ...placing,
  aerialTuning: v.optional(tuning),
  ganged: withDefault(
    yes('Ganged', 'One knob turns both; otherwise the aerial circuit is peaked for each station.'),
    false,
  ),
  aerialTap: v.optional(aerialTap),
  seriesCapacitor: v.optional(seriesCapacitor),
  detectorTap,
  traps,
});
const slider = object({
  kind: v.literal('slider'),
  coil,
  detectorTap: v.optional(turns('Detector tap', 'Turns from the earthed end; left out: at the slider.')),
  fewest: withDefault(turns('Fewest turns', 'Where the slider’s travel ends.'), 10),
  parallelCapacitor: withDefault(capacitance('Parallel capacitor', { typical: [0, 5e-10] }), '0 pF'),
  traps,
});
const variometer = object({
  kind: v.literal('variometer'),
  coil: coilName('Fixed coil'),
  rotor: coilName('Turning coil'),
  parallelCapacitor: withDefault(capacitance('Parallel capacitor', { typical: [0, 5e-10] }), '0 pF'),
  traps,
});
const frame = object({ kind: v.literal('frame'), detectorTap, traps });
const ferrite = object({ kind: v.literal('ferrite rod'), detectorTap, traps });

const node = (label: string) => words(label, 'A node’s name; "aerial", "earth" and "out" are given.', 40);
const twoEnds = { name: words('Name', '', 40), from: node('From'), to: node('To') };
const element = v.variant(
  'kind',
  [
    object({ kind: v.literal('resistor'), ...twoEnds, resistance: resistance('Resistance') }),
    object({
      kind: v.literal('capacitor'),
      ...twoEnds,
      capacitance: capacitance('Capacitance', { min: LIMITS.capacitance.min }),
    }),
    object({
      kind: v.literal('inductor'),
      ...twoEnds,
      inductance: inductance('Inductance'),
      q: withDefault(number('Q', 1, 1e4), 100),
    }),
    object({ kind: v.literal('coil'), ...twoEnds, coil: coilName('Coil') }),
    object({ kind: v.literal('tuning'), ...twoEnds }),
    object({
      kind: v.literal('mutual'),
      name: words('Name', '', 40),
      first: node('First'),
      second: node('Second'),
      mutual: inductance('Mutual inductance', { min: 1e-12 }),
    }),
    object({ kind: v.literal('detector'), ...twoEnds }),
  ],
  variantMessage('kind'),
);
/** Anything else: a plain list of elements. The aerial feeds "aerial", the load hangs from "out" to "earth". */
const elements = object({
  kind: v.literal('elements'),
  elements: v.pipe(
    v.array(element, refuse('a list of elements')),
    v.minLength(1, refuse('at least one element')),
    v.maxLength(100, refuse('at most 100 elements')),
  ),
});

export const arrangement = v.variant(
  'kind',
  [direct, seriesFed, tapped, coupled, twoCircuits, slider, variometer, frame, ferrite, elements],
  variantMessage('kind'),
);
export type ArrangementDescription = v.InferOutput<typeof arrangement>;
export type TrapDescription = v.InferOutput<typeof trap>;

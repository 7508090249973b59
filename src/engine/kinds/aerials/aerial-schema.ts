import * as v from 'valibot';
import {
  angle,
  capacitance,
  choice,
  frequency,
  length,
  lines,
  number,
  object,
  resistance,
  turns,
  variantMessage,
  whole,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { readTouchstone } from '../../parts/aerial/touchstone.ts';
import { refuse } from '../../units/refusal.ts';
import { wire } from '../coils/wire-schema.ts';

const aerialWire = withDefault(length('Wire diameter', { ...LIMITS.aerialWire, typical: [3e-4, 4e-3] }), '1.6 mm');
const base = withDefault(
  length('Lead-in foot', {
    min: 0,
    max: 50,
    typical: [0.3, 5],
    about: 'Height at which the lead-in reaches the set.',
  }),
  '1 m',
);
const height = length('Height', { ...LIMITS.height, typical: [2, 20], about: 'Of the top, above ground.' });
const top = length('Top wire', { ...LIMITS.span, typical: [2, 60] });
const parallel = withDefault(whole('Wires side by side', 1, 8), 1);
const spacing = withDefault(length('Distance between them', { min: 0.01, max: 10, typical: [0.2, 2] }), '0.6 m');

const direction = v.optional(
  angle('Direction', {
    min: -360,
    max: 360,
    typical: [0, 360],
    about: 'Bearing from which it hears best; a right angle to it is its null. Left out: turned to each station.',
  }),
);
const invertedL = object({
  kind: v.literal('inverted-L'),
  height,
  length: top,
  base,
  wire: aerialWire,
  wires: parallel,
  spacing,
});
const tee = object({
  kind: v.literal('T'),
  height,
  length: top,
  base,
  wire: aerialWire,
  wires: parallel,
  spacing,
});
const vertical = object({ kind: v.literal('vertical'), height, base, wire: aerialWire });
/** A level wire fed at its end, where it hangs: with a lead-in it is an inverted L. */
const horizontal = object({ kind: v.literal('horizontal'), height, length: top, wire: aerialWire });
const sloping = object({
  kind: v.literal('sloping'),
  height,
  length: top,
  base,
  wire: aerialWire,
  farHeight: length('Far end', { ...LIMITS.height, typical: [1, 20], about: 'Height of the far end.' }),
});
const bent = object({
  kind: v.literal('bent'),
  wire: aerialWire,
  points: v.pipe(
    v.array(
      v.tuple([number('Along, m', -500, 500), number('Across, m', -500, 500), number('Up, m', 0.05, 200)]),
      refuse('a list of corners [along, across, up] in metres'),
    ),
    v.minLength(2, refuse('at least two corners')),
    v.maxLength(60, refuse('at most 60 corners')),
  ),
});
const frame = object({
  kind: v.literal('frame'),
  outline: withDefault(choice('Outline', ['square', 'round']), 'square'),
  side: length('Side or diameter', { min: 0.01, max: 10, typical: [0.2, 2] }),
  turns: number('Turns', 1, 400, '', [5, 60]),
  wire,
  pitch: withDefault(length('Turn spacing', { ...LIMITS.turnSpacing, typical: [1e-3, 2e-2] }), '5 mm'),
  direction,
  winding: withDefault(choice('Wound', ['box', 'spiral'], 'Side by side on the rim, or inward in one plane.'), 'box'),
});
const ferrite = object({
  kind: v.literal('ferrite rod'),
  length: length('Rod length', { min: 5e-3, max: 1, typical: [0.05, 0.25] }),
  diameter: length('Rod diameter', { min: 5e-4, max: 0.1, typical: [0.006, 0.02] }),
  permeability: withDefault(number('Permeability', 1, 20000, 'Of the material.', [50, 500]), 125),
  turns: turns('Turns', '', [20, 200]),
  wire,
  winding: length('Winding length', { min: 2e-5, max: 1, typical: [0.01, 0.1] }),
  coilDiameter: v.optional(
    length('Coil diameter', {
      min: 1e-3,
      max: 0.3,
      typical: [8e-3, 0.03],
      about: 'Left out: wound on the rod over a layer of paper.',
    }),
  ),
  direction,
  position: withDefault(number('Position of the coil', -1, 1, '0 in the middle of the rod, ±1 at an end.', [-1, 1]), 0),
});
const measured = object({
  kind: v.literal('measured'),
  capacitance: capacitance('Capacitance', { min: LIMITS.capacitance.min, typical: [5e-11, 1e-9] }),
  resistance: withDefault(
    resistance('Resistance', { max: 1e5, typical: [1, 200], about: 'In series, without the earth’s.' }),
    '10 Ω',
  ),
  effectiveHeight: length('Effective height', { ...LIMITS.effectiveHeight, typical: [0.3, 15] }),
});
const impedance = object({
  kind: v.literal('impedance'),
  points: v.pipe(
    v.array(
      object({
        frequency: frequency('Frequency'),
        resistance: resistance('Resistance'),
        reactance: number('Reactance, Ω', -1e7, 1e7),
      }),
      refuse('a list of { frequency, resistance, reactance }'),
    ),
    v.minLength(1, refuse('at least one point')),
    v.maxLength(10_000, refuse('at most 10000 points')),
  ),
  effectiveHeight: length('Effective height', { ...LIMITS.effectiveHeight, typical: [0.3, 15] }),
});

const touchstone = v.pipe(
  object({
    kind: v.literal('touchstone'),
    text: lines('Touchstone text', 'The whole of a one-port file, version 1 or 2, as an analyser writes it.'),
    effectiveHeight: length('Effective height', { ...LIMITS.effectiveHeight, typical: [0.3, 15] }),
  }),
  // From here on it is an aerial of measured impedance like any other.
  v.rawTransform(({ dataset, addIssue, NEVER }) => {
    const { kind: _, text, ...rest } = dataset.value;
    const read = readTouchstone(text);
    if (read.ok && read.points.length > 0) return { ...rest, kind: 'impedance' as const, points: [...read.points] };
    const why = read.ok ? 'no points' : read.problems.map((p) => `line ${p.line}: ${p.message}`).join('; ');
    addIssue({
      message: refuse({
        expected: 'a one-port Touchstone file',
        received: JSON.stringify(text.slice(0, 40)),
        hint: why,
      }),
      path: [{ type: 'object', origin: 'value', input: dataset.value, key: 'text', value: text }],
    });
    return NEVER;
  }),
);

export const aerial = v.variant(
  'kind',
  [invertedL, vertical, tee, horizontal, sloping, bent, frame, ferrite, measured, impedance, touchstone],
  variantMessage('kind'),
);
export type AerialDescription = v.InferOutput<typeof aerial>;

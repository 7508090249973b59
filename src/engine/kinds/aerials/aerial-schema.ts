import * as v from 'valibot';
import {
  angle,
  capacitance,
  choice,
  frequency,
  length,
  lines,
  list,
  number,
  object,
  resistance,
  turns,
  variantMessage,
  whole,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { refuse } from '../../fields/refusal.ts';
import { SURROUNDINGS, usualSurroundings } from '../../parts/aerial/surroundings.ts';
import { readTouchstone } from '../../parts/aerial/touchstone.ts';
import { wire } from '../coils/wire-schema.ts';
import { measuredLoop, measuredWireAerial } from '../measured/measured-schema.ts';

const aerialWire = withDefault(length('aerial.wire', { ...LIMITS.aerialWire, typical: [3e-4, 4e-3] }), '1.6 mm');
const base = withDefault(
  length('aerial.base', {
    min: 0,
    max: 50,
    typical: [0.3, 5],
  }),
  '1 m',
);
const height = length('aerial.height', { ...LIMITS.height, typical: [2, 20] });
const top = length('aerial.length', { ...LIMITS.span, typical: [2, 60] });
const parallel = withDefault(whole('aerial.wires', 1, 8), 1);
const spacing = withDefault(length('aerial.spacing', { min: 0.01, max: 10, typical: [0.2, 2] }), '0.6 m');

const surroundings = withDefault(choice('aerial.surroundings', SURROUNDINGS), usualSurroundings(false));
const loopSurroundings = withDefault(choice('aerial.surroundings', SURROUNDINGS), usualSurroundings(true));

const direction = v.optional(
  angle('aerial.direction', {
    min: -360,
    max: 360,
    typical: [0, 360],
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
  surroundings,
  measured: measuredWireAerial,
});
const tee = object({
  kind: v.literal('T'),
  height,
  length: top,
  base,
  wire: aerialWire,
  wires: parallel,
  spacing,
  surroundings,
  measured: measuredWireAerial,
});
const vertical = object({
  kind: v.literal('vertical'),
  height,
  base,
  wire: aerialWire,
  surroundings,
  measured: measuredWireAerial,
});
/** A level wire fed at its end, where it hangs: with a lead-in it is an inverted L. */
const horizontal = object({
  kind: v.literal('horizontal'),
  height,
  length: top,
  wire: aerialWire,
  surroundings,
  measured: measuredWireAerial,
});
const sloping = object({
  kind: v.literal('sloping'),
  height,
  length: top,
  base,
  wire: aerialWire,
  farHeight: length('aerial.farHeight', { ...LIMITS.height, typical: [1, 20] }),
  surroundings,
  measured: measuredWireAerial,
});
const bent = object({
  kind: v.literal('bent'),
  wire: aerialWire,
  points: list(
    'aerial.points',
    'corners',
    v.tuple([
      number('aerial.points.along', -500, 500),
      number('aerial.points.across', -500, 500),
      number('aerial.points.up', 0.05, 200),
    ]),
    { min: 2, max: 60 },
  ),
  surroundings,
  measured: measuredWireAerial,
});
const frame = object({
  kind: v.literal('frame'),
  outline: withDefault(choice('aerial.outline', ['square', 'round']), 'square'),
  side: length('aerial.side', { min: 0.01, max: 10, typical: [0.2, 2] }),
  turns: number('aerial.turns', 1, 400, [5, 60]),
  wire,
  pitch: withDefault(length('aerial.pitch', { ...LIMITS.turnSpacing, typical: [1e-3, 2e-2] }), '5 mm'),
  direction,
  winding: withDefault(choice('aerial.winding', ['box', 'spiral']), 'box'),
  surroundings: loopSurroundings,
  measured: measuredLoop,
});
const ferrite = object({
  kind: v.literal('ferrite rod'),
  length: length('aerial.ferriteRod.length', { min: 5e-3, max: 1, typical: [0.05, 0.25] }),
  diameter: length('aerial.ferriteRod.diameter', { min: 5e-4, max: 0.1, typical: [0.006, 0.02] }),
  permeability: withDefault(number('aerial.permeability', 1, 20000, [50, 500]), 125),
  turns: turns('aerial.turns', [20, 200]),
  wire,
  winding: length('aerial.ferriteRod.winding', { min: 2e-5, max: 1, typical: [0.01, 0.1] }),
  coilDiameter: v.optional(
    length('aerial.coilDiameter', {
      min: 1e-3,
      max: 0.3,
      typical: [8e-3, 0.03],
    }),
  ),
  direction,
  position: withDefault(number('aerial.position', -1, 1, [-1, 1]), 0),
  surroundings: loopSurroundings,
  measured: measuredLoop,
});
const measured = object({
  kind: v.literal('measured'),
  capacitance: capacitance('aerial.capacitance', { min: LIMITS.capacitance.min, typical: [5e-11, 1e-9] }),
  resistance: withDefault(resistance('aerial.resistance', { max: 1e5, typical: [1, 200] }), '10 Ω'),
  effectiveHeight: length('aerial.effectiveHeight', { ...LIMITS.effectiveHeight, typical: [0.3, 15] }),
  measured: measuredWireAerial,
});
const impedance = object({
  kind: v.literal('impedance'),
  points: list(
    'aerial.points',
    'impedance-points',
    object({
      frequency: frequency('aerial.points.frequency'),
      resistance: resistance('aerial.points.resistance'),
      reactance: number('aerial.points.reactance', -1e7, 1e7),
    }),
    { min: 1, max: 10_000 },
  ),
  effectiveHeight: length('aerial.effectiveHeight', { ...LIMITS.effectiveHeight, typical: [0.3, 15] }),
  measured: measuredWireAerial,
});

const touchstone = v.pipe(
  object({
    kind: v.literal('touchstone'),
    text: lines('aerial.text'),
    effectiveHeight: length('aerial.effectiveHeight', { ...LIMITS.effectiveHeight, typical: [0.3, 15] }),
    measured: measuredWireAerial,
  }),
  // From here on it is an aerial of measured impedance like any other.
  v.rawTransform(({ dataset, addIssue, NEVER }) => {
    const { kind: _, text, ...rest } = dataset.value;
    const read = readTouchstone(text);
    if (read.ok && read.points.length > 0) return { ...rest, kind: 'impedance' as const, points: [...read.points] };
    addIssue({
      message: refuse({
        expected: { code: 'touchstone-file' },
        given: { code: 'value', json: JSON.stringify(text.slice(0, 40)) },
        hint: read.ok ? { code: 'touchstone-empty' } : { code: 'touchstone-problems', problems: read.problems },
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

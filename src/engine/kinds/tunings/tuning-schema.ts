import * as v from 'valibot';
import {
  angle,
  capacitance,
  choice,
  length,
  number,
  object,
  ratio,
  variantMessage,
  whole,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { type DielectricName, DIELECTRICS as TABLE } from '../../parts/capacitor/dielectrics.ts';
import { refuse } from '../../units/refusal.ts';

const LAWS = ['semicircular', 'square-law', 'straight-line frequency', 'logarithmic'] as const;
const DIELECTRICS = Object.keys(TABLE) as DielectricName[];

const law = withDefault(choice('Vane shape', LAWS, 'How capacitance follows the scale.'), 'semicircular');
const swing = withDefault(
  angle('Swing', { min: 1, max: 360, typical: [90, 300], about: 'Turn of the shaft from open to meshed.' }),
  '180°',
);
const stray = withDefault(
  capacitance('Strays', {
    max: 1e-9,
    typical: [0, 4e-11],
    about: 'Wiring, terminals, the detector’s own: always there.',
  }),
  '8 pF',
);
const trimmer = withDefault(
  capacitance('Trimmer', { max: 1e-9, typical: [0, 1e-10], about: 'Set in parallel; 0 if none.' }),
  '0 pF',
);
const lossTangent = (fallback: string) =>
  withDefault(ratio('Loss (tan δ)', { ...LIMITS.lossTangent, typical: [0, 0.05] }), fallback);
const padder = v.optional(
  capacitance('Padder', {
    min: LIMITS.capacitance.min,
    typical: [1e-10, 5e-9],
    about: 'In series with the capacitor, to narrow what it covers.',
  }),
);
const common = { stray, trimmer, padder };
const airGap = v.optional(
  length('Air left between', {
    ...LIMITS.airLeft,
    typical: [1e-5, 5e-4],
    about: 'Where the foil does not lie flat on its dielectric.',
  }),
);
const permittivity = v.optional(
  number(
    'Permittivity',
    LIMITS.permittivity.min,
    LIMITS.permittivity.max,
    'As measured; left out: usual for it.',
    [1, 10],
  ),
);

const bought = object({
  kind: v.literal('variable'),
  maximum: capacitance('Meshed', {
    min: LIMITS.capacitance.min,
    typical: [1e-10, 1e-9],
    about: 'Capacitance with the vanes fully in.',
  }),
  tolerance: v.optional(
    ratio('Tolerance', { min: 0, max: 0.5, typical: [0.01, 0.2], about: '± of the marking; left out: 10 %.' }),
  ),
  minimum: v.optional(
    capacitance('Open', { typical: [5e-12, 5e-11], about: 'With the vanes out; left out: a usual one for its size.' }),
  ),
  law,
  swing,
  lossTangent: lossTangent('0.1 %'),
  ...common,
});
const vanes = object({
  kind: v.literal('vanes'),
  outerRadius: length('Vane radius', { ...LIMITS.vaneRadius, typical: [0.01, 0.08] }),
  innerRadius: withDefault(
    length('Cut-out radius', {
      min: 5e-4,
      max: 0.2,
      typical: [3e-3, 0.02],
      about: 'Of the cut-out round the shaft in the fixed vanes.',
    }),
    '8 mm',
  ),
  gap: length('Air gap', { ...LIMITS.gap, typical: [2e-4, 2e-3], about: 'Between a moving and a fixed vane.' }),
  vanes: whole('Vanes in all', 2, 101, 'Moving and fixed together.', [2, 31]),
  dielectric: withDefault(choice('Between vanes', DIELECTRICS), 'air'),
  minimum: v.optional(
    capacitance('Open', { typical: [5e-12, 5e-11], about: 'As measured with the vanes out; left out: estimated.' }),
  ),
  law,
  swing,
  lossTangent: lossTangent('0.1 %'),
  ...common,
});
const points = object({
  kind: v.literal('measured'),
  points: v.pipe(
    v.array(
      object({
        scale: angle('Scale', { min: 0, max: 360 }),
        capacitance: capacitance('Capacitance', { min: LIMITS.capacitance.min }),
      }),
      refuse('a list of { scale, capacitance }'),
    ),
    v.minLength(2, refuse('at least two measured points')),
    v.maxLength(1000, refuse('at most 1000 measured points')),
    v.check(
      (list) => list.every((p, i) => i === 0 || p.scale > list[i - 1].scale),
      refuse('scale readings that rise from point to point'),
    ),
  ),
  lossTangent: lossTangent('0.1 %'),
  ...common,
});
const foil = object({
  kind: v.literal('foil'),
  length: length('Overlap, full', {
    ...LIMITS.plate,
    typical: [0.05, 0.6],
    about: 'How far the sheets overlap when pushed home.',
  }),
  width: length('Width', { ...LIMITS.plate, typical: [0.03, 0.4] }),
  thickness: length('Dielectric thickness', { ...LIMITS.dielectric, typical: [2e-5, 1e-3] }),
  dielectric: withDefault(choice('Dielectric', DIELECTRICS), 'paper'),
  permittivity,
  airGap,
  sheets: withDefault(
    whole('Sheets in all', 2, 200, 'Two make one capacitor; three make two in parallel.', [2, 21]),
    2,
  ),
  minimum: v.optional(capacitance('Pulled apart', { typical: [5e-12, 5e-11] })),
  lossTangent: v.optional(ratio('Loss (tan δ)', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
  ...common,
});
const plates = v.pipe(
  object({
    kind: v.literal('plates'),
    length: length('Overlap, full', {
      ...LIMITS.plate,
      typical: [0.03, 0.3],
      about: 'How far the plates slide over each other.',
    }),
    width: length('Width', { ...LIMITS.plate, typical: [0.03, 0.3] }),
    thickness: length('Gap or dielectric', { ...LIMITS.dielectric, typical: [1e-4, 2e-3] }),
    dielectric: withDefault(choice('Between plates', DIELECTRICS), 'air'),
    permittivity,
    airGap,
    sheets: withDefault(
      whole('Plates in all', 2, 200, 'Two make one capacitor; three make two in parallel.', [2, 21]),
      2,
    ),
    minimum: v.optional(capacitance('Slid apart', { typical: [5e-12, 5e-11] })),
    lossTangent: v.optional(ratio('Loss (tan δ)', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
    ...common,
  }),
  // From here on they are sheets that slide, as foil is.
  v.transform((written) => ({ ...written, kind: 'foil' as const })),
);
const tubes = object({
  kind: v.literal('tubes'),
  length: length('Overlap, full', { ...LIMITS.plate, typical: [0.05, 0.5] }),
  innerDiameter: length('Inner tube, outside', { min: 5e-4, max: 0.5, typical: [0.005, 0.06] }),
  gap: length('Gap', { min: 1e-6, max: 0.05, typical: [1e-4, 2e-3] }),
  dielectric: withDefault(choice('Between tubes', DIELECTRICS), 'paper'),
  permittivity,
  airGap,
  lossTangent: v.optional(ratio('Loss (tan δ)', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
  ...common,
});
const book = object({
  kind: v.literal('book'),
  length: length('Leaf length', { ...LIMITS.plate, typical: [0.05, 0.4], about: 'From hinge to edge.' }),
  width: length('Leaf width', { ...LIMITS.plate, typical: [0.03, 0.4] }),
  opening: withDefault(angle('Widest opening', { min: 0.1, max: 180, typical: [10, 90] }), '60°'),
  thickness: length('Dielectric thickness', { ...LIMITS.dielectric, typical: [2e-5, 1e-3] }),
  dielectric: withDefault(choice('Dielectric', DIELECTRICS), 'paper'),
  permittivity,
  airGap,
  lossTangent: v.optional(ratio('Loss (tan δ)', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
  ...common,
});
const fixed = object({
  kind: v.literal('fixed'),
  capacitance: capacitance('Capacitance', { typical: [2e-11, 2e-9] }),
  lossTangent: lossTangent('0.1 %'),
  ...common,
});

/** What tunes the set. Its pointer position runs from 0 (open) to 1 (meshed). */
export const tuning = v.variant(
  'kind',
  [bought, vanes, points, foil, plates, tubes, book, fixed],
  variantMessage('kind'),
);
export type TuningDescription = v.InferOutput<typeof tuning>;

import * as v from 'valibot';
import {
  angle,
  capacitance,
  choice,
  length,
  list,
  number,
  object,
  ratio,
  variantMessage,
  whole,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { refuse } from '../../fields/refusal.ts';
import { type DielectricName, DIELECTRICS as TABLE } from '../../parts/capacitor/dielectrics.ts';
import { measuredTuning } from '../measured/measured-schema.ts';

const LAWS = ['semicircular', 'square-law', 'straight-line frequency', 'logarithmic'] as const;
const DIELECTRICS = Object.keys(TABLE) as DielectricName[];

const law = withDefault(choice('tuning.law', LAWS), 'semicircular');
const swing = withDefault(angle('tuning.swing', { min: 1, max: 360, typical: [90, 300] }), '180°');
const stray = withDefault(
  capacitance('tuning.stray', {
    max: 1e-9,
    typical: [0, 4e-11],
  }),
  '8 pF',
);
const trimmer = withDefault(capacitance('tuning.trimmer', { max: 1e-9, typical: [0, 1e-10] }), '0 pF');
const lossTangent = (fallback: string) =>
  withDefault(ratio('tuning.lossTangent', { ...LIMITS.lossTangent, typical: [0, 0.05] }), fallback);
const padder = v.optional(
  capacitance('tuning.padder', {
    min: LIMITS.capacitance.min,
    typical: [1e-10, 5e-9],
  }),
);
const common = { stray, trimmer, padder, measured: measuredTuning };
const airGap = v.optional(
  length('tuning.airGap', {
    ...LIMITS.airLeft,
    typical: [1e-5, 5e-4],
  }),
);
const permittivity = v.optional(
  number('tuning.permittivity', LIMITS.permittivity.min, LIMITS.permittivity.max, [1, 10]),
);

const standardVariable = object({
  kind: v.literal('variable'),
  maximum: capacitance('tuning.maximum', {
    min: LIMITS.capacitance.min,
    typical: [1e-10, 1e-9],
  }),
  tolerance: v.optional(ratio('tuning.tolerance', { min: 0, max: 0.5, typical: [0.01, 0.2] })),
  minimum: v.optional(capacitance('tuning.minimum', { typical: [5e-12, 5e-11] })),
  law,
  swing,
  lossTangent: lossTangent('0.1 %'),
  ...common,
});
const vanes = object({
  kind: v.literal('vanes'),
  outerRadius: length('tuning.outerRadius', { ...LIMITS.vaneRadius, typical: [0.01, 0.08] }),
  innerRadius: withDefault(
    length('tuning.innerRadius', {
      min: 5e-4,
      max: 0.2,
      typical: [3e-3, 0.02],
    }),
    '8 mm',
  ),
  gap: length('tuning.gap', { ...LIMITS.gap, typical: [2e-4, 2e-3] }),
  vanes: whole('tuning.vanes', 2, 101, [2, 31]),
  dielectric: withDefault(choice('tuning.vanes.dielectric', DIELECTRICS), 'air'),
  minimum: v.optional(capacitance('tuning.minimum:vanes', { typical: [5e-12, 5e-11] })),
  law,
  swing,
  lossTangent: lossTangent('0.1 %'),
  ...common,
});
const points = object({
  kind: v.literal('measured'),
  points: v.pipe(
    list(
      'tuning.points',
      'scale-points',
      object({
        scale: angle('tuning.points.scale', { min: 0, max: 360 }),
        capacitance: capacitance('tuning.points.capacitance', { min: LIMITS.capacitance.min }),
      }),
      { min: 2, max: 1000 },
    ),
    v.check((all) => all.every((p, i) => i === 0 || p.scale > all[i - 1].scale), refuse({ code: 'rising-scale' })),
  ),
  lossTangent: lossTangent('0.1 %'),
  ...common,
});
const foil = object({
  kind: v.literal('foil'),
  length: length('tuning.length', {
    ...LIMITS.plate,
    typical: [0.05, 0.6],
  }),
  width: length('tuning.width', { ...LIMITS.plate, typical: [0.03, 0.4] }),
  thickness: length('tuning.thickness', { ...LIMITS.dielectric, typical: [2e-5, 1e-3] }),
  dielectric: withDefault(choice('tuning.dielectric', DIELECTRICS), 'paper'),
  permittivity,
  airGap,
  sheets: withDefault(whole('tuning.sheets', 2, 200, [2, 21]), 2),
  minimum: v.optional(capacitance('tuning.foil.minimum', { typical: [5e-12, 5e-11] })),
  lossTangent: v.optional(ratio('tuning.lossTangent', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
  ...common,
});
const plates = v.pipe(
  object({
    kind: v.literal('plates'),
    length: length('tuning.length:plates', {
      ...LIMITS.plate,
      typical: [0.03, 0.3],
    }),
    width: length('tuning.width', { ...LIMITS.plate, typical: [0.03, 0.3] }),
    thickness: length('tuning.plates.thickness', { ...LIMITS.dielectric, typical: [1e-4, 2e-3] }),
    dielectric: withDefault(choice('tuning.plates.dielectric', DIELECTRICS), 'air'),
    permittivity,
    airGap,
    sheets: withDefault(whole('tuning.plates.sheets', 2, 200, [2, 21]), 2),
    minimum: v.optional(capacitance('tuning.plates.minimum', { typical: [5e-12, 5e-11] })),
    lossTangent: v.optional(ratio('tuning.lossTangent', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
    ...common,
  }),
  // From here on they are sheets that slide, as foil is.
  v.transform((written) => ({ ...written, kind: 'foil' as const })),
);
const tubes = object({
  kind: v.literal('tubes'),
  length: length('tuning.length:tubes', { ...LIMITS.plate, typical: [0.05, 0.5] }),
  innerDiameter: length('tuning.innerDiameter', { min: 5e-4, max: 0.5, typical: [0.005, 0.06] }),
  gap: length('tuning.tubes.gap', { min: 1e-6, max: 0.05, typical: [1e-4, 2e-3] }),
  dielectric: withDefault(choice('tuning.tubes.dielectric', DIELECTRICS), 'paper'),
  permittivity,
  airGap,
  lossTangent: v.optional(ratio('tuning.lossTangent', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
  ...common,
});
const book = object({
  kind: v.literal('book'),
  length: length('tuning.book.length', { ...LIMITS.plate, typical: [0.05, 0.4] }),
  width: length('tuning.book.width', { ...LIMITS.plate, typical: [0.03, 0.4] }),
  opening: withDefault(angle('tuning.opening', { min: 0.1, max: 180, typical: [10, 90] }), '60°'),
  thickness: length('tuning.thickness', { ...LIMITS.dielectric, typical: [2e-5, 1e-3] }),
  dielectric: withDefault(choice('tuning.dielectric', DIELECTRICS), 'paper'),
  permittivity,
  airGap,
  lossTangent: v.optional(ratio('tuning.lossTangent', { ...LIMITS.lossTangent, typical: [0, 0.1] })),
  ...common,
});
const fixed = object({
  kind: v.literal('fixed'),
  capacitance: capacitance('tuning.capacitance', { typical: [2e-11, 2e-9] }),
  lossTangent: lossTangent('0.1 %'),
  ...common,
});

/** What tunes the set. Its pointer position runs from 0 (open) to 1 (meshed). */
export const tuning = v.variant(
  'kind',
  [standardVariable, vanes, points, foil, plates, tubes, book, fixed],
  variantMessage('kind'),
);
export type TuningDescription = v.InferOutput<typeof tuning>;

import * as v from 'valibot';
import { choice, length, object, whole, withDefault } from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';

const COVERINGS = [
  'bare',
  'enamel',
  'single cotton',
  'double cotton',
  'single silk',
  'double silk',
  'enamel and cotton',
  'enamel and silk',
] as const;

/** Wire as bought: size and covering; several strands make Litz. */
export const wire = object(
  {
    size: length('Wire size', {
      ...LIMITS.coilWire,
      typical: [1e-4, 2e-3],
      about: 'Bare diameter or gauge: "28 SWG", "24 AWG", "0.4 mm".',
    }),
    covering: withDefault(
      choice('Covering', COVERINGS, 'What insulates it; it sets how close turns can lie.'),
      'enamel',
    ),
    metal: withDefault(choice('Metal', ['copper', 'aluminium']), 'copper'),
    strands: v.optional(
      whole('Strands', 1, 5000, 'More than one: Litz, and the size is that of one strand.', [1, 100]),
    ),
  },
  'write { "size": "28 SWG", "covering": "enamel" }',
);
export type Wire = v.InferOutput<typeof wire>;

import * as v from 'valibot';
import { choice, length, object, part, whole, withDefault } from '../../fields/fields.ts';
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
export const wire = part(
  'wire.part',
  object(
    {
      size: length('wire.size', {
        ...LIMITS.coilWire,
        typical: [1e-4, 2e-3],
      }),
      covering: withDefault(choice('wire.covering', COVERINGS), 'enamel'),
      metal: withDefault(choice('wire.metal', ['copper', 'aluminium']), 'copper'),
      strands: v.optional(whole('wire.strands', 1, 5000, [1, 100])),
    },
    { code: 'write-wire' },
  ),
);
export type Wire = v.InferOutput<typeof wire>;

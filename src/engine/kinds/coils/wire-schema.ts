import * as v from 'valibot';
import { choice, length, object, part, whole, withDefault } from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { COVERINGS } from '../../parts/wire/wire.ts';

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
      overall: v.optional(length('wire.overall', { ...LIMITS.coilWire, typical: [1.5e-4, 4e-3] })),
    },
    { code: 'write-wire' },
  ),
);
export type Wire = v.InferOutput<typeof wire>;

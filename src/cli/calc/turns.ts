import * as v from 'valibot';
import { ImpossibleValues, quantity, refuse, spreadFor, turnsFor, type Unwound } from '../../engine/index.ts';
import { calcNotes } from '../../outputs/words/index.ts';
import { calculation, figure } from './calculation.ts';
import { coilSchema } from './coil.ts';
import { expected } from './expect.ts';
import { buildable } from './shape.ts';

/** A coil whose turns are still to be found. */
const unwound = v.pipe(
  v.looseObject({ shape: v.string(expected('unwound-shape')) }, expected('unwound')),
  v.transform((coil) => ({
    ...coil,
    ...(coil.shape === 'multilayer' ? { layers: coil.layers ?? 1 } : { turns: coil.turns ?? 1 }),
  })),
  coilSchema,
);
const schema = v.object({
  inductance: quantity('inductance', { above: 0, max: 1e3 }),
  coil: unwound,
  turns: v.optional(v.pipe(v.number(expected('turns')), v.minValue(1, refuse({ code: 'at-least', min: 1 })))),
});
type Input = v.InferOutput<typeof schema>;

const turnsOf = ({ coil, inductance }: Input) => {
  if (coil.shape === 'core') return Math.sqrt(inductance / coil.perTurnSquared);
  const fit = turnsFor(inductance, coil as unknown as Unwound);
  if (!fit) throw new ImpossibleValues({ code: 'coil.too-much-inductance' });
  return fit;
};

export const turnsCalculation = calculation({
  name: 'turns',
  example: {
    inductance: '200 µH',
    coil: { shape: 'solenoid', formerDiameter: '63 mm', wire: { diameter: '26 SWG', covering: 'enamel' } },
    turns: 70,
  },
  schema: buildable(schema, turnsOf),
  answer(input) {
    const { coil, inductance } = input;
    const fit = turnsOf(input);
    if (typeof fit === 'number') {
      const whole = Math.max(1, Math.round(fit));
      return {
        turns: fit,
        whole,
        inductance: figure((coil as { perTurnSquared: number }).perTurnSquared * whole ** 2, 'inductance'),
        warnings: [],
      };
    }
    const spread =
      input.turns !== undefined && (coil.shape === 'solenoid' || coil.shape === 'basket')
        ? spreadFor(inductance, { ...coil, turns: input.turns } as Parameters<typeof spreadFor>[1])
        : undefined;
    return {
      turns: fit.turns,
      whole: fit.whole,
      inductance: figure(fit.inductance, 'inductance', fit.inductanceRange),
      room: figure(fit.room, 'length'),
      wireLength: figure(fit.wireLength, 'length'),
      ...(spread
        ? {
            spread: {
              pitch: figure(spread.pitch, 'length'),
              length: figure(spread.length, 'length'),
              lengthening: figure(spread.lengthening, 'length'),
            },
          }
        : {}),
      warnings: input.turns !== undefined && !spread ? [calcNotes.noSpread] : [],
    };
  },
});

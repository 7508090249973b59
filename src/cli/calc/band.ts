import * as v from 'valibot';
import { fitBand, quantity } from '../../engine/index.ts';
import { bandFitSentence } from '../../outputs/words/index.ts';
import { calculation, figure } from './calculation.ts';
import { buildable } from './shape.ts';

const capacitance = quantity('capacitance', { above: 0, max: 1e-3 });
const frequency = quantity('frequency', { above: 0, max: 1e9 });

const schema = v.object({
  inductance: quantity('inductance', { above: 0, max: 1e3 }),
  from: frequency,
  to: frequency,
  min: capacitance,
  max: capacitance,
  stray: v.optional(quantity('capacitance', { min: 0, max: 1e-3 }), 0),
});

export const bandCalculation = calculation({
  name: 'band',
  example: { inductance: '190 µH', from: '550 kHz', to: '1500 kHz', min: '15 pF', max: '500 pF', stray: '20 pF' },
  schema: buildable(schema, fitBand),
  answer(input) {
    const fit = fitBand(input);
    const fitting = ({ trimmer, padder }: { trimmer: number; padder?: number }) => ({
      trimmer: figure(trimmer, 'capacitance'),
      ...(padder === undefined ? {} : { padder: figure(padder, 'capacitance') }),
    });
    const sentence = bandFitSentence(fit);
    const covers = (ends: readonly [number, number]) => ends.map((f) => figure(f, 'frequency'));
    return {
      possible: fit.possible,
      ...fitting(fit),
      covers: covers(fit.covers),
      ...(fit.bought ? { bought: { ...fitting(fit.bought), covers: covers(fit.bought.covers) } } : {}),
      ...(fit.betterInductance === undefined ? {} : { betterInductance: figure(fit.betterInductance, 'inductance') }),
      sentence,
      warnings: fit.possible ? [] : [sentence],
    };
  },
});

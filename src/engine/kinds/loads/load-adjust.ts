import { formatQuantity } from '../../units/format.ts';
import { type AdjustContext, type Adjustment, type AdjustmentsByKind, adjustmentsIn } from '../adjustment.ts';
import type { LoadDescription, TransformerDescription } from './load-schema.ts';

/** The ratio of a transformer, or one where none is fitted: an ordinary small one of the valve days. */
function ratio(now: TransformerDescription | undefined, { loadImpedance }: AdjustContext): Adjustment {
  return {
    id: 'load.transformer.ratio',
    part: 'load',
    path: now ? ['load', 'transformer', 'ratio'] : ['load', 'transformer'],
    effort: 'buy',
    domain: { is: 'real', from: 0.3, to: 100, scale: 'ratio', digits: 2 },
    now: now?.ratio,
    serves: ['loudness'],
    edits: now
      ? undefined
      : (to) => [
          {
            path: ['load', 'transformer'],
            to: { ratio: to, secondaryResistance: formatQuantity(Math.min(1, loadImpedance / 50), 'resistance', 2) },
          },
        ],
  };
}

/** What each load has to adjust: one entry for each kind. */
const LOAD_ADJUSTMENTS: AdjustmentsByKind<LoadDescription> = {
  phones: (load, about) => [
    ...(load.make === 'magnetic'
      ? [
          {
            id: 'load.make',
            part: 'load',
            path: ['load', 'make'],
            effort: 'buy',
            domain: { is: 'choice', of: ['balanced armature'] },
            now: load.make,
            serves: ['loudness'],
          } as const,
        ]
      : []),
    ratio(load.transformer, about),
  ],
  'crystal earpiece': (load) => [
    {
      id: 'load.resistor',
      part: 'load',
      path: ['load', 'resistor'],
      effort: 'rewire',
      domain: { is: 'series', series: 'E12', from: 1e4, to: 1e6, unit: 'resistance' },
      now: load.resistor,
      serves: ['loudness'],
    },
  ],
  'moving-coil phones': (load, about) => [ratio(load.transformer, about)],
  amplifier: { none: 'it has a volume control' },
};

export const loadAdjustments = (load: LoadDescription, about: AdjustContext): readonly Adjustment[] =>
  adjustmentsIn(LOAD_ADJUSTMENTS, load, about, ['load']);

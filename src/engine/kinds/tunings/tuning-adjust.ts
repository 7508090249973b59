import { formatQuantity } from '../../units/format.ts';
import { type AdjustContext, type Adjustment, type AdjustmentsByKind, adjustmentsIn } from '../adjustment.ts';
import type { TuningDescription } from './tuning-schema.ts';

/** Variable capacitors that are sold, sections joined. Common practice, no source. */
const STOCK_VALUES = [365e-12, 500e-12, 730e-12, 1e-9];

const BRINGS_IN_RANGE = { part: 'tuning', serves: ['reach'] } as const;

/** A fixed capacitor across the tuning capacitor: it brings the low end down, and part of the range goes. */
const across = ({ trimmer }: { trimmer: number }, { beyond }: AdjustContext): Adjustment[] =>
  beyond === 'above'
    ? []
    : [
        {
          ...BRINGS_IN_RANGE,
          id: 'tuning.trimmer',
          path: ['tuning', 'trimmer'],
          effort: 'rewire',
          domain: { is: 'series', series: 'E12', from: 1e-11, to: 1e-9, unit: 'capacitance' },
          now: trimmer > 0 ? trimmer : undefined,
        },
      ];

const stockAbove = (from: number): string[] =>
  STOCK_VALUES.filter((C) => C > from).map((C) => `${Math.round(C * 1e12)} pF`);

const written = (capacitance: number): string => formatQuantity(capacitance, 'capacitance', 6);

/** A capacitor that is sold, in place of a home-made or fixed one. */
const standardVariable = ({ kind, stray, trimmer, padder }: TuningDescription): Adjustment => ({
  ...BRINGS_IN_RANGE,
  id: 'tuning.kind',
  path: ['tuning'],
  effort: 'buy',
  domain: {
    is: 'choice',
    of: stockAbove(0).map((maximum) => ({
      kind: 'variable',
      maximum,
      stray: written(stray),
      ...(trimmer > 0 ? { trimmer: written(trimmer) } : {}),
      ...(padder === undefined ? {} : { padder: written(padder) }),
    })),
  },
  now: kind,
});

const homeMade = (tuning: TuningDescription, about: AdjustContext): Adjustment[] => [
  standardVariable(tuning),
  ...across(tuning, about),
];

/** What each tuning has to adjust: one entry for each kind. */
const TUNING_ADJUSTMENTS: AdjustmentsByKind<TuningDescription> = {
  variable: (tuning, about) =>
    about.beyond === 'above'
      ? []
      : [
          {
            ...BRINGS_IN_RANGE,
            id: 'tuning.maximum',
            path: ['tuning', 'maximum'],
            effort: 'buy',
            domain: { is: 'choice', of: stockAbove(1.1 * tuning.maximum) },
            now: tuning.maximum,
          },
          ...across(tuning, about),
        ],
  vanes: homeMade,
  measured: homeMade,
  foil: homeMade,
  tubes: homeMade,
  book: homeMade,
  fixed: homeMade,
};

export const tuningAdjustments = (tuning: TuningDescription, about: AdjustContext): readonly Adjustment[] =>
  adjustmentsIn(TUNING_ADJUSTMENTS, tuning, about, ['tuning']);

import { type AdjustContext, type Adjustment, type AdjustmentsByKind, adjustmentsIn } from '../adjustment.ts';
import type { TuningDescription } from './tuning-schema.ts';

/** Variable capacitors that are sold, sections joined. Common practice, no source. */
const SOLD = [365e-12, 500e-12, 730e-12, 1e-9];

/** What each tuning has to adjust: one entry for each kind. */
const TUNING_ADJUSTMENTS: AdjustmentsByKind<TuningDescription> = {
  variable: (tuning, { beyond }) =>
    beyond === 'above'
      ? []
      : [
          {
            id: 'tuning.maximum',
            part: 'tuning',
            path: ['tuning', 'maximum'],
            effort: 'buy',
            domain: {
              is: 'choice',
              of: SOLD.filter((C) => C > 1.1 * tuning.maximum).map((C) => `${Math.round(C * 1e12)} pF`),
            },
            now: tuning.maximum,
            serves: ['reach'],
          },
        ],
  vanes: { none: 'its vanes are cut to measure' },
  measured: { none: 'its capacitance was measured as it is' },
  foil: { none: 'its sheets are cut to measure' },
  tubes: { none: 'its tubes are cut to measure' },
  book: { none: 'its leaves are cut to measure' },
  fixed: { none: 'it does not tune' },
};

export const tuningAdjustments = (tuning: TuningDescription, about: AdjustContext): readonly Adjustment[] =>
  adjustmentsIn(TUNING_ADJUSTMENTS, tuning, about, ['tuning']);

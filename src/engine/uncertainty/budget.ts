import type { Decibels } from '../units/quantities.ts';
import { rangedOf } from './draws.ts';
import type { Measurable } from './input.ts';

/** What one measurable thing does to the level at the ear. */
export interface BudgetItem {
  readonly what: Measurable;
  /** 90 % range of the level while this alone is unknown, dB from where it is with all known. */
  readonly effect: readonly [below: Decibels, above: Decibels];
  /** How much narrower the whole 90 % range of the level becomes once it is measured, dB. */
  readonly gain: Decibels;
}

/** Less than this is not worth a line. */
const LEAST: Decibels = 0.3;

/**
 * What makes the doubt, in order.
 * @param levelsWith draws of the level with some things known.
 */
export function budgetOf(
  levelsWith: (known: (what: Measurable) => boolean) => Float64Array,
  measurables: readonly Measurable[],
): BudgetItem[] {
  const width = ([low, high]: readonly [number, number]): number => high - low;
  const whole = width(rangedOf(levelsWith(() => false)).range);
  const start = levelsWith(() => true)[0];
  return measurables
    .map((what) => {
      const { range } = rangedOf(levelsWith((other) => other !== what));
      return { what, effect: [range[0] - start, range[1] - start] as const };
    })
    .filter(({ effect }) => width(effect) >= 2 * LEAST)
    .sort((a, b) => width(b.effect) - width(a.effect))
    .map(({ what, effect }) => {
      const without = rangedOf(levelsWith((other) => other === what)).range;
      return { what, effect, gain: Math.max(0, whole - width(without)) };
    });
}

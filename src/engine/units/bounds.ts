import type { Coded } from './coded.ts';
import type { QuantityKind } from './quantity-kind.ts';
import type { QuantityExpectations } from './refusal.ts';

export interface Bounds {
  /** Smallest accepted SI value; `above` excludes the end itself. */
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  /** Id by which its label and explanation are found. */
  readonly field?: string;
  /** Usual range, SI: where a slider runs. Values outside are accepted. */
  readonly typical?: readonly [number, number];
}

/** Smaller than any part or signal; beyond it, one over it soon overflows. */
const LEAST = 1e-24;

/**
 * What a quantity should be, where it is not. Written so that NaN is outside.
 * @param value SI
 * @param bounds SI
 * @returns undefined for a value within its bounds
 */
export function outside(
  value: number,
  kind: QuantityKind,
  { min, above, max }: Bounds,
): Coded<QuantityExpectations> | undefined {
  if (min !== undefined && !(value >= min)) return { code: 'quantity.at-least', kind, min };
  if (above !== undefined && !(value > above)) return { code: 'quantity.above', kind, above };
  if (max !== undefined && !(value <= max)) return { code: 'quantity.at-most', kind, max };
  if (value !== 0 && Math.abs(value) < LEAST) return { code: 'quantity.not-tiny', kind, least: LEAST };
  return undefined;
}

/**
 * Least and greatest of the sizes usual in a field, or of those it accepts.
 * @param bounds SI
 * @returns SI; undefined where a field says neither
 */
export const usualSizes = ({ min, above, max, typical }: Bounds): readonly [number, number] | undefined => {
  const least = min ?? above;
  return typical ?? (least !== undefined && max !== undefined ? [least, max] : undefined);
};

import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import type { QuantityKind } from '../../engine/units/quantity-kind.ts';
import { minus } from './figures.ts';

/**
 * One unit for an axis.
 * @param largest of what is drawn, SI
 * @param quantity left out for a number without a unit
 * @returns its name, and how many of it make an SI unit
 */
export function axisUnitOf(
  largest: number,
  quantity: QuantityKind | undefined,
): readonly [unit: string, factor: number] {
  if (!quantity || !(largest > 0)) return ['', 1];
  const written = /^([\d.]+)\s*(\D.*)$/.exec(formatQuantity(largest, quantity, 6));
  return written ? [written[2], Number(written[1]) / largest] : ['', 1];
}

/** A value at an axis, in its unit. */
export const tickText = (value: number): string => minus(formatNumber(value, 4));

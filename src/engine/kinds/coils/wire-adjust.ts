import { formatQuantity } from '../../units/format.ts';
import type { Wire } from './wire-schema.ts';

/** One strand of common Litz. */
const STRAND = 7e-5;
/** Strands of Litz that a hand can still wind with. */
const MOST_STRANDS = 90;
/** The next sizes up that a shop has, about. */
const THICKER = [1.25, 1.6];

/** Wire of less loss in place of another, as written: thicker, or Litz with as much copper. */
export function betterWires({ overall: _, ...wire }: Wire): object[] {
  const written = (size: number, more: object = {}): object => ({
    ...wire,
    size: formatQuantity(size, 'length', 2),
    ...more,
  });
  if (wire.strands !== undefined && wire.strands > 1) {
    const strands = Math.min(MOST_STRANDS, Math.round(1.6 * wire.strands));
    return strands > wire.strands ? [{ ...wire, strands }] : [];
  }
  const strands = Math.min(MOST_STRANDS, Math.max(3, Math.round((wire.size / STRAND) ** 2)));
  return [
    ...THICKER.map((by) => written(wire.size * by)),
    written(STRAND, { strands, covering: 'enamel and silk', metal: 'copper' }),
  ];
}

import { formatQuantity } from '../../units/format.ts';
import type { Wire } from './wire-schema.ts';

/** One strand of common Litz. */
const STRAND = 7e-5;
/** Strands of Litz that a hand can still wind with. */
const MOST_STRANDS = 90;
/** The next sizes up that a shop has, about. */
const THICKER = [1.25, 1.6];

/** A usual step between numbers of strands. */
const STEP = 1.6;
/** All steps from a number of strands upwards, the most at the end: the best of them is found at once. */
function strandsFrom(first: number): number[] {
  const steps: number[] = [];
  for (let strands = first; Math.round(strands) < MOST_STRANDS; strands *= STEP) steps.push(Math.round(strands));
  return [...steps, MOST_STRANDS];
}

/** Wire of less loss in place of another, as written: thicker, or Litz with as much copper and more. */
export function betterWires({ overall: _, ...wire }: Wire): object[] {
  const written = (size: number, more: object = {}): object => ({
    ...wire,
    size: formatQuantity(size, 'length', 2),
    ...more,
  });
  if (wire.strands !== undefined && wire.strands > 1) {
    const { strands: now } = wire;
    return now >= MOST_STRANDS ? [] : strandsFrom(STEP * now).map((strands) => ({ ...wire, strands }));
  }
  const asMuchCopper = Math.max(3, Math.round((wire.size / STRAND) ** 2));
  return [
    ...THICKER.map((by) => written(wire.size * by)),
    ...strandsFrom(asMuchCopper).map((strands) =>
      written(STRAND, { strands, covering: 'enamel and silk', metal: 'copper' }),
    ),
  ];
}

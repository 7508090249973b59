import type { AerialDescription } from '../../../engine/kinds/aerials/aerial-schema.ts';
import { formatQuantity } from '../../../engine/units/format.ts';

const m = (metres: number): string => formatQuantity(metres, 'length', 3);

/** An aerial in a sentence. */
export function aerialWords(aerial: AerialDescription): string {
  switch (aerial.kind) {
    case 'inverted-L':
    case 'T':
      return `${aerial.kind === 'T' ? 'T' : 'Inverted-L'} aerial, ${m(aerial.length)} of top wire${aerial.wires > 1 ? ` (${aerial.wires} side by side)` : ''} at ${m(aerial.height)}, its lead-in at ${m(aerial.base)}.`;
    case 'vertical':
      return `Vertical wire from ${m(aerial.base)} to ${m(aerial.height)}.`;
    case 'horizontal':
      return `Level wire of ${m(aerial.length)} at ${m(aerial.height)}.`;
    case 'sloping':
      return `Sloping wire of ${m(aerial.length)} from ${m(aerial.height)} to ${m(aerial.farHeight)}.`;
    case 'bent':
      return `Wire of ${aerial.points.length} corners, up to ${m(Math.max(...aerial.points.map((p) => p[2])))} high.`;
    case 'frame':
      return `${aerial.outline === 'square' ? 'Square' : 'Round'} frame of ${aerial.turns} turns, ${m(aerial.side)} across.`;
    case 'ferrite rod':
      return `Ferrite rod of ${m(aerial.length)} by ${m(aerial.diameter)} with ${aerial.turns} turns.`;
    case 'measured':
      return `Aerial measured as ${formatQuantity(aerial.capacitance, 'capacitance')}, effective height ${m(aerial.effectiveHeight)}.`;
    case 'impedance':
      return `Aerial known by its impedance at ${aerial.points.length} frequencies, effective height ${m(aerial.effectiveHeight)}.`;
  }
}

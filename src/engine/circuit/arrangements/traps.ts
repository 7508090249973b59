import type { TrapDescription } from '../../set/parts/arrangement.ts';
import { AERIAL } from '../assembly.ts';
import { EARTH, type Element, type Mutual } from '../elements.ts';

/**
 * Wave traps between the aerial terminal and the set.
 * @returns their elements, and the node the set is fed from.
 */
export function trapElements(
  traps: readonly TrapDescription[] | undefined,
  absorb: { readonly name: string; readonly inductance: number } | undefined,
): { elements: Element[]; feed: string; warnings: string[] } {
  const elements: Element[] = [];
  const warnings: string[] = [];
  let feed = AERIAL;
  (traps ?? []).forEach((trap, i) => {
    const label = `trap ${i + 1}`;
    const f0 = 1 / (2 * Math.PI * Math.sqrt(trap.inductance * trap.capacitance));
    const part = `arrangement.traps.${i}`;
    const coil = (from: string, to: string): Element => ({
      kind: 'inductor',
      name: `${label} coil`,
      from,
      to,
      inductance: trap.inductance,
      part,
      resistance: (f) => (2 * Math.PI * Math.sqrt(f0 * Math.max(f, 1)) * trap.inductance) / trap.q,
    });
    const capacitor = (from: string, to: string): Element => ({
      kind: 'capacitor',
      name: `${label} capacitor`,
      from,
      to,
      capacitance: trap.capacitance,
      part,
    });
    if (trap.kind === 'parallel') {
      const after = `after ${label}`;
      elements.push(coil(feed, after), capacitor(feed, after));
      feed = after;
    } else if (trap.kind === 'series') {
      elements.push(coil(feed, `${label} middle`), capacitor(`${label} middle`, EARTH));
    } else if (absorb) {
      const loop = `${label} loop`;
      elements.push(coil(loop, EARTH), capacitor(loop, EARTH));
      const mutual: Mutual = {
        kind: 'mutual',
        name: `${label} coupling`,
        first: `${label} coil`,
        second: absorb.name,
        mutual: trap.coupling * Math.sqrt(trap.inductance * absorb.inductance),
      };
      elements.push(mutual);
    } else {
      warnings.push(`Trap ${i + 1} has no coil to absorb from in this arrangement and is left out.`);
    }
  });
  return { elements, feed, warnings };
}

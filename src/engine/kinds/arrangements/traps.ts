import { type Warning, warning } from '../../facts/warning.ts';
import { EARTH, type Element, type Mutual } from '../../network/elements.ts';
import { type ElementId, owned } from '../../network/ids.ts';
import { trapCapacitor, trapCoil } from '../../network/part-ids.ts';
import type { TrapDescription } from './arrangement-schema.ts';
import { AERIAL } from './assembly.ts';
import { type CoilInCircuit, mutualId, type SectionedCoil } from './coil-sections.ts';

/**
 * Wave traps between the aerial terminal and the set, and those beside its coil.
 * @param absorb the coil that absorption traps stand beside. @param aerial a loop has no lead to put a trap in.
 * @returns their elements, and the node the set is fed from.
 */
export function trapElements(
  traps: readonly TrapDescription[] | undefined,
  absorb: { readonly coil: SectionedCoil; readonly wound: CoilInCircuit },
  aerial: 'lead' | 'loop' = 'lead',
): { elements: Element[]; feed: string; warnings: Warning[] } {
  const elements: Element[] = [];
  const warnings: Warning[] = [];
  let feed = AERIAL;
  (traps ?? []).forEach((trap, i) => {
    const label = `trap ${i + 1}`;
    const wound = owned(trapCoil(i), 'winding');
    const f0 = 1 / (2 * Math.PI * Math.sqrt(trap.inductance * trap.capacitance));
    const coil = (from: string, to: string): Element => ({
      kind: 'inductor',
      ...wound,
      from,
      to,
      inductance: trap.inductance,
      resistance: (f) => (2 * Math.PI * Math.sqrt(f0 * Math.max(f, 1)) * trap.inductance) / trap.q,
    });
    const capacitor = (from: string, to: string): Element => ({
      kind: 'capacitor',
      ...owned(trapCapacitor(i), 'part'),
      from,
      to,
      capacitance: trap.capacitance,
    });
    if (aerial === 'loop' && trap.kind !== 'absorption') {
      warnings.push(warning('arrangement.trap-without-lead', { trap: i }));
    } else if (trap.kind === 'parallel') {
      const after = `after ${label}`;
      elements.push(coil(feed, after), capacitor(feed, after));
      feed = after;
    } else if (trap.kind === 'series') {
      elements.push(coil(feed, `${label} middle`), capacitor(`${label} middle`, EARTH));
    } else {
      const loop = `${label} loop`;
      elements.push(coil(loop, EARTH), capacitor(loop, EARTH));
      elements.push(...beside(wound.id, trap.coupling, trap.inductance, absorb.coil, absorb.wound));
    }
  });
  return { elements, feed, warnings };
}

/** Couple a trap's coil to the whole of a coil: each stretch has the share of it that it has of the coil's own flux. */
function beside(id: ElementId, k: number, L: number, coil: SectionedCoil, wound: CoilInCircuit): Mutual[] {
  const { sections } = wound;
  const whole = k * Math.sqrt(L * coil.inductance);
  return sections.map((s): Mutual => {
    const flux =
      sections.length === 1
        ? coil.inductance
        : sections.reduce(
            (sum, t) => sum + (t === s ? coil.partial(s.from, s.to) : coil.mutual([s.from, s.to], [t.from, t.to])),
            0,
          );
    return {
      kind: 'mutual',
      id: mutualId(id, s.id),
      first: id,
      second: s.id,
      mutual: (whole * flux) / coil.inductance,
    };
  });
}

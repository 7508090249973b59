import type { Warned } from '../../facts/warning.ts';
import { EARTH, type Element } from '../../network/elements.ts';
import { AERIAL, type Assembly, OUT } from './assembly.ts';
import { coilInCircuit } from './coil-sections.ts';
import { type ArrangementOf, assembled, type Kit, tuningPort } from './kit.ts';

/** Nodes the builder and the tool both know. */
const SHARED = new Set([AERIAL, EARTH, OUT]);

/**
 * Whatever the builder lists, joined to the aerial at "aerial" and to the load at "out". A frame or rod stands between
 * "aerial" and earth.
 */
export function elementList(arrangement: ArrangementOf<'elements'>, kit: Kit): Assembly {
  const elements: Element[] = [];
  const warnings: Warned[] = [];
  let live: string | undefined;
  let cathode: string | undefined;
  let port: { from: string; to: string } | undefined;
  const { named, node } = apart(kit);
  const touched = new Map<string, number>();
  arrangement.elements.forEach((e, i) => {
    const part = `arrangement.elements.${i}`;
    if (e.kind === 'mutual') {
      const [first, second] = [named(e.first), named(e.second)];
      elements.push({ kind: 'mutual', name: named(e.name), first, second, mutual: e.mutual });
      return;
    }
    for (const end of [e.from, e.to]) touched.set(end, (touched.get(end) ?? 0) + 1);
    const [name, from, to] = [named(e.name), node(e.from), node(e.to)];
    switch (e.kind) {
      case 'resistor':
        elements.push({ kind: 'resistor', name, from, to, resistance: e.resistance, part });
        break;
      case 'capacitor':
        elements.push({ kind: 'capacitor', name, from, to, capacitance: e.capacitance, part });
        break;
      case 'inductor': {
        const resistance = (f: number): number => (2 * Math.PI * f * e.inductance) / e.q;
        elements.push({ kind: 'inductor', name, from, to, inductance: e.inductance, part, resistance });
        break;
      }
      case 'coil':
        elements.push(...coilInCircuit({ ...kit.coil(e.coil), name }, [], { first: to, last: from, part }).elements);
        break;
      case 'tuning':
        if (port) warnings.push('Only one tuning capacitor turns with the pointer: the last one listed.');
        port = { from, to };
        break;
      case 'detector':
        if (live) warnings.push('Only one detector can be worked out: the last one listed.');
        [live, cathode] = [from, to];
        break;
    }
  });
  if (!live) warnings.push('The list has no detector: nothing will be heard.');
  if (!port) warnings.push('The list has no tuning capacitor: the pointer does nothing.');
  for (const [name, ends] of touched) {
    if (ends === 1 && !SHARED.has(name)) warnings.push(`Only one end is joined to "${name}": it leads nowhere.`);
  }
  if (!touched.has(AERIAL)) warnings.push('Nothing is joined to "aerial".');
  if (kit.wiring === 'doubler' && cathode !== undefined && cathode !== OUT)
    warnings.push(`A doubler works into "out"; "${cathode}" is not used.`);
  const loop = kit.loop;
  if (loop) {
    elements.push(
      ...coilInCircuit(loop, [], { first: 'loop foot', last: AERIAL, part: loop.part }).elements,
      loop.source(EARTH, 'loop foot', 1),
    );
  }
  return assembled(kit, {
    elementsAt: () => elements,
    tuning: port ? [tuningPort('tuning capacitor', kit.tuning, port, 'tuning')] : [],
    // With no detector listed its place is at the load, across which no carrier stands.
    live: live ?? EARTH,
    cathode,
    other: EARTH,
    tunedPort: port ?? { from: live ?? OUT, to: EARTH },
    tunedCoils: elements.filter((e) => e.kind === 'inductor').map((e) => e.name),
    warnings,
  });
}

/** Keeps the builder's names for parts and nodes apart from those the aerial, the load and the detector use inside. */
function apart(kit: Kit): { named: (name: string) => string; node: (name: string) => string } {
  const inside = [...kit.aerial, ...kit.load];
  const names = new Set<string>(inside.map((e) => e.name));
  for (const name of ['field', 'bias cell', 'detector', 'second detector', 'pump capacitor', 'tuning capacitor'])
    names.add(name);
  const nodes = new Set<string>(inside.flatMap((e) => (e.kind === 'mutual' ? [] : [e.from, e.to])));
  for (const node of ['biased', 'pump', 'loop foot']) nodes.add(node);
  return {
    named: (name) => (names.has(name) || names.has(`${name}’s capacitance`) ? `listed ${name}` : name),
    node: (name) => (nodes.has(name) && !SHARED.has(name) ? `listed ${name}` : name),
  };
}

import { type Warning, warning } from '../../facts/warning.ts';
import { EARTH, type Element } from '../../network/elements.ts';
import { type ElementId, elementId, owned } from '../../network/ids.ts';
import { listedPart, PART } from '../../network/part-ids.ts';
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
  const warnings: Warning[] = [];
  let live: string | undefined;
  let cathode: string | undefined;
  let port: { from: string; to: string } | undefined;
  const ids = new Map<string, ElementId>();
  const touched = new Map<string, number>();
  arrangement.elements.forEach((e, i) => {
    if (e.kind === 'mutual') return;
    const part = listedPart(i);
    for (const end of [e.from, e.to]) touched.set(end, (touched.get(end) ?? 0) + 1);
    const [from, to] = [listedNode(e.from), listedNode(e.to)];
    switch (e.kind) {
      case 'resistor':
        elements.push({ kind: 'resistor', ...owned(part, 'part'), from, to, resistance: e.resistance });
        break;
      case 'capacitor':
        elements.push({ kind: 'capacitor', ...owned(part, 'part'), from, to, capacitance: e.capacitance });
        break;
      case 'inductor': {
        const wound = owned(part, 'winding');
        ids.set(e.name, wound.id);
        const resistance = (f: number): number => (2 * Math.PI * f * e.inductance) / e.q;
        elements.push({ kind: 'inductor', ...wound, from, to, inductance: e.inductance, resistance });
        break;
      }
      case 'coil': {
        const wound = coilInCircuit({ ...kit.coil(e.coil), id: part }, [], { first: to, last: from });
        ids.set(e.name, wound.sections[0].id);
        elements.push(...wound.elements);
        break;
      }
      case 'tuning':
        if (port) warnings.push(warning('arrangement.several-tuning-capacitors'));
        port = { from, to };
        break;
      case 'detector':
        if (live) warnings.push(warning('arrangement.several-detectors'));
        [live, cathode] = [from, to];
        break;
    }
  });
  arrangement.elements.forEach((e, i) => {
    const [first, second] = e.kind === 'mutual' ? [ids.get(e.first), ids.get(e.second)] : [];
    if (e.kind === 'mutual' && first && second)
      elements.push({ kind: 'mutual', id: elementId(listedPart(i)), first, second, mutual: e.mutual });
  });
  if (!live) warnings.push(warning('arrangement.no-detector'));
  if (!port) warnings.push(warning('arrangement.no-tuning-capacitor'));
  for (const [name, ends] of touched) {
    if (ends === 1 && !SHARED.has(name)) warnings.push(warning('arrangement.loose-end', { node: name }));
  }
  if (!touched.has(AERIAL)) warnings.push(warning('arrangement.aerial-unconnected'));
  if (kit.wiring === 'doubler' && cathode !== undefined && cathode !== OUT)
    warnings.push(warning('arrangement.doubler-node-unused', { node: cathode }));
  const loop = kit.loop;
  if (loop) {
    elements.push(
      ...coilInCircuit(loop, [], { first: 'loop foot', last: AERIAL }).elements,
      loop.source(EARTH, 'loop foot', [0, loop.turns]),
    );
  }
  return assembled(kit, {
    elementsAt: () => elements,
    tuning: port ? [tuningPort(PART.tuning, kit.tuning, port)] : [],
    // With no detector listed its place is at the load, across which no carrier stands.
    live: live ?? EARTH,
    cathode,
    other: EARTH,
    tunedPort: port ?? { from: live ?? OUT, to: EARTH },
    warnings,
  });
}

/** A node of the builder's own: never one that the aerial, the load or the detector has inside, whatever it is called. */
export const listedNode = (name: string): string => (SHARED.has(name) ? name : `${LISTED}${name}`);
const LISTED = 'joint:';
/** What the builder calls a node of the circuit; undefined for one that is not the builder's own. */
export const listedName = (node: string): string | undefined =>
  node.startsWith(LISTED) ? node.slice(LISTED.length) : undefined;

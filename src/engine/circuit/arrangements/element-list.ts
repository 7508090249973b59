import { type Assembly, OUT } from '../assembly.ts';
import { EARTH, type Element, type Mutual } from '../elements.ts';
import { coilInCircuit } from './coil-sections.ts';
import { type ArrangementOf, assembled, type Kit, tuningPort } from './kit.ts';

/** Whatever the builder lists, joined to the aerial at "aerial" and to the load at "out". */
export function elementList(arrangement: ArrangementOf<'elements'>, kit: Kit): Assembly {
  const elements: Element[] = [];
  const warnings: string[] = [];
  let live: string | undefined;
  let port: { from: string; to: string } | undefined;
  arrangement.elements.forEach((e, i) => {
    const part = `arrangement.elements.${i}`;
    switch (e.kind) {
      case 'resistor':
        elements.push({ kind: 'resistor', name: e.name, from: e.from, to: e.to, resistance: e.resistance, part });
        break;
      case 'capacitor':
        elements.push({ kind: 'capacitor', name: e.name, from: e.from, to: e.to, capacitance: e.capacitance, part });
        break;
      case 'inductor':
        elements.push({
          kind: 'inductor',
          name: e.name,
          from: e.from,
          to: e.to,
          inductance: e.inductance,
          part,
          resistance: (f) => (2 * Math.PI * f * e.inductance) / e.q,
        });
        break;
      case 'coil': {
        const wound = coilInCircuit({ ...kit.coil(e.coil), name: e.name }, [], { first: e.to, last: e.from, part });
        elements.push(...wound.elements);
        break;
      }
      case 'tuning':
        port = { from: e.from, to: e.to };
        break;
      case 'mutual': {
        const mutual: Mutual = { kind: 'mutual', name: e.name, first: e.first, second: e.second, mutual: e.mutual };
        elements.push(mutual);
        break;
      }
      case 'detector':
        live = e.from;
        if (e.to !== OUT) warnings.push(`The detector is taken from "${e.from}" to "out"; "${e.to}" is not used.`);
        break;
    }
  });
  if (!live) warnings.push('The list has no detector: nothing will be heard.');
  if (!port) warnings.push('The list has no tuning capacitor: the pointer does nothing.');
  return assembled(kit, {
    elementsAt: () => elements,
    tuning: port ? [tuningPort('tuning capacitor', kit.tuning, port, 'tuning')] : [],
    live: live ?? OUT,
    other: EARTH,
    tunedPort: port ?? { from: live ?? OUT, to: EARTH },
    tunedCoils: elements.filter((e) => e.kind === 'inductor').map((e) => e.name),
    warnings,
  });
}

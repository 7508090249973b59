import fc from 'fast-check';
import type { Circuit, Element } from '../../src/engine/network/elements.ts';
import { element } from './element.ts';

export const NODES = ['earth', 'a', 'b', 'c', 'd', 'e'];
const decades = (lowest: number) => fc.double({ min: 0, max: 6, noNaN: true }).map((d) => lowest * 10 ** d);
const ends = fc
  .tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 1, max: 5 }))
  .map(([a, step]) => ({ from: NODES[a], to: NODES[(a + step) % 6] }));
const part = fc.oneof(
  fc.tuple(ends, decades(1)).map(([b, resistance]) => ({ kind: 'resistor' as const, ...b, resistance })),
  fc.tuple(ends, decades(1e-13)).map(([b, capacitance]) => ({ kind: 'capacitor' as const, ...b, capacitance })),
  fc
    .tuple(ends, decades(1e-7), decades(1e-2))
    .map(([b, inductance, resistance]) => ({ kind: 'inductor' as const, ...b, inductance, resistance })),
);
/** Six nodes, up to a dozen parts anywhere, a source and a detector anywhere, sometimes two coupled coils. */
export const anyCircuit = fc
  .tuple(fc.array(part, { minLength: 3, maxLength: 12 }), ends, ends, fc.double({ min: -0.99, max: 0.99, noNaN: true }))
  .map(([parts, emf, detector, k]): Circuit => {
    const elements: Element[] = parts.map((p, i) => element({ ...p, name: `${p.kind} ${i}` }));
    const coils = elements.filter((e) => e.kind === 'inductor');
    if (coils.length > 1) {
      const mutual = k * Math.sqrt(coils[0].inductance * coils[1].inductance);
      elements.push(element({ kind: 'mutual', name: 'm', first: coils[0].id, second: coils[1].id, mutual }));
    }
    return {
      elements: [
        ...elements,
        element({ kind: 'source', name: 'emf', ...emf, emf: { re: 1, im: 0 } }),
        element({ kind: 'detector', name: 'detector', ...detector }),
      ],
    };
  });

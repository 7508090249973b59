import { OUT } from '../kinds/arrangements/assembly.ts';
import type { LoadDescription } from '../kinds/loads/load-schema.ts';
import { EARTH, type Element } from '../network/elements.ts';
import type { Port } from '../network/port.ts';
import type { Load } from '../parts/load/index.ts';

/** The cord of any phones passes some radio frequency even where no by-pass is fitted. */
const CORD = 30e-12;

/** By-pass, equaliser and what one listens with, from the detector's output to earth; and where the sound comes from. */
export function loadElements(description: LoadDescription, load: Load): { elements: Element[]; transducer: Port } {
  const elements: Element[] = [
    {
      kind: 'capacitor',
      name: 'by-pass capacitor',
      from: OUT,
      to: EARTH,
      capacitance: Math.max(description.bypass, CORD),
      part: 'load',
    },
  ];
  let live = OUT;
  if (description.equalizer) {
    live = 'equalised';
    elements.push(
      {
        kind: 'resistor',
        name: 'equalising resistor',
        from: OUT,
        to: live,
        resistance: description.equalizer.resistance,
        part: 'load',
      },
      {
        kind: 'capacitor',
        name: 'its by-pass',
        from: OUT,
        to: live,
        capacitance: description.equalizer.capacitance,
        part: 'load',
      },
    );
  }
  const network = load.elements(live, EARTH, 'phones');
  elements.push(...network.elements.map((e): Element => (e.kind === 'mutual' ? e : { ...e, part: 'load' })));
  return { elements, transducer: { from: network.output.from, to: network.output.to } };
}

import { OUT } from '../kinds/arrangements/assembly.ts';
import type { LoadDescription } from '../kinds/loads/load-schema.ts';
import { EARTH, type Element } from '../network/elements.ts';
import { owned } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { Port } from '../network/port.ts';
import type { Load } from '../parts/load/model.ts';

/** The cord of any phones passes some radio frequency even where no by-pass is fitted. */
const CORD = 30e-12;

/** By-pass, equaliser and what one listens with, from the detector's output to earth; and where the sound comes from. */
export function loadElements(description: LoadDescription, load: Load): { elements: Element[]; transducer: Port } {
  const elements: Element[] = [
    {
      kind: 'capacitor',
      ...(description.bypass > 0
        ? owned(PART.byPass, 'by-pass')
        : owned(PART.load, 'cord', { detail: 'radio frequency' })),
      from: OUT,
      to: EARTH,
      capacitance: Math.max(description.bypass, CORD),
    },
  ];
  let live = OUT;
  if (description.equalizer) {
    live = 'equalised';
    elements.push(
      {
        kind: 'resistor',
        ...owned(PART.equaliserResistor, 'part'),
        from: OUT,
        to: live,
        resistance: description.equalizer.resistance,
      },
      {
        kind: 'capacitor',
        ...owned(PART.equaliserCapacitor, 'part'),
        from: OUT,
        to: live,
        capacitance: description.equalizer.capacitance,
      },
    );
  }
  const network = load.elements(live, EARTH);
  elements.push(...network.elements);
  return { elements, transducer: network.output };
}

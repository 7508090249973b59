import type { ArrangementWarnings } from '../../../../engine/facts/arrangement-warnings.ts';
import { printable } from '../../printable.ts';
import type { SentencesFor } from './sentences-for.ts';

export const arrangementWarnings: SentencesFor<ArrangementWarnings> = {
  'arrangement.trap-without-lead': ({ trap }) =>
    `Trap ${trap + 1} belongs in an aerial lead, and this set has none: only an absorption trap works here. Trap ${trap + 1} is left out.`,
  'arrangement.several-tuning-capacitors': () =>
    'The list has several tuning capacitors: only the last one turns with the dial.',
  'arrangement.several-detectors': () => 'The list has several detectors: only the last one is calculated.',
  'arrangement.no-detector': () => 'The list has no detector: nothing will be heard.',
  'arrangement.no-tuning-capacitor': () => 'The list has no tuning capacitor: the dial does nothing.',
  'arrangement.loose-end': ({ node }) => `Only one end is joined to “${printable(node)}”: it leads nowhere.`,
  'arrangement.aerial-unconnected': () => 'Nothing is joined to “aerial”.',
  'arrangement.doubler-node-unused': ({ node }) => `A doubler works into “out”; “${printable(node)}” is not used.`,
  'arrangement.coupling-unknown': () =>
    'The coupling of these two coils cannot be calculated from their sizes (one is a core or a measured coil): no signal passes between them until a coupling coefficient is given.',
  'arrangement.full-wave-tap-unused': () =>
    'A full-wave pair needs both ends of the coil and its middle earthed; the detector tap is not used, and the aerial tap is counted from the far end.',
};

import type { ArrangementWarnings } from '../../../../engine/facts/arrangement-warnings.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { printable } from '../../printable.ts';
import type { SentencesFor } from './sentences-for.ts';

const frequency = (hertz: number): string => formatQuantity(hertz, 'frequency', 4);

export const arrangementWarnings: SentencesFor<ArrangementWarnings> = {
  'arrangement.trap-without-lead': ({ trap }) =>
    `Trap ${trap + 1} belongs in an aerial lead, and this set has none: only an absorption trap works here. Trap ${trap + 1} is left out.`,
  'arrangement.trap-beside-station': ({ trap, stops, reach: [lowest, highest] }) =>
    `Trap ${trap + 1} does not stop its station at ${frequency(stops)}: its coil and capacitor tune ${
      lowest === highest ? `to ${frequency(lowest)} only` : `${frequency(lowest)} to ${frequency(highest)}`
    }.`,
  'arrangement.trap-takes': ({ trap, frequency: at, toll }) =>
    `Trap ${trap + 1}, tuned to ${frequency(at)}, takes ${Math.round(toll)} dB off this station.`,
  'arrangement.aerial-circuit-out-of-reach': ({ isMeshed }) =>
    isMeshed
      ? 'The aerial circuit does not reach this station with its capacitor fully meshed: its coil needs more turns.'
      : 'The aerial circuit does not reach this station with its capacitor fully open: its coil needs fewer turns, or the aerial a lower tap.',
  'arrangement.several-tuning-capacitors': () =>
    'The list has several tuning capacitors: only the last one turns with the dial.',
  'arrangement.several-detectors': () => 'The list has several detectors: only the last one is calculated.',
  'arrangement.no-detector': () => 'The list has no detector: nothing will be heard.',
  'arrangement.no-tuning-capacitor': () => 'The list has no tuning capacitor: the dial does nothing.',
  'arrangement.loose-end': ({ node }) => `Only one end is joined to “${printable(node)}”: it leads nowhere.`,
  'arrangement.aerial-unconnected': () => 'Nothing is joined to “aerial”.',
  'arrangement.doubler-node-unused': ({ node }) => `A doubler works into “out”; “${printable(node)}” is not used.`,
  'arrangement.coil-switched-out': ({ coil }) =>
    `The coil “${printable(coil)}” is switched out on this band. It is taken as open and far away: near the coil in use it would add losses and, where it resonates by itself, a hole in the band. Mount it at right angles, or further away than it is long.`,
  'arrangement.coupling-unknown': () =>
    'The coupling of these two coils cannot be calculated from their sizes (one is a core or a measured coil): no signal passes between them until a coupling coefficient is given.',
  'arrangement.full-wave-tap-unused': () =>
    'A full-wave pair needs both ends of the coil and its middle earthed; the detector tap is not used, and the aerial tap is counted from the far end.',
};

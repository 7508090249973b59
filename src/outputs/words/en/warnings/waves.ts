import type { WavesWarnings } from '../../../../engine/facts/waves-warnings.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { wholeKHz } from '../../figures.ts';
import type { SentencesFor } from './sentences-for.ts';

const kilohertz = (f: number): string => `${wholeKHz(f)} kHz`;

/** A part by its id, where nothing else of the set is at hand. */
const NAMES: Readonly<Record<string, string>> = {
  aerial: 'aerial',
  earth: 'earth',
  loop: 'frame or rod',
  load: 'load',
  transformer: 'transformer',
};
const nameOf = (part: string): string => NAMES[part] ?? part;

export const wavesWarnings: SentencesFor<WavesWarnings> = {
  'waves.distant-stations-left-out': ({ counted }) => `Only the ${counted} strongest distant stations are counted.`,
  'waves.unequal-carriers': () => 'The carriers at the two detectors differ; equal carriers are assumed.',
  'waves.impedance-misfit': ({ part, misfit, frequency }) =>
    `Part “${nameOf(part)}”: its impedance in the waveforms is ${formatNumber(100 * misfit, 2)} % out at ${kilohertz(frequency)}.`,
  'waves.detector-stray': ({ capacitance }) =>
    `Only coils lead to the detector: a stray capacitance of ${formatQuantity(capacitance, 'capacitance', 2)} is assumed across it.`,
  'waves.coupling-reduced': () => 'A coupling coefficient of 1 was reduced by one part in a million.',
  'waves.recording-alone': () => 'With a recorded programme the other stations are left out of the picture.',
  'waves.over-modulation': () =>
    'Modulation above 100 %: the carrier changes sign where it should only vanish, and a detector gives heavy distortion.',
  'waves.not-settled': ({ time }) =>
    `After ${formatQuantity(time, 'time', 2)} the direct voltage still changes: the capacitors behind the detector charge slowly.`,
};

import type { ReceptionWarnings } from '../../../../engine/facts/reception-warnings.ts';
import { formatNumber } from '../../../../engine/units/format.ts';
import { bandwidthText } from '../../figures.ts';
import type { SentencesFor } from './sentences-for.ts';

const kHz = (hertz: number): string => formatNumber(Math.round(hertz / 1e3), 5);

export const receptionWarnings: SentencesFor<ReceptionWarnings> = {
  'reception.near-noise': () => 'The station is barely above the radio noise at this place.',
  'reception.pointer-at-end': () => 'The dial is at the end of its scale: the station is not fully in tune.',
  'reception.harmful-level': () => 'Hours at this level harm the ears: turn it down, or move the phones off the ears.',
  'reception.dial-broad': ({ frequency, bandwidth }) =>
    `At ${kHz(frequency)} kHz the bandwidth is ${bandwidthText(bandwidth)} (−3 dB): stations three channels apart are not separated there.`,
  'reception.dial-runs-back': ({ lowest, highest }) =>
    `Between ${kHz(lowest)} and ${kHz(highest)} kHz the pointer runs back: one place of the scale is that of several frequencies, so the dial is not calibrated there. A wave trap does this near its own frequency.`,
};

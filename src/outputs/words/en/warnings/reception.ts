import type { ReceptionWarnings } from '../../../../engine/facts/reception-warnings.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from './sentences-for.ts';

export const receptionWarnings: SentencesFor<ReceptionWarnings> = {
  'reception.near-noise': () => 'The station is barely above the radio noise at this place.',
  'reception.pointer-at-end': () => 'The dial is at the end of its scale: the station is not fully in tune.',
  'reception.harmful-level': () => 'Hours at this level harm the ears: turn it down, or move the phones off the ears.',
  'reception.dial-broad': ({ frequency, bandwidth }) =>
    `At ${formatNumber(Math.round(frequency / 1e3), 5)} kHz the bandwidth is ${formatQuantity(bandwidth, 'frequency', 2)} (−3 dB): stations three channels apart are not separated there.`,
};

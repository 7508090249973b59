import type { PlaceWarnings } from '../../../../engine/facts/place-warnings.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from './sentences-for.ts';

export const placeWarnings: SentencesFor<PlaceWarnings> = {
  'place.noise-extrapolated': () =>
    'Man-made noise is published from 300 kHz up; on long wave the same curve is extrapolated.',
  'place.sky-wave-frequency-range': () =>
    'The sky-wave method holds from 150 to 1700 kHz; outside that the field is a rough estimate.',
  'place.sky-wave-near': () => 'The sky-wave method begins at 50 km; at shorter distances the ground wave is stronger.',
  'place.sky-wave-far': () => 'The sky-wave method ends at 12 000 km; beyond that the field is a rough estimate.',
  'place.distance-beyond-antipode': ({ distance }) =>
    `No place on earth is ${formatQuantity(distance, 'length')} away by the shorter way round: the farthest is about 20 015 km.`,
  'place.near-field': () => 'The transmitter is within a wavelength: its near field is only roughly known.',
  'place.beside-transmitter': () =>
    'The transmitter is nearer than a tenth of a wavelength: the field is given for that distance.',
  'place.off-air': () => 'The station is off the air at this time.',
  'place.not-computed': ({ reason }) => `This station’s field cannot be calculated: ${reason}.`,
  'place.fading-deep': () => 'Ground wave and sky wave are about equally strong: expect deep fading with distortion.',
  'place.fading-slow': () => 'The station arrives by sky wave at this time: its level rises and falls within minutes.',
  'place.measured-field-differs': ({ difference }) =>
    `The measured field is ${Math.round(Math.abs(difference))} dB ${difference > 0 ? 'above' : 'below'} what power and distance would give; check both.`,
  'place.no-power': () => 'The station’s power is 0 W, so its field is zero.',
  'place.strength-unknown': () =>
    'Neither a measured field nor a power with a distance is given, so the station’s field strength is not known.',
  'place.long-wave-sky-by-day': () => 'On long wave a weak sky wave arrives by day as well; it is not counted here.',
  'place.sky-wave-position-assumed': () => 'Without positions the sky wave is calculated for central Europe.',
  'place.ground-wave-frequency-range': () =>
    'The ground-wave curves hold from 10 kHz to 30 MHz; outside that the field is a rough estimate.',
  'place.within-a-wavelength': () =>
    'This is within a wavelength of the transmitter, where the field is not yet a plane wave.',
  'place.many-coasts': () => 'Each coast on the path adds up to 2.5 dB of error to the mixed-path method.',
};

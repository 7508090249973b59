import type { EarthWarnings } from '../../../../engine/facts/earth-warnings.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from './sentences-for.ts';

export const earthWarnings: SentencesFor<EarthWarnings> = {
  'earth.counterpoise-dry-soil': () =>
    'In soil this dry the ground under a counterpoise does not act as a conductor at this frequency; its resistance is only a rough estimate.',
  'earth.longer-than-skin-depth': ({ reach, isCounted }) =>
    `At radio frequency the current leaves the wire within about ${formatQuantity(reach, 'length', 2)} in this soil; metal further out has little effect${isCounted ? '' : ', so the real resistance is higher'}.`,
  'earth.soil-and-ground': ({ soil, conductivity }) =>
    `Soil of ${formatQuantity(soil, 'resistivity', 2)} is unusual in a place whose ground conducts ${formatQuantity(conductivity, 'conductivity', 2)}: check both. Leave out the soil, and it follows the ground of the place.`,
  'earth.rod-thick': () =>
    'The rod is thick for its length; Dwight’s formula for a thin rod gives too high a resistance.',
  'earth.water-pipe': () =>
    'Make sure that the pipe is metal all the way into the ground, and never use a gas or heating pipe; ask a licensed person about the house’s own earth.',
  'earth.rods-close': () =>
    'The rods are closer together than their own length, so each adds less than it could; a rod’s length apart is better.',
};

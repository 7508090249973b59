import type { LoadWarnings } from '../../../../engine/facts/load-warnings.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from './sentences-for.ts';

export const loadWarnings: SentencesFor<LoadWarnings> = {
  'load.coupling-capacitor-blocks-direct-current': () =>
    'The coupling capacitor blocks direct current, so the detector has no direct-current path: fit a load resistor of about 100 kΩ before the capacitor.',
  'load.mains-hum': () => 'Hum from a mains amplifier often enters through its earth; try it on a battery first.',
  'load.earpiece-without-resistor': () =>
    'A crystal earpiece passes no direct current, so the detector charges it and stops conducting: fit a resistor of 47 to 100 kΩ across it.',
  'load.earpiece-resistor-small': () =>
    'The resistor across the earpiece is so small that it takes most of the power: 47 to 100 kΩ is usual.',
  'load.earpiece-resistor-large': () =>
    'The resistor across the earpiece is so large that it discharges the earpiece too slowly: 47 to 100 kΩ is usual.',
  'load.earpiece-sensitivity-typical': ({ level, spread }) =>
    `The earpiece’s sensitivity was not given: a typical ${level} dB SPL at 1 V is assumed, ±${spread} dB.`,
  'load.moving-coil-without-transformer': ({ impedance }) =>
    `Moving-coil phones of ${formatQuantity(impedance, 'resistance', 2)} connected directly to the detector nearly short-circuit it: fit a step-down transformer.`,
  'load.phones-sensitivity-typical': ({ level, spread }) =>
    `The phones’ sensitivity was not given: a typical ${level} dB SPL at 1 mW is assumed, ±${spread} dB.`,
  'load.phones-low-resistance': ({ resistance }) =>
    `Phones of ${formatQuantity(resistance, 'resistance', 3)} load a crystal detector heavily: fit a transformer, or use a pair of 2 kΩ or more.`,
  'load.transformer-primary-small': () =>
    'The transformer’s primary inductance is too small for this load: the low frequencies of speech pass through the primary instead of the phones.',
};

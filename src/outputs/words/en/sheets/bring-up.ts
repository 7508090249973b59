import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { printable } from '../../printable.ts';

/** Off until a step asks for it. */
const OFF: Readonly<Record<LoadDescription['kind'], { readonly loop: string; readonly aerial: string }>> = {
  phones: {
    loop: 'The phones stay off until a step asks for them.',
    aerial: 'Aerial, earth and phones stay off until a step asks for them.',
  },
  'moving-coil phones': {
    loop: 'The phones stay off until a step asks for them.',
    aerial: 'Aerial, earth and phones stay off until a step asks for them.',
  },
  'crystal earpiece': {
    loop: 'The earpiece stays off until a step asks for it.',
    aerial: 'Aerial, earth and earpiece stay off until a step asks for them.',
  },
  amplifier: {
    loop: 'The amplifier stays off until a step asks for it.',
    aerial: 'Aerial, earth and amplifier stay off until a step asks for them.',
  },
};

const volts = (voltage: number): string => formatQuantity(Math.abs(voltage), 'voltage', 2);

export const bringUpSheetWords = {
  title: 'Bringing it up',
  description: 'Bringing the set up step by step, with expected values.',
  intro: ({ load, loop }: { readonly load: LoadDescription['kind']; readonly loop: boolean }): string =>
    `Work in this order, each step before the next. ${loop ? OFF[load].loop : OFF[load].aerial} The figures are for this set; the ranges are the tolerance of sound parts and careful work.`,
  steps: { expect: 'Expect', suspect: 'If not' },
  headings: {
    stations: 'Every station, strongest first',
    stationsOnBand: (band: string): string => `Every station on “${printable(band)}”, strongest first`,
    faults: 'When it is silent, or not as it should be',
    words: 'Terms used here',
  },
  stations: {
    station: 'Station',
    frequency: 'kHz',
    dial: 'Dial',
    heard: 'Heard',
    voltage: 'Direct voltage',
    myDial: 'Mine: dial',
    myVoltage: 'Mine: mV',
  },
  voltage: ({ voltage, metered }: { readonly voltage: number; readonly metered: boolean }): string =>
    metered ? volts(voltage) : `${volts(voltage)} *`,
  standing: (voltage: number): string =>
    `${volts(voltage)} of each is there with no station at all; subtract it, and the rest comes from the station.`,
  small: '* too small for an ordinary meter.',
  faults: { symptom: 'What', causes: 'Look for, in this order' },
};

/** Terms of the trade that the sheet uses. */
export type SheetTerm = 'dB' | 'dB SPL' | 'direct' | 'lead-in' | 'meshed' | 'Q' | 'stray capacitance' | 'tap';

/** Each with its meaning. */
export const terms: Readonly<Record<SheetTerm, string>> = {
  dB: 'dB: decibels, a ratio of two powers: 10 dB more is ten times the power, and sounds about twice as loud.',
  'dB SPL':
    'dB SPL: sound pressure level at the ear, above the faintest sound that people hear: about 30 is a whisper, 60 is talk across a table.',
  direct: 'Direct: of voltage or current: steady, as a cell gives it.',
  'lead-in': 'Lead-in: the wire from the aerial into the house.',
  meshed: 'Meshed: moving vanes fully between the fixed ones: largest capacitance, lowest frequency.',
  Q: 'Q: quality factor of a coil or tuned circuit: the higher it is, the narrower the band that the circuit passes. Loaded Q: with everything that is connected to it.',
  'stray capacitance': 'Stray capacitance: capacitance between wires, terminals and turns that no part was fitted for.',
  tap: 'Tap: a wire brought out from a turn between a coil’s two ends.',
};

import { formatNumber } from '../../../../engine/units/format.ts';

const kHz = (frequency: number): string => `${Number((Math.abs(frequency) / 1e3).toFixed(1))} kHz`;

const below = (decibels: number): string =>
  decibels > 0 ? `${decibels} dB below its maximum` : 'at nearly its maximum';

/** The dial: readout, pointer, keys. */
export const dialWords = {
  label: 'Dial',
  fixed: 'This set has no tuning control: its frequency is fixed.',
  /** @param wavelength m @param degrees of the scale */
  more: (wavelength: number, degrees: number): string =>
    `${Math.round(wavelength)} m · ${formatNumber(degrees, 3)}° on the scale`,
  kilohertz: 'kHz',
  pointer: 'Pointer of the dial',
  value: (frequency: number, there: string): string => `${kHz(frequency)}, ${there}`,
  profileTip: 'Level of the strongest station at each setting',
  spreadTip: (station: string): string => `Where ${station} may lie on the set as built`,
  foldTip: (lowest: number, highest: number): string =>
    `Between ${kHz(lowest)} and ${kHz(highest)} one setting tunes several frequencies`,
  keys: 'Arrow keys: one kilohertz; Page Up and Page Down: one channel; N and P: next and previous station.',
  listen: 'Listen',
  listening: 'Listening',
  timeOfDay: 'Time of day',
  times: { day: 'Day', night: 'Night' },
  degrees: (mark: string): string => `${mark}°`,
  there: {
    station: (name: string, verdict: string): string => `${name}, ${verdict}`,
    between: 'between stations',
    nothing: 'between stations, no signal',
    nothingHeard: 'between stations, nothing heard here',
    on: (name: string): string => `on ${name}`,
    /** @param off Hz from the station @param down dB below its maximum */
    off: (off: number, name: string, down: number): string =>
      off > 0 ? `${kHz(off)} above ${name}: ${below(down)}` : `${kHz(off)} below ${name}: ${below(down)}`,
    strongest: (name: string, down: number): string => `between stations; strongest: ${name}, ${below(down)}`,
  },
} as const;

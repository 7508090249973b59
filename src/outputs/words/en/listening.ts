import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { bandSpan } from '../figures.ts';
import { plural } from './grammar.ts';

/** Smaller is nothing: what arithmetic leaves over. */
const LEAST_VOLTS = 1e-9;
const channelText = (frequency: number): string => formatNumber(frequency / 1e3, 4);

/** Listening to the set. */
export const listeningTexts = {
  title: 'Listening',
  care: 'With headphones on, turn the volume down first. Nothing sounds until you start it.',
  start: 'Start listening',
  starting: 'Starting…',
  stop: 'Stop',
  loudness: 'Loudness',
  loudnessChoices: {
    amplified: 'Amplified',
    'as in the phones': 'As in the phones, with the noise of the room',
  },
  volume: 'Volume',
  volumeValue: (level: number): string => `${level} decibels`,
  detectorRemoved: 'Detector removed',
  heater: 'Heater on',
  cathode: (temperature: number): string => `cathode ${Math.round(temperature)} K`,
  tune: 'Tune',
  stationBelow: 'Next station down',
  stationAbove: 'Next station up',
  down: (step: number): string => `−${channelText(step)} kHz`,
  up: (step: number): string => `+${channelText(step)} kHz`,
  downShort: (step: number): string => `−${channelText(step)}`,
  upShort: (step: number): string => `+${channelText(step)}`,
  frequency: (frequency: number): string => `${Number((frequency / 1e3).toFixed(1))} kHz`,
  nearest: (frequency: number, station: string): string =>
    `${Number((frequency / 1e3).toFixed(1))} kHz, nearest station ${station}`,
  level: 'Sound in the phones',
  levelValue: (level: number): string => `${level} dB SPL`,
  silent: 'nothing',
  limited: 'limited',
  gaps: (gaps: number, seconds: number): string =>
    gaps === 0
      ? `no gaps in ${Math.floor(seconds)} s`
      : `${gaps} ${plural(gaps, 'gap', 'gaps')} in ${Math.floor(seconds)} s`,
  traces: {
    title: 'Waves and spectrum',
    carrier: 'Carrier at the detector',
    detected: 'After the detector',
    sound: 'Sound in the phones',
    band: 'Spectrum at the detector',
    named: (label: string, value: string): string => `${label}, ${value}`,
    volts: (most: number): string => (most < LEAST_VOLTS ? '0 V' : `up to ${formatQuantity(most, 'voltage', 2)}`),
    pascals: (most: number): string => `up to ${formatNumber(most * 1e3, 2)} mPa`,
    roomOnly: (most: number): string => `up to ${formatNumber(most * 1e3, 2)} mPa, noise of the room only`,
    range: bandSpan,
  },
  own: {
    title: 'Your own sound, or a recorded band',
    file: (station: string): string => `A recording for ${station}`,
    microphone: (station: string): string => `The microphone as ${station}`,
    restore: 'Its own programme again',
    band: 'A recorded band (stereo WAV, in-phase and quadrature)',
    centre: 'Centre frequency, kHz',
    fullScale: 'Full scale at the aerial, mV',
    play: 'Play with these values',
    stations: 'The stations again',
    centreMissing: 'Neither the recording nor its name gives its centre frequency: enter it.',
    playing: (seconds: number, centre: number): string =>
      `${Math.round(seconds)} s around ${(centre / 1e3).toFixed(1)} kHz.`,
  },
  problems: {
    noSound:
      'The browser gave no sound output. Check that sound is allowed and an output is connected, then try again.',
    stopped: 'The sound stopped because the set could not be calculated. Change the set, then start listening again.',
    microphone: 'The microphone cannot be used. Allow it in the browser, or choose a file.',
    empty: (file: string): string => `${file} is empty. Choose another file.`,
    large: (file: string, megabytes: number): string =>
      `${file} is larger than ${megabytes} MB. Cut a short piece out of it and choose that.`,
    unreadable: (file: string): string => `The browser cannot read ${file} as sound. Expected WAV, Ogg, Opus or MP3.`,
  },
} as const;

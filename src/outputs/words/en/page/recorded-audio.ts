import type { BandLevel, SpectrumBeside, SpectrumFault } from '../../../../engine/measure/sound-card/audio-spectrum.ts';
import type { AudioPickup } from '../../../../engine/measure/sound-card/predicted-audio.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { axisHertz, wholeDB } from '../../figures.ts';

const hertz = (frequency: number): string => formatQuantity(frequency, 'frequency', 3);
const signed = (dB: number): string => `${dB < 0 ? '−' : '+'}${formatNumber(Math.abs(dB), 2)} dB`;

/** The unit of a level by where it was recorded; without a calibration the recording is moved onto the prediction. */
const UNITS: Readonly<Record<AudioPickup, string>> = { line: 'dBV', microphone: 'dB SPL' };

/** The plot of a recorded spectrum beside the predicted one. */
export const audioSpectrumPlot = {
  title: 'Audio in third octaves',
  unit: (pickup: AudioPickup): string => UNITS[pickup],
  frequency: axisHertz,
  level: wholeDB,
  predicted: 'predicted',
  at: ({ frequency, level }: BandLevel, pickup: AudioPickup): string =>
    `${hertz(frequency)}: ${formatNumber(level, 3)} ${UNITS[pickup]}`,
  text: ({ shape }: SpectrumBeside): string => {
    const bands = shape.map(({ frequency, level }) => `${hertz(frequency)} ${signed(level)}`);
    return `Recorded against predicted, the mean of all bands left out: ${bands.join(', ')}. The line is the prediction, the points are the recording.`;
  },
} as const;

/** A deviation smaller than this is the programme of the day. */
const PROGRAMME = 6;

/** Level and spectrum of the real set beside the predicted ones. */
export const audioSpectrumWords = {
  title: 'Audio of the set beside the predicted one',
  about: (station: string): string =>
    `Tune the set to ${station} and record half a minute of ordinary programme. Its spectrum in third octaves is compared with the audio that is predicted for this set and this station.`,
  noStation: 'Choose a station under Stations: the audio is predicted for one station.',
  outOfRange: (station: string): string =>
    `${station} lies beyond the dial of this set, so no audio is predicted for it. Choose another station under Stations.`,
  pickup: 'Recorded',
  pickupChoice: {
    line: 'across the phones, by a line input',
    microphone: 'at one earpiece, by a microphone',
  } satisfies Record<AudioPickup, string>,
  how: {
    line: 'Leave the phones connected. Line input across them through 10 kΩ, its screen on the earth side: a line input of 10 to 50 kΩ then takes part of the voltage, the same at all frequencies.',
    microphone:
      'Hold the microphone close to the earpiece, sealed with soft foam, always in the same way. The response of the microphone is in the result.',
  } satisfies Record<AudioPickup, string>,
  caution:
    'A mains-powered computer connects the set’s earth to the mains earth, and so to the aerial: run it from its battery or use an isolating transformer, and never record while there may be thunder. Turn off automatic gain, noise reduction and “enhancements”.',
  privacy: 'The browser asks for permission to record. Nothing leaves this computer.',
  fullScale: {
    line: 'Voltage of a sine that just fills the input, rms, if known',
    microphone: 'Sound pressure level that just fills the input, dB, if known',
  } satisfies Record<AudioPickup, string>,
  fullScaleHint: {
    line: 'Feed a sine of known voltage through the same 10 kΩ and read its level: at −20 dBFS a sine of 10 mV means 100 mV.',
    microphone: 'From a sound level calibrator, or the data sheet of microphone and input.',
  } satisfies Record<AudioPickup, string>,
  notRead: 'Write the level of full scale as a number with its unit, or leave it empty.',
  record: (seconds: number): string => `Record ${seconds} seconds`,
  file: 'Or a WAV file of the same',
  tooLarge: (name: string, megabytes: number): string =>
    `${name} is larger than ${megabytes} MB: half a minute is enough.`,
  faults: {
    'too-short': 'The recording is too short: at least three seconds, better half a minute.',
    silent: 'Nothing but silence came in: check the leads and the input that is chosen.',
    clipped: 'The input clips: turn its level down, and record again.',
  } satisfies Record<SpectrumFault, string>,
  nothing: 'Fewer than three bands can be compared: no audio is predicted for this station.',
  notPredicted: (why: string): string => `The audio of this station is not predicted: ${why}`,
  notRecording: (name: string, why: string): string => `${name} could not be read: ${why}`,
  level: (difference: number | undefined, range: readonly [number, number] | undefined): string => {
    if (difference === undefined)
      return 'The level itself is not known without a calibration: recording and prediction are drawn with the same mean level, and only their shapes are compared.';
    const sentence = `Recorded ${formatNumber(Math.abs(difference), 2)} dB ${difference < 0 ? 'below' : 'above'} the prediction.`;
    if (!range) return sentence;
    const [low, high] = range;
    const isWithin = difference >= low && difference <= high;
    return `${sentence} That is ${isWithin ? 'within' : 'outside'} the 90 % range of the prediction, ${signed(low)} to ${signed(high)}.`;
  },
  shape: ({ scatter, shape }: SpectrumBeside): string => {
    const worst = shape.reduce((a, b) => (Math.abs(b.level) > Math.abs(a.level) ? b : a));
    const spread = `The bands differ from the predicted shape by ${formatNumber(scatter, 2)} dB (one standard deviation), most at ${hertz(worst.frequency)}: ${signed(worst.level)}.`;
    return scatter < PROGRAMME
      ? `${spread} Programmes differ as much from one half minute to the next.`
      : `${spread} That is more than programmes differ: compare another half minute, then the by-pass, the tuned circuit and the phones.`;
  },
} as const;

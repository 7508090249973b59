/** What can be wrong with a sound file: each code with its figures. */
export interface SoundFileFacts {
  readonly empty: Record<never, never>;
  readonly 'not-wav': Record<never, never>;
  readonly 'samples-before-format': Record<never, never>;
  readonly 'no-samples': Record<never, never>;
  readonly 'no-format': Record<never, never>;
  readonly 'format-short': Record<never, never>;
  readonly 'many-chunks': { readonly most: number };
  /** The format's own number for its encoding. */
  readonly encoding: { readonly encoding: number };
  readonly bits: { readonly bits: number };
  readonly channels: { readonly channels: number };
  /** Samples a second. */
  readonly rate: { readonly rate: number };
  /** Sample and channel counted from 1. */
  readonly 'bad-sample': { readonly sample: number; readonly channel: number; readonly value: number };
  /** s. */
  readonly long: { readonly longest: number };
  readonly short: Record<never, never>;
  readonly 'band-channels': { readonly channels: number };
  readonly 'band-rate': { readonly rate: number };
  readonly 'read-failed': Record<never, never>;
}
export type SoundFileProblem = {
  readonly [C in keyof SoundFileFacts]: { readonly code: C } & Readonly<SoundFileFacts[C]>;
}[keyof SoundFileFacts];

const SENTENCES: { readonly [C in keyof SoundFileFacts]: (figures: SoundFileFacts[C]) => string } = {
  empty: () => 'The file is empty. Choose another one.',
  'not-wav': () => 'This is not a WAV file: expected it to start with RIFF … WAVE. Save the sound as WAV.',
  'samples-before-format': () =>
    'The WAV file is broken: its samples come before their format. Save it again from the program that made it.',
  'no-samples': () => 'The WAV file holds no samples. Save it again from the program that made it.',
  'no-format': () => 'The WAV file is broken: its format is missing. Save it again from the program that made it.',
  'format-short': () => 'The WAV file is broken: its format is cut short. Save it again from the program that made it.',
  'many-chunks': ({ most }) =>
    `The WAV file is broken: no samples among its first ${most} chunks. Save it again from the program that made it.`,
  encoding: ({ encoding }) => `Expected samples as PCM or float, got encoding ${encoding}. Save the sound as PCM WAV.`,
  bits: ({ bits }) => `Expected samples of 8, 16, 24 or 32 bits, or float, got ${bits} bits. Save it as 16-bit PCM.`,
  channels: ({ channels }) => `Expected 1 to 32 channels, got ${channels}.`,
  rate: ({ rate }) => `Expected a sample rate of 1 kHz to 50 MHz, got ${rate} Hz.`,
  'bad-sample': ({ sample, channel, value }) =>
    `Sample ${sample} of channel ${channel}: expected a number, at full scale −1 to 1, got ${Number.isNaN(value) ? 'NaN' : value.toPrecision(3)}. Save the file as 16-bit or 24-bit PCM, or cut that part out.`,
  long: ({ longest }) => `The recording is too long: expected at most ${longest / 60} minutes. Cut a piece out of it.`,
  short: () => 'The recording is too short to be a programme. Choose a longer one.',
  'band-channels': ({ channels }) =>
    channels === 1
      ? 'Expected two channels, in-phase and quadrature, got one: this file is ordinary sound. Choose a recorded band.'
      : `Expected two channels, in-phase and quadrature, got ${channels}. Choose a recorded band.`,
  'band-rate': ({ rate }) => `Expected a band recorded at 8 kHz to 20 MHz, got ${rate} samples per second.`,
  'read-failed': () => 'The recording could not be read to its end. Choose the file again.',
};

/** What is wrong with a sound file, and the way out. */
export const soundFileProblem = (problem: SoundFileProblem): string =>
  (SENTENCES[problem.code] as (figures: SoundFileProblem) => string)(problem);

export type SoundFileWarning = 'cut-short';

/** What is used of a sound file although something is wrong with it. */
export const soundFileWarning: Readonly<Record<SoundFileWarning, string>> = {
  'cut-short': 'The file ends early; what there is of it is used.',
};

import fc from 'fast-check';
import { textOfFile } from '../../../src/app/state/text-of-file.ts';
import { contentKind } from '../../../src/cli/content-kind.ts';
import {
  openBandRecording,
  readWav,
  recordedProgramme,
  SoundFileError,
  writeWav,
} from '../../../src/outputs/audio/index.ts';
import { fromBytes } from '../../../src/outputs/audio/wav.ts';
import { problemSentence } from '../../../src/outputs/words/index.ts';
import { mustBeSound, mustSay } from '../sound-values.ts';
import { trial } from '../trial.ts';

const FORMS = [{ bits: 8 }, { bits: 16 }, { bits: 24 }, { bits: 32 }, { float: true }] as const;
const CHUNKS = ['RIFF', 'RF64', 'WAVE', 'fmt ', 'data', 'auxi', 'ds64', 'JUNK', 'LIST'];

const change = fc.oneof(
  fc.record({ at: fc.nat(90), bytes: fc.uint8Array({ minLength: 1, maxLength: 8 }).map((bytes) => [...bytes]) }),
  fc.record({
    at: fc.constantFrom(0, 8, 12, 36, 40),
    bytes: fc.constantFrom(...CHUNKS).map((id) => [...id].map((letter) => letter.charCodeAt(0))),
  }),
  fc.record({
    at: fc.constantFrom(4, 16, 20, 22, 24, 28, 32, 34, 40),
    bytes: fc.constantFrom([0, 0, 0, 0], [255, 255, 255, 255], [1, 0], [3, 0], [254, 255], [0, 0, 0, 128], [64, 0]),
  }),
);
/** A sound file whose bytes were changed, mostly of its head; as base64. */
const soundFiles = fc
  .record({
    form: fc.constantFrom(...FORMS),
    rate: fc.constantFrom(8000, 44_100, 48_000, 96_000, 192_000),
    channels: fc.integer({ min: 1, max: 3 }),
    frames: fc.integer({ min: 1, max: 200 }),
    changes: fc.array(change, { maxLength: 4 }),
    cut: fc.option(fc.nat(200)),
  })
  .map(({ form, rate, channels, frames, changes, cut }) => {
    const sound = Array.from({ length: channels }, (_, c) =>
      Float32Array.from({ length: frames }, (__, k) => 0.5 * Math.sin(k / (c + 2))),
    );
    const bytes = writeWav(sound, { rate, ...form }).slice();
    for (const { at, bytes: put } of changes)
      bytes.set(put.slice(0, Math.max(0, bytes.length - at)), Math.min(at, bytes.length));
    return Buffer.from(cut === null ? bytes : bytes.subarray(0, cut)).toString('base64');
  });

/** @returns what was made; undefined where the file is refused in words */
async function orRefused<T>(make: () => Promise<T>): Promise<T | undefined> {
  try {
    return await make();
  } catch (error) {
    if (!(error instanceof SoundFileError)) throw error;
    // A sample that is no number is quoted.
    mustSay([error.message], 'NaN');
    return undefined;
  }
}

const bytesOf = (base64: string): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(base64, 'base64'));

export const BYTE_TRIALS = [
  trial({
    name: 'WAV files',
    group: 'readers',
    says: 'a changed sound file gives samples that are numbers, or is refused in words',
    cases: soundFiles,
    check: async (base64) => {
      const bytes = bytesOf(base64);
      mustBeSound(await orRefused(() => readWav(bytes)), 'the sound');
      mustBeSound(
        await orRefused(async () => (await openBandRecording(fromBytes(bytes), bytes.length)).read(0, 64)),
        'the band',
      );
    },
    batch: 1000,
    share: 1,
    longest: 20,
  }),
  trial({
    name: 'programmes',
    group: 'readers',
    says: 'a changed sound file is a programme of numbers, or is refused in words',
    cases: soundFiles,
    check: async (base64) => {
      const sound = await orRefused(() => readWav(bytesOf(base64)));
      if (sound)
        mustBeSound(
          await orRefused(async () => recordedProgramme(sound.channels, sound.rate, 'speech')),
          'the programme',
        );
    },
    batch: 200,
    share: 1,
    longest: 20,
  }),
  trial({
    name: 'files of any bytes',
    group: 'readers',
    says: 'a file is text in an encoding that is known, or is refused in words; its content has a name',
    cases: fc
      .tuple(
        fc.constantFrom(
          [],
          [0xef, 0xbb, 0xbf],
          [0xff, 0xfe],
          [0xfe, 0xff],
          [0x25, 0x50, 0x44, 0x46],
          [0x52, 0x49, 0x46, 0x46],
        ),
        fc.oneof(
          fc.uint8Array({ maxLength: 200 }).map((bytes) => [...bytes]),
          fc.string({ maxLength: 80 }).map((text) => [...Buffer.from(text)]),
        ),
      )
      .map(([mark, rest]) => Buffer.from([...mark, ...rest]).toString('base64')),
    check: async (base64) => {
      const bytes = bytesOf(base64);
      if (contentKind(bytes) === undefined) throw new Error('the content has no name');
      const read = await textOfFile(new Blob([bytes]));
      if (read.text === undefined) mustSay([problemSentence(read.problem)], '');
    },
    batch: 1000,
    share: 1,
    longest: 20,
  }),
];

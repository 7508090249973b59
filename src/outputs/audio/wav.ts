import { type SoundFileProblem, type SoundFileWarning, soundFileProblem } from '../words/index.ts';

/** A sound file that cannot be used; the message says why in words for its owner. */
export class SoundFileError extends Error {
  readonly problem: SoundFileProblem;

  constructor(problem: SoundFileProblem) {
    super(soundFileProblem(problem));
    this.problem = problem;
  }
}

/** Some bytes of a file from `start`, fewer at its end. A Blob, a file handle or an array can stand behind it. */
export type ReadBytes = (start: number, length: number) => Promise<Uint8Array> | Uint8Array;

export interface WavHeader {
  readonly rate: number;
  readonly channels: number;
  readonly bits: 8 | 16 | 24 | 32 | 64;
  readonly float: boolean;
  /** Where the samples start, and how many there are of each channel. */
  readonly dataStart: number;
  readonly frames: number;
  /** From an "auxi" chunk as recorders of bands write it: frequency in the middle, Hz. */
  readonly centre?: number;
  readonly warnings: readonly SoundFileWarning[];
}

const text = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));

/** From an array already in memory. */
export const fromBytes =
  (bytes: Uint8Array): ReadBytes =>
  (start, length) =>
    bytes.subarray(start, start + length);

/** A file has a handful of chunks before its samples; of more it is not read on. */
const MOST_CHUNKS = 200;

/**
 * What a WAV file holds (RIFF or RF64; PCM 8, 16, 24, 32 bit, float 32, 64 bit), chunk by chunk without its samples.
 * @param size of the whole file in bytes. @throws SoundFileError saying what is wrong.
 */
export async function readWavHeader(read: ReadBytes, size: number): Promise<WavHeader> {
  if (size === 0) throw new SoundFileError({ code: 'empty' });
  const head = await read(0, 12);
  const kind = head.length >= 12 ? text(head, 0) : '';
  if ((kind !== 'RIFF' && kind !== 'RF64') || text(head, 8) !== 'WAVE') throw new SoundFileError({ code: 'not-wav' });
  const warnings: SoundFileWarning[] = [];
  let format: Pick<WavHeader, 'rate' | 'channels' | 'bits' | 'float'> | undefined;
  let centre: number | undefined;
  let longData: number | undefined;
  let chunks = 0;
  for (let at = 12; at + 8 <= size; chunks++) {
    if (chunks === MOST_CHUNKS) throw new SoundFileError({ code: 'many-chunks', most: MOST_CHUNKS });
    const chunk = await read(at, 8 + 64);
    if (chunk.length < 8) break;
    const view = new DataView(chunk.buffer, chunk.byteOffset, chunk.byteLength);
    const id = text(chunk, 0);
    let length = view.getUint32(4, true);
    if (id === 'fmt ') format = formatOf(view, length);
    if (id === 'ds64' && chunk.length >= 24) longData = Number(view.getBigUint64(16, true));
    if (id === 'auxi' && chunk.length >= 44) centre = view.getUint32(8 + 32, true) || undefined;
    if (id === 'data') {
      if (!format) throw new SoundFileError({ code: 'samples-before-format' });
      const left = size - at - 8;
      if (length === 0xffffffff) length = longData ?? left;
      if (length > left || length === 0) {
        if (length > left) warnings.push('cut-short');
        length = left;
      }
      const frames = Math.floor(length / ((format.channels * format.bits) / 8));
      if (frames === 0) throw new SoundFileError({ code: 'no-samples' });
      return { ...format, dataStart: at + 8, frames, centre, warnings };
    }
    at += 8 + length + (length & 1);
  }
  throw new SoundFileError({ code: format ? 'no-samples' : 'no-format' });
}

function formatOf(view: DataView, length: number): Pick<WavHeader, 'rate' | 'channels' | 'bits' | 'float'> {
  if (length < 16 || view.byteLength < 24) throw new SoundFileError({ code: 'format-short' });
  let code = view.getUint16(8, true);
  const channels = view.getUint16(10, true);
  const rate = view.getUint32(12, true);
  const bits = view.getUint16(22, true);
  if (code === 0xfffe && view.byteLength >= 34) code = view.getUint16(32, true);
  if (code !== 1 && code !== 3) throw new SoundFileError({ code: 'encoding', encoding: code });
  const known = code === 3 ? bits === 32 || bits === 64 : bits === 8 || bits === 16 || bits === 24 || bits === 32;
  if (!known) throw new SoundFileError({ code: 'bits', bits });
  if (!(channels >= 1 && channels <= 32)) throw new SoundFileError({ code: 'channels', channels });
  if (!(rate >= 1000 && rate <= 50e6)) throw new SoundFileError({ code: 'rate', rate });
  return { rate, channels, bits: bits as WavHeader['bits'], float: code === 3 };
}

/** Float samples may go beyond full scale, and some programs write them on the scale of 32-bit integers; none goes further. */
const LARGEST_SAMPLE = 2 ** 32;

/**
 * Samples of one channel out of raw bytes, −1 to 1 at full scale, `frames` of them.
 * @param first number of the first of them in the file, for the message.
 * @throws SoundFileError naming the first float sample that is no number or larger than anything recorded.
 */
export function decodeSamples(
  bytes: Uint8Array,
  { bits, float, channels }: Pick<WavHeader, 'bits' | 'float' | 'channels'>,
  channel: number,
  frames: number,
  out: Float32Array,
  first = 0,
): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const size = bits / 8;
  for (let i = 0; i < frames; i++) {
    const at = (i * channels + channel) * size;
    let x: number;
    if (float) x = bits === 32 ? view.getFloat32(at, true) : view.getFloat64(at, true);
    else if (bits === 16) x = view.getInt16(at, true) / 32768;
    else if (bits === 24) x = (view.getUint8(at) | (view.getInt16(at + 1, true) << 8)) / 8388608;
    else if (bits === 32) x = view.getInt32(at, true) / 2147483648;
    else x = (view.getUint8(at) - 128) / 128;
    if (!(Math.abs(x) <= LARGEST_SAMPLE)) throw badSample(x, first + i, channel);
    out[i] = x;
  }
}

const badSample = (value: number, frame: number, channel: number): SoundFileError =>
  new SoundFileError({ code: 'bad-sample', sample: frame + 1, channel: channel + 1, value });

/** Longest recording taken whole: a quarter of an hour. */
const LONGEST_SECONDS = 900;

/**
 * A whole file as channels in memory: for programmes, not for bands.
 * @param bytes the whole file
 * @returns rate (Hz) and samples, −1 to 1
 * @throws SoundFileError for what is no WAV file that can be read
 */
export async function readWav(bytes: Uint8Array): Promise<{ rate: number; channels: Float32Array[] }> {
  const header = await readWavHeader(fromBytes(bytes), bytes.length);
  if (header.frames > header.rate * LONGEST_SECONDS)
    throw new SoundFileError({ code: 'long', longest: LONGEST_SECONDS });
  const data = bytes.subarray(header.dataStart);
  const channels = Array.from({ length: header.channels }, (_, c) => {
    const out = new Float32Array(header.frames);
    decodeSamples(data, header, c, header.frames, out);
    return out;
  });
  return { rate: header.rate, channels };
}

export interface WriteWavOptions {
  readonly rate: number;
  /** Default 16. */
  readonly bits?: 8 | 16 | 24 | 32;
  /** 32-bit float. Default false. */
  readonly float?: boolean;
}

/**
 * A WAV file of one or more channels; what is beyond −1 to 1 is cut off unless it is float.
 * @param channels samples, −1 to 1
 * @param options rate (Hz), bits a sample, or float
 * @returns bytes of the file
 */
export function writeWav(
  channels: readonly Float32Array[],
  { rate, bits = 16, float = false }: WriteWavOptions,
): Uint8Array {
  const count = channels.length;
  const frames = channels[0]?.length ?? 0;
  if (!(count >= 1) || channels.some((c) => c.length !== frames))
    throw new RangeError('a WAV file takes one or more channels of equal length');
  const size = (float ? 32 : bits) / 8;
  const length = frames * count * size;
  const bytes = new Uint8Array(44 + length + (length & 1));
  const view = new DataView(bytes.buffer);
  const put = (at: number, word: string) => {
    for (let i = 0; i < 4; i++) bytes[at + i] = word.charCodeAt(i);
  };
  put(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  put(8, 'WAVE');
  put(12, 'fmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, float ? 3 : 1, true);
  view.setUint16(22, count, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * count * size, true);
  view.setUint16(32, count * size, true);
  view.setUint16(34, size * 8, true);
  put(36, 'data');
  view.setUint32(40, length, true);
  const full = 2 ** (size * 8 - 1);
  for (let i = 0, at = 44; i < frames; i++) {
    for (let c = 0; c < count; c++, at += size) {
      const x = channels[c][i];
      if (float) {
        view.setFloat32(at, x, true);
        continue;
      }
      const n = Math.max(-full, Math.min(full - 1, Math.round((Number.isFinite(x) ? x : 0) * full)));
      if (size === 1) view.setUint8(at, n + 128);
      else if (size === 2) view.setInt16(at, n, true);
      else if (size === 4) view.setInt32(at, n, true);
      else {
        view.setUint8(at, n & 255);
        view.setInt16(at + 1, n >> 8, true);
      }
    }
  }
  return bytes;
}

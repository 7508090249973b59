import { sincKernel } from './resample.ts';
import { decodeSamples, type ReadBytes, readWavHeader, SoundFileError, type WavHeader } from './wav.ts';

/** A recorded band: in-phase on the left, quadrature on the right, read piece by piece and never whole. */
export interface BandRecording {
  readonly rate: number;
  /** Frequency in the middle, Hz; undefined when neither the header nor the name says. */
  readonly centre?: number;
  readonly seconds: number;
  readonly warnings: readonly string[];
  /** Samples from `start`; beyond the end it goes on from the beginning. */
  read(start: number, count: number): Promise<{ re: Float32Array; im: Float32Array }>;
}

/** "…_909kHz…", "…_1089000Hz…", "… 0.909 MHz …" in a file's name. */
export function centreFromName(name: string): number | undefined {
  const found = /(\d+(?:[.,]\d+)?)[ _-]?(k|M)?Hz/i.exec(name);
  if (!found) return undefined;
  const unit = found[2] === undefined ? 1 : found[2].toLowerCase() === 'k' ? 1e3 : 1e6;
  const value = Number(found[1].replace(',', '.')) * unit;
  return value >= 1e4 && value <= 3e7 ? value : undefined;
}

/** @param size of the file in bytes. @throws SoundFileError for what is no stereo WAV file of a usable rate. */
export async function openBandRecording(read: ReadBytes, size: number, name = ''): Promise<BandRecording> {
  const header: WavHeader = await readWavHeader(read, size);
  if (header.channels !== 2)
    throw new SoundFileError(
      `a recorded band has two channels, in-phase and quadrature; this file has ${header.channels === 1 ? 'one: it is ordinary sound' : header.channels}`,
    );
  if (!(header.rate >= 8000 && header.rate <= 20e6))
    throw new SoundFileError(`a band recorded at ${header.rate} samples a second is not read: 8 kHz to 20 MHz are`);
  const frameBytes = (2 * header.bits) / 8;
  return {
    rate: header.rate,
    centre: header.centre ?? centreFromName(name),
    seconds: header.frames / header.rate,
    warnings: header.warnings,
    async read(start, count) {
      const re = new Float32Array(count);
      const im = new Float32Array(count);
      for (let done = 0; done < count; ) {
        const at = (start + done) % header.frames;
        const n = Math.min(count - done, header.frames - at);
        const bytes = await read(header.dataStart + at * frameBytes, n * frameBytes);
        if (bytes.length < n * frameBytes) throw new SoundFileError('the recording could not be read to its end');
        decodeSamples(bytes, header, 0, n, re.subarray(done, done + n));
        decodeSamples(bytes, header, 1, n, im.subarray(done, done + n));
        done += n;
      }
      return { re, im };
    },
  };
}

/** A band's samples at another rate, piece after piece without a seam. */
export async function bandAt(band: BandRecording, rate: number, start: number, count: number) {
  if (band.rate === rate) return band.read(start, count);
  const kernel = sincKernel(Math.min(1, rate / band.rate));
  const margin = 16 + Math.ceil((13 * band.rate) / Math.min(rate, band.rate));
  const from = (start * band.rate) / rate;
  const first = Math.floor(from) - margin;
  const need = Math.ceil((count * band.rate) / rate) + 2 * margin + 2;
  // Before the very beginning stands silence.
  const lead = Math.max(0, -first);
  const raw = await band.read(first + lead, need - lead);
  const padded = (x: Float32Array) => {
    if (lead === 0) return x;
    const all = new Float32Array(need);
    all.set(x, lead);
    return all;
  };
  const re = padded(raw.re);
  const im = padded(raw.im);
  const out = { re: new Float32Array(count), im: new Float32Array(count) };
  for (let i = 0; i < count; i++) {
    const at = from - first + (i * band.rate) / rate;
    out.re[i] = kernel(re, at);
    out.im[i] = kernel(im, at);
  }
  return out;
}

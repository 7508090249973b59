import type { SoundFileWarning } from '../words/index.ts';
import { sincKernel } from './resample.ts';
import { decodeSamples, type ReadBytes, readWavHeader, SoundFileError, type WavHeader } from './wav.ts';

/** A recorded band: in-phase on the left, quadrature on the right, read piece by piece and never whole. */
export interface BandRecording {
  readonly rate: number;
  /** Frequency in the middle, Hz; undefined when neither the header nor the name says. */
  readonly centre?: number;
  readonly seconds: number;
  readonly warnings: readonly SoundFileWarning[];
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

/**
 * A recording of a band, two channels in phase and quadrature, of which any stretch can be had.
 * @param read gives bytes of the file from a place on
 * @param size of the file in bytes.
 * @param name of the file, which may tell the frequency
 * @returns the recording, with its rate (Hz) and, where it is known, its middle frequency (Hz)
 * @throws SoundFileError for what is no stereo WAV file of a usable rate.
 */
export async function openBandRecording(read: ReadBytes, size: number, name = ''): Promise<BandRecording> {
  const header: WavHeader = await readWavHeader(read, size);
  if (header.channels !== 2) throw new SoundFileError({ code: 'band-channels', channels: header.channels });
  if (!(header.rate >= 8000 && header.rate <= 20e6)) throw new SoundFileError({ code: 'band-rate', rate: header.rate });
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
        if (bytes.length < n * frameBytes) throw new SoundFileError({ code: 'read-failed' });
        decodeSamples(bytes, header, 0, n, re.subarray(done, done + n), at);
        decodeSamples(bytes, header, 1, n, im.subarray(done, done + n), at);
        done += n;
      }
      return { re, im };
    },
  };
}

/** Part of a band around a frequency, as a wave at another rate. */
export interface BandPiece {
  readonly re: Float32Array;
  readonly im: Float32Array;
  /** What the wave is around, Hz. */
  readonly frequency: number;
}

/** Nothing of a recording may turn up nearer to the pointer than this by folding over. */
const CLEAR = 48e3;

/**
 * A band's samples at another rate, piece after piece without a seam. Of a recording wider than that rate the part about
 * `near` is taken; far outside of the recording there is silence.
 * @param band an open recording
 * @param rate samples a second wanted, Hz
 * @param start first sample at that rate
 * @param count how many
 * @param centre the recording's middle frequency, Hz.
 * @param near the frequency to keep, Hz; default the middle
 * @returns samples as two channels, in phase and quadrature
 */
export async function bandAt(
  band: BandRecording,
  rate: number,
  start: number,
  count: number,
  centre = 0,
  near = centre,
): Promise<BandPiece> {
  const off = Math.abs(near - centre);
  const wide = band.rate >= rate;
  const reach = wide ? band.rate / 2 : Math.max(band.rate / 2, rate - CLEAR - band.rate / 2);
  if (off > reach) return { re: new Float32Array(count), im: new Float32Array(count), frequency: near };
  const shift = wide ? near - centre : 0;
  const frequency = centre + shift;
  if (band.rate === rate && shift === 0) return { ...(await band.read(start, count)), frequency };
  const kernel = sincKernel(Math.min(1, rate / band.rate));
  const margin = 16 + Math.ceil((13 * band.rate) / Math.min(rate, band.rate));
  const from = (start * band.rate) / rate;
  const first = Math.floor(from) - margin;
  const need = Math.ceil((count * band.rate) / rate) + 2 * margin + 2;
  // Before the very beginning stands silence.
  const lead = Math.min(need, Math.max(0, -first));
  const raw = await band.read(first + lead, need - lead);
  const re = new Float32Array(need);
  const im = new Float32Array(need);
  re.set(raw.re, lead);
  im.set(raw.im, lead);
  if (shift !== 0) {
    for (let i = lead; i < need; i++) {
      const turns = (shift / band.rate) * (first + i);
      const a = -2 * Math.PI * (turns - Math.floor(turns));
      const [c, s, x, y] = [Math.cos(a), Math.sin(a), re[i], im[i]];
      re[i] = x * c - y * s;
      im[i] = x * s + y * c;
    }
  }
  const out = { re: new Float32Array(count), im: new Float32Array(count), frequency };
  for (let i = 0; i < count; i++) {
    const at = from - first + (i * band.rate) / rate;
    out.re[i] = kernel(re, at);
    out.im[i] = kernel(im, at);
  }
  return out;
}

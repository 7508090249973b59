import { type Bank, MODE, MOST_MODES } from './bank.ts';
import type { EnvelopeBlock, EnvelopeState } from './envelope-state.ts';

const { e: E, w0: W0, w1: W1, n0: N0, n1: N1, c: C, size: SIZE } = MODE;

// Numbers go from step to step in the state and in typed arrays: handed over one by one they would each be a new one on
// the heap, 192,000 times a second.

/** Takes the radio side on to step n: what its modes were and what the source does leave at the junction. */
export function advanceRadio(
  radio: Bank,
  { sourceRe, sourceIm }: EnvelopeBlock,
  n: number,
  state: EnvelopeState,
): void {
  const { modes, zr, zi, count, s0, s1, i0 } = radio;
  const { sr: pr, si: pi, ir, ii } = state;
  const sr = sourceRe[n];
  const si = sourceIm[n];
  const s0r = s0.re[0];
  const s0i = s0.im[0];
  const s1r = s1.re[0];
  const s1i = s1.im[0];
  const f0r = i0.re[0];
  const f0i = i0.im[0];
  let openRe = s1r * sr - s1i * si + s0r * pr - s0i * pi + f0r * ir - f0i * ii;
  let openIm = s1r * si + s1i * sr + s0r * pi + s0i * pr + f0r * ii + f0i * ir;
  for (let k = 0, j = 0; k < count; k++, j += SIZE) {
    const er = modes[j + E];
    const ei = modes[j + E + 1];
    const w0r = modes[j + W0];
    const w0i = modes[j + W0 + 1];
    const n0r = modes[j + N0];
    const n0i = modes[j + N0 + 1];
    const n1r = modes[j + N1];
    const n1i = modes[j + N1 + 1];
    const cr = modes[j + C];
    const ci = modes[j + C + 1];
    const p = zr[k];
    const m = zi[k];
    const re = er * p - ei * m + n0r * pr - n0i * pi + n1r * sr - n1i * si + w0r * ir - w0i * ii;
    const im = er * m + ei * p + n0r * pi + n0i * pr + n1r * si + n1i * sr + w0r * ii + w0i * ir;
    zr[k] = re;
    zi[k] = im;
    openRe += cr * re - ci * im;
    openIm += cr * im + ci * re;
  }
  state.openRe = openRe;
  state.openIm = openIm;
}

/** The same of the audio side, driven by the mean current alone. */
export function advanceAudio(audio: Bank, bias: number, state: EnvelopeState): void {
  const { modes, zr, zi, count } = audio;
  const { i0 } = state;
  let open = bias + audio.i0.re[0] * i0;
  for (let k = 0, j = 0; k < count; k++, j += SIZE) {
    const er = modes[j + E];
    const ei = modes[j + E + 1];
    const p = zr[k];
    const m = zi[k];
    const re = er * p - ei * m + modes[j + W0] * i0;
    const im = er * m + ei * p + modes[j + W0 + 1] * i0;
    zr[k] = re;
    zi[k] = im;
    open += modes[j + C] * re - modes[j + C + 1] * im;
  }
  state.openMean = open;
}

/** Adds to the modes what the currents of this step do to them. */
export function takeCurrents(radio: Bank, audio: Bank, { ir, ii, i0 }: EnvelopeState): void {
  const { modes, zr, zi, count } = radio;
  for (let k = 0, j = W1; k < count; k++, j += SIZE) {
    zr[k] += modes[j] * ir - modes[j + 1] * ii;
    zi[k] += modes[j] * ii + modes[j + 1] * ir;
  }
  const { modes: audioModes, zr: azr, zi: azi, count: audioCount } = audio;
  for (let k = 0, j = W1; k < audioCount; k++, j += SIZE) {
    azr[k] += audioModes[j] * i0;
    azi[k] += audioModes[j + 1] * i0;
  }
}

/** Writes the audio outputs of step n. */
export function writeAudio(
  audio: Bank,
  outputBias: Float64Array,
  outputs: EnvelopeBlock['audio'],
  n: number,
  { i0, i0Before }: EnvelopeState,
): void {
  const { or, oi, zr, zi, count } = audio;
  const now = audio.i1.re;
  const before = audio.i0.re;
  for (let o = 0; o < outputs.length; o++) {
    let y = outputBias[o] + now[o + 1] * i0 + before[o + 1] * i0Before;
    const at = o * MOST_MODES;
    for (let k = 0; k < count; k++) y += or[at + k] * zr[k] - oi[at + k] * zi[k];
    outputs[o][n] = y;
  }
}

/** Writes the radio outputs of step n, complex and in the frame; the state still holds the source of the step before. */
export function writeRadio(
  radio: Bank,
  { sourceRe, sourceIm }: EnvelopeBlock,
  outputs: NonNullable<EnvelopeBlock['radio']>,
  n: number,
  { sr: pr, si: pi, ir, ii }: EnvelopeState,
): void {
  const { or, oi, zr, zi, count, s0, s1, i1 } = radio;
  const sr = sourceRe[n];
  const si = sourceIm[n];
  for (let o = 0; o < outputs.length; o++) {
    const at = o * MOST_MODES;
    const b = o + 1;
    let re = s1.re[b] * sr - s1.im[b] * si + s0.re[b] * pr - s0.im[b] * pi;
    let im = s1.re[b] * si + s1.im[b] * sr + s0.re[b] * pi + s0.im[b] * pr;
    re += i1.re[b] * ir - i1.im[b] * ii;
    im += i1.re[b] * ii + i1.im[b] * ir;
    for (let k = 0; k < count; k++) {
      re += or[at + k] * zr[k] - oi[at + k] * zi[k];
      im += or[at + k] * zi[k] + oi[at + k] * zr[k];
    }
    outputs[o].re[n] = re;
    outputs[o].im[n] = im;
  }
}

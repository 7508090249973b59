import { addCarrier, type Sound, stretch, type Turning } from './drive.ts';
import { type HeardStations, HISTORY } from './heard-stations.ts';
import type { BandWave } from './listener-types.ts';

/** Steps between two settings of what glides. */
export const GLIDE = 16;
/** Least that is left of a near station's offset by straight runs between steps, when it is made good. */
const LEAST_SINC = 0.3;

const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/** The source of a block in the frame, from the near stations and a recorded band; and envelopes step by step. */
export class StationDrive {
  readonly sourceRe: Float64Array;
  readonly sourceIm: Float64Array;
  /** Envelope of the station taken up last, at the steps it was asked for. */
  readonly envRe: Float64Array;
  readonly envIm: Float64Array;
  private readonly heard: HeardStations;
  private readonly h: number;
  private readonly decimation: number;
  /** Samples of sound between two settings of what glides. */
  private readonly glideFrames: number;
  private readonly turning: Turning = { re: 1, im: 0, turnRe: 1, turnIm: 0 };
  private readonly past = new Float64Array(3);
  private waveAngle = 0;

  /** @param most steps of the longest block. @param h seconds from step to step. */
  constructor(heard: HeardStations, most: number, h: number, decimation: number) {
    this.heard = heard;
    this.h = h;
    this.decimation = decimation;
    this.glideFrames = Math.max(1, Math.round(GLIDE / decimation));
    this.sourceRe = new Float64Array(most);
    this.sourceIm = new Float64Array(most);
    this.envRe = new Float64Array(most);
    this.envIm = new Float64Array(most);
  }

  clear(steps: number): void {
    for (let n = 0; n < steps; n++) this.sourceRe[n] = this.sourceIm[n] = 0;
  }

  /**
   * The envelope of station k at every `stride`th step. @param isDriven `addStation` follows and moves a plain
   * envelope's history on.
   */
  take(
    k: number,
    frames: number,
    re: Sound,
    im: Sound | undefined,
    isTurned: boolean,
    stride: number,
    isDriven: boolean,
  ): void {
    const { history } = this.heard;
    const { past, decimation } = this;
    const at = HISTORY * k;
    if (isDriven && !isTurned) {
      for (let i = 0; i < 3; i++) past[i] = history[at + i];
      stretch(re, frames, decimation, stride, past, 0, this.envRe);
    } else stretch(re, frames, decimation, stride, history, at, this.envRe);
    if (isTurned) stretch(im, frames, decimation, stride, history, at + 3, this.envIm);
  }

  /** Add a near station; its envelope is complex when `isTurned`, and then the one taken last. */
  addStation(k: number, frames: number, envelope: Sound, isTurned: boolean, frame: number, frameTo: number): void {
    const { heard, h, decimation, turning } = this;
    const w = 2 * Math.PI * heard.frequency[k];
    const stride = frame === frameTo && heard.isSteady(k) ? frames : this.glideFrames;
    for (let from = 0; from < frames; from += stride) {
      const to = Math.min(from + stride, frames);
      const share = to / frames;
      const off = w - (frame + share * (frameTo - frame));
      // Straight runs between steps lose sinc² of the offset; made good here.
      const y = (off * h) / 2;
      const sinc = Math.abs(y) < 1e-4 ? 1 : Math.sin(y) / y;
      const gain = Math.max(sinc, LEAST_SINC) ** -2;
      const first = gain * heard.levelAt(k, from / frames) * heard.nearAt(k, from / frames);
      const last = gain * heard.levelAt(k, share) * heard.nearAt(k, share);
      const steps = (to - from) * decimation;
      turning.re = Math.cos(heard.angle[k]);
      turning.im = Math.sin(heard.angle[k]);
      turning.turnRe = Math.cos(off * h);
      turning.turnIm = Math.sin(off * h);
      const slope = (last - first) / steps;
      const { sourceRe, sourceIm } = this;
      if (isTurned) this.addTurned(from * decimation, to * decimation, first, slope);
      else
        addCarrier(
          envelope,
          from,
          to,
          decimation,
          heard.history,
          HISTORY * k,
          turning,
          first,
          slope,
          sourceRe,
          sourceIm,
        );
      heard.angle[k] = wrapped(heard.angle[k] + off * h * steps);
    }
  }

  private addTurned(from: number, to: number, gain: number, slope: number): void {
    const { turning, envRe, envIm, sourceRe, sourceIm } = this;
    const { turnRe, turnIm } = turning;
    let x = turning.re;
    let z = turning.im;
    let g = gain;
    for (let n = from; n < to; n++) {
      const t = x * turnRe - z * turnIm;
      z = x * turnIm + z * turnRe;
      x = t;
      g += slope;
      const e = g * envRe[n];
      const f = g * envIm[n];
      sourceRe[n] += e * x - f * z;
      sourceIm[n] += e * z + f * x;
    }
  }

  /** Add a recorded band, step by step. */
  addWave(wave: BandWave, steps: number, frame: number, frameTo: number): void {
    const { h, sourceRe, sourceIm } = this;
    const w = 2 * Math.PI * wave.frequency;
    for (let from = 0; from < steps; from += GLIDE) {
      const to = Math.min(from + GLIDE, steps);
      const off = w - (frame + (to / steps) * (frameTo - frame));
      const turnRe = Math.cos(off * h);
      const turnIm = Math.sin(off * h);
      let x = Math.cos(this.waveAngle);
      let z = Math.sin(this.waveAngle);
      for (let n = from; n < to; n++) {
        const t = x * turnRe - z * turnIm;
        z = x * turnIm + z * turnRe;
        x = t;
        const re = wave.re[n];
        const im = wave.im[n];
        sourceRe[n] += re * x - im * z;
        sourceIm[n] += re * z + im * x;
      }
      this.waveAngle = wrapped(this.waveAngle + off * h * (to - from));
    }
  }
}

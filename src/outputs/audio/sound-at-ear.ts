import type { SetCircuit } from '../../engine/built/set-circuit.ts';
import { gaussian, uniform } from '../../engine/numerics/random.ts';
import { bandWidth, roomNoise, THIRD_OCTAVES } from '../../engine/reception/hearing/index.ts';
import type { Decibels, Hertz, Ratio } from '../../engine/units/quantities.ts';
import { Fir } from './fir.ts';
import { Limiter } from './limiter.ts';
import { BLOCK, type HowLoud, SOUND_RATE } from './listening-types.ts';

/** R.m.s. of the chosen station when amplified. */
const AMPLIFIED = 0.09;
/** No amplifier gives more than this over true level, dB. */
const MOST_GAIN: Decibels = 100;
/** Of the volume, dB. */
const [LEAST_VOLUME, MOST_VOLUME]: readonly [Decibels, Decibels] = [-100, 40];

/** Pascals r.m.s. of a level. */
const pascals = (level: Decibels): number => 20e-6 * 10 ** (level / 20);

/** Gain that amplifies a station to a usual level. @param level of it at the ear, dB SPL; undefined: no station. */
export const amplificationOf = (level: Decibels | undefined): number =>
  level === undefined ? 1 : Math.min(AMPLIFIED / Math.max(pascals(level), 1e-12), 10 ** (MOST_GAIN / 20));

/**
 * `from` times a gain that glides from one to another. Numbers kept between blocks would each be a new one on the heap
 * at every sample; those of a loop are not. @returns sum of the squares that came.
 */
function glide(from: Float32Array, to: Float32Array, frames: number, first: number, last: number): number {
  const step = (last - first) / frames;
  let gain = first;
  let square = 0;
  for (let i = 0; i < frames; i++) {
    gain += step;
    square += from[i] * from[i];
    to[i] = from[i] * gain;
  }
  return square;
}

interface EarOptions {
  readonly how: HowLoud;
  readonly amplification: number;
  /** Of all that the phones give, dB. */
  readonly shift: Decibels;
  readonly hasRoom: boolean;
  readonly seed: number;
  readonly fadeIn?: number;
}

/** From the volts at the transducer to what is played: phones, a warming valve, the room, volume and limiter. */
export class SoundAtEar {
  how: HowLoud;
  /** Share of its full loudness that the sound before this block had: a valve that warms or cools. */
  warmth: Ratio = 1;
  /** Before the limiter, Pa. */
  readonly pressure: Float32Array = new Float32Array(BLOCK);
  readonly meters = { limited: 1, pressure: 0 };

  private readonly amplification: number;
  private readonly shift: Decibels;
  private readonly hasRoom: boolean;
  private readonly roomFilter: Fir;
  private readonly roomNormal: () => number;
  private readonly roomSound = new Float32Array(BLOCK);
  private readonly limiter: Limiter;
  private phones: Fir;
  private volume = 1;
  private gain: number;

  constructor(circuit: SetCircuit, { how, amplification, shift, hasRoom, seed, fadeIn }: EarOptions) {
    this.how = how;
    this.amplification = amplification;
    this.shift = shift;
    this.hasRoom = hasRoom;
    this.roomFilter = new Fir(SOUND_RATE, roomGain(circuit), BLOCK);
    this.roomNormal = gaussian(uniform(seed ^ 0x100e));
    this.limiter = new Limiter({ rate: SOUND_RATE, fadeIn });
    this.phones = phonesOf(circuit, shift);
    this.gain = this.wantedGain();
  }

  fitPhones(circuit: SetCircuit): void {
    this.phones = phonesOf(circuit, this.shift);
  }

  /** On top, dB. */
  setVolume(level: Decibels): void {
    this.volume = 10 ** (Math.max(LEAST_VOLUME, Math.min(MOST_VOLUME, level)) / 20);
  }

  /** The next block. @param warmth share of its full loudness at the end of it; undefined: no heater was switched. */
  run(atTransducer: Float32Array, out: Float32Array, frames: number, warmth: Ratio | undefined): void {
    const { pressure, limiter } = this;
    this.phones.run(atTransducer, pressure, frames);
    if (warmth !== undefined) {
      glide(pressure, pressure, frames, this.warmth, warmth);
      this.warmth = warmth;
    }
    if (this.hasRoom && this.how === 'as in the phones') this.addRoom(frames);
    const wanted = this.wantedGain();
    const square = glide(pressure, out, frames, this.gain, wanted);
    this.gain = wanted;
    limiter.lowestGain = 1;
    limiter.run(out, frames);
    this.meters.limited = limiter.lowestGain;
    this.meters.pressure = Math.sqrt(square / frames);
  }

  private addRoom(frames: number): void {
    const { pressure, roomSound } = this;
    for (let i = 0; i < frames; i++) roomSound[i] = this.roomNormal();
    this.roomFilter.run(roomSound, roomSound, frames);
    for (let i = 0; i < frames; i++) pressure[i] += roomSound[i];
  }

  private wantedGain(): number {
    return this.volume * (this.how === 'amplified' ? this.amplification : 1);
  }
}

/** Pa for a volt at the transducer. */
const phonesOf = ({ load }: SetCircuit, shift: Decibels): Fir =>
  new Fir(
    SOUND_RATE,
    (f) => {
      const level = load.soundPressureAt(f, 1);
      const low = (f / 100) ** 2;
      return Number.isFinite(level) && f > 40 ? pascals(level + shift) * (low / (1 + low)) : 0;
    },
    BLOCK,
  );

/** What makes the noise of the room of white noise. */
function roomGain({ set, load }: SetCircuit): (f: Hertz) => number {
  const levels = roomNoise(set.ear.room, load.listening);
  return (f) => {
    const k = THIRD_OCTAVES.reduce(
      (b, m, i) => (Math.abs(Math.log(m / f)) < Math.abs(Math.log(THIRD_OCTAVES[b] / f)) ? i : b),
      0,
    );
    // White noise of unit variance has 2/rate a hertz.
    return f < 60 || f > 9500 ? 0 : pascals(levels[k]) / Math.sqrt((bandWidth(THIRD_OCTAVES[k]) * 2) / SOUND_RATE);
  };
}

import type { Warning } from '../../engine/facts/warning.ts';
import type { FieldOptions } from '../../engine/reception/path/field.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { Listener } from '../../engine/solvers/envelope/listener-types.ts';
import type { Decibels, Hertz, Kelvins, Ratio, Volts } from '../../engine/units/quantities.ts';
import type { ProgrammeLoop } from './programme.ts';

/** Samples of sound a second. */
export const SOUND_RATE = 48_000;
/** Most samples in one call of `process`. */
export const BLOCK = 256;

/** Whether the sound is as loud as in the phones, with the noise of the room, or amplified. */
export type HowLoud = 'as in the phones' | 'amplified';

/** Which station, how loud, what is on the air. */
export interface ListeningOptions extends FieldOptions {
  /** Which station the dial starts on and the amplification is set for, by its place in the list. Default the one heard best. */
  readonly station?: number;
  /**
   * Of that station at the ear, dB SPL, such as the median of sets built like this one: all sound is as much stronger or
   * weaker than calculated. Default as calculated.
   */
  readonly level?: Decibels;
  /**
   * At the ear, dB SPL: what is amplified to the usual loudness; default that station. The same for several sets, they
   * are heard at equal settings.
   */
  readonly amplifiedFrom?: Decibels;
  /** Where the dial starts, 0 open … 1 meshed; default on the station. */
  readonly position?: Ratio;
  /** Default "amplified". */
  readonly how?: HowLoud;
  /** Default 1. */
  readonly seed?: number;
  /** Programmes by the station's place in the list; the others are made up. */
  readonly programmes?: ReadonlyMap<number, ProgrammeLoop>;
  /** Default true. */
  readonly noise?: boolean;
  /** The room, with true level only. Default true. */
  readonly room?: boolean;
  /** Default 1.5 s. */
  readonly fadeIn?: number;
  /** The radio-frequency side is written into `listener.trace` too. Default false. */
  readonly scope?: boolean;
  /** Make every station's programme before the first sound, not when first heard. Default false. */
  readonly prepared?: boolean;
  /** The whisker is off the crystal: no sound but the room's. Default false. */
  readonly lifted?: boolean;
  /** Of a valve: switched on from cold, or switched off while warm, at the beginning. Default warm, and on. */
  readonly heater?: 'switched on' | 'switched off';
}

/**
 * Another wave instead of the stations, V at the aerial: a recorded band, overwritten into `re`, `im`.
 * @returns the frequency it is around, Hz: within 100 kHz of the pointer, or what is written must be silence.
 */
export type BandPlayer = (steps: number, re: Float32Array, im: Float32Array, pointer: Hertz) => Hertz;

/** A set being listened to: samples come out as long as somebody asks. */
export interface Listening {
  /** Go on by up to `BLOCK` samples. */
  process(out: Float32Array, frames: number): void;
  tune(position: Ratio): void;
  /** The same set with other parts, or another time of day: what was ringing rings on. */
  change(set: SetDescription, options?: FieldOptions): void;
  setProgramme(station: number, loop: ProgrammeLoop | undefined): void;
  setHow(how: HowLoud): void;
  /** On top, dB. */
  setVolume(level: Decibels): void;
  setLifted(lifted: boolean): void;
  /** A valve's heater: its sound fades in as it warms, and goes on for a while when it is switched off. */
  setHeater(on: boolean): void;
  /** Play a recorded band instead of the stations; undefined: the stations again. */
  playBand(band: BandPlayer | undefined): void;
  readonly position: Ratio;
  readonly pointer: Hertz;
  /** Of a valve's cathode, K, once its heater has been switched. */
  readonly cathode: Kelvins | undefined;
  /** Samples since it was opened. */
  readonly clock: number;
  readonly meters: {
    readonly carrier: Volts;
    readonly lost: number;
    readonly limited: Ratio;
    readonly pressure: number;
  };
  /** Of the last block: after the detector, V, and the sound before the limiter, Pa. */
  readonly detected: Float32Array;
  readonly pressure: Float32Array;
  readonly trace: Listener['trace'];
  readonly stations: readonly { readonly name: string; readonly frequency: Hertz; readonly index: number }[];
  readonly warnings: readonly Warning[];
}

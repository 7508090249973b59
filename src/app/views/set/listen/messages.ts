import type { SetDescription } from '../../../../engine/index.ts';
import type { HowLoud } from '../../../../outputs/audio/index.ts';
import type { When } from '../../../description/when.ts';

/** Samples in one piece of sound on its way to the ear. */
export const PIECE = 1024;
/** Pieces kept ahead of the ear, 0.3 s; after every gap a few more, up to the most. */
export const AHEAD = 14;
export const MORE_AFTER_GAP = 4;
export const MOST_AHEAD = 34;

/** From the page to the worker that hears. */
export type ToWorker =
  | {
      readonly kind: 'open';
      readonly set: SetDescription;
      readonly time: When;
      readonly position: number;
      readonly station?: number;
      /** Of that station at the ear, as the page shows it, dB SPL. */
      readonly level?: number;
      readonly how: HowLoud;
      readonly volume: number;
      readonly programmes: ReadonlyMap<number, Float32Array>;
      readonly port: MessagePort;
    }
  | { readonly kind: 'tune'; readonly position: number }
  | { readonly kind: 'change'; readonly set: SetDescription; readonly time: When }
  | { readonly kind: 'how'; readonly how: HowLoud }
  | { readonly kind: 'volume'; readonly level: number }
  | { readonly kind: 'lifted'; readonly lifted: boolean }
  | { readonly kind: 'heater'; readonly on: boolean }
  | { readonly kind: 'programme'; readonly station: number; readonly samples: Float32Array; readonly rate: number }
  | { readonly kind: 'microphone'; readonly station: number; readonly port?: MessagePort }
  | { readonly kind: 'band'; readonly file?: File; readonly centre?: number; readonly fullScale: number };

/** What moves on the screen, some fifteen times a second. */
export interface Moving {
  readonly kind: 'moving';
  /** Carrier across the detector, its output, V; sound, Pa: the last few milliseconds. */
  readonly envelope: Float32Array;
  readonly detected: Float32Array;
  readonly sound: Float32Array;
  /** Level at the detector by frequency, dBV, from `from` to `to` Hz. */
  readonly spectrum: Float32Array;
  readonly from: number;
  readonly to: number;
  readonly pointer: number;
  /** dB SPL in the phones. */
  readonly level: number;
  /** What the limiter takes away now, dB. */
  readonly limited: number;
  /** Of a valve's cathode, K, once its heater was switched. */
  readonly cathode?: number;
}

/** From the worker to the page. */
export type FromWorker =
  | { readonly kind: 'ready'; readonly warnings: readonly string[] }
  /** As the person reads it. */
  | { readonly kind: 'problem'; readonly message: string }
  | { readonly kind: 'band'; readonly centre?: number; readonly seconds: number }
  | Moving;

/** From the player back to the worker: an empty piece to be filled again, or word of a gap. */
export type Played = { readonly buffer: Float32Array } | { readonly gap: true };

/** From the player to the page. */
export interface PlayerState {
  readonly gaps: number;
  readonly seconds: number;
}

import type { SetDescription } from '../../engine/set/description.ts';
import { openListening } from './listening.ts';
import { BLOCK, type ListeningOptions, SOUND_RATE } from './listening-types.ts';

/** What is rendered, and for how long. */
export interface RenderOptions extends ListeningOptions {
  readonly seconds: number;
  /** Told before each block how much is done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** From one end of the dial to the other instead of staying: positions, 0 open … 1 meshed. */
  readonly sweep?: { readonly from: number; readonly to: number };
}

/** Longest sound rendered in one go, s. */
export const LONGEST_RENDER = 600;

/**
 * What is heard, as samples at `SOUND_RATE`. The same options give the same samples, bit for bit.
 * @param set as read
 * @param options seconds, station, loudness and programmes
 * @returns samples, −1 to 1
 */
export function renderListening(set: SetDescription, options: RenderOptions): Float32Array {
  const { seconds, sweep } = options;
  if (!(seconds > 0 && seconds <= LONGEST_RENDER))
    throw new RangeError(`seconds must be above 0 and at most ${LONGEST_RENDER}, not ${seconds}`);
  const listening = openListening(set, { ...options, position: sweep?.from ?? options.position });
  const sound = new Float32Array(Math.round(seconds * SOUND_RATE));
  for (let at = 0; at < sound.length; at += BLOCK) {
    options.onProgress?.(at / sound.length);
    const frames = Math.min(BLOCK, sound.length - at);
    if (sweep) listening.tune(sweep.from + ((sweep.to - sweep.from) * at) / sound.length);
    listening.process(sound.subarray(at, at + frames), frames);
  }
  return sound;
}

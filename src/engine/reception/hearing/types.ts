import type { Decibels, Hertz, Ratio } from '../../units/quantities.ts';
import type { Room } from './room.ts';

export interface HeardBand {
  readonly frequency: Hertz;
  /** Long-term level of the programme in this one-third octave. */
  readonly level: Decibels;
  readonly threshold: Decibels;
  /** Room noise at the ear. */
  readonly noise: Decibels;
  /** Loud moments over the greater of threshold and what the noise masks. */
  readonly margin: Decibels;
}

/** How loud a programme is in a room, with no other station. */
export type Loudness = 'loud' | 'comfortable' | 'quiet' | 'faint' | 'not heard';

/** How a station comes through, all counted: its level, other stations, and what the dial covers. */
export type Verdict = Loudness | 'masked' | 'out of range';

/** A programme at the ear. */
export interface Hearing {
  /** With no other station. */
  readonly loudness: Loudness;
  /** dB SPL, long-term mean. */
  readonly level: Decibels;
  /** The same, A-weighted. */
  readonly levelA: Decibels;
  /** Over the hearing threshold in this room, and in silence. */
  readonly margin: Decibels;
  readonly marginInSilence: Decibels;
  readonly room: Room;
  /** Speech intelligibility index, 0..1, with what other stations leave in the phones; undefined for music and tones. */
  readonly intelligibility?: Ratio;
  /** 90 % of that, of all sets built like this one, where it is drawn. */
  readonly intelligibilityRange?: readonly [Ratio, Ratio];
}

import { monotoneCurve } from '../../numerics/monotone.ts';
import type { Decibels } from '../../units/quantities.ts';
import { aWeighting, powerSum, THIRD_OCTAVES } from './third-octaves.ts';

export type RoomName = 'night' | 'quiet room' | 'living room' | 'workshop' | 'out of doors';
/** A room by name, or by what a sound level meter shows in it. */
export type Room = RoomName | { readonly soundLevel: Decibels };

const OCTAVES = [63, 125, 250, 500, 1000, 2000, 4000, 8000];
/** Noise criterion curves (Beranek), octave levels, dB. */
const CURVES = {
  15: [47, 36, 29, 22, 17, 14, 12, 11],
  20: [51, 40, 33, 26, 22, 19, 17, 16],
  30: [57, 48, 41, 35, 31, 29, 28, 27],
  35: [60, 52, 45, 40, 36, 34, 33, 32],
  50: [71, 64, 58, 54, 51, 49, 48, 47],
} as const;

/** Which curve stands for which place. Common practice, no source. */
const ROOMS: Record<RoomName, keyof typeof CURVES> = {
  night: 15,
  'quiet room': 20,
  'living room': 30,
  workshop: 50,
  'out of doors': 35,
};

/** A third of an octave's power, taking the level as even within the octave. */
const THIRD: Decibels = 10 * Math.log10(1 / 3);

const thirds = (octaves: readonly Decibels[]): readonly Decibels[] => {
  const curve = monotoneCurve(OCTAVES.map(Math.log), octaves);
  return THIRD_OCTAVES.map((f) => curve.at(Math.log(f)) + THIRD);
};
const NOISE = Object.fromEntries(Object.entries(ROOMS).map(([name, curve]) => [name, thirds(CURVES[curve])])) as Record<
  RoomName,
  readonly Decibels[]
>;

const WEIGHT = THIRD_OCTAVES.map(aWeighting);
/** A-weighted level of one-third-octave levels. */
export const soundLevelA = (levels: readonly Decibels[]): Decibels =>
  powerSum(levels.map((level, i) => level + WEIGHT[i]));

/**
 * What hard-capped phones on the ears keep out. Half (in dB) of what ISO 8253-1 gives for audiometric earphones, which
 * seal better; from memory.
 */
const SHUT_OUT = (() => {
  const curve = monotoneCurve([125, 250, 500, 1000, 2000, 4000, 8000].map(Math.log), [1.5, 2.5, 3.5, 7.5, 13, 16, 12]);
  return THIRD_OCTAVES.map((f) => curve.at(Math.log(f)));
})();

/**
 * Noise of a room in the one-third octaves of `THIRD_OCTAVES`, dB SPL.
 * @param listening under phones less of it reaches the ear; default loudspeaker, the room itself.
 */
export function roomNoise(room: Room, listening: 'phones' | 'loudspeaker' = 'loudspeaker'): readonly Decibels[] {
  let levels: readonly Decibels[];
  if (typeof room === 'string') levels = NOISE[room];
  else {
    if (!Number.isFinite(room.soundLevel)) throw new RangeError(`soundLevel must be a number, got ${room.soundLevel}`);
    const lift = room.soundLevel - soundLevelA(NOISE['living room']);
    levels = NOISE['living room'].map((level) => level + lift);
  }
  return listening === 'phones' ? levels.map((level, i) => level - SHUT_OUT[i]) : levels;
}

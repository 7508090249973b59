import type { Room, RoomName } from '../../../../engine/reception/hearing/room.ts';
import type { Verdict } from '../../../../engine/reception/path/types.ts';

/** How a station comes through, in one word or two. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  loud: 'loud',
  comfortable: 'comfortable',
  quiet: 'quiet',
  faint: 'faint',
  'not heard': 'not heard',
  masked: 'masked',
  'out of range': 'out of range',
};

/** The same at the head of a sentence. */
export const verdictTitles: Readonly<Record<Verdict, string>> = {
  loud: 'Loud',
  comfortable: 'Comfortable',
  quiet: 'Quiet',
  faint: 'Faint',
  'not heard': 'Not heard',
  masked: 'Masked',
  'out of range': 'Out of range',
};

const ROOMS: Readonly<Record<RoomName, string>> = {
  night: 'in a quiet house at night',
  'quiet room': 'in a quiet room',
  'living room': 'in a living room',
  workshop: 'in a workshop',
  'out of doors': 'out of doors',
};

/** Where one listens: "in a quiet room", "in a room of 40 dB(A)". */
export const roomWords = (room: Room): string =>
  typeof room === 'string' ? ROOMS[room] : `in a room of ${Math.round(room.soundLevel)} dB(A)`;

/** Above 0.75 is called good in common use; at 0.15 half of easy words are caught, which fixes the lowest limit. */
export const intelligibilityWords = (index: number): string =>
  index > 0.75
    ? 'every word is understood'
    : index > 0.4
      ? 'most words are understood'
      : index > 0.12
        ? 'some words are understood'
        : 'hardly a word is understood';

import { SCENE_POINTS } from '../../../engine/set/scenes.ts';

/** Where on the path a wave is looked at, in order. */
export const POINTS = SCENE_POINTS;
export type PointId = (typeof POINTS)[number];

export interface PointWords {
  readonly title: string;
  /** What is drawn, in one sentence. */
  readonly about: string;
  /** What the figures beside the trace are of. */
  readonly measure: 'voltage' | 'ratio';
}

export const POINT_WORDS: Readonly<Record<PointId, PointWords>> = {
  programme: {
    title: 'Programme',
    about: 'What is said or played, as a share of the carrier it will be laid on.',
    measure: 'ratio',
  },
  carrier: {
    title: 'Carrier',
    about: 'What the station would send if nobody spoke: as the aerial picks it up.',
    measure: 'voltage',
  },
  modulated: {
    title: 'Programme laid on the carrier',
    about: 'What the station sends: as the aerial picks it up.',
    measure: 'voltage',
  },
  tuned: {
    title: 'On the tuned circuit',
    about: 'What the tuned circuit makes of everything that arrives, neighbours and all.',
    measure: 'voltage',
  },
  detector: {
    title: 'After the detector, nothing to smooth it',
    about: 'What the one-way path lets through into a bare resistance.',
    measure: 'voltage',
  },
  phones: {
    title: 'After the capacitor, as it is heard',
    about: 'What is left when a capacitor takes up each gulp and the phones (or an amplifier’s input) drain it.',
    measure: 'voltage',
  },
};

/** Where the carrier still swings both ways alike. */
export const BEFORE_DETECTOR: readonly PointId[] = ['carrier', 'modulated', 'tuned'];

export const isPoint = (value: unknown): value is PointId => (POINTS as readonly unknown[]).includes(value);

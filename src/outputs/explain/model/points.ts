import { SCENE_POINTS } from '../../../engine/set/scenes.ts';

/** Where on the path a wave is looked at, in order. */
export const POINTS = SCENE_POINTS;
export type PointId = (typeof POINTS)[number];

/** What the figures beside a trace are of: a programme is given as a share of the carrier. */
export const measureAt = (point: PointId): 'voltage' | 'ratio' => (point === 'programme' ? 'ratio' : 'voltage');

/** Where the carrier still swings both ways alike. */
export const BEFORE_DETECTOR: readonly PointId[] = ['carrier', 'modulated', 'tuned'];

export const isPoint = (value: unknown): value is PointId => (POINTS as readonly unknown[]).includes(value);

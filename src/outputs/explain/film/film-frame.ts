import type { Hertz, Seconds } from '../../../engine/units/quantities.ts';
import { explainTexts } from '../../words/index.ts';
import type { StageContents } from '../stage/stage.ts';
import type { Prepared } from '../story/prepared.ts';
import { drawingOf } from './drawing.ts';
import { type FilmPart, viewAt } from './film-plan.ts';
import { heardIn, isSlowed, loudnessShare, playheadAt, sceneSound, slowedTimes } from './scene-sound.ts';

/** Size of a film's picture, px, and whether it has sound: the moment that is heard is then marked. */
export interface FilmLook {
  readonly width: number;
  readonly height: number;
  readonly sound: boolean;
}

/** Samples a second of a film's sound. */
export const FILM_SOUND_RATE: Hertz = 48_000;
const LOUDEST = 0.2;
/** Sound is faded in and out at every cut. */
const FADE: Seconds = 0.08;

/** How long a film is. */
export const filmSeconds = (parts: readonly FilmPart[]): Seconds => parts.reduce((sum, p) => sum + p.seconds, 0);

/** Frames of a film that lasts so long. */
export const frameCount = (seconds: Seconds, rate: Hertz): number => Math.max(1, Math.round(seconds * rate));

/** The scene that is seen at a moment of the film. */
export const filmPartAt = (parts: readonly FilmPart[], t: Seconds): FilmPart =>
  parts.find((p) => t < p.start + p.seconds - 1e-9) ?? parts[parts.length - 1];

/** What one frame of a film shows, so many seconds into its scene. */
export function filmFrame(
  { scene, seconds: whole }: FilmPart,
  prepared: Prepared,
  seconds: Seconds,
  { width, height, sound }: FilmLook,
): StageContents {
  const view = viewAt(scene, seconds);
  return {
    ...drawingOf({ scene, prepared, presented: true }, view, seconds, width, height, 1),
    playhead: sound ? playheadAt(prepared.waves, scene, view, seconds, whole) : undefined,
    soundNote: sound && isSlowed(scene) ? explainTexts.stage.slowed(slowedTimes(view, whole)) : undefined,
  };
}

/**
 * Sound of one scene of a film, faded in and out.
 * @param seconds of it, where the film ends before the scene does; slowed sound fills the whole scene all the same.
 */
export function filmSound(
  prepared: Prepared,
  { scene, seconds: whole }: FilmPart,
  rate: Hertz,
  seconds: Seconds = whole,
): Float32Array {
  const n = Math.round(seconds * rate);
  const point = heardIn(scene);
  const loudest = point ? LOUDEST * loudnessShare(prepared, scene, point) : 0;
  const samples = sceneSound(prepared.waves, scene, whole, rate, loudest).subarray(0, n);
  const fade = Math.min(FADE * rate, n / 2);
  for (let i = 0; i < fade; i++) {
    samples[i] *= i / fade;
    samples[n - 1 - i] *= i / fade;
  }
  return samples;
}

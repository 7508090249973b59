import type { Hertz, Ratio, Seconds } from '../../../engine/units/quantities.ts';
import { secondsOf } from '../model/kept-recording.ts';
import type { PointId } from '../model/points.ts';
import { audible, audioPeak } from '../model/samples.ts';
import type { View } from '../model/view.ts';
import type { WaveProgramme } from '../model/wave-programme.ts';
import type { Waves } from '../model/waves.ts';
import type { Prepared } from '../story/prepared.ts';
import type { StoryScene } from '../story/story.ts';

/** Where there is something to hear. */
const HEARABLE: readonly PointId[] = ['programme', 'detector', 'phones'];
/** A playhead that crosses the picture faster than this cannot be followed. */
const FOLLOWED: Seconds = 0.4;

type Sounding = Pick<StoryScene, 'rows' | 'hear' | 'sound'>;

/** The point that a scene lets hear. @returns undefined where it is silent. */
export const heardIn = ({ rows, hear, sound }: Sounding): PointId | undefined =>
  sound === 'silent' ? undefined : (hear ?? rows.findLast(({ point }) => HEARABLE.includes(point))?.point);

/**
 * The wave over a view itself, so slowly that it takes so many seconds: a carrier of hundreds of kilohertz becomes a tone.
 * @returns samples from −1 to 1, the steady part left out.
 */
export function slowedSound(
  waves: Waves,
  point: PointId,
  { from, span }: View,
  seconds: Seconds,
  rate: Hertz,
  loudest = 0.5,
): Float32Array {
  const n = Math.max(1, Math.round(seconds * rate));
  const low = new Float64Array(n);
  const high = new Float64Array(n);
  // The middle of each sample's extremes: what is faster than half the rate leaves nothing.
  waves.extent(point, from, from + span, n, low, high);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    low[i] = (low[i] + high[i]) / 2;
    sum += low[i] / n;
  }
  let most = 0;
  for (let i = 0; i < n; i++) most = Math.max(most, Math.abs(low[i] - sum));
  return Float32Array.from(low, (v) => (most > 0 ? (loudest * (v - sum)) / most : 0));
}

/** How many times slower than in the set a view sounds. */
export const slowedTimes = ({ span }: View, seconds: Seconds): Ratio => seconds / span;

/** A stretch of tones, and how often a second it is looked at, from which their peak is known. */
const TONES: Seconds = 0.02;
const TONES_RATE: Hertz = 24_000;
/** A recording is long, and its peak is wanted only roughly. */
const RECORDING_RATE_OF_PEAK: Hertz = 4000;

/**
 * How loud a scene is heard: where its rows are drawn to one scale, in proportion to the loudest of them.
 * @returns from 0 to 1.
 */
export function loudnessShare(
  { waves, rows }: Pick<Prepared, 'waves' | 'rows'>,
  { show }: Pick<StoryScene, 'show'>,
  point: PointId,
): Ratio {
  if (!show?.alike) return 1;
  const { programme } = waves.spec;
  const peakOf = (of: Waves): number =>
    programme.kind === 'recording'
      ? audioPeak(of, point, secondsOf(programme), RECORDING_RATE_OF_PEAK)
      : audioPeak(of, point, TONES, TONES_RATE);
  // Rows without settings of their own have the waves of the scene.
  const others = new Set(rows.filter((row) => row.point === point).map((row) => row.waves));
  others.delete(waves);
  const own = peakOf(waves);
  const loudest = Math.max(own, ...Array.from(others, peakOf));
  return loudest > 0 ? own / loudest : 1;
}

/** Sound of a scene for so many seconds; silence where it has none. */
export function sceneSound(
  waves: Waves,
  scene: StoryScene,
  seconds: Seconds,
  rate: Hertz,
  loudest = 0.5,
): Float32Array {
  const point = heardIn(scene);
  const n = Math.round(seconds * rate);
  if (!point) return new Float32Array(n);
  if (isSlowed(scene)) return slowedSound(waves, point, scene, seconds, rate, loudest);
  return audible(waves, point, seconds, rate, loudest, startOf(waves, scene));
}

/** A view that zooms cannot be heard slowed: it would change its pitch on the way. */
export const isSlowed = ({ sound, to, rows }: StoryScene): boolean => sound === 'slowed' && !to && rows.length > 0;

/** Recorded words are heard from the moment the view begins with. */
const startOf = ({ spec }: Waves, { from }: View): Seconds =>
  spec.programme.kind === 'recording' && from > 0 && from < secondsOf(spec.programme) ? from : 0;

/** How long a stretch is played round and round. */
export const loopSeconds = (programme: WaveProgramme | undefined): Seconds =>
  programme?.kind === 'recording' ? secondsOf(programme) : 1;

/**
 * The moment of the wave that is heard after so many seconds of a scene.
 * Tones go on for ever: the mark begins again with each second of them, as on the page.
 * @param seconds of the whole scene, for sound that is slowed. @returns undefined where nothing is heard or followed.
 */
export function playheadAt(
  waves: Waves,
  scene: StoryScene,
  view: View,
  t: Seconds,
  seconds: Seconds,
): Seconds | undefined {
  if (!heardIn(scene)) return undefined;
  if (isSlowed(scene)) return scene.from + (scene.span * t) / seconds;
  if (view.span < FOLLOWED) return undefined;
  const { programme } = waves.spec;
  return programme.kind === 'recording' ? startOf(waves, scene) + t : t % loopSeconds(programme);
}

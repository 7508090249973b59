import type { FieldOptions, Reception, SetDescription, WrittenDescription } from '../engine/index.ts';
import {
  Columns,
  captionsOf,
  FILM_COLOURS,
  FILM_SOUND_RATE,
  filmFrame,
  filmPartAt,
  filmPlan,
  filmSeconds,
  filmSound,
  frameCount,
  paintStage,
  preparer,
  recordingOf,
  type StoryScene,
  scenePen,
} from '../outputs/explain/index.ts';
import { type Palette, sceneToSvg } from '../outputs/scene/index.ts';

/** What is filmed: a set received, and the recording kept with it. */
export interface FilmedSet {
  readonly set: SetDescription;
  readonly written: WrittenDescription;
  readonly reception: Reception;
  readonly field: FieldOptions;
}

export interface FilmForm {
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: number;
  readonly dark: boolean;
  readonly sound: boolean;
}

/** A film as drawings, one for each frame, and its sound. */
export interface DrawnFilm {
  readonly colours: Palette;
  /** s */
  readonly seconds: number;
  readonly scenes: readonly { readonly title: string; readonly seconds: number }[];
  readonly frames: number;
  /** @param frame from 0. */
  svg(frame: number): string;
  /** Of the whole film, from −1 to 1. */
  sound(): Float32Array;
  captions(): string;
}

/** Plans and draws a film by the same code as the page's. */
export function drawnFilm(
  { set, written, reception, field }: FilmedSet,
  scenes: readonly StoryScene[],
  form: FilmForm,
): DrawnFilm {
  const prepare = preparer(set, reception, recordingOf(written), field);
  const parts = filmPlan(scenes, (scene) => prepare(scene).facts);
  const seconds = filmSeconds(parts);
  const colours = FILM_COLOURS[form.dark ? 'dark' : 'light'];
  const columns = new Columns();
  const { width, height, rate } = form;
  return {
    colours,
    seconds,
    scenes: parts.map((part) => ({ title: part.scene.title, seconds: part.seconds })),
    frames: frameCount(seconds, rate),
    svg(frame) {
      const part = filmPartAt(parts, frame / rate);
      const { pen, items } = scenePen({ pixels: true });
      paintStage(pen, filmFrame(part, prepare(part.scene), frame / rate - part.start, form), columns);
      const scene = { unit: 'px', width, height, title: '', description: '', items: items() } as const;
      return sceneToSvg(scene, { colours, size: 'true', id: 'f', paper: true });
    },
    sound() {
      const whole = new Float32Array(Math.round(seconds * FILM_SOUND_RATE));
      for (const part of parts) {
        const start = Math.round(part.start * FILM_SOUND_RATE);
        whole.set(filmSound(prepare(part.scene), part, FILM_SOUND_RATE).subarray(0, whole.length - start), start);
      }
      return whole;
    },
    captions: () => captionsOf(parts, (scene) => prepare(scene).figures),
  };
}

/**
 * Each frame in turn, drawn in one way, as pixels or as a file.
 * @param draw is not called for what stands still. @param onProgress how much of the film is done, 0 to 1.
 */
export function* drawnFrames<T>(
  film: DrawnFilm,
  draw: (svg: string) => T,
  onProgress: (share: number) => void,
): Generator<T> {
  let last: { readonly svg: string; readonly drawn: T } | undefined;
  for (let frame = 0; frame < film.frames; frame++) {
    const svg = film.svg(frame);
    if (last?.svg !== svg) last = { svg, drawn: draw(svg) };
    yield last.drawn;
    onProgress((frame + 1) / film.frames);
  }
}

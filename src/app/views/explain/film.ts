import type { Reception, SetDescription } from '../../../engine/index.ts';
import type { StoryScene, WaveProgramme } from '../../../outputs/explain/index.ts';
import type { Palette } from '../../../outputs/scene/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import type { When } from '../../description/when.ts';
import type { SceneBackground } from './colours.ts';
import { ShownError } from './scene-problem.ts';

/** Of films, and of an animated picture. */
export type FilmFormat = 'webm' | 'mp4' | 'gif';

/** What a film is made of; everything in it can be sent to a worker. */
export interface FilmOrder {
  readonly scenes: readonly StoryScene[];
  readonly set?: SetDescription;
  readonly reception?: Reception;
  readonly recording?: WaveProgramme;
  readonly time?: When;
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: number;
  readonly format: FilmFormat;
  readonly sound: boolean;
  readonly background: SceneBackground;
  readonly page: Palette;
  /** Only so many seconds of it; all when left out. */
  readonly seconds?: number;
}

export type FilmNews =
  | { readonly progress: number; readonly left_s?: number }
  | { readonly file: ArrayBuffer; readonly type: string; readonly silent: boolean }
  /** As the person reads it. */
  | { readonly error: string };

export interface Film {
  readonly file: Blob;
  /** Sound was wanted and could not be had. */
  readonly silent: boolean;
}

export interface Filming {
  /** Settles with the film, or undefined when it was cancelled. @throws ShownError */
  readonly done: Promise<Film | undefined>;
  cancel(): void;
}

/** Render a film off-line, frame by frame, in a worker. */
export function startFilm(order: FilmOrder, onProgress: (share: number, left_s?: number) => void): Filming {
  const worker = new Worker(new URL('./film.worker.ts', import.meta.url), { type: 'module', name: 'film' });
  let settle: (film: Film | undefined) => void;
  let fail: (error: Error) => void;
  const done = new Promise<Film | undefined>((resolve, reject) => {
    settle = resolve;
    fail = reject;
  });
  worker.onmessage = ({ data }: MessageEvent<FilmNews>) => {
    if ('progress' in data) {
      onProgress(data.progress, data.left_s);
      return;
    }
    worker.terminate();
    if ('error' in data) fail(new ShownError(data.error));
    else settle({ file: new Blob([data.file], { type: data.type }), silent: data.silent });
  };
  worker.onerror = () => {
    worker.terminate();
    fail(new ShownError(explainTexts.exporting.problems.film));
  };
  worker.postMessage(order);
  return {
    done,
    cancel() {
      worker.terminate();
      settle(undefined);
    },
  };
}

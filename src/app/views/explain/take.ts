import {
  audible,
  Columns,
  captionsOf,
  csvOf,
  drawingOf,
  filled,
  filmPlan,
  loudnessShare,
  PICTURES,
  type PictureFacts,
  type PointId,
  type Preparer,
  paintStage,
  type StoryScene,
  scenePen,
  slowedSound,
  type View,
  wavOf,
} from '../../../outputs/explain/index.ts';
import { type Palette, sceneToSvg } from '../../../outputs/scene/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import { faceReady } from '../../style/face.ts';
import { type Context, canvasPen } from './canvas-pen.ts';
import { ShownError } from './scene-problem.ts';

/** The view as it stands, to be drawn. */
interface Moment {
  readonly scene: StoryScene;
  readonly view: View;
  /** Of the moving picture, s. */
  readonly seconds: number;
  readonly palette: Palette;
  readonly paper: boolean;
  readonly width: number;
  readonly height: number;
}

export type TakeOrder =
  | ({ readonly kind: 'picture' | 'drawing' } & Moment)
  | { readonly kind: 'numbers'; readonly scene: StoryScene; readonly view: View }
  | { readonly kind: 'captions'; readonly scenes: readonly StoryScene[] }
  | ({ readonly kind: 'sound' | 'samples' } & Sounding);

interface Sounding {
  readonly scene: StoryScene;
  readonly point: PointId;
  readonly seconds: number;
  readonly rate: number;
  readonly loudest?: number;
  /** Sound slowed to this view; left out: in real time. */
  readonly slowed?: View;
}

export type Taken = Blob | Float32Array;

/** Anything to take away but a film. @throws ShownError */
export async function take(prepare: Preparer, order: TakeOrder): Promise<Taken> {
  switch (order.kind) {
    case 'picture': {
      const { width, height, palette } = order;
      await faceReady();
      const canvas = new OffscreenCanvas(width, height);
      const ctx = canvas.getContext('2d');
      if (!ctx) throw new ShownError(explainTexts.exporting.problems.picture);
      if (order.paper) {
        ctx.fillStyle = palette.paper;
        ctx.fillRect(0, 0, width, height);
      }
      paint(canvasPenOn(ctx, palette), prepare, order);
      return canvas.convertToBlob({ type: 'image/png' });
    }
    case 'drawing': {
      const { scene, width, height, palette, paper } = order;
      const { pen, items } = scenePen();
      const { figures } = paint(pen, prepare, order);
      const words = { title: filled(scene.title, figures), description: filled(scene.caption, figures) };
      const drawing = { unit: 'px', width, height, ...words, items: items() } as const;
      return new Blob([sceneToSvg(drawing, { colours: palette, size: 'true', paper })], { type: 'image/svg+xml' });
    }
    case 'numbers':
      return new Blob([csvOf(prepare(order.scene).rows, order.view)], { type: 'text/csv' });
    case 'captions': {
      const parts = filmPlan(order.scenes, (s) => prepare(s).facts);
      return new Blob([captionsOf(parts, (s) => prepare(s).figures)], { type: 'text/vtt' });
    }
    case 'samples':
      return samplesOf(prepare, order);
    case 'sound':
      return new Blob([wavOf(samplesOf(prepare, order), order.rate) as BlobPart], { type: 'audio/wav' });
  }
}

const canvasPenOn = (ctx: Context, palette: Palette) => canvasPen(ctx, () => palette);

function paint(pen: ReturnType<typeof canvasPenOn>, prepare: Preparer, order: Moment) {
  const { scene, view, width, height } = order;
  const prepared = prepare(scene);
  const seconds = momentOf(order, prepared.facts);
  paintStage(pen, drawingOf({ scene, prepared, presented: true }, view, seconds, width, height, 1), new Columns());
  return prepared;
}

function momentOf({ scene, seconds }: Moment, facts: PictureFacts): number {
  const picture = scene.picture && PICTURES[scene.picture];
  return picture?.captioned ? picture.still(facts) : seconds;
}

function samplesOf(prepare: Preparer, { scene, point, seconds, rate, loudest = 0.5, slowed }: Sounding): Float32Array {
  const prepared = prepare(scene);
  const most = loudest * loudnessShare(prepared, scene, point);
  return slowed
    ? slowedSound(prepared.waves, point, slowed, seconds, rate, most)
    : audible(prepared.waves, point, seconds, rate, most);
}

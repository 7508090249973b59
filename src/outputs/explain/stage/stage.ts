import { textWidth, wrap } from '../../scene/text-width.ts';
import type { View } from '../model/view.ts';
import { PICTURES, type PictureFacts, type PictureId } from '../pictures/index.ts';
import type { Pen } from './pen.ts';
import type { Columns } from './pixel-columns.ts';
import type { WaveRow } from './wave-row.ts';
import { paintPlayhead, paintWaves, plotOf, type Show, type TracesArea } from './wave-window.ts';

/** Everything that is on the stage at one moment; the page, a picture file and a film draw the same. */
export interface StageContents {
  readonly width: number;
  readonly height: number;
  readonly rows: readonly WaveRow[];
  readonly view: View;
  readonly show: Show;
  readonly picture?: { readonly id: PictureId; readonly facts: PictureFacts; readonly seconds: number };
  /** The moment that is heard now. */
  readonly playhead?: number;
  /** How the sound runs, where that is not as in the set. */
  readonly soundNote?: string;
  readonly title?: string;
  readonly caption?: string;
  /** Of the scales' letters, px; title and caption are larger. */
  readonly letters: number;
  readonly density: number;
}

interface Parts {
  readonly head: number;
  readonly foot: number;
  readonly captionLines: readonly string[];
  readonly captionSize: number;
  readonly pictureHeight: number;
}

function partsOf({ width, height, rows, picture, title, caption, letters }: StageContents): Parts {
  const captionSize = letters * 1.5;
  const captionLines = caption ? wrap(caption, captionSize, width - 3 * letters) : [];
  const head = title ? letters * 2.9 : 0;
  const foot = captionLines.length > 0 ? (captionLines.length * 1.35 + 0.7) * captionSize : 0;
  const between = height - head - foot;
  return {
    head,
    foot,
    captionLines,
    captionSize,
    pictureHeight: picture ? (rows.length > 0 ? between * 0.5 : between) : 0,
  };
}

/** Where the traces lie across the stage, for a pointer. */
export const stagePlot = (stage: Pick<StageContents, 'width' | 'show' | 'letters'>): TracesArea =>
  plotOf({ x: 0, y: 0, height: 0, width: stage.width, show: stage.show, letters: stage.letters });

/** Where the rows are. */
function wavesBox(stage: StageContents): { readonly x: number; readonly y: number; readonly height: number } {
  const { head, foot, pictureHeight } = partsOf(stage);
  const y = head + pictureHeight;
  return { x: 0, y, height: stage.height - foot - y };
}

/** Draw the mark of what is heard over a stage drawn without it. */
export function paintStagePlayhead(pen: Pen, stage: StageContents): void {
  if (stage.rows.length > 0) paintPlayhead(pen, { ...stage, ...wavesBox(stage) });
}

/** Draw the stage. The paper is the caller's to paint, or not. */
export function paintStage(pen: Pen, stage: StageContents, columns: Columns): void {
  const { width, height, rows, picture, title, letters } = stage;
  const { head, foot, captionLines, captionSize, pictureHeight } = partsOf(stage);
  if (title) {
    pen.text(1.5 * letters, letters * 2.1, title, letters * 1.7, { bold: true });
    if (picture) speed(pen, stage, picture);
  } else if (picture) speed(pen, stage, picture);
  if (stage.soundNote && !picture) noteAbove(pen, stage, stage.soundNote);
  if (picture) {
    const margin = Math.min(letters * 1.5, width * 0.03);
    const top = head + (title ? 0 : letters * 1.6);
    const box = { x: margin, y: top, w: width - 2 * margin, h: head + pictureHeight - top - letters * 0.5 };
    // A wide stage would stretch the picture out of shape.
    const most = box.h * 2.4;
    const w = Math.min(box.w, most);
    PICTURES[picture.id].paint(
      pen,
      picture.facts,
      picture.seconds,
      { ...box, x: box.x + (box.w - w) / 2, w },
      letters * 1.05,
    );
  }
  if (rows.length > 0) paintWaves(pen, { ...stage, ...wavesBox(stage) }, columns);
  captionLines.forEach((words, i) => {
    pen.text(width / 2, height - foot + captionSize * (1.25 + 1.35 * i), words, captionSize, { anchor: 'middle' });
  });
}

const speed = (pen: Pen, stage: StageContents, { id, facts }: NonNullable<StageContents['picture']>): void =>
  noteAbove(pen, stage, PICTURES[id].speed(facts));

/** At the right above the picture, where there is room. */
function noteAbove(pen: Pen, { width, letters, title }: StageContents, words: string): void {
  const room = width - 4 * letters - (title ? textWidth(title, letters * 1.7, true) : 0);
  if (textWidth(words, letters) > room) return;
  pen.text(width - 1.5 * letters, letters * (title ? 2.1 : 1.3), words, letters, { role: 'soft', anchor: 'end' });
}

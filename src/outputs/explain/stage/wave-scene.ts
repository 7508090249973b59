import { formatQuantity } from '../../../engine/units/format.ts';
import type { Scene } from '../../scene/scene.ts';
import { wrap } from '../../scene/text-width.ts';
import { warningSentences } from '../../words/index.ts';
import { BEFORE_DETECTOR, POINT_WORDS, type PointId } from '../model/points.ts';
import { GRID } from '../model/programme.ts';
import { tidyTime } from '../model/view.ts';
import type { Waves } from '../model/waves.ts';
import { scenePen } from './scene-pen.ts';
import type { WaveRow } from './wave-row.ts';
import { Columns, coveredMean, paintWaves, type Show, type WaveWindow } from './wave-window.ts';

export interface WavePicture extends Omit<WaveWindow, 'x' | 'y' | 'width' | 'height'> {
  readonly width: number;
  readonly height: number;
  readonly title?: string;
  /** Below the traces, broken into lines. */
  readonly caption?: string;
}

/** The wave window as a scene, for SVG and print. */
export function waveScene(picture: WavePicture): Scene {
  const { width, height, rows, view, caption, letters = 12 } = picture;
  const { pen, items } = scenePen();
  const lines = caption ? wrap(caption, letters * 1.15, width - 2 * letters) : [];
  const below = lines.length * letters * 1.6 + (lines.length > 0 ? letters : 0);
  paintWaves(pen, { ...picture, x: 0, y: 0, width, height: height - below }, new Columns());
  lines.forEach((words, i) => {
    pen.text(letters, height - below + letters * 1.6 * (i + 1), words, letters * 1.15, {});
  });
  const seen = rows.map((r) => (r.title ?? POINT_WORDS[r.point].title).toLowerCase()).join(', ');
  return {
    unit: 'px',
    width,
    height,
    title: picture.title ?? `Waves over ${tidyTime(view.span, 2)}`,
    description: `${seen}; ${tidyTime(view.span, 2)} from side to side. ${rows.map((r) => shownWords(r, picture.show)).join(' ')}${caption ? ` ${caption}` : ''}`,
    items: items(),
    warnings: [...new Set(warningSentences(rows.flatMap((r) => r.waves.warnings)))],
  };
}

/** What a trace shows by itself, for who cannot see it. */
export const rowWords = (row: WaveRow): string => shownWords(row, {});

/** The same with what is drawn over it. */
export function shownWords({ waves, point, title }: WaveRow, show: Show): string {
  const { low, high } = waves.scale(point);
  const { carrier, depth } = waves.spec;
  const name = title ?? POINT_WORDS[point].title;
  const volts = (v: number) => formatQuantity(v, 'voltage', 2);
  const average = () =>
    show.cover && BEFORE_DETECTOR.includes(point) ? coveredWords(waves, point) : 'on average nothing';
  switch (point) {
    case 'programme':
      return `${name}: up to ${formatQuantity(depth, 'ratio', 2)} of the carrier.`;
    case 'carrier':
      return `${name}: ${formatQuantity(carrier, 'frequency', 4)}, ${volts(waves.spec.atAerial)} either way, ${average()}.`;
    case 'modulated':
    case 'tuned':
      return `${name}: ${formatQuantity(carrier, 'frequency', 4)}, up to ${volts(high)} either way, ${average()}.`;
    default:
      return `${name}: from ${volts(low)} to ${volts(high)}, on average ${volts(waves.meanAt(point, 0))} at a crest of the programme.`;
  }
}

/** What has become of the average once the lower half is covered. */
function coveredWords(waves: Waves, point: PointId): string {
  const columns = new Columns();
  columns.room(1);
  coveredMean(waves, point, 0, 1 / GRID, 1, columns);
  const [low, high] = [columns.min[0], columns.max[0]].map((v) => formatQuantity(v, 'voltage', 2));
  return low === high
    ? `with the lower half covered no longer nothing on average but a steady ${high}`
    : `with the lower half covered the average has come alive: it swings between ${low} and ${high}, as the programme does`;
}

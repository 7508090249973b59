import { formatQuantity } from '../../engine/units/format.ts';
import type { Scene } from '../scene/scene.ts';
import { wrap } from '../scene/text-width.ts';
import { POINT_WORDS } from './points.ts';
import { scenePen } from './scene-pen.ts';
import { tidyTime } from './view.ts';
import { Columns, paintWaves, type WaveWindow } from './wave-window.ts';

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
    description: `${seen}; ${tidyTime(view.span, 2)} from side to side. ${rows.map(rowWords).join(' ')}${caption ? ` ${caption}` : ''}`,
    items: items(),
    warnings: [...new Set(rows.flatMap((r) => r.waves.warnings))],
  };
}

/** What a trace shows, for who cannot see it. */
export function rowWords({ waves, point, title }: WavePicture['rows'][number]): string {
  const { low, high } = waves.scale(point);
  const { carrier, depth } = waves.spec;
  const name = title ?? POINT_WORDS[point].title;
  const volts = (v: number) => formatQuantity(v, 'voltage', 2);
  switch (point) {
    case 'programme':
      return `${name}: up to ${formatQuantity(depth, 'ratio', 2)} of the carrier.`;
    case 'carrier':
      return `${name}: ${formatQuantity(carrier, 'frequency', 4)}, ${volts(waves.spec.atAerial)} either way, on average nothing.`;
    case 'modulated':
    case 'tuned':
      return `${name}: ${formatQuantity(carrier, 'frequency', 4)}, up to ${volts(high)} either way, on average nothing.`;
    default:
      return `${name}: from ${volts(low)} to ${volts(high)}, on average ${volts(waves.meanAt(point, 0))} at a crest of the programme.`;
  }
}

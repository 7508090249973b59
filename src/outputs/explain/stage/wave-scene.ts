import type { Scene } from '../../scene/scene.ts';
import { wrap } from '../../scene/text-width.ts';
import { type WaveRowFacts, warningSentences, waveTexts } from '../../words/index.ts';
import { BEFORE_DETECTOR, type PointId } from '../model/points.ts';
import { GRID } from '../model/wave-programme.ts';
import type { Waves } from '../model/waves.ts';
import { Columns } from './pixel-columns.ts';
import { scenePen } from './scene-pen.ts';
import type { WaveRow } from './wave-row.ts';
import { coveredMean, paintWaves, type Show, type WaveWindow } from './wave-window.ts';

export interface WavePicture extends Omit<WaveWindow, 'x' | 'y' | 'width' | 'height'> {
  readonly width: number;
  readonly height: number;
  readonly title?: string;
  /** Below the traces, broken into lines. */
  readonly caption?: string;
  /** For a picture of pixels: so many to a px; left out: waves as lines. */
  readonly pixels?: number;
}

/** The wave window as a scene, for SVG and print. */
export function waveScene(picture: WavePicture): Scene {
  const { width, height, rows, view, caption, letters = 12, pixels } = picture;
  const { pen, items } = scenePen({ pixels: pixels !== undefined });
  const lines = caption ? wrap(caption, letters * 1.15, width - 2 * letters) : [];
  const below = lines.length * letters * 1.6 + (lines.length > 0 ? letters : 0);
  paintWaves(
    pen,
    { ...picture, x: 0, y: 0, width, height: height - below, density: pixels ?? picture.density },
    new Columns(),
  );
  lines.forEach((words, i) => {
    pen.text(letters, height - below + letters * 1.6 * (i + 1), words, letters * 1.15, {});
  });
  const facts = rows.map((row) => rowFacts(row, picture.show));
  return {
    unit: 'px',
    width,
    height,
    title: picture.title ?? waveTexts.title(view.span),
    description: waveTexts.description(facts, view.span, caption),
    items: items(),
    warnings: [...new Set(warningSentences(rows.flatMap((r) => r.waves.warnings)))],
  };
}

/** What a trace shows by itself, for who cannot see it. */
export const rowWords = (row: WaveRow): string => shownWords(row, {});

/** The same with what is drawn over it. */
export const shownWords = (row: WaveRow, show: Show): string => waveTexts.row(rowFacts(row, show));

function rowFacts({ waves, point, title }: WaveRow, show: Show): WaveRowFacts {
  const { low, high } = waves.scale(point);
  const { carrier, depth, atAerial } = waves.spec;
  const isOutput = point === 'detector' || point === 'phones';
  return {
    point,
    title,
    carrier,
    depth,
    aerialVoltage: atAerial,
    low,
    high,
    meanAtCrest: isOutput ? waves.meanAt(point, 0) : undefined,
    covered: show.cover && BEFORE_DETECTOR.includes(point) ? coveredExtremes(waves, point) : undefined,
  };
}

/** Between what the average swings once the lower half is covered. */
function coveredExtremes(waves: Waves, point: PointId): readonly [low: number, high: number] {
  const min = new Float64Array(1);
  const max = new Float64Array(1);
  coveredMean(waves, point, 0, 1 / GRID, 1, min, max);
  return [min[0], max[0]];
}

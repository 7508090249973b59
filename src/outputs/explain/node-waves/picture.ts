import type { Scene } from '../../scene/scene.ts';
import { shorten, textWidth } from '../../scene/text-width.ts';
import { nodeWaveTexts, warningSentences, wavePointText } from '../../words/index.ts';
import { drawnExtremes } from '../model/drawn-extremes.ts';
import { extremesInto } from '../model/range.ts';
import type { View } from '../model/view.ts';
import { paintTrace } from '../stage/paint-trace.ts';
import type { Pen } from '../stage/pen.ts';
import { Columns } from '../stage/pixel-columns.ts';
import { scenePen } from '../stage/scene-pen.ts';
import { paintTime } from '../stage/wave-window.ts';
import type { ShownWaves } from './shown-waves.ts';
import { traceOf } from './trace.ts';

/** Cycles of the carrier across the window at its closest. */
const CLOSEST = 1;

/** A view inside what was kept, from all of it to a single cycle. */
export function viewWithin(
  { from, span }: View,
  { duration, carrier }: Pick<ShownWaves, 'duration' | 'carrier'>,
): View {
  const s = Math.min(duration, Math.max(CLOSEST / carrier, span));
  return { span: s, from: Math.min(duration - s, Math.max(0, from)) };
}

/** `factor` times as long a stretch; the moment at `share` of the width stays where it is. */
export function closer({ from, span }: View, factor: number, share: number, waves: ShownWaves): View {
  const next = Math.min(waves.duration, Math.max(CLOSEST / waves.carrier, span * factor));
  return viewWithin({ from: from + share * (span - next), span: next }, waves);
}

export interface NodeWindow {
  readonly width: number;
  readonly height: number;
  /** Counted from the first sample kept. */
  readonly view: View;
  /** Default 12. */
  readonly letters?: number;
  /** Columns to a px; default 1. */
  readonly density?: number;
}

/** Every wave on an axis of its own, all on one axis of time. */
export function paintNodeWaves(pen: Pen, waves: ShownWaves, window: NodeWindow, columns: Columns): void {
  const { width, height, view, letters = 12, density = 1 } = window;
  const axis = 2.8 * letters;
  const each = (height - axis) / Math.max(1, waves.waves.length);
  paintTime(pen, { y: 0, height, view, letters }, { x: 0, width }, axis);
  waves.waves.forEach((wave, i) => {
    const box = { y: i * each, width, height: each };
    if (i > 0) pen.line(0, box.y, width, box.y, 'faint', 1);
    paintWave(
      pen,
      wave,
      box,
      { ...view, interval: waves.interval, carrier: waves.carrier },
      { letters, density },
      columns,
    );
    paintHeading(pen, wave, box, letters);
  });
}

interface Row {
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
type ShownWave = ShownWaves['waves'][number];

/** One wave over the stretch shown. */
function paintWave(
  pen: Pen,
  { kept, measure }: ShownWave,
  { y, width, height }: Row,
  { from, span, interval, carrier }: View & Pick<ShownWaves, 'interval' | 'carrier'>,
  { letters, density }: { readonly letters: number; readonly density: number },
  columns: Columns,
): void {
  const low = Math.min(0, kept.least);
  const high = Math.max(0, kept.greatest, low + 1e-15);
  const up = y + 1.9 * letters;
  const down = y + height - 0.5 * letters;
  const k = (down - up) / (high - low);
  const zero = down + low * k;
  const trace = traceOf(kept, interval);
  const cycle = 1 / carrier;
  const source = {
    at: (t: number) => trace.at(t),
    extremes: (t0: number, t1: number, parts: number, min: Float64Array, max: Float64Array) =>
      extremesInto(trace, t0, t1, parts, min, max),
    bars: (t0: number, t1: number, parts: number, min: Float64Array, max: Float64Array) =>
      drawnExtremes(trace, cycle, true, t0, t1, parts, min, max),
    cycles: [cycle],
  };
  const role = measure === 'current' ? 'accent' : 'copper';
  const place = { x: 0, y, width, height, zero, k, line: 0.14 * letters, density, role, opacity: 1 } as const;
  pen.clip(0, y, width, height);
  pen.line(0, zero, width, zero, 'faint', 1);
  paintTrace(pen, source, { from, span }, place, columns);
  pen.unclip();
}

/** Its name, and the range of its values. */
function paintHeading(pen: Pen, { point, measure, kept }: ShownWave, { y, width }: Row, letters: number): void {
  const size = nodeWaveTexts.range(measure, kept.least, kept.greatest);
  const sizeWide = textWidth(size, 0.92 * letters);
  const name = shorten(wavePointText(point), letters, width - sizeWide - 2.5 * letters);
  pen.text(0.6 * letters, y + 1.3 * letters, name, letters, { bold: true, rim: true });
  pen.text(width - 0.6 * letters, y + 1.3 * letters, size, 0.92 * letters, { role: 'soft', anchor: 'end', rim: true });
}

/**
 * The same as a scene, for SVG and print.
 * @param waves a run made ready
 * @param window stretch (s) and size (px)
 * @returns a scene, px
 */
export function nodeWaveScene(waves: ShownWaves, window: NodeWindow & { readonly title?: string }): Scene {
  const { pen, items } = scenePen();
  paintNodeWaves(pen, waves, window, new Columns());
  return {
    unit: 'px',
    width: window.width,
    height: window.height,
    title: window.title ?? nodeWaveTexts.title(waves.station),
    description: nodeWaveTexts.description(waves, window.view.from, window.view.span, waves.waves),
    items: items(),
    warnings: warningSentences(waves.warnings),
  };
}

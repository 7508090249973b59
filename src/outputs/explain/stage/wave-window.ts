import type { Role } from '../../scene/scene.ts';
import { textWidth } from '../../scene/text-width.ts';
import { pointTitles, waveTexts } from '../../words/index.ts';
import { BEFORE_DETECTOR, measureAt, type PointId } from '../model/points.ts';
import type { ScaleEnds } from '../model/range.ts';
import { timeScale, type View } from '../model/view.ts';
import type { Waves } from '../model/waves.ts';
import { paintTrace, type TraceSource } from './paint-trace.ts';
import type { Pen } from './pen.ts';
import type { Columns } from './pixel-columns.ts';
import { paintSpectrum } from './spectrum.ts';
import type { WaveRow } from './wave-row.ts';

/** What is drawn over the traces. */
export interface Show {
  readonly average?: boolean;
  /** Cover the lower half, as a one-way path would. */
  readonly cover?: boolean;
  readonly envelope?: boolean;
  readonly spectrum?: boolean;
  /** All rows to one scale, to be compared. */
  readonly alike?: boolean;
}

export interface WaveWindow {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly rows: readonly WaveRow[];
  readonly view: View;
  readonly show: Show;
  /** Of the letters, px; default 12. */
  readonly letters?: number;
  /** The moment that is heard now, s. */
  readonly playhead?: number;
  /** Columns to a px of width: the device's own; default 1. */
  readonly density?: number;
}

const TRACE: Readonly<Record<PointId, Role>> = {
  programme: 'accent',
  carrier: 'copper',
  modulated: 'copper',
  tuned: 'copper',
  detector: 'copper',
  phones: 'accent',
};
/** Widths of lines over the letters' size. */
const LINE = 0.135;
const AVERAGE_LINE = 0.21;
const EDGE_LINE = 0.13;

/** Of the scale of time below the traces, px. */
const axisHeight = (letters: number): number => 3 * letters;

/** Where the traces lie, for turning a pointer's place into a moment. */
export interface TracesArea {
  readonly x: number;
  readonly width: number;
}

export function plotOf({ x, width, show, letters = 12 }: Omit<WaveWindow, 'rows' | 'view'>): TracesArea {
  const share = width >= 55 * letters ? 0.3 : 0.42;
  const beside = show.spectrum && width >= 26 * letters ? Math.round(width * share) : 0;
  return { x, width: width - beside };
}

/** The stacked traces on one axis of time. */
export function paintWaves(pen: Pen, window: WaveWindow, columns: Columns): void {
  const { y, height, rows, view, show, letters = 12, density = 1 } = window;
  const plot = plotOf(window);
  const axis = axisHeight(letters);
  const heightOf = ({ height: own = 1 }: WaveRow): number => own;
  const unit = (height - axis) / rows.reduce((sum, row) => sum + heightOf(row), 0);
  let top = y;
  paintTime(pen, window, plot, axis);
  const common = show.alike ? widest(rows) : undefined;
  rows.forEach((row, i) => {
    const box: Box = { x: plot.x, y: top, w: plot.width, h: unit * heightOf(row) };
    top += box.h;
    const scale = common ?? row.waves.scale(row.point);
    paintRow({ pen, row, scale, box, view, show, letters, density, columns });
    if (i > 0) pen.line(window.x, box.y, window.x + window.width, box.y, 'faint', 1);
    if (plot.width < window.width)
      paintSpectrum(pen, row, { ...box, x: plot.x + plot.width, w: window.width - plot.width }, letters);
  });
  paintPlayhead(pen, window);
}

/** The moment that is heard, over the traces. */
export function paintPlayhead(pen: Pen, window: Omit<WaveWindow, 'rows'>): void {
  const { y, height, view, letters = 12 } = window;
  if (window.playhead === undefined) return;
  const share = (window.playhead - view.from) / view.span;
  if (!(share >= 0 && share <= 1)) return;
  const plot = plotOf(window);
  const at = plot.x + share * plot.width;
  pen.line(at, y, at, y + height - axisHeight(letters), 'ink', letters * 0.16);
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

const widest = (rows: readonly WaveRow[]): ScaleEnds =>
  rows
    .map((row) => row.waves.scale(row.point))
    .reduce((a, b) => ({ low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) }));

/** A row while it is drawn: its box, scale and columns. */
interface RowPainting {
  readonly pen: Pen;
  readonly row: WaveRow;
  readonly scale: ScaleEnds;
  readonly box: Box;
  readonly view: View;
  readonly show: Show;
  readonly letters: number;
  readonly density: number;
  readonly columns: Columns;
}

/** Heights in a row: where the trace may go, and where zero lies. */
function heightsOf({ box, scale, letters }: RowPainting) {
  const up = box.y + letters * 1.7;
  const down = box.y + box.h - Math.min(6, box.h * 0.05);
  const k = (down - up) / (scale.high - scale.low || 1);
  return { up, down, k, zero: down + scale.low * k, symmetric: scale.low < -0.5 * scale.high };
}
type Heights = ReturnType<typeof heightsOf>;

function paintRow(painting: RowPainting): void {
  const { pen, row, box, show, letters } = painting;
  const { waves, point } = row;
  const heights = heightsOf(painting);
  const { up, down, zero, symmetric } = heights;
  const covers = show.cover === true && BEFORE_DETECTOR.includes(point);
  // A programme is its own average.
  const averages = show.average === true && point !== 'programme';
  pen.clip(box.x, box.y, box.w, box.h);
  pen.line(box.x, zero, box.x + box.w, zero, 'faint', 1);
  const wave: TraceSource = {
    at: (t) => waves.at(point, t),
    extremes: (t0, t1, parts, min, max) => waves.extent(point, t0, t1, parts, min, max),
    bars: (t0, t1, parts, min, max) => waves.drawn(point, t0, t1, parts, min, max),
    cycles: waves.cycles(point),
  };
  paintLine(painting, heights, wave, TRACE[point], LINE * letters, averages ? 0.62 : 1);
  if (covers) {
    pen.rect(box.x, zero + 1, box.w, box.y + box.h - zero, 'paper', 0.9);
    pen.text(box.x + box.w / 2, (zero + down) / 2 + letters * 0.35, waveTexts.covered, letters, {
      role: 'soft',
      anchor: 'middle',
    });
  }
  if (show.envelope) paintEnvelope(painting, heights);
  if (averages) paintAverage(painting, heights, covers);
  pen.unclip();
  const roomy = box.h > 6 * letters;
  if (roomy && !(symmetric && point !== 'programme') && zero > up + letters && zero < down + 1)
    paintZero(painting, heights, wave);
  paintHeading(painting, symmetric, averages);
}

/** One line of a row. */
function paintLine(
  { pen, box, view, density, columns }: RowPainting,
  { zero, k }: Heights,
  source: TraceSource,
  role: Role,
  line: number,
  opacity: number,
): void {
  const place = { x: box.x, y: box.y, width: box.w, height: box.h, zero, k, line, density, role, opacity };
  paintTrace(pen, source, view, place, columns);
}

/** The upper envelope, and its mirror image where the wave swings both ways alike. */
function paintEnvelope(painting: RowPainting, heights: Heights): void {
  const { row, show, letters } = painting;
  const { waves, point } = row;
  if (!waves.hasEnvelope(point)) return;
  const cycles = waves.cycles('programme');
  const upper: TraceSource = {
    extremes: (t0, t1, parts, min, max) => waves.envelope(point, t0, t1, parts, min, max),
    cycles,
  };
  paintLine(painting, heights, upper, 'ink', EDGE_LINE * letters, 0.85);
  if (!heights.symmetric || show.cover) return;
  const lower: TraceSource = {
    extremes: (t0, t1, parts, min, max) => {
      waves.envelope(point, t0, t1, parts, max, min);
      for (let i = 0; i < parts; i++) {
        min[i] = -min[i];
        max[i] = -max[i];
      }
    },
    cycles,
  };
  paintLine(painting, heights, lower, 'ink', EDGE_LINE * letters, 0.85);
}

/** The running average. */
function paintAverage(painting: RowPainting, heights: Heights, covers: boolean): void {
  const { row, letters } = painting;
  const { waves, point } = row;
  const extremes: TraceSource['extremes'] = covers
    ? (t0, t1, parts, min, max) => coveredMean(waves, point, t0, t1, parts, min, max)
    : (t0, t1, parts, min, max) => waves.mean(point, t0, t1, parts, min, max);
  paintLine(painting, heights, { extremes, cycles: waves.cycles('programme') }, 'ink', AVERAGE_LINE * letters, 1);
}

/** Columns that are looked at where the name of zero may go. */
const ZERO_COLUMNS = 8;

/** The name of zero at the left end of its line, above it or below it, where the trace leaves room. */
function paintZero({ pen, view, box, letters }: RowPainting, { zero, k, down }: Heights, wave: TraceSource): void {
  const size = letters * 0.92;
  const x = box.x + 0.35 * letters;
  const share = (0.7 * letters + textWidth('0', size)) / box.w;
  const min = new Float64Array(ZERO_COLUMNS);
  const max = new Float64Array(ZERO_COLUMNS);
  wave.extremes(view.from, view.from + share * view.span, ZERO_COLUMNS, min, max);
  const [top, bottom] = [zero - k * Math.max(...max), zero - k * Math.min(...min)];
  const isClear = (base: number): boolean => base - size > bottom + LINE * letters || base < top - LINE * letters;
  const base = [zero - letters * 0.3, zero + letters * 1.1].find((at) => at < down && isClear(at));
  if (base !== undefined) pen.text(x, base, '0', size, { role: 'soft', rim: true });
}

/** The name of a row, what its dark line is, and its size in real units where there is room. */
function paintHeading({ pen, row, box, letters }: RowPainting, symmetric: boolean, averages: boolean): void {
  const { waves, point, title } = row;
  const words = title ?? pointTitles[point];
  const base = box.y + letters * 1.25;
  const small = letters * 0.92;
  const left = box.x + 0.6 * letters;
  pen.text(left, base, words, letters, { bold: true, rim: true });
  const own = point === 'carrier' ? { low: -waves.spec.atAerial, high: waves.spec.atAerial } : waves.scale(point);
  const size = sizeText(point, own.low, own.high, symmetric);
  let end = left + textWidth(words, letters, true);
  const right = box.x + box.w - 0.6 * letters;
  const sample = end + 1.2 * letters;
  const name = sample + 2.2 * letters;
  const nameEnd = name + textWidth(waveTexts.average, small);
  if (averages && nameEnd < right) {
    pen.line(
      sample,
      base - 0.33 * letters,
      sample + 1.6 * letters,
      base - 0.33 * letters,
      'ink',
      AVERAGE_LINE * letters,
    );
    pen.text(name, base, waveTexts.average, small, { role: 'soft', rim: true });
    end = nameEnd;
  }
  if (right - end - 0.6 * letters > textWidth(size, small))
    pen.text(right, base, size, small, { role: 'soft', anchor: 'end', rim: true });
}

/** Mean of the upper half alone: what a perfect one-way path would leave of a fast wave, its envelope over π. */
export function coveredMean(
  waves: Waves,
  point: PointId,
  from: number,
  to: number,
  count: number,
  min: Float64Array,
  max: Float64Array,
): void {
  waves.envelope(point, from, to, count, min, max);
  for (let i = 0; i < count; i++) {
    min[i] /= Math.PI;
    max[i] /= Math.PI;
  }
}

/** What the height of a trace is in real units. */
function sizeText(point: PointId, low: number, high: number, symmetric: boolean): string {
  if (measureAt(point) === 'ratio') return waveTexts.eitherWayShare(high);
  if (symmetric) return waveTexts.eitherWay(high);
  return low < -0.03 * high ? waveTexts.range(low, high) : waveTexts.fromZero(high);
}

/** The axis of time below the traces. */
export function paintTime(
  pen: Pen,
  window: Pick<WaveWindow, 'y' | 'height' | 'view' | 'letters'>,
  plot: TracesArea,
  axis: number,
): void {
  const { y, height, view, letters = 12 } = window;
  const room = plot.width / (letters * 7);
  const { ticks, base } = timeScale(view, Math.max(2, Math.min(8, Math.floor(room))));
  const floor = y + height - axis;
  pen.line(plot.x, floor, plot.x + plot.width, floor, 'soft', 1);
  for (const { share, label } of ticks) {
    const x = plot.x + share * plot.width;
    if (x < plot.x - 0.5 || x > plot.x + plot.width + 0.5) continue;
    pen.line(x, y, x, floor, 'faint', 1, 0.6);
    pen.line(x, floor, x, floor + 4, 'soft', 1);
    const wide = textWidth(label, letters * 0.92) / 2;
    if (x - wide < plot.x || x + wide > plot.x + plot.width) continue;
    pen.text(x, floor + letters * 1.4, label, letters * 0.92, { role: 'soft', anchor: 'middle' });
  }
  const words = base === undefined ? waveTexts.across(view.span) : waveTexts.acrossFrom(view.span, base);
  pen.text(plot.x + plot.width / 2, floor + letters * 2.5, words, letters * 0.92, { role: 'soft', anchor: 'middle' });
}

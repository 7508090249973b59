import { scaleLinear } from 'd3-scale';
import type { FitAxis, FitPlot } from '../../engine/measure/fit-plot.ts';
import { formatNumber } from '../../engine/units/format.ts';
import { circle, line, polyline, text } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { fitPlotWords, readingFieldName } from '../words/index.ts';
import { axisUnitOf, tickText } from './axis-unit.ts';
import { minus } from './figures.ts';
import { type AxisScale, frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

/** Readings of a measurement as `fitPlotOf` gives them. */
interface ReadingsFit {
  /** Id of the kind of measurement, and what it is called. */
  readonly kind: string;
  readonly name: string;
  readonly plot: FitPlot;
}

const STRIP = 64;

/** The readings' own axis, and how far it reaches. */
function axisOf(kind: string, { key, quantity }: FitAxis, values: readonly number[]) {
  const largest = Math.max(...values.map(Math.abs));
  const [unit, factor] = axisUnitOf(largest, quantity);
  const name = readingFieldName(kind, `[].${key}`) ?? key;
  return { name, unit, factor };
}

/**
 * Readings with the curve fitted through them, and below it what is left of each.
 * @param data readings, curve and residuals, SI
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function readingsFit({ kind, name, plot }: ReadingsFit, size: PlotSize = {}): Scene {
  const { points, curve, residuals, band, readOff } = plot;
  const hasFit = residuals.length > 0;
  const frame = frameOf(size, { left: 56, top: 30, bottom: hasFit ? 40 + STRIP + 30 : 40 }, 0.72);
  const { box } = frame;
  const all = [...points, ...curve, ...(readOff ? [readOff] : [])];
  const ends = points.flatMap(({ y, reach = 0 }) => [y - reach, y + reach]);
  const [xs, ys] = [all.map((p) => p.x), [...all.map((p) => p.y), ...ends, ...(band ?? [])].filter(Number.isFinite)];
  const [ax, ay] = [axisOf(kind, plot.x, xs), axisOf(kind, plot.y, ys)];
  const x: AxisScale = padded(
    xs.map((v) => v * ax.factor),
    [box.x, box.x + box.w],
  );
  const y: AxisScale = padded(
    ys.map((v) => v * ay.factor),
    [box.y + box.h, box.y],
  );
  const at = (p: { readonly x: number; readonly y: number }) => [x(p.x * ax.factor), y(p.y * ay.factor)] as const;
  const items: Item[] = [
    ...yAxis(frame, y, { name: ay.name, unit: ay.unit, format: tickText }),
    ...(hasFit
      ? [line([box.x, box.y + box.h], [box.x + box.w, box.y + box.h], { stroke: 'soft' })]
      : xAxis(frame, x, {
          name: ax.name,
          unit: ax.unit,
          format: tickText,
          grid: false,
          ticks: counted(plot.x, points),
        })),
  ];
  for (const end of band ?? [])
    if (Number.isFinite(end))
      items.push(
        polyline(
          [curve[0], curve[curve.length - 1]].map((p) => at({ x: p.x, y: end })),
          { stroke: 'copper', width: 1, dash: [5, 4] },
        ),
      );
  if (curve.length > 0) items.push(polyline(curve.map(at), { stroke: 'copper', width: 2 }));
  const isMany = points.length > 60;
  for (const { x: px, y: py, reach } of points)
    if (reach !== undefined)
      items.push(line(at({ x: px, y: py - reach }), at({ x: px, y: py + reach }), { stroke: 'accent', width: 1.5 }));
  for (const point of points)
    items.push(
      circle(at(point), isMany ? 1.8 : 4, {
        stroke: point.isSuspect ? 'warning' : 'accent',
        fill: point.isSuspect ? 'paper' : 'accent',
        width: 1.5,
      }),
    );
  if (readOff) items.push(...readOffItems(readOff, at, box.x + box.w / 2));
  for (const point of points.filter((p) => p.isSuspect)) {
    const [px, py] = at(point);
    const isRight = px > box.x + box.w / 2;
    items.push(
      text([px + (isRight ? -8 : 8), py], fitPlotWords.suspect, PLOT_LETTERS, {
        role: 'warning',
        sits: 'middle',
        anchor: isRight ? 'end' : 'start',
        rim: true,
      }),
    );
  }
  if (hasFit) items.push(...strip(frame, x, ax, ay, plot));
  const kept = residuals.filter((_, i) => !points[i].isSuspect).map(Math.abs);
  return plotScene(
    frame,
    fitPlotWords.title(name),
    fitPlotWords.text(
      {
        count: points.length,
        suspects: points.filter((p) => p.isSuspect).length,
        largest: Math.max(...kept),
        isReadOff: readOff !== undefined,
      },
      plot.y.quantity,
    ),
    items,
  );
}

/** The place on the curve that is read off, and how far it may be to either side. */
function readOffItems(
  { x, y, reach }: NonNullable<FitPlot['readOff']>,
  at: (p: { readonly x: number; readonly y: number }) => Point,
  middle: number,
): Item[] {
  const [px, py] = at({ x, y });
  const isRight = px > middle;
  return [
    line(at({ x: x - reach, y }), at({ x: x + reach, y }), { stroke: 'ink', width: 2 }),
    circle([px, py], 5, { stroke: 'ink', fill: 'paper', width: 2 }),
    text([px + (isRight ? -9 : 9), py + (isRight ? -10 : 12)], fitPlotWords.readOff, PLOT_LETTERS, {
      sits: 'middle',
      anchor: isRight ? 'end' : 'start',
      rim: true,
    }),
  ];
}

/** Where readings are numbered, each has its tick. */
const counted = ({ isCount }: FitAxis, points: FitPlot['points']): readonly number[] | undefined =>
  isCount && points.map(({ x }) => x);

/** A linear scale with some room on both sides. */
function padded(values: readonly number[], range: [number, number]): AxisScale {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const more = 0.06 * (high - low) || Math.abs(high) * 0.1 || 1;
  return scaleLinear([low - more, high + more], range);
}

type Axis = ReturnType<typeof axisOf>;

/** What is left of each reading, about a line at nothing. */
function strip(frame: ReturnType<typeof frameOf>, x: AxisScale, ax: Axis, ay: Axis, plot: FitPlot): Item[] {
  const { points, residuals } = plot;
  const { box } = frame;
  const low = { ...frame, box: { ...box, y: box.y + box.h + 30, h: STRIP } };
  // A misread one would press all others to the line: it goes to the edge.
  const kept = residuals.filter((_, i) => !points[i].isSuspect).map((r) => Math.abs(r * ay.factor));
  const most = Math.max(...kept, 1e-12 * Math.max(...points.map((p) => Math.abs(p.y * ay.factor)))) * 1.2;
  const y = scaleLinear([-most, most], [low.box.y + low.box.h, low.box.y]);
  const [zero, ends] = [y(0), [-most / 1.2, 0, most / 1.2]];
  return [
    ...yAxis(low, y, {
      name: fitPlotWords.residuals,
      unit: ay.unit,
      format: (v) => minus(formatNumber(v, 2)),
      ticks: ends,
      grid: false,
    }),
    ...xAxis(low, x, { name: ax.name, unit: ax.unit, format: tickText, grid: false, ticks: counted(plot.x, points) }),
    line([box.x, zero], [box.x + box.w, zero], { stroke: 'soft' }),
    ...points.flatMap((point, i): Item[] => {
      const px = x(point.x * ax.factor);
      const py = y(Math.max(-most, Math.min(most, residuals[i] * ay.factor)));
      const role = point.isSuspect ? 'warning' : 'accent';
      const left = residuals[i] * ay.factor;
      const isRight = px > box.x + box.w / 2;
      // At the edge it says how far it is off.
      const beyond =
        Math.abs(left) > most
          ? [
              text(
                [px + (isRight ? -8 : 8), py],
                fitPlotWords.beyond(minus(formatNumber(left, 2)), ay.unit),
                PLOT_LETTERS,
                {
                  role: 'warning',
                  sits: 'middle',
                  anchor: isRight ? 'end' : 'start',
                  rim: true,
                },
              ),
            ]
          : [];
      return [
        ...beyond,
        line([px, zero], [px, py], { stroke: role, width: 1.2 }),
        circle([px, py], points.length > 60 ? 1.5 : 3, {
          stroke: role,
          fill: point.isSuspect ? 'paper' : role,
          width: 1.2,
        }),
      ];
    }),
  ];
}

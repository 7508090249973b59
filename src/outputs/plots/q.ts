import { scaleLinear, scaleLog } from 'd3-scale';
import { circle, line, polyline } from '../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { axisKHz } from '../words/figures.ts';
import { axisNames, paragraph, qWords } from '../words/index.ts';
import { decadeTicks } from './band.ts';
import { type AxisScale, frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface QPoint {
  readonly frequency: number;
  readonly q: number;
  readonly low?: number;
  readonly high?: number;
}

export interface QCurves {
  /** One or several coils (or the same coil wound otherwise); each with its band of uncertainty if known. */
  readonly coils: readonly { readonly name: string; readonly points: readonly QPoint[] }[];
  readonly measured?: readonly { readonly frequency: number; readonly q: number }[];
  /** Stretch the set covers, Hz. */
  readonly covered?: readonly [number, number];
}

export function qText({ coils }: QCurves): string {
  return paragraph(
    coils.map(({ name, points }) => {
      const best = points.reduce((a, b) => (b.q > a.q ? b : a));
      const range = best.low !== undefined && best.high !== undefined ? ([best.low, best.high] as const) : undefined;
      return qWords.coil(name, points[0], { ...best, range }, points[points.length - 1]);
    }),
  );
}

/**
 * Q against frequency with its band of uncertainty.
 * @param data frequencies (Hz) and Q with its spread
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function qAgainstFrequency(data: QCurves, size: PlotSize = {}): Scene {
  const frame = frameOf(size);
  const { box } = frame;
  const all = data.coils.flatMap((c) => c.points);
  const ends = [Math.min(...all.map((p) => p.frequency)), Math.max(...all.map((p) => p.frequency))];
  const x: AxisScale =
    ends[1] / ends[0] > 2.5 ? scaleLog(ends, [box.x, box.x + box.w]) : scaleLinear(ends, [box.x, box.x + box.w]);
  const most = Math.max(...all.map((p) => p.high ?? p.q), ...(data.measured ?? []).map((m) => m.q));
  const y = scaleLinear([0, most], [box.y + box.h, box.y]).nice(5);
  const items: Item[] = [];
  if (data.covered) {
    const [a, b] = data.covered.map((f) => x(Math.min(ends[1], Math.max(ends[0], f))));
    items.push(
      polyline(
        [
          [a, box.y],
          [b, box.y],
          [b, box.y + box.h],
          [a, box.y + box.h],
        ],
        {
          fill: 'card',
          closed: true,
          opacity: 0.7,
          title: qWords.covered(data.covered[0], data.covered[1]),
        },
      ),
    );
  }
  items.push(
    ...xAxis(frame, x, {
      unit: 'kHz',
      format: axisKHz,
      ticks: ends[1] / ends[0] > 2.5 ? decadeTicks(ends) : undefined,
    }),
    ...yAxis(frame, y, { unit: axisNames.q, format: (v) => `${v}` }),
  );
  const labels: Label[] = [];
  const curves: Point[][] = [];
  data.coils.forEach((coil, i) => {
    const role = i === 0 ? 'copper' : i === 1 ? 'accent' : 'soft';
    const banded = coil.points.filter((p) => p.low !== undefined && p.high !== undefined);
    if (banded.length > 1)
      items.push(
        polyline(
          [
            ...banded.map((p): Point => [x(p.frequency), y(p.high!)]),
            ...banded.toReversed().map((p): Point => [x(p.frequency), y(p.low!)]),
          ],
          { fill: role, opacity: 0.16, closed: true, title: qWords.range(coil.name) },
        ),
      );
    const curve = coil.points.map((p): Point => [x(p.frequency), y(p.q)]);
    curves.push(curve);
    items.push(polyline(curve, { stroke: role, width: 2 }));
    const spots = [0.5, 0.75, 0.25, 0.9].map((t) => curve[Math.round(t * (curve.length - 1))]);
    labels.push({
      item: { text: coil.name, size: PLOT_LETTERS, role, bold: true, sits: 'middle', rim: true },
      places: [-12, 14, -26, 28].flatMap((dy) =>
        spots.map(([px, py]) => ({ at: [px, py + dy] as Point, anchor: 'middle' as const })),
      ),
      must: true,
    });
  });
  for (const m of data.measured ?? []) {
    const at: Point = [x(m.frequency), y(m.q)];
    items.push(
      circle(at, 4, {
        stroke: 'ink',
        fill: 'paper',
        width: 1.4,
        title: qWords.measured(m.q, m.frequency),
      }),
      line([at[0] - 2, at[1]], [at[0] + 2, at[1]], { stroke: 'ink', width: 1 }),
    );
  }
  const placed = placeLabels(
    labels,
    box,
    curves.flatMap((c) => boxesAlong(c, 4)),
    1,
  );
  return plotScene(frame, qWords.title, qText(data), [...items, ...placed.items]);
}

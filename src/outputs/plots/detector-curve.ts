import { scaleLinear } from 'd3-scale';
import type { Box } from '../scene/boxes.ts';
import { circle, line, polyline, rect } from '../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { axisNames, detectorPlotWords, paragraph } from '../words/index.ts';
import { curveLabel, dotBox, placesNear } from './curve-label.ts';
import { minus } from './figures.ts';
import { frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface DetectorCurve {
  /** The first is the set's own; the others are for comparison. V and A, rising voltage. */
  readonly curves: readonly {
    readonly name: string;
    /** For where the name has no room, longest first. */
    readonly shorter?: readonly string[];
    readonly points: readonly { readonly voltage: number; readonly current: number }[];
  }[];
  /** Where it works: the carrier swings by `amplitude` (peak volts) about `voltage`, and `current` flows on average. */
  readonly operating?: { readonly voltage: number; readonly amplitude: number; readonly current: number };
  /** Range drawn, V; default round the swing, or all of the first curve. */
  readonly span?: readonly [number, number];
}

export function detectorCurveText({ curves, operating }: DetectorCurve): string {
  const [own, ...others] = curves.map((c) => c.name);
  const description = detectorPlotWords.description(own, others);
  return operating ? paragraph([description, detectorPlotWords.operating(operating)]) : description;
}

/**
 * Current against voltage near zero, with the stretch the carrier sweeps and the point it works about.
 * @param data voltages (V), currents (A) and the working point
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function detectorCurve(data: DetectorCurve, size: PlotSize = {}): Scene {
  const { curves, operating } = data;
  const frame = frameOf(size, { left: 48 }, 0.6);
  const { box } = frame;
  const own = curves[0].points;
  const reach = operating ? Math.max(0.02, operating.amplitude * 1.6 + Math.abs(operating.voltage)) : 0;
  const span =
    data.span ??
    (operating
      ? [
          Math.max(own[0].voltage, operating.voltage - reach),
          Math.min(own[own.length - 1].voltage, operating.voltage + reach),
        ]
      : [own[0].voltage, own[own.length - 1].voltage]);
  const cut = (points: DetectorCurve['curves'][number]['points']) => clipped(points, span[0], span[1]);
  const ownCut = cut(own);
  const currents = [...ownCut.map((p) => p.current), operating?.current ?? 0];
  const x = scaleLinear([span[0], span[1]], [box.x, box.x + box.w]);
  const most = Math.max(...currents, 1e-12);
  const least = Math.min(0, ...currents);
  const y = scaleLinear([Math.min(least, -0.12 * most), most * 1.05], [box.y + box.h, box.y]);
  const unit = most >= 1e-3 ? ([1e3, 'mA'] as const) : most >= 1e-6 ? ([1e6, 'µA'] as const) : ([1e9, 'nA'] as const);
  const milli = Math.max(Math.abs(span[0]), Math.abs(span[1])) < 2;
  const items: Item[] = [];
  if (operating) {
    const [a, b] = [operating.voltage - operating.amplitude, operating.voltage + operating.amplitude].map((v) =>
      x(Math.min(span[1], Math.max(span[0], v))),
    );
    items.push(rect(a, box.y, b - a, box.h, { fill: 'card', title: detectorPlotWords.swept }));
  }
  items.push(
    ...xAxis(frame, x, {
      name: axisNames.voltage,
      unit: milli ? 'mV' : 'V',
      format: (v) => minus(`${+(v * (milli ? 1e3 : 1)).toFixed(2)}`),
    }),
    ...yAxis(frame, y, {
      name: axisNames.current,
      unit: unit[1],
      format: (v) => minus(`${+(v * unit[0]).toFixed(3)}`),
    }),
    line([x(0), box.y], [x(0), box.y + box.h], { stroke: 'soft', width: 1 }),
    line([box.x, y(0)], [box.x + box.w, y(0)], { stroke: 'soft', width: 1 }),
  );
  const labels: Label[] = [];
  const avoid: Point[][] = [];
  const marks: Box[] = [];
  curves.forEach((curve, i) => {
    const role = i === 0 ? 'copper' : i === 1 ? 'accent' : 'soft';
    const shown = underRoof(cut(curve.points), y.domain()[1], y.domain()[0]).map(
      (p): Point => [x(p.voltage), y(p.current)],
    );
    if (shown.length < 2) return;
    avoid.push(shown);
    items.push(polyline(shown, { stroke: role, width: i === 0 ? 2.2 : 1.5 }));
    labels.push(curveLabel(curve, shown, box, { role, bold: i === 0 }));
  });
  if (operating) {
    const point: Point = [x(operating.voltage), y(operating.current)];
    const swing = [
      x(Math.max(span[0], operating.voltage - operating.amplitude)),
      x(Math.min(span[1], operating.voltage + operating.amplitude)),
    ];
    const level = box.y + 12;
    items.push(
      line([swing[0], level], [swing[1], level], { stroke: 'accent', width: 1.5 }),
      ...swing.map((s) => line([s, level - 4], [s, level + 4], { stroke: 'accent', width: 1.5 })),
      line([x(operating.voltage), level], point, { stroke: 'accent', width: 1, dash: [2, 3] }),
      circle(point, 5, { fill: 'accent', title: detectorPlotWords.point }),
    );
    marks.push({ x: swing[0], y: level - 4, w: swing[1] - swing[0], h: 8 }, dotBox(point, 5));
    avoid.push([[point[0], level], point]);
    labels.unshift(
      {
        item: {
          text: detectorPlotWords.swing(operating.amplitude),
          size: PLOT_LETTERS,
          role: 'accent',
          sits: 'middle',
          rim: true,
        },
        places: [14, 28].flatMap((dy) => [
          { at: [(swing[0] + swing[1]) / 2, level + dy] as Point, anchor: 'middle' as const },
          { at: [point[0] + 6, level + dy] as Point, anchor: 'start' as const },
          { at: [point[0] - 6, level + dy] as Point, anchor: 'end' as const },
          { at: [swing[0] + 4, level + dy] as Point, anchor: 'start' as const },
          { at: [swing[1] - 4, level + dy] as Point, anchor: 'end' as const },
        ]),
        must: true,
      },
      {
        item: {
          text: detectorPlotWords.mean(operating.current, operating.voltage),
          size: PLOT_LETTERS,
          role: 'accent',
          bold: true,
          sits: 'middle',
          rim: true,
        },
        places: [
          ...[-14, 14, -30, 30].flatMap((dy) => [
            { at: [point[0] - 8, point[1] + dy] as Point, anchor: 'end' as const },
            { at: [point[0] + 8, point[1] + dy] as Point, anchor: 'start' as const },
          ]),
          ...placesNear([point], box),
        ],
        must: true,
      },
    );
  }
  const placed = placeLabels(
    labels,
    box,
    [
      ...marks,
      ...[...avoid, [[box.x, y(0)] as Point, [box.x + box.w, y(0)] as Point]].flatMap((c) => boxesAlong(c, 4)),
    ],
    1,
  );
  return plotScene(frame, detectorPlotWords.title, detectorCurveText(data), [...items, ...placed.items]);
}

type IV = { readonly voltage: number; readonly current: number };

const between = (a: IV, b: IV, t: number): IV => ({
  voltage: a.voltage + (b.voltage - a.voltage) * t,
  current: a.current + (b.current - a.current) * t,
});

/** The part within a range of voltage, with its ends worked out. */
function clipped(points: readonly IV[], low: number, high: number): IV[] {
  const out: IV[] = [];
  points.forEach((p, i) => {
    const before = points[i - 1];
    if (before)
      for (const edge of [low, high])
        if (before.voltage < edge && p.voltage > edge)
          out.push(between(before, p, (edge - before.voltage) / (p.voltage - before.voltage)));
    if (p.voltage >= low && p.voltage <= high) out.push(p);
  });
  return out;
}

/** The part within a range of current; the curve rises. */
function underRoof(points: readonly IV[], roof: number, floor: number): IV[] {
  const out: IV[] = [];
  points.forEach((p, i) => {
    const before = points[i - 1];
    if (before)
      for (const edge of [floor, roof])
        if (before.current < edge && p.current > edge)
          out.push(between(before, p, (edge - before.current) / (p.current - before.current)));
    if (p.current >= floor && p.current <= roof) out.push(p);
  });
  return out;
}

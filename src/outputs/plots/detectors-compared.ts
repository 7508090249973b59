import { scaleLinear } from 'd3-scale';
import type { Box } from '../scene/boxes.ts';
import { circle, line, polyline } from '../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Role, Scene } from '../scene/scene.ts';
import { axisNames, detectorPlotWords } from '../words/index.ts';
import { curveLabel, dotBox } from './curve-label.ts';
import { minus } from './figures.ts';
import { frameOf, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface ComparedCurve {
  readonly name: string;
  /** For where the name has no room, longest first. */
  readonly shorter?: readonly string[];
  readonly points: readonly { readonly voltage: number; readonly current: number }[];
  /** The carrier swings by `amplitude` (peak volts) about `voltage`, and `current` flows on average. */
  readonly operating: { readonly voltage: number; readonly amplitude: number; readonly current: number };
}

const ROLES: readonly Role[] = ['copper', 'accent', 'ink', 'metal', 'warning'];
/** More curves than this cannot be told apart. */
export const MOST_COMPARED = ROLES.length;

const detectorsComparedText = (curves: readonly ComparedCurve[]): string =>
  curves.map(({ name, operating }) => detectorPlotWords.comparedOperating(name, operating)).join(' ');

/** Within this of zero is near it, V: the bend of any detector is seen. */
const NEAR = 0.5;

const sweptEnds = ({ operating: o }: ComparedCurve): [number, number] => [
  o.voltage - o.amplitude,
  o.voltage + o.amplitude,
];

/** Whether all of it happens near zero. */
export const isNearZero = (curves: readonly ComparedCurve[]): boolean =>
  curves.flatMap(sweptEnds).every((v) => Math.abs(v) <= NEAR);

/**
 * Current against voltage: each curve thin, thick where the carrier sweeps it, with a dot at its mean.
 * @param all voltages (V) and currents (A) of each
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function detectorsCompared(all: readonly ComparedCurve[], size: PlotSize = {}): Scene {
  const curves = all.slice(0, MOST_COMPARED);
  const frame = frameOf(size, { left: 48 }, 0.62);
  const { box } = frame;
  const ends = curves.flatMap(sweptEnds);
  const known = curves.flatMap(({ points }) => points.map((p) => p.voltage));
  // No further than the curves are known.
  const low = Math.max(Math.min(-0.02, ...ends) * 1.1, Math.min(-0.02, ...known));
  const high = Math.min(Math.max(0.02, ...ends) * 1.25, Math.max(0.02, ...known));
  const milli = Math.max(-low, high) <= 1;
  const swept = curves.map((c) =>
    within(c.points, c.operating.voltage - c.operating.amplitude, c.operating.voltage + c.operating.amplitude),
  );
  const tops = swept.map((points) => Math.max(1e-12, ...points.map((p) => p.current)));
  const most = Math.max(...tops, 1e-12);
  const least = Math.min(-0.1 * most, ...swept.flatMap((points) => points.map((p) => p.current)));
  const x = scaleLinear([low, high], [box.x, box.x + box.w]);
  const y = scaleLinear([Math.max(least, -0.5 * most) * 1.05, most * 1.12], [box.y + box.h, box.y]);
  const [bottom, top] = y.domain();
  const [factor, unit] = most >= 1e-3 ? [1e3, 'mA'] : most >= 1e-6 ? [1e6, 'µA'] : [1e9, 'nA'];
  const items: Item[] = [
    ...xAxis(frame, x, {
      name: axisNames.voltage,
      unit: milli ? 'mV' : 'V',
      format: (v) => minus(`${+(v * (milli ? 1e3 : 1)).toFixed(2)}`),
    }),
    ...yAxis(frame, y, { name: axisNames.current, unit, format: (v) => minus(`${+(v * factor).toFixed(3)}`) }),
    line([x(0), box.y], [x(0), box.y + box.h], { stroke: 'soft', width: 1 }),
    line([box.x, y(0)], [box.x + box.w, y(0)], { stroke: 'soft', width: 1 }),
  ];
  const labels: Label[] = [];
  const taken: Point[][] = [];
  const dots: Box[] = [];
  curves.forEach((curve, i) => {
    const role = ROLES[i];
    const place = (points: ComparedCurve['points']): Point[] =>
      points.filter((p) => p.current >= bottom && p.current <= top).map((p): Point => [x(p.voltage), y(p.current)]);
    const whole = place(within(curve.points, low, high));
    const thick = place(swept[i]);
    if (whole.length > 1) items.push(polyline(whole, { stroke: role, width: 1.2, opacity: 0.8 }));
    if (thick.length > 1)
      items.push(polyline(thick, { stroke: role, width: 3.2, title: detectorPlotWords.comparedSwept(curve.name) }));
    taken.push(whole);
    const { voltage, current } = curve.operating;
    const dot: Point = [x(voltage), y(Math.min(top, Math.max(bottom, current)))];
    items.push(circle(dot, 4.5, { fill: role }));
    dots.push(dotBox(dot, 4.5));
    if (whole.length > 1) labels.push(curveLabel(curve, whole, box, { role, bold: true }));
  });
  const placed = placeLabels(labels, box, [...dots, ...taken.flatMap((c) => boxesAlong(c, 5))], 1);
  return plotScene(frame, detectorPlotWords.compared(isNearZero(curves)), detectorsComparedText(curves), [
    ...items,
    ...placed.items,
  ]);
}

/** The part of a curve between two voltages as far as it is known, its ends worked out. */
function within(points: ComparedCurve['points'], from: number, to: number): ComparedCurve['points'] {
  const a = Math.max(from, points[0].voltage);
  const b = Math.min(to, points[points.length - 1].voltage);
  if (!(a < b)) return [];
  return [
    { voltage: a, current: currentAt(points, a) },
    ...points.filter((p) => p.voltage > a && p.voltage < b),
    { voltage: b, current: currentAt(points, b) },
  ];
}

function currentAt(points: ComparedCurve['points'], v: number): number {
  const k = points.findIndex((p) => p.voltage >= v);
  if (k <= 0) return points[k === 0 ? 0 : points.length - 1].current;
  const [a, b] = [points[k - 1], points[k]];
  return a.current + ((b.current - a.current) * (v - a.voltage)) / (b.voltage - a.voltage);
}

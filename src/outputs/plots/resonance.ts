import { scaleLinear } from 'd3-scale';
import { circle, line, polyline } from '../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { shorten } from '../scene/text-width.ts';
import { axisKHz, wholeDB } from '../words/figures.ts';
import { axisNames, paragraph, resonanceWords } from '../words/index.ts';
import { drawable } from './figures.ts';
import { caption, frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface ResonancePlot {
  readonly station: { readonly name: string; readonly frequency: number };
  /** Level at the detector against frequency, set tuned to the station; rising frequency, Hz and dB (any reference). */
  readonly points: readonly { readonly frequency: number; readonly level: number }[];
  readonly loadedQ?: number;
  /** −3 dB, Hz; default as read from the curve. */
  readonly bandwidth?: number;
  /** Others within the plot are marked on the curve: how much the circuit alone holds them down. */
  readonly neighbours?: readonly { readonly name: string; readonly frequency: number }[];
}

/** Where the curve crosses 3 dB under its top on either side, Hz; undefined beyond the points. */
function halfPowerPoints(points: ResonancePlot['points']): {
  readonly peak: number;
  readonly at: number;
  readonly low?: number;
  readonly high?: number;
} {
  let top = 0;
  points.forEach((p, i) => {
    if (p.level > points[top].level) top = i;
  });
  const peak = points[top].level;
  const crossing = (step: 1 | -1): number | undefined => {
    for (let i = top; i + step >= 0 && i + step < points.length; i += step) {
      const [a, b] = [points[i], points[i + step]];
      if (b.level <= peak - 3)
        return a.frequency + ((b.frequency - a.frequency) * (a.level - (peak - 3))) / (a.level - b.level);
    }
    return undefined;
  };
  return { peak, at: points[top].frequency, low: crossing(-1), high: crossing(1) };
}

const levelAt = (points: ResonancePlot['points'], f: number): number | undefined => {
  const i = points.findIndex((p) => p.frequency >= f);
  if (i < 0 || (i === 0 && points[0].frequency > f)) return undefined;
  if (i === 0) return points[0].level;
  const [a, b] = [points[i - 1], points[i]];
  return a.level + ((b.level - a.level) * (f - a.frequency)) / (b.frequency - a.frequency);
};

const asDrawn = (data: ResonancePlot): ResonancePlot => ({
  ...data,
  points: data.points.map((p) => ({ ...p, level: drawable(p.level) })),
});

/** Attenuated by no whole decibel. */
const isPassed = ({ by }: { readonly by: number }): boolean => Math.abs(Math.round(by)) === 0;

/** The curve as sentences. */
export function resonanceText(given: ResonancePlot): string {
  const data = asDrawn(given);
  const { peak, at, low, high } = halfPowerPoints(data.points);
  const others = (data.neighbours ?? []).flatMap((n) => {
    const level = levelAt(data.points, n.frequency);
    return level === undefined ? [] : [{ ...n, by: peak - level }];
  });
  const [passed, attenuated] = [others.filter(isPassed), others.filter((n) => !isPassed(n))];
  return paragraph([
    resonanceWords.peak(data.station, at),
    low !== undefined && high !== undefined
      ? resonanceWords.width(low, high, data.bandwidth ?? high - low)
      : resonanceWords.wide,
    ...(data.loadedQ === undefined ? [] : [resonanceWords.loadedQ(data.loadedQ)]),
    ...(attenuated.length > 0 ? [resonanceWords.attenuated(attenuated)] : []),
    ...(passed.length > 0 ? [resonanceWords.passed(passed)] : []),
  ]);
}

/**
 * Level at the detector round the chosen station, the −3 dB points and the neighbours.
 * @param given frequencies (Hz), levels (dB) and the station
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function resonanceCurve(given: ResonancePlot, size: PlotSize = {}): Scene {
  const data = asDrawn(given);
  const { points } = data;
  const description = resonanceText(data);
  const { peak, low, high } = halfPowerPoints(points);
  const first = frameOf(size);
  const head = caption(
    first,
    resonanceWords.caption(
      data.loadedQ,
      low !== undefined && high !== undefined ? (data.bandwidth ?? high - low) : undefined,
    ),
  );
  const frame = frameOf(size, { top: 30 + 15 * (head.lines - 1) });
  const { box } = frame;
  const floor = Math.max(-80, Math.min(-20, Math.floor((Math.min(...points.map((p) => p.level)) - peak) / 10) * 10));
  const x = scaleLinear([points[0].frequency, points[points.length - 1].frequency], [box.x, box.x + box.w]);
  const y = scaleLinear([floor, 3], [box.y + box.h, box.y]);
  const at = (f: number, level: number): Point => [x(f), y(Math.max(floor, level - peak))];
  const curve = points.map((p) => at(p.frequency, p.level));
  const items: Item[] = [
    ...head.items,
    ...xAxis(frame, x, { unit: 'kHz', format: axisKHz }),
    ...yAxis(frame, y, { name: axisNames.level, unit: 'dB', format: wholeDB }),
  ];
  const labels: Label[] = [];
  const tuned = x(data.station.frequency);
  items.push(line([tuned, box.y], [tuned, box.y + box.h], { stroke: 'copper', width: 1, dash: [3, 3] }));
  if (low !== undefined && high !== undefined) {
    const level = y(-3);
    items.push(line([x(low), level], [x(high), level], { stroke: 'soft', width: 1 }));
    for (const f of [low, high]) items.push(circle([x(f), level], 3, { fill: 'paper', stroke: 'ink', width: 1.2 }));
    labels.push({
      item: { text: resonanceWords.halfPower, size: PLOT_LETTERS, role: 'soft', sits: 'middle' },
      places: [
        { at: [x(high) + 8, level], anchor: 'start' },
        { at: [x(low) - 8, level], anchor: 'end' },
      ],
    });
  }
  items.push(polyline(curve, { stroke: 'copper', width: 2 }));
  labels.push({
    item: { text: data.station.name, size: PLOT_LETTERS, role: 'copper', bold: true, sits: 'middle', rim: true },
    places: [0.96, 0.88, 0.8].flatMap((share) => {
      const level = box.y + box.h * share;
      return [
        { at: [tuned + 6, level] as Point, anchor: 'start' as const },
        { at: [tuned - 6, level] as Point, anchor: 'end' as const },
      ];
    }),
    must: true,
  });
  for (const n of data.neighbours ?? []) {
    const level = levelAt(points, n.frequency);
    if (level === undefined) continue;
    const [px, py] = at(n.frequency, level);
    items.push(circle([px, py], 3.5, { fill: 'ink' }));
    const words = resonanceWords.neighbour(n.name, level - peak);
    const right = n.frequency > data.station.frequency;
    labels.push({
      shorter: [n.name, shorten(n.name, PLOT_LETTERS, 80)],
      item: { text: words, size: PLOT_LETTERS, role: 'ink', sits: 'middle', rim: true },
      places: [-14, -28, 14, 28, -42, 42, 56, -56].flatMap((dy) => [
        { at: [px + (right ? 8 : -8), py + dy] as Point, anchor: right ? ('start' as const) : ('end' as const) },
        { at: [px, py + dy] as Point, anchor: 'middle' as const },
        { at: [px + (right ? -8 : 8), py + dy] as Point, anchor: right ? ('end' as const) : ('start' as const) },
      ]),
    });
  }
  const placed = placeLabels(labels, box, [...boxesAlong(curve, 5), { x: tuned - 1, y: box.y, w: 2, h: box.h }]);
  return plotScene(frame, resonanceWords.title(data.station.frequency), description, [...items, ...placed.items]);
}

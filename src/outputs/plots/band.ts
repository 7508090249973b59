import { scaleLinear, scaleLog } from 'd3-scale';
import type { Box } from '../scene/boxes.ts';
import { circle, line, polyline } from '../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { axisKHz, wholeDB } from '../words/figures.ts';
import { axisNames, bandPlotWords, paragraph } from '../words/index.ts';
import { placesNear } from './curve-label.ts';
import { drawable } from './figures.ts';
import { type AxisScale, frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';
import { LANE, nameLane } from './name-lane.ts';

export interface BandPlot {
  /** What the set alone passes, rising frequency; Hz and dB (its top is taken as 0). */
  readonly points: readonly { readonly frequency: number; readonly level: number }[];
  /** Levels at the detector, dB; the strongest is taken as 0. */
  readonly stations: readonly { readonly name: string; readonly frequency: number; readonly level: number }[];
  /** Index of the wanted station. */
  readonly wanted?: number;
}

const top = (levels: readonly number[]): number => (levels.length > 0 ? drawable(Math.max(...levels)) : 0);

/** How much deeper than what stands on either side makes a notch, dB. */
const NOTCH = 12;

/** Where hardly anything passes between two stretches where more does: the rest of a tapped coil or a trap shorts it. */
function notchOf(points: BandPlot['points']): BandPlot['points'][number] | undefined {
  const lowest = points.reduce((low, p) => (drawable(p.level) < drawable(low.level) ? p : low), points[0]);
  const at = points.indexOf(lowest);
  const highest = (part: BandPlot['points']): number => top(part.map((p) => p.level));
  if (at === 0 || at === points.length - 1) return undefined;
  const rise = Math.min(highest(points.slice(0, at)), highest(points.slice(at + 1))) - drawable(lowest.level);
  return rise >= NOTCH ? lowest : undefined;
}

export function bandText({ stations, wanted, points }: BandPlot): string {
  const strongest = top(stations.map((s) => s.level));
  const order = [...stations].sort((a, b) => b.level - a.level);
  const want = wanted === undefined ? undefined : stations[wanted];
  const others = order.filter((s) => s !== want).slice(0, 3);
  const notch = notchOf(points);
  const levels = !want
    ? [bandPlotWords.strongest(others)]
    : [
        strongest === want.level
          ? bandPlotWords.isStrongest(want)
          : bandPlotWords.isBelow(want, strongest - want.level),
        ...(others.length > 0 ? [bandPlotWords.others(others.map((s) => ({ ...s, over: s.level - want.level })))] : []),
      ];
  return paragraph([
    bandPlotWords.range(points[0].frequency, points[points.length - 1].frequency),
    ...levels,
    ...(notch ? [bandPlotWords.notch(notch.frequency)] : []),
  ]);
}

/**
 * The response across the band, with every station as a stem as tall as it is at the detector.
 * @param data frequencies (Hz), response (dB) and stations
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function bandResponse(data: BandPlot, size: PlotSize = {}): Scene {
  const { points, stations, wanted } = data;
  const frame = frameOf(size, { top: LANE + 12 });
  const { box } = frame;
  const ends = [points[0].frequency, points[points.length - 1].frequency];
  const x: AxisScale =
    ends[1] / ends[0] > 4 ? scaleLog(ends, [box.x, box.x + box.w]) : scaleLinear(ends, [box.x, box.x + box.w]);
  const strongest = top(stations.map((s) => s.level));
  const peak = top(points.map((p) => p.level));
  const lowest = Math.min(
    ...points.map((p) => drawable(p.level) - peak),
    ...stations.map((s) => s.level - strongest).filter((l) => l > -100),
    -30,
  );
  const floor = Math.max(-100, Math.floor(lowest / 10) * 10);
  const y = scaleLinear([floor, 0], [box.y + box.h, box.y]);
  const clamp = (level: number): number => y(Math.min(0, Math.max(floor, drawable(level))));
  const curve = points.map((p): Point => [x(p.frequency), clamp(p.level - peak)]);
  const bottom = box.y + box.h;
  const items: Item[] = [
    ...xAxis(frame, x, {
      unit: 'kHz',
      format: axisKHz,
      ticks: ends[1] / ends[0] > 4 ? decadeTicks(ends) : undefined,
    }),
    ...yAxis(frame, y, { name: axisNames.level, unit: 'dB', format: wholeDB }),
    polyline(curve, { stroke: 'soft', width: 1.5 }),
  ];
  const within = stations
    .map((s, index) => ({ ...s, index, head: [x(s.frequency), clamp(s.level - strongest)] as Point }))
    .filter((s) => s.frequency >= ends[0] && s.frequency <= ends[1]);
  for (const s of within) {
    const chosen = s.index === wanted;
    const role = chosen ? 'copper' : 'ink';
    const title = bandPlotWords.stem(s, s.level - strongest);
    items.push(line([s.head[0], bottom], s.head, { stroke: role, width: chosen ? 3 : 1.4, title }));
    items.push(circle(s.head, chosen ? 5 : 3, { fill: role, title }));
  }
  // The wanted one first, then the strongest: they are sure of their names.
  const order = [...within].sort((a, b) => (a.index === wanted ? -1 : b.index === wanted ? 1 : b.level - a.level));
  const lane = nameLane(
    order.map(({ name, head, index }) => ({ text: name, head, isChosen: index === wanted })),
    box,
    frame.width,
    [{ x: 0, y: box.y - 20, w: 4 + textWidth(`${axisNames.level}, dB`, PLOT_LETTERS), h: 18 }],
  );
  const notch = notchOf(points);
  const stems = within.map((s) => ({ x: s.head[0] - 3, y: box.y, w: 6, h: box.h }));
  const notchName = notch
    ? placeLabels([notchLabel([x(notch.frequency), clamp(notch.level - peak)], box)], box, [
        ...stems,
        ...boxesAlong(curve, 3),
      ]).items
    : [];
  const want = wanted === undefined ? undefined : stations[wanted];
  return plotScene(frame, bandPlotWords.title(want?.name), bandText(data), [...items, ...lane, ...notchName]);
}

/** The name of a notch, as near to it as it stands clear. */
const notchLabel = (at: Point, box: Box): Label => ({
  item: { text: bandPlotWords.notchLabel, size: PLOT_LETTERS, role: 'soft', sits: 'middle' },
  shorter: [bandPlotWords.notchShort],
  places: placesNear([at], box),
});

/** 150, 200, 300 … 1000, 1500: what a dial would show. */
export function decadeTicks([low, high]: readonly number[]): number[] {
  const ticks: number[] = [];
  for (let decade = 10 ** Math.floor(Math.log10(low)); decade <= high; decade *= 10)
    for (const k of [1, 1.5, 2, 3, 5, 7]) if (k * decade >= low && k * decade <= high) ticks.push(k * decade);
  return ticks;
}

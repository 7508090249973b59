import { scaleLinear } from 'd3-scale';
import { inSeries } from '../../engine/units/format.ts';
import { circle, line, polyline } from '../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { frameOf, LETTERS, type PlotSize, plotScene, SMALL, xAxis, yAxis } from './frame.ts';
import { khz, khzFigure } from './words.ts';

export interface DialLaw {
  /** What is tuned at each scale reading; degrees (or any scale) and Hz, in the order of the scale. */
  readonly points: readonly { readonly scale: number; readonly frequency: number }[];
  readonly stations?: readonly {
    readonly name: string;
    readonly frequency: number;
    readonly scale: number;
    /** Readings it may well be at. */
    readonly range?: readonly [number, number];
  }[];
  readonly chosen?: number;
  /** Readings somebody wrote down, to be compared. */
  readonly measured?: readonly { readonly scale: number; readonly frequency: number }[];
  /** Default "°". */
  readonly unit?: string;
}

export function dialLawText({ points, stations = [], unit = '°' }: DialLaw): string {
  const [a, b] = [points[0], points[points.length - 1]];
  const placed = [...stations]
    .sort((p, q) => p.scale - q.scale)
    .map((s) => `${s.name} at ${Math.round(s.scale)}${unit}`);
  return `From ${khz(a.frequency)} at ${Math.round(a.scale)}${unit} to ${khz(b.frequency)} at ${Math.round(b.scale)}${unit}.${placed.length > 0 ? ` ${inSeries(placed)}.` : ''}`;
}

/** Frequency against the scale of the capacitor, with the stations where they are to be found. */
export function dialLaw(data: DialLaw, size: PlotSize = {}): Scene {
  const { points, stations = [], measured = [], unit = '°' } = data;
  const frame = frameOf(size, {}, 0.6);
  const { box } = frame;
  const scales = points.map((p) => p.scale);
  const frequencies = [...points, ...measured].map((p) => p.frequency);
  const x = scaleLinear([Math.min(...scales), Math.max(...scales)], [box.x, box.x + box.w]);
  const y = scaleLinear([Math.min(...frequencies), Math.max(...frequencies)], [box.y + box.h, box.y]).nice(6);
  const curve = points.map((p): Point => [x(p.scale), y(p.frequency)]);
  const degrees = unit === '°' ? [0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330, 360] : undefined;
  const items: Item[] = [
    ...xAxis(frame, x, {
      name: 'scale',
      unit: unit === '°' ? 'degrees' : unit,
      format: (v) => `${v}`,
      ticks: degrees?.filter((d) => d >= x.domain()[0] - 1e-9 && d <= x.domain()[1] + 1e-9),
    }),
    ...yAxis(frame, y, { unit: 'kHz', format: khzFigure }),
    polyline(curve, { stroke: 'copper', width: 2 }),
  ];
  for (const m of measured)
    items.push(
      circle([x(m.scale), y(m.frequency)], 4, {
        stroke: 'accent',
        fill: 'paper',
        width: 1.5,
        title: `measured: ${khz(m.frequency)} at ${m.scale}${unit}`,
      }),
    );
  const falling = points[0].frequency > points[points.length - 1].frequency;
  const labels: Label[] = [];
  const inOrder = stations.map((s, index) => ({ ...s, index })).sort((a) => (a.index === data.chosen ? -1 : 0));
  for (const s of inOrder) {
    const chosen = s.index === data.chosen;
    const [px, py] = [x(s.scale), y(s.frequency)];
    if (s.range)
      items.push(line([x(s.range[0]), py], [x(s.range[1]), py], { stroke: chosen ? 'accent' : 'ink', width: 1.2 }));
    items.push(
      circle([px, py], chosen ? 4.5 : 3.2, {
        fill: chosen ? 'accent' : 'ink',
        title: `${s.name}: ${Math.round(s.scale)}${unit}`,
      }),
    );
    const right = falling;
    labels.push({
      item: {
        text: s.name,
        size: chosen ? LETTERS : SMALL,
        bold: chosen,
        role: chosen ? 'accent' : 'ink',
        sits: 'middle',
        rim: true,
      },
      must: chosen,
      places: [-9, 9, -20, 20].flatMap((dy) => [
        { at: [px + (right ? 9 : -9), py + dy] as Point, anchor: right ? ('start' as const) : ('end' as const) },
        { at: [px + (right ? -9 : 9), py + dy] as Point, anchor: right ? ('end' as const) : ('start' as const) },
      ]),
    });
  }
  const placed = placeLabels(labels, box, boxesAlong(curve, 4), 1);
  return plotScene(frame, 'Frequency along the scale', dialLawText(data), [...items, ...placed.items]);
}

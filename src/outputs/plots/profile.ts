import { scaleLinear, scaleLog } from 'd3-scale';
import { formatQuantity } from '../../engine/units/format.ts';
import { circle, line, polyline, rect, text } from '../scene/build.ts';
import { boxesAlong, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { axisNames, profileWords } from '../words/index.ts';
import { frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface FieldProfile {
  readonly station: { readonly name: string; readonly frequency: number };
  /** Metres from the transmitter, and V/m; rising distance, not from 0. */
  readonly points: readonly { readonly distance: number; readonly field: number }[];
  /** What the path runs over, in order, metres from the transmitter. */
  readonly ground: readonly {
    readonly from: number;
    readonly to: number;
    readonly name: string;
    readonly sea: boolean;
  }[];
  readonly site: { readonly distance: number; readonly field: number; readonly name?: string };
  /** Noise in the band of one station, V/m, if known. */
  readonly noise?: number;
}

const profileText = ({ station, ground, site }: FieldProfile): string =>
  profileWords.description(
    station,
    site,
    ground.map((g) => ({ name: g.name, length: g.to - g.from })),
  );

/**
 * Field strength along the way from transmitter to site, with land, sea and the coasts crossed.
 * @param data distances (m) and field strengths (V/m)
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function fieldProfile(data: FieldProfile, size: PlotSize = {}): Scene {
  const { points, ground, site, noise } = data;
  const strip = 16;
  const frame = frameOf(size, { bottom: 38 + strip, left: 66 });
  const { box } = frame;
  const end = Math.max(points[points.length - 1].distance, site.distance);
  const x = scaleLinear([0, end], [box.x, box.x + box.w]);
  const fields = [...points.map((p) => p.field), site.field, ...(noise ? [noise] : [])];
  const low = Math.min(...fields) / 1.5;
  // The first kilometres rise without end: three decades over the site are enough.
  const high = Math.min(Math.max(...fields), site.field * 1000);
  const y = scaleLog([low, high], [box.y + box.h, box.y]);
  const curve = points.filter((p) => p.field <= high && p.field >= low).map((p): Point => [x(p.distance), y(p.field)]);
  const decades: number[] = [];
  for (let d = 10 ** Math.ceil(Math.log10(low)); d <= high; d *= 10) decades.push(d);
  if (decades.length < 3)
    for (let d = 10 ** Math.floor(Math.log10(low)); d <= high; d *= 10)
      for (const k of [2, 3, 5]) if (k * d > low && k * d < high) decades.push(k * d);
  const below = { ...frame, box: { ...box, h: box.h + strip } };
  const floor = box.y + box.h;
  const items: Item[] = [
    ...ground.map((g) =>
      rect(x(g.from), floor, x(Math.min(end, g.to)) - x(g.from), strip, {
        fill: g.sea ? 'sea' : 'soil',
        title: profileWords.ground(g.name, g.from, g.to),
      }),
    ),
    ...xAxis(below, x, {
      name: axisNames.distance,
      unit: 'km',
      format: (v) => `${+(v / 1e3).toFixed(1)}`,
      grid: false,
    }),
    ...yAxis(frame, y, {
      unit: axisNames.fieldStrength,
      format: (v) => formatQuantity(v, 'field strength', 2),
      ticks: decades.sort((a, b) => a - b),
    }),
    line([box.x, floor], [box.x + box.w, floor], { stroke: 'soft' }),
  ];
  for (const g of ground) {
    const [a, b] = [x(g.from), x(Math.min(end, g.to))];
    if (g.from > 0)
      items.push(
        line([a, box.y], [a, floor + strip], {
          stroke: 'soft',
          width: 1,
          dash: [2, 3],
          title: profileWords.boundary(g.from),
        }),
      );
    if (textWidth(g.name, PLOT_LETTERS) < b - a - 6)
      items.push(text([(a + b) / 2, floor + strip / 2], g.name, PLOT_LETTERS, { anchor: 'middle', sits: 'middle' }));
  }
  items.push(polyline(curve, { stroke: 'copper', width: 2 }));
  const labels = [];
  if (noise && noise > low) {
    items.push(line([box.x, y(noise)], [box.x + box.w, y(noise)], { stroke: 'warning', width: 1, dash: [5, 3] }));
    labels.push({
      item: { text: profileWords.noise(noise), size: PLOT_LETTERS, role: 'warning' as const, rim: true },
      places: [{ at: [box.x + 6, y(noise) - 4] as Point }, { at: [box.x + 6, y(noise) + 13] as Point }],
    });
  }
  const here: Point = [x(site.distance), y(site.field)];
  items.push(
    line(here, [here[0], floor], { stroke: 'accent', width: 1, dash: [3, 3] }),
    circle(here, 5, { fill: 'accent' }),
  );
  labels.unshift({
    item: {
      text: profileWords.site(site),
      size: PLOT_LETTERS,
      role: 'accent' as const,
      bold: true,
      rim: true,
      sits: 'middle' as const,
    },
    places: [-14, -28, -44, 16].flatMap((dy) => [
      { at: [here[0] - 8, here[1] + dy] as Point, anchor: 'end' as const },
      { at: [here[0], here[1] + dy] as Point, anchor: 'middle' as const },
      { at: [here[0] + 8, here[1] + dy] as Point, anchor: 'start' as const },
    ]),
    must: true,
  });
  const placed = placeLabels(labels, { ...box, w: frame.width - box.x - 2 }, boxesAlong(curve, 4), 1);
  return plotScene(frame, profileWords.title(data.station.name), profileText(data), [...items, ...placed.items]);
}

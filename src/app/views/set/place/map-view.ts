import type { Arrival } from '../../../../engine/index.ts';
import type { Extent } from '../../../workers/outline.ts';

/** What part of the map is shown: km east and south of the site. */
export interface MapView {
  readonly x: number;
  readonly y: number;
  readonly kmPerPixel: number;
}
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Half round the earth, km. */
export const HALF_ROUND = 20_015;
const FINEST = 0.02;

/** Where a station is drawn: distance and direction are true on this map. */
export function pointOf({
  distance,
  bearing,
}: Pick<Arrival, 'distance' | 'bearing'>): readonly [number, number] | undefined {
  if (distance === undefined || bearing === undefined) return undefined;
  const angle = (bearing * Math.PI) / 180;
  return [(distance / 1e3) * Math.sin(angle), (-distance / 1e3) * Math.cos(angle)];
}

/** Everything in sight, the site always. */
export function viewOfAll(points: readonly (readonly [number, number])[], { width, height }: Size): MapView {
  const xs = [0, ...points.map(([x]) => x)];
  const ys = [0, ...points.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const room = (size: number) => Math.max(size - 90, size / 2);
  const kmPerPixel = Math.max(
    (right - left) / room(width),
    (bottom - top) / room(height),
    30 / Math.min(width, height),
  );
  return mapWithin({ x: (left + right) / 2, y: (top + bottom) / 2, kmPerPixel }, { width, height });
}

/** A view that still shows something. */
export function mapWithin({ x, y, kmPerPixel }: MapView, { width, height }: Size): MapView {
  const coarsest = (2.1 * HALF_ROUND) / Math.max(1, Math.min(width, height));
  const held = (value: number) => Math.min(HALF_ROUND, Math.max(-HALF_ROUND, value));
  return { x: held(x), y: held(y), kmPerPixel: Math.min(coarsest, Math.max(FINEST, kmPerPixel)) };
}

/** Nearer (factor below 1) or farther, with the place under a point of the picture staying there. */
export function zoomedMap(view: MapView, factor: number, size: Size, at: readonly [number, number]): MapView {
  const scaled = mapWithin({ ...view, kmPerPixel: view.kmPerPixel * factor }, size);
  const change = view.kmPerPixel - scaled.kmPerPixel;
  return mapWithin(
    {
      ...scaled,
      x: view.x + (at[0] - size.width / 2) * change,
      y: view.y + (at[1] - size.height / 2) * change,
    },
    size,
  );
}

export const movedMap = (view: MapView, dx: number, dy: number, size: Size): MapView =>
  mapWithin({ ...view, x: view.x - dx * view.kmPerPixel, y: view.y - dy * view.kmPerPixel }, size);

/** The part in sight and as much again around it, so that a drag shows no empty edge. */
export function extentOf({ x, y, kmPerPixel }: MapView, { width, height }: Size, margin = 0.6): Extent {
  const [w, h] = [width * kmPerPixel * (0.5 + margin), height * kmPerPixel * (0.5 + margin)];
  return [x - w, y - h, x + w, y + h];
}

export const holds = (outer: Extent, inner: Extent): boolean =>
  outer[0] <= inner[0] && outer[1] <= inner[1] && outer[2] >= inner[2] && outer[3] >= inner[3];

/** Round distances for rings about the site, km: the largest that fits and steps down from it. */
export function ringsFor({ kmPerPixel }: MapView, { width, height }: Size): number[] {
  const reach = Math.min(width, height) * kmPerPixel;
  const rings: number[] = [];
  for (let decade = 1; decade <= 1e4; decade *= 10)
    for (const step of [1, 2, 5])
      if (step * decade > reach / 8 && step * decade < reach * 0.9) rings.push(step * decade);
  return rings.slice(-3);
}

/** Stretches of land and sea as lines from the transmitter to the site. */
export function stretches(
  arrival: Arrival,
): { sea: boolean; from: readonly [number, number]; to: readonly [number, number] }[] {
  const point = pointOf(arrival);
  const total = arrival.sections.reduce((sum, { length }) => sum + length, 0);
  if (!point || !(total > 0)) return [];
  const at = (walked: number): readonly [number, number] => [
    point[0] * (1 - walked / total),
    point[1] * (1 - walked / total),
  ];
  let walked = 0;
  return arrival.sections.map(({ length, ground }) => {
    const from = at(walked);
    walked += length;
    return { sea: ground === 'sea', from, to: at(walked) };
  });
}

export interface MapLabel {
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
  readonly text: string;
}

/** Where a name may stand about its point, px: the nearest first. */
const PLACES = [
  [8, 4, 'start'],
  [-8, 4, 'end'],
  [8, -7, 'start'],
  [8, 15, 'start'],
  [-8, -7, 'end'],
  [-8, 15, 'end'],
  [2, -12, 'start'],
  [2, 20, 'start'],
  [-2, -12, 'end'],
  [-2, 20, 'end'],
] as const;

type Rect = readonly [left: number, top: number, right: number, bottom: number];

/** Whether a straight line passes through a rectangle; both ends may lie outside. */
function passes([[x, y], [toX, toY]]: MapLine, [left, top, right, bottom]: Rect): boolean {
  let [from, to] = [0, 1];
  for (const [start, by, low, high] of [
    [x, toX - x, left, right],
    [y, toY - y, top, bottom],
  ] as const) {
    if (by === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const ends = [(low - start) / by, (high - start) / by].sort((a, b) => a - b);
    from = Math.max(from, ends[0]);
    to = Math.min(to, ends[1]);
  }
  return from < to;
}

type MapLine = readonly [from: readonly [number, number], to: readonly [number, number]];

/**
 * Names beside their points, none over another: the first ones given win. Where there is room no name lies on a line.
 * @param widthOf px of a text.
 * @param lines drawn on the map, px
 */
export function placeMapNames(
  points: readonly { readonly index: number; readonly name: string; readonly at: readonly [number, number] }[],
  { width, height }: Size,
  widthOf: (text: string) => number,
  lines: readonly MapLine[] = [],
): MapLabel[] {
  const taken: Rect[] = points.map(({ at: [x, y] }) => [x - 4, y - 4, x + 4, y + 4]);
  const labels: MapLabel[] = [];
  for (const { index, name, at } of points) {
    const w = widthOf(name);
    if (at[0] < 0 || at[0] > width || at[1] < 0 || at[1] > height) continue;
    const places = PLACES.flatMap(([dx, dy, anchor]) => {
      const left = anchor === 'start' ? at[0] + dx : at[0] + dx - w;
      const box: Rect = [left, at[1] + dy - 11, left + w, at[1] + dy + 3];
      const isOutside = box[0] < 2 || box[2] > width - 2 || box[1] < 2 || box[3] > height - 2;
      const isOver = taken.some((t) => t[0] < box[2] && t[2] > box[0] && t[1] < box[3] && t[3] > box[1]);
      return isOutside || isOver ? [] : [{ dx, dy, anchor, box }];
    });
    const place = places.find(({ box }) => !lines.some((line) => passes(line, box))) ?? places[0];
    if (!place) continue;
    taken.push(place.box);
    labels.push({ index, x: at[0] + place.dx, y: at[1] + place.dy, anchor: place.anchor, text: name });
  }
  return labels;
}

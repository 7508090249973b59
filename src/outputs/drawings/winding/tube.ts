import { circle, path, polyline, rect } from '../../scene/build.ts';
import type { Item, PathSegment, Point, Scene } from '../../scene/scene.ts';
import { windingPictureWords as texts } from '../../words/index.ts';
import {
  drawnWire,
  hiddenWire,
  hole,
  label,
  lengthMark,
  moveArrow,
  section,
  stepScene,
  type TubePlace,
  tube,
  turn,
  WIDTH,
  wirePath,
} from './strokes.ts';

/** The two small holes that hold an end of the wire, m. */
interface Holes {
  readonly apart: number;
  readonly fromEnd: number;
}

/** Between turns that are drawn, mm. */
const STEP = 2.2;
const TUBE = { top: 4, bottom: 19 } as const;

/** The wire through two holes, and its tail out of the open end; of a tube that is open on the left. */
function threaded(first: number, holes: number, mouth: number): Item[] {
  const [upper, lower] = [9, 14];
  return [
    // From the winding to the upper hole.
    wirePath(['M', first, TUBE.top], ['C', first - 5, TUBE.top + 1, holes + 5, upper, holes, upper]),
    hiddenWire([holes, upper], [holes, lower]),
    // Out at the lower, and in at the upper again.
    wirePath(['M', holes, lower], ['C', holes + 4, lower, holes + 4, upper + 1.2, holes + 0.6, upper + 0.4]),
    hiddenWire([holes, upper + 0.6], [mouth + 2, (upper + lower) / 2]),
    drawnWire([mouth + 2, (upper + lower) / 2], [mouth - 4.5, lower + 2]),
    hole([holes, upper]),
    hole([holes, lower]),
  ];
}

const mirrored = (items: readonly Item[]): Item[] => items.map(mirroredItem);
const across = (x: number): number => WIDTH - x;
const acrossPoint = ([x, y]: Point): Point => [across(x), y];

/** The same from right to left; words stay readable. */
function mirroredItem(item: Item): Item {
  switch (item.kind) {
    case 'line':
      return { ...item, from: acrossPoint(item.from), to: acrossPoint(item.to) };
    case 'polyline':
      return { ...item, points: item.points.map(acrossPoint) };
    case 'circle':
      return { ...item, centre: acrossPoint(item.centre) };
    case 'rect':
      return { ...item, x: across(item.x + item.w) };
    case 'text': {
      const anchor = item.anchor === 'middle' ? 'middle' : item.anchor === 'end' ? 'start' : 'end';
      return { ...item, at: acrossPoint(item.at), anchor };
    }
    case 'path':
      return { ...item, segments: item.segments.map(mirroredSegment) };
    default:
      return item;
  }
}

function mirroredSegment(segment: PathSegment): PathSegment {
  switch (segment[0]) {
    case 'M':
    case 'L':
      return [segment[0], across(segment[1]), segment[2]];
    case 'C':
      return ['C', across(segment[1]), segment[2], across(segment[3]), segment[4], across(segment[5]), segment[6]];
    default:
      return segment;
  }
}

function endOfTube(name: string, { apart, fromEnd }: Holes, begins: number | undefined): Item[] {
  const [mouth, holes, first] = [9, 21, 34];
  const place: TubePlace = { ...TUBE, left: mouth, right: 62, open: 'left' };
  const turns = Array.from({ length: 12 }, (_, i) => turn(first + i * STEP, place));
  return [
    ...tube(place),
    ...turns,
    ...threaded(first, holes, mouth),
    label([4, 22.5], name),
    ...lengthMark([mouth, 23], [holes, 23], texts.length(fromEnd)),
    ...(begins === undefined ? [] : lengthMark([mouth, 27], [first, 27], texts.length(begins))),
    label([holes + 4.6, 14.6], texts.length(apart), 'start'),
  ];
}

/** Where the wire begins. @param begins the first turn, m from the end of the tube. */
export const startHoles = (facts: Holes & { readonly begins: number }): Scene =>
  stepScene(texts.titles.start, 30, endOfTube(texts.start, facts, facts.begins));

/** Where it ends. */
export const endHoles = (facts: Holes): Scene =>
  stepScene(texts.titles.end, 26, mirrored(endOfTube(texts.end, facts, undefined)));

/** Which way the tube is turned, and the winding runs. @param gap of a thread between turns, m. */
export function windingOn(gap?: number): Scene {
  const place: TubePlace = { left: 6, right: 60, top: 11, bottom: 25, open: 'left' };
  const step = gap === undefined ? STEP : 2 * STEP;
  const last = 15 + step * Math.round(15 / step);
  const at = Array.from({ length: Math.round(15 / step) + 1 }, (_, i) => 15 + i * step);
  const thread = at.map((x) =>
    polyline(
      [
        [x + step / 2, place.top],
        [x + step / 2 + 1, place.bottom],
      ],
      { stroke: 'ink', width: 0.35, dash: [0.6, 0.9], cap: 'butt' },
    ),
  );
  return stepScene(texts.titles.wind, 31, [
    ...tube(place),
    ...at.map((x) => turn(x, place)),
    ...(gap === undefined ? [] : [...thread, label([8, 30], texts.thread(gap), 'start')]),
    drawnWire([last, place.top], [last, 3]),
    circle([last, 2], 1.4, { stroke: 'ink', width: 0.35, fill: 'paper' }),
    label([last + 2.6, 3.2], texts.handle, 'start'),
    label([last + 2, 8], texts.taut, 'start'),
    ...moveArrow([50, 13], [50, 23]),
    label([48.4, 19], texts.turnTube, 'end'),
    ...moveArrow([gap === undefined ? 15 : 43, 28.6], [gap === undefined ? 33 : 59, 28.6]),
  ]);
}

/** Twists of the loop that makes a tap. */
const TWISTS = 6;

/** A tap made, on turns that lie side by side. */
export function tapMade(turns: readonly number[]): Scene {
  const place: TubePlace = { left: 10, right: 56, top: 18, bottom: 28 };
  const [x, foot, top] = [33, 18, 5];
  const twist = (foot - top) / TWISTS;
  const strand = (side: 1 | -1): Item =>
    wirePath(
      ['M', x + side * 0.2, foot],
      ...Array.from({ length: TWISTS }, (_, i): PathSegment => {
        const [from, to] = [foot - i * twist, foot - (i + 1) * twist];
        const out = x + side * (i % 2 === 0 ? 1.7 : -1.7);
        return ['C', out, from - twist * 0.3, out, to + twist * 0.3, x, to];
      }),
    );
  return stepScene(texts.titles.tap, 33, [
    ...tube(place),
    ...Array.from({ length: 16 }, (_, i) => turn(15 + i * STEP, place)),
    strand(1),
    strand(-1),
    circle([x, top - 1.8], 1.8, { stroke: 'ink', width: 0.7 }),
    ...lengthMark([40, 1.4], [40, foot], texts.loop),
    label([29.5, 12], texts.twists(TWISTS), 'end'),
    label([33, 32.2], texts.afterTurns(turns)),
  ]);
}

/** The end of a wire, bare. */
export const bareEnd = (bare: number): Scene =>
  stepScene(texts.titles.scrape, 13, [
    rect(2, 3, 36, 3.2, { stroke: 'ink', width: 0.35, fill: 'card' }),
    rect(38, 3.7, 16, 1.8, { stroke: 'ink', width: 0.35, fill: 'paper' }),
    ...lengthMark([38, 10], [54, 10], texts.length(bare)),
    label([20, 11], texts.covering),
  ]);

/** The order of turns in banks, in section. */
export function banks(count: number): Scene {
  const layers = Math.min(count, 4);
  const radius = 2.3;
  const turns: Item[] = [];
  const height = 8 + layers * radius * 1.75;
  const heights = Array.from({ length: layers }, () => 0);
  let number = 0;
  const put = (layer: number): void => {
    number++;
    const x = 8 + 2 * radius * heights[layer] + radius * layer;
    turns.push(...section([x, height - 5 - radius - layer * radius * 1.74], radius, number));
    heights[layer]++;
  };
  // The bottom layer first as wide as the pile is high, then each bank is filled up.
  for (let i = 0; i < layers; i++) put(0);
  for (let layer = 1; layer < layers; layer++) for (let i = 0; i < layers - layer; i++) put(layer);
  while (heights[0] < 10) for (let layer = 0; layer < layers; layer++) put(layer);
  return stepScene(texts.titles.banks, height, [
    path(
      [
        ['M', 4, height - 5],
        ['L', 62, height - 5],
      ],
      { stroke: 'ink', width: 0.7 },
    ),
    ...turns,
    label([33, height - 0.8], texts.order),
  ]);
}

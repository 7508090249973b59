import { scaleLinear } from 'd3-scale';
import { HEARD, type HeardAs } from '../../engine/log/entry.ts';
import { type CalendarEntry, DAYS_OF_YEAR, type ListeningCalendar } from '../../engine/log/listening-calendar.ts';
import { circle, line, rect, text } from '../scene/build.ts';
import type { Item, PathSegment, Point, Role, Scene } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { axisNames, heardWhenWords as texts, verdictWords } from '../words/index.ts';
import { type Frame, frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

/** px; louder is larger. */
const RADIUS: Readonly<Partial<Record<HeardAs, number>>> = { loud: 5.5, comfortable: 4.5, quiet: 3.5, faint: 2.5 };
const SMALL = 3;
const MONTHS = Array.from({ length: 12 }, (_, month) => (Date.UTC(2024, month, 1) - Date.UTC(2024, 0, 1)) / 86_400_000);

/** A filled dot for what was heard, a ring for what was not, a cross for what another station covered. */
function mark([x, y]: Point, heard: HeardAs, title?: string): Item[] {
  const radius = RADIUS[heard];
  if (radius !== undefined) return [circle([x, y], radius, { fill: 'copper', title })];
  if (heard === 'not heard') return [circle([x, y], SMALL, { stroke: 'ink', fill: 'paper', width: 1.2, title })];
  const arm = (dx: number, dy: number): Item =>
    line([x - dx, y - dy], [x + dx, y + dy], { stroke: 'ink', width: 1.4, title });
  return [arm(SMALL, SMALL), arm(SMALL, -SMALL)];
}

/** More entries than this are drawn as paths of many marks. */
const MOST_SINGLE = 500;
/** px within which the larger mark covers the smaller one. */
const COVERED_WITHIN = 4;
/** Marks in one path: a longer one, spread over the plot, takes a browser long to fill. */
const TOGETHER = 200;
/** Of a mark that stands alone. */
const SMALLEST = 0.4;

type Scale = (value: number) => number;
const RANKS: Readonly<Record<string, number>> = Object.fromEntries(HEARD.map((heard, rank) => [heard, rank]));

/** Many marks, of those at one place the loudest. */
function crowd(entries: readonly CalendarEntry[], { width, height }: Frame, x: Scale, y: Scale): Item[] {
  const columns = Math.ceil(width / COVERED_WITHIN) + 1;
  const rows = Math.ceil(height / COVERED_WITHIN) + 1;
  // The loudest of each place, by its rank.
  const best = new Uint8Array(columns * rows).fill(HEARD.length);
  for (const { day, hour, heard } of entries) {
    const at = Math.round(x(day + 0.5) / COVERED_WITHIN) * rows + Math.round(y(hour) / COVERED_WITHIN);
    best[at] = Math.min(best[at], RANKS[heard]);
  }
  const places = HEARD.map((): Point[] => []);
  // From left to right, as the strips are.
  for (const [at, rank] of best.entries())
    if (rank < HEARD.length) places[rank].push([Math.floor(at / rows) * COVERED_WITHIN, (at % rows) * COVERED_WITHIN]);
  const count = places.reduce((sum, { length }) => sum + length, 0);
  // So that the many leave what lies behind them to be seen.
  const scale = Math.min(1, Math.max(SMALLEST, Math.sqrt(MOST_SINGLE / count)));
  return HEARD.toReversed().flatMap((heard) => {
    const at = places[RANKS[heard]];
    const strips = Array.from({ length: Math.ceil(at.length / TOGETHER) }, (_, i) =>
      at.slice(i * TOGETHER, (i + 1) * TOGETHER),
    );
    return strips.flatMap((strip) => together(heard, strip, scale));
  });
}

/** Marks of one kind as one or two paths. @param scale of each */
function together(heard: HeardAs, at: readonly Point[], scale: number): Item[] {
  const dots = (width: number, stroke: Role): Item => ({
    kind: 'path',
    segments: at.flatMap(([px, py]): PathSegment[] => [
      ['M', px, py],
      ['L', px, py],
    ]),
    stroke,
    width,
    title: verdictWords[heard],
  });
  const radius = RADIUS[heard];
  if (radius !== undefined) return [dots(2 * radius * scale, 'copper')];
  const small = SMALL * scale;
  if (heard === 'not heard') return [dots(2 * small + 1, 'ink'), dots(2 * small - 1, 'paper')];
  const cross = at.flatMap(([px, py]): PathSegment[] => [
    ['M', px - small, py - small],
    ['L', px + small, py + small],
    ['M', px - small, py + small],
    ['L', px + small, py - small],
  ]);
  return [{ kind: 'path', segments: cross, stroke: 'ink', width: 1.4 * scale, title: verdictWords[heard] }];
}

/**
 * When stations were heard: season across, hour (UTC) upwards, the hours of darkness shaded.
 * @param calendar of a log, or of one station's entries
 * @param size px
 * @returns a scene, px, with what it shows in words
 */
export function heardWhen({ entries, nights }: ListeningCalendar, size: PlotSize = {}): Scene {
  const frame = frameOf(size, { left: 40, top: 40 }, 0.5);
  const { box } = frame;
  const x = scaleLinear([0, DAYS_OF_YEAR], [box.x, box.x + box.w]);
  const y = scaleLinear([0, 24], [box.y + box.h, box.y]);
  const shade = nights.flatMap(({ day, hours }, i) => {
    const end = nights[i + 1]?.day ?? DAYS_OF_YEAR;
    // A hair wider than its days, so that no seam shows between two.
    return hours.map(([from, to]) => rect(x(day), y(to), x(end) - x(day) + 0.4, y(from) - y(to), { fill: 'card' }));
  });
  const isNarrow = frame.narrow;
  return plotScene(frame, texts.title, texts.text(countsOf(entries), nights.length > 0), [
    ...shade,
    ...yAxis(frame, y, { name: axisNames.time, unit: 'UTC', format: (hour) => `${hour} h`, ticks: [0, 6, 12, 18, 24] }),
    ...xAxis(frame, x, {
      unit: '',
      format: (day) => texts.month(MONTHS.indexOf(day)),
      ticks: MONTHS.filter((_, i) => !isNarrow || i % 3 === 0),
    }),
    ...key(box.x, frame.width),
    ...(entries.length > MOST_SINGLE
      ? crowd(entries, frame, x, y)
      : entries.flatMap((one) => mark([x(one.day + 0.5), y(one.hour)], one.heard, verdictWords[one.heard]))),
  ]);
}

const countsOf = (entries: readonly CalendarEntry[]): { heard: number; notHeard: number; masked: number } => {
  const count = (is: (heard: HeardAs) => boolean): number => entries.filter(({ heard }) => is(heard)).length;
  return {
    heard: count((heard) => RADIUS[heard] !== undefined),
    notHeard: count((heard) => heard === 'not heard'),
    masked: count((heard) => heard === 'masked'),
  };
};

/** What the marks mean, in one line at the top right. */
function key(left: number, width: number): Item[] {
  const entries = [
    { heard: 'loud', words: texts.key.heard },
    { heard: 'not heard', words: texts.key.notHeard },
    { heard: 'masked', words: texts.key.masked },
  ] as const;
  const GAP = 16;
  let at = left;
  return entries.flatMap(({ heard, words }) => {
    const place = at;
    at += GAP + textWidth(words, PLOT_LETTERS) + GAP;
    if (at - GAP > width) return [];
    return [...mark([place, 14], heard), text([place + 10, 14], words, PLOT_LETTERS, { sits: 'middle', role: 'soft' })];
  });
}

import { scaleLog } from 'd3-scale';
import { line, rect, text } from '../scene/build.ts';
import { type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { shorten, textWidth } from '../scene/text-width.ts';
import { axisKHz } from '../words/figures.ts';
import { coveragePlotWords, paragraph } from '../words/index.ts';
import { decadeTicks } from './band.ts';
import { frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis } from './frame.ts';

export interface CoveredBand {
  /** "as it is", "with the 200 pF capacitor" … */
  readonly label: string;
  readonly lowest: number;
  readonly highest: number;
  /** Where each end may well lie. */
  readonly lowestRange?: readonly [number, number];
  readonly highestRange?: readonly [number, number];
}

export interface CoveragePlot {
  readonly bands: readonly CoveredBand[];
  readonly stations: readonly { readonly name: string; readonly frequency: number }[];
  /** What is drawn, Hz; default round bands and stations. */
  readonly span?: readonly [number, number];
}

/** Broadcast bands of Region 1, Hz (ITU Radio Regulations, article 5). */
const BROADCAST = [
  { name: 'longWave', from: 148.5e3, to: 283.5e3 },
  { name: 'mediumWave', from: 526.5e3, to: 1606.5e3 },
] as const;

/** Stretches between bands that none covers, Hz. */
function gapsBetween(bands: readonly CoveredBand[]): (readonly [number, number])[] {
  const order = [...bands].sort((a, b) => a.lowest - b.lowest);
  const gaps: (readonly [number, number])[] = [];
  let reached = order[0]?.highest ?? 0;
  for (const band of order.slice(1)) {
    if (band.lowest > reached) gaps.push([reached, band.lowest]);
    reached = Math.max(reached, band.highest);
  }
  return gaps;
}

const covers = (band: CoveredBand, f: number): boolean => f >= band.lowest && f <= band.highest;

function coverageText({ bands, stations }: CoveragePlot): string {
  const gaps = gapsBetween(bands);
  const missed = stations.filter((s) => !bands.some((b) => covers(b, s.frequency)));
  return paragraph([
    ...bands.map((b) =>
      coveragePlotWords.range(
        bands.length > 1 ? b.label : undefined,
        b.lowest,
        b.highest,
        b.lowestRange,
        b.highestRange,
      ),
    ),
    ...(gaps.length > 0 ? [coveragePlotWords.gaps(gaps)] : []),
    missed.length === 0 ? coveragePlotWords.allInRange : coveragePlotWords.outOfRange(missed),
  ]);
}

const ROW = 46;

/**
 * Bars of what the set covers, their ends with their spread, the broadcast bands, and the stations.
 * @param data ends of what is covered, Hz, with their spread
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function coverage(data: CoveragePlot, size: PlotSize = {}): Scene {
  const { bands, stations } = data;
  const all = [
    ...bands.flatMap((b) => [b.lowest, b.highest, ...(b.lowestRange ?? []), ...(b.highestRange ?? [])]),
    ...stations.map((s) => s.frequency),
  ];
  const span = data.span ?? (all.length > 0 ? [Math.min(...all) / 1.06, Math.max(...all) * 1.06] : [150e3, 1600e3]);
  const rows = bands.length * ROW;
  // Names of stations below the bars, in as many rows as they need.
  const trial = frameOf({ ...size, height: 400 }, { left: 12, right: 12 });
  const x = scaleLog(span, [trial.box.x, trial.box.x + trial.box.w]);
  const barsTop = 34;
  const namesTop = barsTop + rows + 10;
  const shown = stations.filter((s) => s.frequency >= span[0] && s.frequency <= span[1]);
  const labels = [...shown]
    .sort((a, b) => a.frequency - b.frequency)
    .map((s): Label => {
      const px = x(s.frequency);
      return {
        item: {
          text: shorten(s.name, PLOT_LETTERS, 150),
          size: PLOT_LETTERS,
          sits: 'middle',
          role: bands.some((b) => covers(b, s.frequency)) ? 'ink' : 'warning',
        },
        places: Array.from({ length: 12 }, (_, row) => namesTop + 14 + row * 16).flatMap((py) => [
          { at: [px, py] as Point, anchor: 'middle' as const },
          { at: [px - 3, py] as Point, anchor: 'start' as const },
          { at: [px + 3, py] as Point, anchor: 'end' as const },
        ]),
      };
    });
  const placed = placeLabels(labels, { x: 2, y: namesTop, w: trial.width - 4, h: 1e4 }, [], 3);
  const namesBottom = Math.max(namesTop + 4, ...placed.items.map((t) => t.at[1] + 9));
  const frame = frameOf({ ...size, height: namesBottom + 38 }, { left: 12, right: 12, top: barsTop });
  const floor = frame.box.y + frame.box.h;
  const items: Item[] = [];
  for (const band of BROADCAST) {
    const [a, b] = [Math.max(band.from, span[0]), Math.min(band.to, span[1])];
    if (!(b > a)) continue;
    items.push(rect(x(a), barsTop - 8, x(b) - x(a), rows + 8, { fill: 'card' }));
    const words = shorten(coveragePlotWords[band.name], PLOT_LETTERS, x(b) - x(a) - 4);
    if (words.length > 3)
      items.push(text([(x(a) + x(b)) / 2, 18], words, PLOT_LETTERS, { anchor: 'middle', role: 'soft', italic: true }));
  }
  items.push(
    ...xAxis(frame, x, { unit: 'kHz', format: axisKHz, ticks: decadeTicks(span), grid: false }),
    ...bands.flatMap((band, i) => barOf(band, x, barsTop + i * ROW, frame.width)),
    ...gapsBetween(bands).flatMap(([a, b]) => gapOf(x(a), x(b), barsTop + rows - 8, coveragePlotWords.gap(a, b))),
  );
  // Leaders from bar to name, and from name to axis.
  let k = 0;
  [...shown]
    .sort((a, b) => a.frequency - b.frequency)
    .forEach((s, i) => {
      const inReach = bands.some((b) => covers(b, s.frequency));
      const name = placed.placed[i] ? placed.items[k++] : undefined;
      const px = x(s.frequency);
      const title = coveragePlotWords.mark(s, inReach);
      const role = inReach ? 'ink' : 'warning';
      bands.forEach((band, row) => {
        const y = barsTop + row * ROW + 18;
        if (covers(band, s.frequency))
          items.push(line([px, y - 3], [px, y + 19], { stroke: 'ink', width: 1.5, title }));
      });
      items.push(
        line([px, namesTop - 12], [px, name ? name.at[1] - 7 : namesTop], { stroke: role, width: 1, title }),
        line([px, floor - 5], [px, floor], { stroke: role, width: 1 }),
      );
    });
  const rims = placed.items.map((t) => ({ ...t, rim: true }));
  return plotScene(frame, coveragePlotWords.title, coverageText(data), [...items, ...rims]);
}

function barOf(band: CoveredBand, x: (f: number) => number, top: number, width: number): Item[] {
  const [a, b] = [x(band.lowest), x(band.highest)];
  const height = 16;
  const y = top + 18;
  const words = shorten(coveragePlotWords.bar(band.label, band.lowest, band.highest), PLOT_LETTERS, width - 8);
  const start = Math.max(4, Math.min(a, width - 4 - textWidth(words, PLOT_LETTERS, true)));
  const items: Item[] = [
    text([start, top + 9], words, PLOT_LETTERS, { bold: true, rim: true }),
    rect(a, y, b - a, height, { fill: 'copper', radius: 2 }),
  ];
  for (const range of [band.lowestRange, band.highestRange]) {
    if (!range) continue;
    const [c, d] = [x(range[0]), x(range[1])];
    items.push(
      rect(c, y + height / 2 - 5, Math.max(1, d - c), 10, { fill: 'paper', stroke: 'copper', width: 1, opacity: 0.85 }),
    );
  }
  return items;
}

function gapOf(a: number, b: number, y: number, words: string): Item[] {
  const named = b - a > 34;
  return [
    line([a, y], [b, y], { stroke: 'warning', dash: [3, 3], title: words }),
    ...[a, b].map((end) => line([end, y - 4], [end, y + 4], { stroke: 'warning' })),
    ...(named
      ? [
          text([(a + b) / 2, y], coveragePlotWords.gapLabel, PLOT_LETTERS, {
            anchor: 'middle',
            sits: 'middle',
            role: 'warning',
            rim: true,
          }),
        ]
      : []),
  ];
}

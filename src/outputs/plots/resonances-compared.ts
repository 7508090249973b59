import { scaleLinear } from 'd3-scale';
import type { ResonanceCurve } from '../../engine/reception/curves.ts';
import type { ComparedSets } from '../../engine/vary/compare-sets.ts';
import { line, polyline } from '../scene/build.ts';
import { boxesAlong, type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { shorten } from '../scene/text-width.ts';
import { axisKHz, wholeDB } from '../words/figures.ts';
import { axisNames, paragraph, setsPlotWords as texts } from '../words/index.ts';
import { drawable } from './figures.ts';
import { frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';
import { type PlotReadout, readPlaces, SAME_PLACE, valueBetween } from './read-off.ts';
import { MOST_SETS, placesAbove, SET_LOOKS } from './set-looks.ts';

/** Resonance curves of several sets, each tuned to the same station. */
export interface ResonancesCompared {
  readonly station: { readonly name: string; readonly frequency: number };
  /** At most four; of a set that does not tune to the station no points. Hz and dB, rising frequency. */
  readonly sets: readonly {
    readonly name: string;
    /** −3 dB, Hz. */
    readonly bandwidth: number;
    readonly points?: readonly { readonly frequency: number; readonly level: number }[];
  }[];
  /** Others within the plot are marked. */
  readonly neighbours?: readonly { readonly name: string; readonly frequency: number }[];
}

/**
 * What the curves of compared sets are drawn from.
 * @param compared from `compareSets`
 * @param curves from `comparedCurves`, of the same
 */
export const resonancesOf = (
  { sets }: ComparedSets,
  curves: readonly (ResonanceCurve | undefined)[],
): ResonancesCompared => ({
  station: sets[0].station,
  sets: sets.map(({ set, station }, i) => ({
    name: set.name,
    bandwidth: station.bandwidth,
    points: curves[i]?.points,
  })),
  neighbours: sets[0].set.place.stations,
});

/** Deeper is not drawn, dB. */
const DEEPEST = -80;

/** The curves as sentences: which set attenuates what. */
const resonancesText = ({ station, sets }: ResonancesCompared): string =>
  paragraph([
    texts.resonances(station),
    ...sets.map(({ name, bandwidth, points }, i) =>
      points ? texts.bandwidth(i, name, bandwidth) : texts.doesNotTune(i, name),
    ),
  ]);

/** The curves relative to their own tops, and where they lie. */
function layoutOf(given: ResonancesCompared, size: PlotSize) {
  const frame = frameOf(size, { top: 46 });
  const { box } = frame;
  const curves = given.sets.slice(0, MOST_SETS).map(({ name, points = [] }, i) => {
    const levels = points.map(({ level }) => drawable(level));
    const top = Math.max(...levels);
    return { name, i, points: points.map(({ frequency }, k) => ({ frequency, level: levels[k] - top })) };
  });
  const all = curves.flatMap(({ points }) => points);
  if (all.length === 0) return { frame, curves };
  const ends = [Math.min(...all.map((p) => p.frequency)), Math.max(...all.map((p) => p.frequency))];
  const x = scaleLinear(ends, [box.x, box.x + box.w]);
  return { frame, curves, drawn: { all, ends, x } };
}

/**
 * What the curves say at each pixel along the plot: the level of each set there.
 * @param given as of `resonancesCompared`
 * @param size as of the plot
 * @returns undefined where no set tunes to the station
 */
export function resonancesReadout(given: ResonancesCompared, size: PlotSize = {}): PlotReadout | undefined {
  const { frame, curves, drawn } = layoutOf(given, size);
  if (!drawn) return undefined;
  const { box } = frame;
  const { x } = drawn;
  const stations = [given.station, ...(given.neighbours ?? [])];
  const places = readPlaces(
    box,
    stations.map(({ frequency }) => x(frequency)),
  );
  const lines = curves.map(({ points }) => points.map(({ frequency, level }) => [frequency, level] as const));
  return {
    box,
    places,
    at(index) {
      const frequency = x.invert(places[index]);
      const levels = lines.map((line, i) => {
        const level = valueBetween(line, frequency);
        return level === undefined ? texts.noLevelOf(i) : texts.levelOf(i, level);
      });
      const here = stations.filter((one) => Math.abs(x(one.frequency) - places[index]) < SAME_PLACE);
      return texts.readOff(frequency, levels, [...new Set(here.map(({ name }) => name))]);
    },
  };
}

/**
 * Resonance curves of several sets in one plot, each relative to its own top, its letter and name on the line.
 * @param given frequencies (Hz), levels (dB), at most four sets
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function resonancesCompared(given: ResonancesCompared, size: PlotSize = {}): Scene {
  const { station, neighbours = [] } = given;
  const { frame, curves, drawn } = layoutOf(given, size);
  const { box } = frame;
  const title = texts.resonancesTitle(station.frequency);
  if (!drawn) return plotScene(frame, title, resonancesText(given), []);
  const { all, ends, x } = drawn;
  const lowest = Math.floor(Math.min(...all.map((p) => p.level)) / 10) * 10;
  const floor = Math.max(DEEPEST, Math.min(-20, lowest));
  const y = scaleLinear([floor, 3], [box.y + box.h, box.y]);
  const at = ({ frequency, level }: (typeof all)[number]): Point => [x(frequency), y(Math.max(floor, level))];
  const lines = curves.map(({ points }) => points.map(at));
  const others = neighbours.filter(({ frequency: f }) => f > ends[0] && f < ends[1] && f !== station.frequency);
  const items: Item[] = [
    ...xAxis(frame, x, { unit: 'kHz', format: axisKHz }),
    ...yAxis(frame, y, { name: axisNames.level, unit: 'dB', format: wholeDB }),
    line([box.x, y(-3)], [box.x + box.w, y(-3)], { stroke: 'soft', width: 1, title: texts.halfPower }),
    ...[station, ...others].map(({ frequency }) =>
      line([x(frequency), box.y], [x(frequency), box.y + box.h], { stroke: 'soft', width: 1, dash: [2, 3] }),
    ),
    ...lines.flatMap((points, i) => (points.length > 1 ? [polyline(points, SET_LOOKS[i])] : [])),
  ];
  const taken = lines.flatMap((points) => boxesAlong(points, 4));
  const names = placeLabels(
    curves.flatMap(({ name, i, points }) => (points.length > 1 ? [nameOf({ name, i, line: lines[i] })] : [])),
    box,
    taken,
  );
  const lane = { x: 0, y: 14, w: frame.width, h: box.y - 14 };
  const stations = placeLabels(
    [station, ...others].map((one): Label => {
      const isTuned = one === station;
      return {
        item: { text: one.name, size: PLOT_LETTERS, role: isTuned ? 'copper' : 'ink', bold: isTuned },
        shorter: [shorten(one.name, PLOT_LETTERS, 90)],
        places: placesAbove([x(one.frequency), box.y]),
      };
    }),
    lane,
    [{ x: 0, y: box.y - 20, w: 66, h: 14 }],
  );
  return plotScene(frame, title, resonancesText(given), [...items, ...names.items, ...stations.items]);
}

/** The name of a set along its curve: where it stands apart from the others is found by trying. */
function nameOf({
  name,
  i,
  line,
}: {
  readonly name: string;
  readonly i: number;
  readonly line: readonly Point[];
}): Label {
  const shares = [0.94, 0.06, 0.88, 0.12, 0.8, 0.2, 0.72, 0.28, 0.65, 0.35, 0.6, 0.4];
  return {
    item: {
      text: texts.setLabel(i, name),
      size: PLOT_LETTERS,
      role: SET_LOOKS[i].stroke,
      bold: true,
      sits: 'middle',
      rim: true,
    },
    shorter: [texts.setLabel(i, shorten(name, PLOT_LETTERS, 80)), texts.setLetter(i)],
    places: shares.flatMap((share) => {
      const [px, py] = line[Math.round(share * (line.length - 1))];
      const outward = share > 0.5 ? 'start' : 'end';
      const inward = share > 0.5 ? 'end' : 'start';
      return [-10, 10, -20, 20].flatMap((dy) => [
        { at: [px + (share > 0.5 ? 6 : -6), py + dy] as Point, anchor: outward } as const,
        { at: [px + (share > 0.5 ? -6 : 6), py + dy] as Point, anchor: inward } as const,
      ]);
    }),
    must: true,
  };
}

import { scaleLog } from 'd3-scale';
import type { Dial } from '../../engine/reception/path/types.ts';
import { isHeard } from '../../engine/reception/verdict.ts';
import type { ComparedSets } from '../../engine/vary/compare-sets.ts';
import { type Box, textBoxes } from '../scene/boxes.ts';
import { circle, line, text } from '../scene/build.ts';
import { type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Scene } from '../scene/scene.ts';
import { shorten, textWidth } from '../scene/text-width.ts';
import { axisKHz } from '../words/figures.ts';
import { paragraph, setsPlotWords as texts, verdictWords } from '../words/index.ts';
import { frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis } from './frame.ts';
import { type PlotReadout, readPlaces, SAME_PLACE, valueBetween } from './read-off.ts';
import { MOST_SETS, placesAbove, SET_LOOKS } from './set-looks.ts';

/** Dials of several sets at one place. */
export interface DialsCompared {
  /** At most four. */
  readonly sets: readonly { readonly name: string; readonly dial: Dial }[];
  /** Of the place, in the order of the dials' stations. */
  readonly stations: readonly { readonly name: string; readonly frequency: number }[];
  /** Index of the station in focus. */
  readonly chosen?: number;
}

/** What the dials of compared sets are drawn from. @param compared from `compareSets` */
export const dialsOf = ({ sets }: ComparedSets): DialsCompared => ({
  sets: sets.map(({ set, dial }) => ({ name: set.name, dial })),
  stations: sets[0].set.place.stations,
  chosen: sets[0].station.index,
});

const ROW = 54;
/** Above the first row: names of stations; below the last one the axis. */
const [ABOVE, BELOW] = [44, 44];
/** From the top of a row to its scale. */
const SCALE_AT = 26;
/** Names of stations are shortened to this. */
const NAME_ROOM = 110;

const dialsText = ({ sets, stations }: DialsCompared): string =>
  paragraph(
    sets.map(({ name, dial }, i) =>
      texts.dial(
        { index: i, name, lowest: dial.lowest, highest: dial.highest },
        dial.stations.flatMap(({ place, verdict }, k) =>
          place ? [texts.onDial(stations[k], place.scale, verdictWords[verdict])] : [],
        ),
      ),
    ),
  );

/** Where a reading of the scale lies, Hz; undefined off its ends. */
function frequencyAt({ points }: Dial, degrees: number): number | undefined {
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a.scale !== b.scale && (degrees - a.scale) * (degrees - b.scale) <= 0)
      return a.frequency + ((b.frequency - a.frequency) * (degrees - a.scale)) / (b.scale - a.scale);
  }
  return undefined;
}

function layoutOf(given: DialsCompared, size: PlotSize) {
  const sets = given.sets.slice(0, MOST_SETS);
  const height = ABOVE + sets.length * ROW + BELOW;
  const frame = frameOf({ ...size, height }, { left: 20, right: 20, top: ABOVE, bottom: BELOW });
  const { box } = frame;
  const lowest = Math.min(...sets.map(({ dial }) => dial.lowest));
  const highest = Math.max(...sets.map(({ dial }) => dial.highest));
  const x = highest > lowest ? scaleLog([lowest, highest], [box.x, box.x + box.w]) : undefined;
  return { sets, frame, lowest, highest, x };
}

/**
 * What the dials say at each pixel along the plot: the reading of each scale there, and the stations.
 * @param given as of `dialsCompared`
 * @param size as of the plot
 * @returns undefined where no set has a range
 */
export function dialsReadout(given: DialsCompared, size: PlotSize = {}): PlotReadout | undefined {
  const { sets, frame, x } = layoutOf(given, size);
  if (!x) return undefined;
  const places = readPlaces(
    frame.box,
    given.stations.map(({ frequency }) => x(frequency)),
  );
  const scales = sets.map(({ dial }) =>
    dial.points.map(({ frequency, scale }) => [frequency, scale] as const).sort(([a], [b]) => a - b),
  );
  return {
    box: frame.box,
    places,
    at(index) {
      const frequency = x.invert(places[index]);
      const readings = scales.map((points, i) => texts.scaleOf(i, valueBetween(points, frequency)));
      const here = given.stations.filter((one) => Math.abs(x(one.frequency) - places[index]) < SAME_PLACE);
      return texts.readOff(
        frequency,
        readings,
        here.map(({ name }) => name),
      );
    },
  };
}

/**
 * The scales of several sets one below the other on one axis of frequency: what each covers, where its degrees lie, and
 * the stations on it, filled where they are heard.
 * @param given dials (Hz, degrees) of at most four sets, and the stations
 * @param size px; the height follows from the number of sets
 * @returns a scene, px
 */
export function dialsCompared(given: DialsCompared, size: PlotSize = {}): Scene {
  const { stations, chosen } = given;
  const { sets, frame, lowest, highest, x } = layoutOf(given, size);
  const { box } = frame;
  const title = texts.dialsTitle;
  if (!x) return plotScene(frame, title, dialsText(given), []);
  const items: Item[] = [...xAxis(frame, x, { unit: 'kHz', format: axisKHz, ticks: roundTicks(lowest, highest) })];
  const within = stations.flatMap((one, index) =>
    one.frequency >= lowest && one.frequency <= highest ? [{ ...one, index }] : [],
  );
  // The station in focus has its name first, then those that the first set hears.
  const order = [...within].sort(
    (a, b) =>
      Number(b.index === chosen) - Number(a.index === chosen) ||
      Number(isHeard(sets[0].dial.stations[b.index].verdict)) - Number(isHeard(sets[0].dial.stations[a.index].verdict)),
  );
  const rows = sets.flatMap((set, i) => rowOf(set, i, { x, y: box.y + i * ROW, stations: within, chosen }));
  const words = textBoxes(rows).map((one) => one.box);
  for (const { index, frequency } of within) {
    const look = { stroke: index === chosen ? 'copper' : 'soft', width: 1, dash: [2, 3] } as const;
    const px = x(frequency);
    for (const [from, to] of clearOf(px, [box.y, box.y + box.h], words)) items.push(line([px, from], [px, to], look));
  }
  items.push(...rows);
  const names = placeLabels(
    order.map(
      ({ name, frequency, index }): Label => ({
        item: {
          text: name,
          size: PLOT_LETTERS,
          role: index === chosen ? 'copper' : 'ink',
          bold: index === chosen,
        },
        shorter: [shorten(name, PLOT_LETTERS, NAME_ROOM), shorten(name, PLOT_LETTERS, 60)],
        places: placesAbove([x(frequency), box.y]),
        must: index === chosen,
      }),
    ),
    { x: 0, y: 0, w: frame.width, h: box.y },
    [],
    6,
  );
  return plotScene(frame, title, dialsText(given), [...items, ...names.items]);
}

/** Stretches of an upright line between the words that stand in its way. */
function clearOf(x: number, [top, bottom]: readonly [number, number], words: readonly Box[]): [number, number][] {
  const stretches: [number, number][] = [];
  let from = top;
  for (const box of words.filter((one) => x > one.x - 3 && x < one.x + one.w + 3).sort((a, b) => a.y - b.y)) {
    if (box.y > from) stretches.push([from, box.y]);
    from = Math.max(from, box.y + box.h);
  }
  if (bottom > from) stretches.push([from, bottom]);
  return stretches;
}

interface Row {
  readonly x: (frequency: number) => number;
  /** Of its top. */
  readonly y: number;
  readonly stations: readonly { readonly name: string; readonly frequency: number; readonly index: number }[];
  readonly chosen?: number;
}

function rowOf({ name, dial }: DialsCompared['sets'][number], i: number, { x, y, stations, chosen }: Row): Item[] {
  const base = y + SCALE_AT;
  const { stroke } = SET_LOOKS[i];
  const [from, to] = [x(dial.lowest), x(dial.highest)];
  const items: Item[] = [
    text([from, y + 13], texts.setLabel(i, shorten(name, PLOT_LETTERS, 260)), PLOT_LETTERS, {
      role: stroke,
      bold: true,
      rim: true,
    }),
    line([from, base], [to, base], { stroke, width: 2, title: texts.covers(dial.lowest, dial.highest) }),
  ];
  let last = Number.NEGATIVE_INFINITY;
  const marks = degreesOf(dial).sort((a, b) => a.frequency - b.frequency);
  for (const { degrees, frequency, isMajor } of marks) {
    const px = x(frequency);
    items.push(line([px, base], [px, base + (isMajor ? 6 : 3)], { stroke: 'soft', width: 1 }));
    const label = texts.degrees(degrees);
    if (!isMajor || px - last < textWidth(label, PLOT_LETTERS) + 6) continue;
    last = px;
    items.push(text([px, base + 9], label, PLOT_LETTERS, { anchor: 'middle', sits: 'top', role: 'soft', rim: true }));
  }
  for (const { name: station, frequency, index } of stations) {
    const { place, verdict } = dial.stations[index];
    if (!place) continue;
    const role = index === chosen ? 'copper' : 'ink';
    items.push(
      circle([x(frequency), base], 4, {
        stroke: role,
        fill: isHeard(verdict) ? role : 'paper',
        width: 1.5,
        title: texts.onDial({ name: station, frequency }, place.scale, verdictWords[verdict]),
      }),
    );
  }
  return items;
}

/** Every ten degrees of a scale, every thirty with its figure. */
function degreesOf(dial: Dial): { degrees: number; frequency: number; isMajor: boolean }[] {
  const scales = dial.points.map(({ scale }) => scale);
  const [first, last] = [Math.min(...scales), Math.max(...scales)];
  const marks: { degrees: number; frequency: number; isMajor: boolean }[] = [];
  for (let degrees = Math.ceil(first / 10) * 10; degrees <= last; degrees += 10) {
    const frequency = frequencyAt(dial, degrees);
    if (frequency !== undefined) marks.push({ degrees, frequency, isMajor: degrees % 30 === 0 });
  }
  return marks;
}

/** Every 100 kHz, or every 20 kHz on a short axis of long wave. */
function roundTicks(lowest: number, highest: number): number[] {
  const step = lowest < 300e3 && highest / lowest < 3 ? 20e3 : 100e3;
  const ticks: number[] = [];
  for (let f = Math.ceil(lowest / step) * step; f <= highest; f += step) ticks.push(f);
  return ticks;
}

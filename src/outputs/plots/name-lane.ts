import { type Box, overlap, textBox } from '../scene/boxes.ts';
import { line } from '../scene/build.ts';
import type { Item, Point, TextItem } from '../scene/scene.ts';
import { shorten } from '../scene/text-width.ts';
import { PLOT_LETTERS } from './frame.ts';

export interface LaneName {
  readonly text: string;
  /** What it names, below the lane. */
  readonly head: Point;
  /** In copper and bold, and shortened rather than left out. */
  readonly isChosen: boolean;
}

/** From one row of the lane to the next, px. */
const ROW = 15;
/** Height of the lane above a plot's box, px. */
export const LANE = 2 * ROW + 4;
/** How much the longer way to the upper row counts, in names covered. */
const UPPER = 0.25;
/** Between two names, px. */
const GAP = 5;
/** A chosen name that has to be shorter has this room, px. */
const SHORT = 80;

/**
 * Names in a lane above a plot, in two rows at most, each joined to what it names: no curve runs through them.
 * @param names those first that are surest of their room; what finds none is left out
 * @param box of the plot; the lane stands above it
 * @param width of the whole plot, px
 * @param taken what else stands in the lane
 */
export function nameLane(names: readonly LaneName[], box: Box, width: number, taken: readonly Box[] = []): Item[] {
  const boxes: Box[] = [...taken];
  const leaders: Box[] = [];
  const items: Item[] = [];
  for (const [i, { text, head, isChosen }] of names.entries()) {
    const words = isChosen ? [text, shorten(text, PLOT_LETTERS, SHORT)] : [text];
    const toCome = names.slice(i + 1).map((name) => name.head[0]);
    for (const place of words.flatMap((shown) => leastInTheWay(placesFor(shown, head, isChosen, box), toCome, box))) {
      const around = textBox(place);
      const leader = { x: head[0] - 1, y: around.y + around.h, w: 2, h: head[1] - around.y - around.h };
      const isClear =
        around.x >= 2 &&
        around.x + around.w <= width - 2 &&
        !boxes.some((other) => overlap(widened(around), other) || overlap(leader, other)) &&
        !leaders.some((other) => overlap(around, other, 2));
      if (!isClear) continue;
      boxes.push(around);
      leaders.push(leader);
      items.push(line(head, [head[0], around.y + around.h], { stroke: 'soft', width: 1 }), place);
      break;
    }
  }
  return items;
}

const widened = ({ x, w, ...rest }: Box): Box => ({ ...rest, x: x - GAP, w: w + 2 * GAP });

/** Where the lower row covers what is named later, that has no room left in either; below the upper row it still has. */
function leastInTheWay(places: readonly TextItem[], toCome: readonly number[], box: Box): TextItem[] {
  const cost = (place: TextItem): number => {
    const { x, w } = textBox(place);
    const covered = toCome.filter((one) => one > x - GAP && one < x + w + GAP).length;
    return place.at[1] > box.y - ROW ? covered : UPPER + covered / 2;
  };
  return [...places].sort((a, b) => cost(a) - cost(b));
}

/** The lower row first; above what it names, or as far to a side as it still stands over it. */
function placesFor(words: string, [x]: Point, isChosen: boolean, box: Box): TextItem[] {
  const look = { kind: 'text', text: words, size: PLOT_LETTERS, sits: 'middle', bold: isChosen } as const;
  const role = isChosen ? 'copper' : 'ink';
  const { w } = textBox({ ...look, role, at: [0, 0] });
  return [1, 2].flatMap((row) =>
    [0.5, 0, 1, 0.25, 0.75].map(
      (share): TextItem => ({ ...look, role, anchor: 'start', at: [x - share * w, box.y - row * ROW + 4] }),
    ),
  );
}

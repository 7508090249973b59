import { type Box, inside, overlap, textBox } from '../../scene/boxes.ts';
import { group, line, rect, text } from '../../scene/build.ts';
import type { Item, Point, TextItem } from '../../scene/scene.ts';

export interface Tile {
  /** Drawn from the tile's own upper left corner, mm. */
  readonly items: readonly Item[];
  readonly w: number;
  readonly h: number;
  readonly row: number;
  readonly column: number;
}

/** Half the side of a mark to join by, mm. */
const JOIN = 2.2;

/** By how much neighbouring tiles show the same, mm. */
const OVERLAP = 12;

/** Shapes on one side, words on the other, all in the outermost coordinates. */
function apart(items: readonly Item[], at: Point = [0, 0], turn = 0, scale = 1): { shapes: Item[]; words: TextItem[] } {
  const shapes: Item[] = [];
  const words: TextItem[] = [];
  const a = (turn * Math.PI) / 180;
  const put = ([x, y]: Point): Point => [
    at[0] + scale * (x * Math.cos(a) - y * Math.sin(a)),
    at[1] + scale * (x * Math.sin(a) + y * Math.cos(a)),
  ];
  for (const item of items) {
    if (item.kind === 'text')
      words.push({ ...item, at: put(item.at), size: item.size * scale, turn: (item.turn ?? 0) + turn });
    else if (item.kind === 'group' && !item.clip) {
      const inner = apart(item.items, put(item.move ?? [0, 0]), turn + (item.turn ?? 0), scale * (item.scale ?? 1));
      shapes.push(...inner.shapes);
      words.push(...inner.words);
    } else shapes.push(group([item], { move: at, turn, scale }));
  }
  return { shapes, words };
}

/**
 * A drawing at full size cut into tiles that fit a page, with marks to join them by. Every word stays whole: it stands on
 * the tiles that have room for all of it, and is moved where none has.
 */
export function tiled(items: readonly Item[], size: { w: number; h: number }, room: { w: number; h: number }): Tile[] {
  const cuts = (length: number, most: number): { at: number; length: number }[] => {
    if (length <= most) return [{ at: 0, length }];
    const n = Math.ceil((length - OVERLAP) / (most - OVERLAP));
    const step = (length - OVERLAP) / n;
    return Array.from({ length: n }, (_, i) => ({ at: i * step, length: step + OVERLAP }));
  };
  const columns = cuts(size.w, room.w);
  const rows = cuts(size.h, room.h);
  if (columns.length === 1 && rows.length === 1) return [{ items, ...size, row: 0, column: 0 }];
  const { shapes, words } = apart(items);
  const windows = rows.flatMap((r) => columns.map((c) => ({ x: c.at, y: r.at, w: c.length, h: r.length })));
  const shown = windows.map((w) => words.filter((t) => inside(textBox(t), w)));
  for (const t of words) {
    if (shown.some((list) => list.includes(t))) continue;
    const box = textBox(t);
    const k = windows.findIndex(
      (w) => box.x + box.w / 2 < w.x + w.w && box.y + box.h / 2 < w.y + w.h && box.x + box.w / 2 >= w.x,
    );
    const w = windows[Math.max(0, k)];
    const dx = Math.max(w.x + 0.5 - box.x, Math.min(0, w.x + w.w - 0.5 - box.x - box.w));
    const dy = Math.max(w.y + 0.5 - box.y, Math.min(0, w.y + w.h - 0.5 - box.y - box.h));
    shown[Math.max(0, k)].push({ ...t, at: [t.at[0] + dx, t.at[1] + dy] });
  }
  const joins = marks(windows, columns.length, shown);
  return windows.map((w, k): Tile => {
    const move: Point = [-w.x, -w.y];
    return {
      w: w.w,
      h: w.h,
      row: Math.floor(k / columns.length),
      column: k % columns.length,
      items: [
        group([group(shapes, { move })], { clip: { x: 0, y: 0, w: w.w, h: w.h } }),
        group([...shown[k], ...joins.filter((r) => r.tiles.includes(k)).flatMap((r) => r.items)], { move }),
      ],
    };
  });
}

interface Join {
  readonly tiles: readonly number[];
  readonly items: readonly Item[];
}

/** Two marks in every overlap, the same on both tiles, where no words stand: laid over each other they are one. */
function marks(windows: readonly Box[], columns: number, shown: readonly (readonly TextItem[])[]): Join[] {
  const joins: Join[] = [];
  const taken: Box[] = [];
  const pair = (a: number, b: number, name: string): void => {
    const [p, q] = [windows[a], windows[b]];
    const shared: Box = {
      x: Math.max(p.x, q.x),
      y: Math.max(p.y, q.y),
      w: Math.min(p.x + p.w, q.x + q.w) - Math.max(p.x, q.x),
      h: Math.min(p.y + p.h, q.y + q.h) - Math.max(p.y, q.y),
    };
    const words = [...shown[a], ...shown[b]].map(textBox);
    const about = (at: Point): Box => ({ x: at[0] - 4, y: at[1] - 4.5, w: 13, h: 8.5 });
    const steps = Array.from({ length: 13 }, (_, i) => 0.08 + (0.34 * i) / 12);
    [steps, steps.map((t) => 1 - t)].forEach((choices, side) => {
      const places = choices.map(
        (t): Point =>
          shared.h > shared.w
            ? [shared.x + shared.w / 2, shared.y + shared.h * t]
            : [shared.x + shared.w * t, shared.y + shared.h / 2],
      );
      const free = (at: Point): boolean => ![...words, ...taken].some((w) => overlap(w, about(at), 0.3));
      const at = places.find(free) ?? places[0];
      joins.push({ tiles: [a, b], items: join(at, `${name}${side === 0 ? 'a' : 'b'}`, free(at)) });
      taken.push(about(at));
    });
  };
  windows.forEach((_, k) => {
    const [row, column] = [Math.floor(k / columns) + 1, (k % columns) + 1];
    if (column < columns) pair(k, k + 1, `h${row}${column}`);
    if (k + columns < windows.length) pair(k, k + columns, `v${row}${column}`);
  });
  return joins;
}

/** A square with its diagonals: nobody takes it for a hole to be drilled. */
const join = ([x, y]: Point, name: string, named: boolean): Item[] => [
  rect(x - JOIN, y - JOIN, 2 * JOIN, 2 * JOIN, { stroke: 'ink', width: 0.2 }),
  line([x - JOIN, y - JOIN], [x + JOIN, y + JOIN], { stroke: 'ink', width: 0.15 }),
  line([x - JOIN, y + JOIN], [x + JOIN, y - JOIN], { stroke: 'ink', width: 0.15 }),
  ...(named ? [text([x + 2.6, y - 1.2], name, 2.4, { bold: true, rim: true })] : []),
];

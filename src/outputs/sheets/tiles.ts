import { inside, textBox } from '../scene/boxes.ts';
import { circle, group, line, text } from '../scene/build.ts';
import type { Item, Point, TextItem } from '../scene/scene.ts';

export interface Tile {
  /** Drawn from the tile's own upper left corner, mm. */
  readonly items: readonly Item[];
  readonly w: number;
  readonly h: number;
  readonly row: number;
  readonly column: number;
}

/** By how much neighbouring tiles show the same, mm. */
export const OVERLAP = 12;

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
  return windows.map((w, k): Tile => {
    const [row, column] = [Math.floor(k / columns.length), k % columns.length];
    const move: Point = [-w.x, -w.y];
    return {
      w: w.w,
      h: w.h,
      row,
      column,
      items: [
        group([group(shapes, { move })], { clip: { x: 0, y: 0, w: w.w, h: w.h } }),
        group(shown[k], { move }),
        ...marks(w, row, column, rows.length, columns.length),
      ],
    };
  });
}

/** Rings across the overlaps, half a one on either tile: laid over each other they are one ring and one cross. */
function marks(w: { w: number; h: number }, row: number, column: number, rows: number, columns: number): Item[] {
  const half = OVERLAP / 2;
  const items: Item[] = [];
  const mark = (p: Point, name: string): void => {
    items.push(
      circle(p, 2.2, { stroke: 'ink', width: 0.2 }),
      line([p[0] - 4, p[1]], [p[0] + 4, p[1]], { stroke: 'ink', width: 0.15 }),
      line([p[0], p[1] - 4], [p[0], p[1] + 4], { stroke: 'ink', width: 0.15 }),
      text([p[0] + 2.6, p[1] - 1.2], name, 2.4, { bold: true, rim: true }),
    );
  };
  const name = (r: number, c: number, way: string): string => `${way}${r + 1}${c + 1}`;
  for (const t of [0.2, 0.8]) {
    if (column > 0) mark([half, w.h * t], `${name(row, column - 1, 'h')}${t < 0.5 ? 'a' : 'b'}`);
    if (column < columns - 1) mark([w.w - half, w.h * t], `${name(row, column, 'h')}${t < 0.5 ? 'a' : 'b'}`);
    if (row > 0) mark([w.w * t, half], `${name(row - 1, column, 'v')}${t < 0.5 ? 'a' : 'b'}`);
    if (row < rows - 1) mark([w.w * t, w.h - half], `${name(row, column, 'v')}${t < 0.5 ? 'a' : 'b'}`);
  }
  return items;
}

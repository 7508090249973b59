import { type Box, inside, overlap, textBox } from '../../scene/boxes.ts';
import type { Point, TextItem } from '../../scene/scene.ts';
import { linesCross } from './route.ts';

/** Words at a terminal and the straight leader from them to its dot. mm. */
interface TerminalLabel {
  readonly terminal: string;
  readonly text: TextItem;
  /** From the edge of the words to the middle of the dot. */
  readonly leader: readonly [Point, Point];
}

const LETTERS = 2.2;
/** Clear between words and whatever else they must not touch, mm. */
const GAP = 0.9;
/** A leader keeps this far off the dots of other terminals, mm; dots nearer to each other than twice that excepted. */
const LEADER_CLEAR = 1;
const DISTANCES = [1.6, 2.4, 3.4, 4.6, 5.3, 6.2, 8, 10, 12.5, 15.5, 19, 23, 28];
const DIRECTIONS = 24;

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The point of a box nearest to another point. */
const nearestOf = ({ x, y, w, h }: Box, [px, py]: Point): Point => [
  Math.min(x + w, Math.max(x, px)),
  Math.min(y + h, Math.max(y, py)),
];

/** How far a point is from a straight line between two others. */
function fromLine(p: Point, [a, b]: readonly [Point, Point]): number {
  const length2 = distance(a, b) ** 2;
  const along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length2;
  const t = length2 > 0 ? Math.min(1, Math.max(0, along)) : 0;
  return distance(p, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
}

/** Does a straight line enter a box. */
function lineEnters(line: readonly [Point, Point], { x, y, w, h }: Box): boolean {
  const corners: Point[] = [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ];
  return (
    overlap({ x, y, w, h }, { x: line[0][0], y: line[0][1], w: 0, h: 0 }) ||
    corners.some((c, i) => linesCross(...line, c, corners[(i + 1) % 4]))
  );
}

/** The words round a dot, nearest first, each with its leader. */
function places(terminal: string, words: string, dot: Point): TerminalLabel[] {
  const at = textBox({ kind: 'text', at: [0, 0], text: words, size: LETTERS });
  return DISTANCES.flatMap((d) =>
    Array.from({ length: DIRECTIONS }, (_, i): TerminalLabel => {
      // Below the dot first, then to both sides of that.
      const turn = ((i % 2 === 0 ? i : -i - 1) / 2) * ((2 * Math.PI) / DIRECTIONS);
      const [u, v] = [Math.sin(turn), Math.cos(turn)];
      // The box whose nearest point lies about that far away in that direction.
      const middle: Point = [dot[0] + u * (d + at.w / 2), dot[1] + v * (d + at.h / 2)];
      const box = { x: middle[0] - at.w / 2, y: middle[1] - at.h / 2, w: at.w, h: at.h };
      const text: TextItem = { kind: 'text', at: [box.x - at.x, box.y - at.y], text: words, size: LETTERS };
      return { terminal, text, leader: [nearestOf(box, dot), dot] };
    }),
  );
}

/**
 * Words for terminals, each joined to its own dot by a leader that passes no other dot, crosses no other leader and runs
 * through no other words. Where there is no such place the one that breaks least of this is taken.
 * @param wanted terminals in the order in which they choose, with their words
 * @param dots of all terminals
 * @param words boxes of words that stand already
 * @param marks boxes that words must not cover: holes and dots
 * @param soft boxes that words keep off where there is room: small bodies
 * @param wires boxes along them, which words keep off where there is any room near
 */
export function terminalLabels(
  wanted: readonly { readonly terminal: string; readonly words: string }[],
  dots: ReadonlyMap<string, Point>,
  frame: Box,
  words: readonly Box[],
  marks: readonly Box[],
  soft: readonly Box[],
  wires: readonly Box[],
): TerminalLabel[] {
  const done: TerminalLabel[] = [];
  const taken = [...words];
  for (const { terminal, words } of wanted) {
    const dot = dots.get(terminal)!;
    const foreign = [...dots].filter(([t, p]) => t !== terminal && distance(p, dot) >= 2 * LEADER_CLEAR);
    /** What is wrong with a place; from `most` on it is not looked at further. */
    const faults = ({ text, leader }: TerminalLabel, most: number): number => {
      const box = textBox(text);
      let sum = 0;
      if (!inside(box, frame)) sum += 1e6;
      for (const other of taken) {
        if (sum >= most) return sum;
        if (overlap(box, other, GAP)) sum += 1e4;
        if (lineEnters(leader, other)) sum += 1e3;
      }
      for (const mark of marks) if (overlap(box, mark, GAP / 2)) sum += 1e4;
      for (const [, p] of foreign) if (fromLine(p, leader) < LEADER_CLEAR) sum += 1e3;
      for (const other of done) {
        if (sum >= most) return sum;
        if (linesCross(...leader, ...other.leader)) sum += 1e3;
        if (lineEnters(other.leader, box)) sum += 1e3;
      }
      if (sum >= most) return sum;
      // Rather a somewhat longer leader than words on a wire or nearer to another terminal.
      for (const other of soft) if (overlap(box, other, GAP)) sum += 3;
      for (const other of wires) if (overlap(box, other, GAP / 2)) sum += 200;
      const own = distance(...leader);
      for (const [t, p] of dots) if (t !== terminal && distance(nearestOf(box, p), p) < own) sum += 25;
      return sum + own;
    };
    let best: { label: TerminalLabel; cost: number } | undefined;
    for (const label of places(terminal, words, dot)) {
      // Places come by their distance: none further away can cost less than that.
      if (best && distance(...label.leader) - 1 > best.cost) break;
      const cost = faults(label, best?.cost ?? Number.POSITIVE_INFINITY);
      if (!best || cost < best.cost) best = { label, cost };
    }
    if (!best) continue;
    done.push(best.label);
    taken.push(textBox(best.label.text));
  }
  return done;
}

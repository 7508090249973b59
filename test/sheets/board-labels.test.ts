import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';
import { type Box, overlap, textBox } from '../../src/outputs/scene/boxes.ts';
import type { CircleItem, LineItem, Point, TextItem } from '../../src/outputs/scene/scene.ts';
import { boardLayout } from '../../src/outputs/sheets/board/layout.ts';
import { layoutItems } from '../../src/outputs/sheets/board/layout-drawing.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { someSet } from '../support/random-sets.ts';

/** A dot's radius on the board sheet, mm. */
const DOT = 0.8;

const toPoint = ({ x, y, w, h }: Box, [px, py]: Point): number =>
  Math.hypot(Math.max(x - px, 0, px - x - w), Math.max(y - py, 0, py - y - h));

/** From a point to the nearest point of a leader, mm. */
const fromLine = ([x, y]: Point, { from: [a, b], to: [c, d] }: LineItem): number => {
  const [u, v] = [c - a, d - b];
  const t = Math.min(1, Math.max(0, ((x - a) * u + (y - b) * v) / (u * u + v * v)));
  return Math.hypot(x - a - t * u, y - b - t * v);
};

/** As many points along a leader as leave no label out. */
const along = ({ from, to }: LineItem): Point[] =>
  Array.from({ length: 41 }, (_, i) => [
    from[0] + ((to[0] - from[0]) * i) / 40,
    from[1] + ((to[1] - from[1]) * i) / 40,
  ]);

/** Everything wrong with the labels of a set's board, in words. */
function faults(set: SetDescription): string[] {
  const layout = boardLayout(set, boardParts(set));
  const items = layoutItems(layout);
  const terminals = new Set(layout.placed.flatMap(({ part }) => part.terminals));
  const dots = new Map(
    items
      .filter((i): i is CircleItem => i.kind === 'circle' && terminals.has(i.title ?? ''))
      .map(({ title, centre }) => [title!, centre]),
  );
  const texts = items.filter((i): i is TextItem => i.kind === 'text');
  const leaders = items.filter((i): i is LineItem => i.kind === 'line' && dots.has(i.title ?? ''));
  const points = new Map(leaders.map((leader) => [leader, along(leader)]));
  const wrong: string[] = [];
  const boxes = texts.map((t) => ({ text: t, box: textBox(t) }));
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1))
      if (overlap(a.box, b.box, -0.01)) wrong.push(`“${a.text.text}” lies over “${b.text.text}”`);
    for (const [terminal, dot] of dots)
      if (toPoint(a.box, dot) < DOT) wrong.push(`“${a.text.text}” covers the dot of ${terminal}`);
  });
  for (const { part } of layout.placed) {
    if (part.terminals.length < 2) continue;
    for (const terminal of part.terminals) {
      const label = boxes.find(({ text }) => text.title === terminal);
      const leader = leaders.find(({ title }) => title === terminal);
      if (!label || !leader) {
        wrong.push(`${terminal} has no label with a leader`);
        continue;
      }
      if (!terminal.endsWith(label.text.text)) wrong.push(`${terminal} is called “${label.text.text}”`);
      const own = dots.get(terminal)!;
      if (Math.hypot(leader.to[0] - own[0], leader.to[1] - own[1]) > 0.01)
        wrong.push(`the leader of ${terminal} ends beside its dot`);
      if (toPoint(label.box, leader.from) > 0.01) wrong.push(`the leader of ${terminal} begins away from its words`);
      for (const [other, dot] of dots)
        if (Math.hypot(dot[0] - own[0], dot[1] - own[1]) > 2 * DOT && fromLine(dot, leader) < DOT)
          wrong.push(`the leader of ${terminal} runs over the dot of ${other}`);
      for (const { text, box } of boxes)
        if (text !== label.text && points.get(leader)!.some((p) => toPoint(box, p) <= 0))
          wrong.push(`the leader of ${terminal} runs through “${text.text}”`);
      for (const other of leaders)
        if (other !== leader && points.get(other)!.some((p) => fromLine(p, leader) < 0.1))
          wrong.push(`the leaders of ${terminal} and ${other.title} meet`);
    }
  }
  return wrong;
}

describe('each terminal’s label points to its own dot, and none lies over another', () => {
  test.each(readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json')))('example %s', (file) => {
    const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
    if (!read.ok) throw new Error('does not read');
    expect(faults(read.set)).toEqual([]);
  });

  const sets = fc
    .sample(someSet, { numRuns: 300, seed: 5 })
    .filter((set) => set !== undefined)
    .slice(0, 200);
  test('there are 200 sets by chance', () => expect(sets.length).toBe(200));
  test.each(Array.from({ length: 10 }, (_, i) => 20 * i))('20 of them from no. %i', (first) => {
    for (const set of sets.slice(first, first + 20)) expect(faults(set), JSON.stringify(set.arrangement)).toEqual([]);
  });
});

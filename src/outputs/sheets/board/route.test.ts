import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../scene/scene.ts';
import { type Body, lengthOf, over, routes } from './route.ts';

const board = { width: 150, height: 200 };
const coil: Body = { at: [75, 80], w: 80, h: 40, turn: 0 };
const overAll = (way: readonly Point[], bodies: readonly Body[]): number =>
  way.slice(1).reduce((sum, p, i) => sum + bodies.reduce((all, body) => all + over(way[i], p, body), 0), 0);

describe('a wire over a body', () => {
  it('is as long as its chord', () => {
    expect(over([0, 80], [150, 80], coil)).toBeCloseTo(80, 9);
    expect(over([75, 0], [75, 200], coil)).toBeCloseTo(40, 9);
    expect(over([75, 0], [75, 200], { ...coil, turn: 90 })).toBeCloseTo(80, 9);
    expect(over([75, 80], [75, 200], coil)).toBeCloseTo(20, 9);
    expect(over([0, 59.9], [150, 59.9], coil)).toBe(0);
  });
  it('is the same from either end', () => {
    const point = fc.tuple(fc.double({ min: 0, max: 150, noNaN: true }), fc.double({ min: 0, max: 200, noNaN: true }));
    fc.assert(
      fc.property(point, point, fc.integer({ min: -90, max: 90 }), (a, b, turn) => {
        const there = over(a, b, { ...coil, turn });
        expect(over(b, a, { ...coil, turn })).toBeCloseTo(there, 6);
        expect(there).toBeLessThanOrEqual(Math.hypot(80, 40) + 1e-9);
      }),
    );
  });
});

describe('the way of a wire', () => {
  it('keeps clear of points where others end', () => {
    // Three ends along a coil's edge: a wire along it goes out, past, and in again.
    const ends: Point[] = [
      [45, 100],
      [75, 100],
      [105, 100],
    ];
    const [way] = routes([[ends[0], ends[2]]], [coil], board, ends);
    const least = way.slice(1).map(([x, y], i) => {
      const [a, b] = way[i];
      const t = Math.max(0, Math.min(1, ((75 - a) * (x - a) + (100 - b) * (y - b)) / ((x - a) ** 2 + (y - b) ** 2)));
      return Math.hypot(a + t * (x - a) - 75, b + t * (y - b) - 100);
    });
    expect(Math.min(...least)).toBeGreaterThan(2);
  });

  it('is straight where nothing stands in between', () => {
    expect(
      routes(
        [
          [
            [10, 10],
            [140, 20],
          ],
        ],
        [coil],
        board,
      ),
    ).toEqual([
      [
        [10, 10],
        [140, 20],
      ],
    ]);
  });
  it('goes round what stands in between, no longer than it must, and stays on the board', () => {
    const [way] = routes(
      [
        [
          [60, 40],
          [70, 120],
        ],
      ],
      [coil],
      board,
    );
    expect(way.length).toBe(4);
    expect(overAll(way, [coil])).toBe(0);
    for (const [x, y] of way) expect(x > 0 && y > 0 && x < board.width && y < board.height).toBe(true);
    // Round the nearer side: twice the way to it, and along it.
    expect(lengthOf(way)).toBeLessThan(40 + 45 + 45);
  });
  it('goes past between a body and the edge of the board, and another past its other side, not on the line of the first', () => {
    const wide = { ...coil, w: 140 };
    const wires = Array.from({ length: 2 }, (): [Point, Point] => [
      [20, 40],
      [20, 120],
    ]);
    const ways = routes(wires, [wide], board);
    for (const way of ways) expect(overAll(way, [wide])).toBe(0);
    const sides = ways.map((way) => way.some(([x]) => x < 5) && 'left');
    expect(sides.sort()).toEqual([false, 'left']);
  });
  it('begins and ends where it should, whatever stands about', () => {
    const point = fc.tuple(fc.integer({ min: 3, max: 147 }), fc.integer({ min: 3, max: 197 }));
    const body = fc.record({
      at: point,
      w: fc.integer({ min: 5, max: 60 }),
      h: fc.integer({ min: 5, max: 60 }),
      turn: fc.integer({ min: 0, max: 90 }),
    });
    fc.assert(
      fc.property(point, point, fc.array(body, { maxLength: 5 }), (from, to, bodies) => {
        const [way] = routes([[from, to]], bodies, board);
        expect([way[0], way[way.length - 1]]).toEqual([from, to]);
        const isClear = ([x, y]: Point): boolean =>
          bodies.every(({ at, w, h }) => Math.hypot(x - at[0], y - at[1]) > (w + h) / 2 + 8);
        fc.pre(isClear(from) && isClear(to));
        // Never worse than straight on, with 2 mm to keep clear.
        const wider = bodies.map((one) => ({ ...one, w: one.w + 4, h: one.h + 4 }));
        const straight = [from, to];
        expect(60 * overAll(way, bodies) + lengthOf(way)).toBeLessThanOrEqual(
          60 * overAll(straight, wider) + lengthOf(straight) + 1e-6,
        );
      }),
    );
  });
});

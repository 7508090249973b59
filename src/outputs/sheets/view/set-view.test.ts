import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceSets, exampleSets } from '../../../../test/support/board-report.ts';
import { overlap, textBoxes } from '../../scene/boxes.ts';
import { boardLayout } from '../board/layout.ts';
import { boardParts } from '../board/parts.ts';
import { paintOrder } from './painter.ts';
import { difference, dot, normalOf, type Point3, type Solid, solidOf } from './solid.ts';
import { projection, setView, solidsOf } from './whole-set.ts';

/** Where a ray enters and leaves a solid, as distances along it towards the viewer; undefined where it misses. */
function through({ corners, faces }: Solid, from: Point3, along: Point3): [number, number] | undefined {
  let [enters, leaves] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const face of faces) {
    const ring = face.map((i) => corners[i]);
    const normal = normalOf(ring);
    const [speed, away] = [dot(normal, along), dot(normal, difference(ring[0], from))];
    if (Math.abs(speed) < 1e-12) {
      if (away < 0) return undefined;
    } else if (speed > 0) leaves = Math.min(leaves, away / speed);
    else enters = Math.max(enters, away / speed);
  }
  return leaves > enters + 0.1 ? [enters, leaves] : undefined;
}

/** Pairs painted the wrong way round: along a ray through both, the nearer comes first. Solids that meet are left out. */
function wrong(order: readonly Solid[], toViewer: Point3): string[] {
  const found = new Set<string>();
  for (const solid of order)
    for (const corner of solid.corners) {
      // Rays a little within each solid's corners, where solids that hide each other begin to do so.
      const middle =
        solid.corners[(solid.corners.indexOf(corner) + solid.corners.length / 2 + 1) % solid.corners.length];
      for (const share of [0.05, 0.4]) {
        const from: Point3 = [0, 1, 2].map((i) => corner[i] + share * (middle[i] - corner[i])) as never;
        const hits = order.flatMap((s, i) => {
          const span = through(s, from, toViewer);
          return span ? [{ i, span }] : [];
        });
        for (const a of hits)
          for (const b of hits)
            if (a.span[0] >= b.span[1] - 0.02 && a.i < b.i) found.add(`${order[a.i].tag} before ${order[b.i].tag}`);
      }
    }
  return [...found];
}

describe('the painter', () => {
  test('paints no nearer solid before a farther one that it hides, of boxes and cylinders that stand anywhere', () => {
    const place = fc.integer({ min: 0, max: 5 });
    const body = fc.record({
      kind: fc.constantFrom('box', 'x', 'y', 'z'),
      turn: fc.integer({ min: -45, max: 45 }),
      cell: fc.tuple(place, place, fc.integer({ min: 0, max: 1 })),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(body, { maxLength: 14, selector: ({ cell }) => cell.join() }),
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: 15, max: 75 }),
        (bodies, turn, elevation) => {
          // Each in a cell of its own, 40 mm wide, that holds it however it is turned.
          const solids = bodies.map(({ kind, turn, cell: [x, y, z] }, i) =>
            solidOf(
              kind === 'box'
                ? { kind, from: [-13, -10, 20 * z], to: [13, 10, 20 * z + 18] }
                : kind === 'z'
                  ? { kind: 'cylinder', axis: 'z', from: [0, 0, 20 * z], length: 18, radius: 15 }
                  : {
                      kind: 'cylinder',
                      axis: kind as 'x' | 'y',
                      from: kind === 'x' ? [-16, 0, 20 * z + 9] : [0, -16, 20 * z + 9],
                      length: 32,
                      radius: 9,
                    },
              `${i}`,
              [40 * x, 40 * y],
              turn,
            ),
          );
          const { toViewer } = projection({ turn, elevation });
          const order = paintOrder(solids, toViewer);
          expect(order.length).toBe(solids.length);
          expect(wrong(order, toViewer)).toEqual([]);
        },
      ),
      { numRuns: 60, seed: 3 },
    );
  });

  test('the check finds an order that is wrong', () => {
    const box = (y: number, tag: string) => solidOf({ kind: 'box', from: [0, 0, 0], to: [20, 10, 30] }, tag, [0, y], 0);
    const { toViewer } = projection({ turn: 0, elevation: 30 });
    const [far, near] = [box(0, 'far'), box(15, 'near')];
    expect(wrong([near, far], toViewer)).toEqual(['near before far']);
    expect(wrong([far, near], toViewer)).toEqual([]);
  });
});

describe('the view of a set', () => {
  const sets = [...exampleSets(), ...chanceSets(5).map((set, i): [string, typeof set] => [`chance ${i}`, set])];
  test.each(sets)('%s: painted in order, with every part named and no name over another', (_, set) => {
    const layout = boardLayout(set, boardParts(set));
    for (const turn of [-30, 130]) {
      const { toViewer } = projection({ turn, elevation: 40 });
      const [, ...solids] = solidsOf(layout);
      expect(wrong(paintOrder(solids, toViewer), toViewer)).toEqual([]);
    }
    const scene = setView(layout, { w: 182, h: 78 });
    const names = textBoxes(scene.items);
    expect(names.length).toBe(layout.placed.length);
    names.forEach((a, i) => {
      for (const b of names.slice(i + 1)) expect(overlap(a.box, b.box, -0.01), `${a.text} | ${b.text}`).toBe(false);
      expect(a.box.x).toBeGreaterThanOrEqual(0);
      expect(a.box.x + a.box.w).toBeLessThanOrEqual(182);
    });
  });

  test('a length on the drawing is that of the thing times the scale, along each of its three directions', () => {
    // Axonometry of an upright box seen from a turn of 0: across unshortened, along by the sine, up by the cosine.
    const { flat } = projection({ turn: 0, elevation: 30 });
    expect(flat([100, 0, 0])).toEqual([100, 0]);
    expect(flat([0, 100, 0])[1]).toBeCloseTo(50, 9);
    expect(flat([0, 0, 100])[1]).toBeCloseTo(-86.602540378, 6);
  });
});

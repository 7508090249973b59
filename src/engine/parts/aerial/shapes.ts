import { demand, demandWithin, type SizeId } from '../../facts/impossible-values.ts';
import type { Metres } from '../../units/quantities.ts';

/** Along, across, up from the ground below the origin; metres. */
export type WirePoint = readonly [number, number, number];

interface Common {
  /** Bare diameter of the wire, 0.01 mm to 100 mm. */
  readonly wire: { readonly diameter: Metres };
}

/** How a wire aerial hangs. `height` is of the top above ground, `base` of the lead-in's foot, where the set is. */
export type WireAerialShape = Common &
  (
    | {
        readonly shape: 'inverted-L' | 'T';
        readonly height: Metres;
        /** Of the top wire; of a T, from end to end. */
        readonly length: Metres;
        readonly base: Metres;
        /** Top wires side by side, default 1, and the distance between neighbours, default 0.6 m. */
        readonly wires?: number;
        readonly spacing?: Metres;
      }
    | { readonly shape: 'vertical'; readonly height: Metres; readonly base: Metres }
    /** The level wire alone, taken in at its own height: no lead-in is counted. */
    | { readonly shape: 'horizontal'; readonly height: Metres; readonly length: Metres }
    /** Lead-in to `height`, then a wire of `length` that ends at `farHeight`. */
    | {
        readonly shape: 'sloping';
        readonly height: Metres;
        readonly length: Metres;
        readonly farHeight: Metres;
        readonly base: Metres;
      }
    /** One wire from corner to corner, set at the first: round a room, through a loft. */
    | { readonly shape: 'bent'; readonly points: readonly WirePoint[] }
    /** Any wires: the set is at the first point, and point i is wired to point `joins[i − 1]`, an earlier one. */
    | { readonly shape: 'branched'; readonly points: readonly WirePoint[]; readonly joins: readonly number[] }
  );

/** A tree of straight spans; `parents[i]` is the point that point i hangs from, −1 at the set. */
export interface WireTree {
  readonly points: readonly WirePoint[];
  readonly parents: readonly number[];
}

const LONGEST: Metres = 2000;
const size = (id: SizeId, value: number): void => demandWithin(id, value, { above: 0, max: LONGEST });

/**
 * Lay a shape out in space.
 * @param spec the shape, m
 * @returns its wires as stretches in space, m
 * @throws RangeError for a size that cannot be built.
 */
export function wireTree(spec: WireAerialShape): WireTree {
  demandWithin('aerial.wire', spec.wire.diameter, { min: 1e-5, max: 0.1 });
  const { diameter } = spec.wire;
  switch (spec.shape) {
    case 'vertical':
      checkFoot(spec.base, spec.height);
      return chain(
        [
          [0, 0, spec.base],
          [0, 0, spec.height],
        ],
        diameter,
      );
    case 'horizontal':
      size('aerial.height', spec.height);
      size('aerial.length', spec.length);
      return chain(
        [
          [0, 0, spec.height],
          [spec.length, 0, spec.height],
        ],
        diameter,
      );
    case 'sloping': {
      size('aerial.far-height', spec.farHeight);
      size('aerial.length', spec.length);
      const fall = spec.farHeight - spec.height;
      demand(Math.abs(fall) <= spec.length, { code: 'aerial.too-short', length: spec.length, rise: Math.abs(fall) });
      const far: WirePoint = [Math.sqrt(spec.length ** 2 - fall ** 2), 0, spec.farHeight];
      // Taken straight from the set: nothing rises before the slope.
      if (spec.base === spec.height) return chain([[0, 0, spec.base], far], diameter);
      checkFoot(spec.base, spec.height);
      return chain([[0, 0, spec.base], [0, 0, spec.height], far], diameter);
    }
    case 'bent':
      return chain(spec.points, diameter);
    case 'branched': {
      demand(spec.joins.length === spec.points.length - 1, {
        code: 'aerial.number-of-joins',
        points: spec.points.length,
        joins: spec.joins.length,
      });
      spec.joins.forEach((join, i) => {
        demand(Number.isInteger(join) && join >= 0 && join <= i, { code: 'aerial.join', index: i + 1 });
      });
      return tree(spec.points, [-1, ...spec.joins], diameter);
    }
    case 'inverted-L':
    case 'T':
      return flatTop(spec);
  }
}

function flatTop(spec: Extract<WireAerialShape, { shape: 'inverted-L' | 'T' }>): WireTree {
  const { height, length, base, wires = 1, spacing = 0.6 } = spec;
  checkFoot(base, height);
  demandWithin('aerial.length', length, { min: 0, max: LONGEST });
  demandWithin('aerial.wires', wires, { min: 1, max: 16, whole: true });
  if (length === 0)
    return chain(
      [
        [0, 0, base],
        [0, 0, height],
      ],
      spec.wire.diameter,
    );
  if (wires > 1) demandWithin('aerial.spacing', spacing, { above: 2 * spec.wire.diameter, max: 50 });
  const points: WirePoint[] = [
    [0, 0, base],
    [0, 0, height],
  ];
  const parents = [-1, 0];
  const hang = (point: WirePoint, parent: number) => {
    points.push(point);
    parents.push(parent);
    return points.length - 1;
  };
  const ends = spec.shape === 'T' ? [-length / 2, length / 2] : [length];
  const across = Array.from({ length: wires }, (_, i) => (i - (wires - 1) / 2) * spacing);
  // A spreader wire joins them above the lead-in, outwards from its head on either side.
  for (const side of [across.filter((y) => y >= 0), across.filter((y) => y < 0).reverse()]) {
    let joint = 1;
    for (const y of side) {
      if (y !== 0) joint = hang([0, y, height], joint);
      for (const x of ends) hang([x, y, height], joint);
    }
  }
  return tree(points, parents, spec.wire.diameter);
}

const checkFoot = (base: Metres, height: Metres): void => {
  size('aerial.height', height);
  demandWithin('aerial.base', base, { min: 0, below: height });
};

const chain = (points: readonly WirePoint[], diameter: Metres): WireTree =>
  tree(
    points,
    points.map((_, i) => i - 1),
    diameter,
  );

function tree(points: readonly WirePoint[], parents: readonly number[], diameter: Metres): WireTree {
  demand(points.length >= 2 && points.length <= 200, { code: 'aerial.number-of-points', count: points.length });
  points.forEach((p, i) => {
    demand(p.length === 3 && p.every((x) => Math.abs(x) <= 5000) && p[2] >= 0, {
      code: 'aerial.point-below-ground',
      index: i,
    });
    if (i === 0) return;
    const q = points[parents[i]];
    demand(Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > diameter, { code: 'aerial.points-together', index: i });
    demand(p[2] + q[2] > 0, { code: 'aerial.wire-on-ground', index: i });
  });
  return { points, parents };
}

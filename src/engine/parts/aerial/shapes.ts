import type { Metres } from '../../units/quantities.ts';

/** Along, across, up from the ground below the origin; metres. */
export type Point = readonly [number, number, number];

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
    | { readonly shape: 'bent'; readonly points: readonly Point[] }
    /** Any wires: the set is at the first point, and point i is wired to point `joins[i − 1]`, an earlier one. */
    | { readonly shape: 'branched'; readonly points: readonly Point[]; readonly joins: readonly number[] }
  );

/** A tree of straight spans; `parents[i]` is the point that point i hangs from, −1 at the set. */
export interface WireTree {
  readonly points: readonly Point[];
  readonly parents: readonly number[];
}

const demand = (accepted: boolean, what: string, value: unknown): void => {
  if (!accepted) throw new RangeError(`${what}, not ${JSON.stringify(value)}`);
};
const size = (value: number, name: string): void =>
  demand(value > 0 && value <= 2000, `${name} must be above 0 and at most 2000 m`, value);

/**
 * Lay a shape out in space.
 * @param spec the shape, m
 * @returns its wires as stretches in space, m
 * @throws RangeError for a size that cannot be built.
 */
export function wireTree(spec: WireAerialShape): WireTree {
  demand(
    spec.wire.diameter >= 1e-5 && spec.wire.diameter <= 0.1,
    'the wire must be 0.01 mm to 100 mm thick',
    spec.wire.diameter,
  );
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
      size(spec.height, 'the height');
      size(spec.length, 'the length');
      return chain(
        [
          [0, 0, spec.height],
          [spec.length, 0, spec.height],
        ],
        diameter,
      );
    case 'sloping': {
      size(spec.farHeight, 'the height of the far end');
      size(spec.length, 'the length');
      const fall = spec.farHeight - spec.height;
      demand(Math.abs(fall) <= spec.length, 'the wire must reach from one height to the other', spec.length);
      const far: Point = [Math.sqrt(spec.length ** 2 - fall ** 2), 0, spec.farHeight];
      // Taken straight from the set: nothing rises before the slope.
      if (spec.base === spec.height) return chain([[0, 0, spec.base], far], diameter);
      checkFoot(spec.base, spec.height);
      return chain([[0, 0, spec.base], [0, 0, spec.height], far], diameter);
    }
    case 'bent':
      return chain(spec.points, diameter);
    case 'branched': {
      demand(spec.joins.length === spec.points.length - 1, 'every point but the first needs one join', spec.joins);
      spec.joins.forEach((join, i) => {
        demand(Number.isInteger(join) && join >= 0 && join <= i, `point ${i + 1} must join an earlier point`, join);
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
  demand(length >= 0 && length <= 2000, 'the top wire must be 0 to 2000 m long', length);
  demand(Number.isInteger(wires) && wires >= 1 && wires <= 16, 'there must be 1 to 16 wires', wires);
  if (length === 0)
    return chain(
      [
        [0, 0, base],
        [0, 0, height],
      ],
      spec.wire.diameter,
    );
  if (wires > 1)
    demand(
      spacing > 2 * spec.wire.diameter && spacing <= 50,
      'the wires must lie clear of each other, at most 50 m apart',
      spacing,
    );
  const points: Point[] = [
    [0, 0, base],
    [0, 0, height],
  ];
  const parents = [-1, 0];
  const hang = (point: Point, parent: number) => {
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
  size(height, 'the height');
  demand(base >= 0 && base < height, 'the foot of the lead-in must be at or above ground and below the top', base);
};

const chain = (points: readonly Point[], diameter: Metres): WireTree =>
  tree(
    points,
    points.map((_, i) => i - 1),
    diameter,
  );

function tree(points: readonly Point[], parents: readonly number[], diameter: Metres): WireTree {
  demand(points.length >= 2 && points.length <= 200, 'an aerial needs 2 to 200 points', points.length);
  points.forEach((p, i) => {
    demand(
      p.length === 3 && p.every((x) => Math.abs(x) <= 5000) && p[2] >= 0,
      `point ${i} must be finite and not below ground`,
      p,
    );
    if (i === 0) return;
    const q = points[parents[i]];
    demand(
      Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > diameter,
      `point ${i} must lie apart from the one it is wired to, by more than the wire is thick`,
      p,
    );
    demand(p[2] + q[2] > 0, `the wire to point ${i} must not lie on the ground`, p);
  });
  return { points, parents };
}

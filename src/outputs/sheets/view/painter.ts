import { crossed, difference, dot, normalOf, type Point3, type Solid } from './solid.ts';

/** Touching counts as apart, mm. */
const TOUCHING = 0.01;

/**
 * Solids in the order in which they are painted: none before another that it hides a part of. For two convex solids that
 * do not meet there is a plane between them; the one on the viewer's side of it is the nearer.
 * @param toViewer direction from the solids to who looks at them, of length 1
 */
export function paintOrder(solids: readonly Solid[], toViewer: Point3): Solid[] {
  const axes = solids.map(axesOf);
  const behind = solids.map((): number[] => []);
  solids.forEach((a, i) => {
    for (let k = 0; k < i; k++) {
      const nearer = nearerOf(a, solids[k], axes[i], axes[k], toViewer);
      if (nearer > 0) behind[i].push(k);
      if (nearer < 0) behind[k].push(i);
    }
  });
  const order: number[] = [];
  const state = solids.map(() => 0);
  const visit = (i: number): void => {
    if (state[i] !== 0) return;
    state[i] = 1;
    behind[i].forEach(visit);
    order.push(i);
  };
  // What is farthest first, so that the order does not hang on that of the list.
  const depth = solids.map(({ corners }) => Math.min(...corners.map((p) => dot(p, toViewer))));
  [...solids.keys()].sort((a, b) => depth[a] - depth[b]).forEach(visit);
  return order.map((i) => solids[i]);
}

interface Axes {
  readonly normals: readonly Point3[];
  readonly edges: readonly Point3[];
}

function axesOf({ corners, faces }: Solid): Axes {
  const normals = distinct(faces.map((face) => normalOf(face.map((i) => corners[i]))));
  const edges = distinct(
    faces.flatMap((face) => face.map((i, k) => unit(difference(corners[face[(k + 1) % face.length]], corners[i])))),
  );
  return { normals, edges };
}

/** 1 where the first is nearer, −1 where the second is, 0 where neither hides the other or they meet. */
function nearerOf(a: Solid, b: Solid, of: Axes, other: Axes, toViewer: Point3): number {
  // A direction across the line of sight in which they are apart: neither hides the other.
  for (const edge of [...of.edges, ...other.edges]) if (gap(a, b, crossed(edge, toViewer)) !== 0) return 0;
  const candidates = [...of.normals, ...other.normals];
  let meet = true;
  for (const n of candidates) {
    const side = gap(a, b, n);
    if (side === 0) continue;
    meet = false;
    const facing = dot(n, toViewer);
    if (Math.abs(facing) > 1e-9) return side * Math.sign(facing);
  }
  if (!meet) return 0;
  for (const e of of.edges)
    for (const f of other.edges) {
      const n = crossed(e, f);
      const side = gap(a, b, n);
      if (side !== 0) return side * Math.sign(dot(n, toViewer));
    }
  return 0;
}

/** 1 where the first lies wholly farther along a direction than the second, −1 the other way round, 0 where they overlap. */
function gap(a: Solid, b: Solid, n: Point3): number {
  if (dot(n, n) < 1e-12) return 0;
  const [p, q] = [span(a, n), span(b, n)];
  const least = TOUCHING * Math.sqrt(dot(n, n));
  if (p[0] >= q[1] - least) return 1;
  return q[0] >= p[1] - least ? -1 : 0;
}

function span({ corners }: Solid, n: Point3): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const p of corners) {
    const x = dot(p, n);
    if (x < low) low = x;
    if (x > high) high = x;
  }
  return [low, high];
}

const unit = (p: Point3): Point3 => {
  const length = Math.sqrt(dot(p, p));
  return [p[0] / length, p[1] / length, p[2] / length];
};

/** Directions that differ by more than their sign. */
function distinct(directions: readonly Point3[]): Point3[] {
  const found: Point3[] = [];
  for (const d of directions) if (!found.some((f) => Math.abs(dot(f, d)) > 1 - 1e-9)) found.push(d);
  return found;
}

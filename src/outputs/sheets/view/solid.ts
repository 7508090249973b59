import type { Role } from '../../scene/scene.ts';

/** x to the right, y towards the phones' edge of the board, z up from its face; mm. */
export type Point3 = readonly [x: number, y: number, z: number];

/** Something convex: its corners, and its faces as rings of corners seen anticlockwise from outside. */
export interface Solid {
  readonly tag: string;
  readonly corners: readonly Point3[];
  readonly faces: readonly (readonly number[])[];
  readonly fill: Role;
  /** Lines round it, as of a winding. */
  readonly rings?: readonly (readonly Point3[])[];
  /** Of a size that is not known. */
  readonly assumed?: boolean;
}

/** A body of a part in the part's own place: its middle is 0, 0 and the board's face z = 0. mm. */
export type Shape = { readonly fill?: Role; readonly assumed?: boolean } & (
  | { readonly kind: 'box'; readonly from: Point3; readonly to: Point3 }
  | {
      readonly kind: 'cylinder';
      readonly axis: 'x' | 'y' | 'z';
      /** The middle of its end nearer to 0. */
      readonly from: Point3;
      readonly length: number;
      readonly radius: number;
      /** Between turns of a winding, mm; none without. */
      readonly pitch?: number;
    }
);

/** Sides of a cylinder. */
const SIDES = 24;
const MOST_RINGS = 24;

/** A shape where its part stands on the board. @param turn degrees */
export function solidOf(shape: Shape, tag: string, at: readonly [number, number], turn: number): Solid {
  const a = (turn * Math.PI) / 180;
  const [c, s] = [Math.cos(a), Math.sin(a)];
  const placed = ([x, y, z]: Point3): Point3 => [at[0] + x * c - y * s, at[1] + x * s + y * c, z];
  const { fill = 'paper', assumed } = shape;
  if (shape.kind === 'box') {
    const { from: f, to: t } = shape;
    const ring = (z: number): Point3[] => [
      [f[0], f[1], z],
      [t[0], f[1], z],
      [t[0], t[1], z],
      [f[0], t[1], z],
    ];
    return { tag, fill, assumed, ...prism([ring(f[2]), ring(t[2])].map((r) => r.map(placed))) };
  }
  const { axis, from, length, radius, pitch } = shape;
  const ring = (along: number): Point3[] =>
    Array.from({ length: SIDES }, (_, i): Point3 => {
      const [u, v] = [radius * Math.cos((2 * Math.PI * i) / SIDES), radius * Math.sin((2 * Math.PI * i) / SIDES)];
      if (axis === 'z') return placed([from[0] + u, from[1] + v, from[2] + along]);
      return axis === 'x'
        ? placed([from[0] + along, from[1] + u, from[2] + v])
        : placed([from[0] + u, from[1] + along, from[2] + v]);
    });
  const count = pitch === undefined ? 0 : Math.min(MOST_RINGS, Math.floor(length / pitch));
  const rings = Array.from({ length: count }, (_, i) => ring((length * (i + 0.5)) / count));
  return { tag, fill, assumed, rings, ...prism([ring(0), ring(length)]) };
}

/** What lies between two like rings. */
function prism([low, high]: readonly (readonly Point3[])[]): Pick<Solid, 'corners' | 'faces'> {
  const n = low.length;
  const corners = [...low, ...high];
  const middle = centre(corners);
  const faces = [
    low.map((_, i) => i),
    high.map((_, i) => n + i),
    ...low.map((_, i) => [i, (i + 1) % n, n + ((i + 1) % n), n + i]),
  ];
  // Turned so that every normal points out, whichever way the rings run.
  const outward = faces.map((face) => {
    const normal = normalOf(face.map((i) => corners[i]));
    return dot(normal, difference(corners[face[0]], middle)) < 0 ? face.toReversed() : face;
  });
  return { corners, faces: outward };
}

export const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const difference = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const crossed = (a: Point3, b: Point3): Point3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const centre = (points: readonly Point3[]): Point3 => {
  const sum = points.reduce((a, b): Point3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], [0, 0, 0] as Point3);
  return [sum[0] / points.length, sum[1] / points.length, sum[2] / points.length];
};

/** Of length 1, out of a face. */
export function normalOf(face: readonly Point3[]): Point3 {
  const n = crossed(difference(face[1], face[0]), difference(face[2], face[0]));
  const length = Math.sqrt(dot(n, n));
  return [n[0] / length, n[1] / length, n[2] / length];
}

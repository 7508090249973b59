/** A straight piece of wire between two points, in one unit of length. */
export interface Segment {
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
}

/** Gauss-Legendre on (0, 1), six points and two (Abramowitz & Stegun table 25.4): nodes, weights. */
const NEAR = [
  [0.033765242898424, 0.169395306766868, 0.380690406958402, 0.619309593041598, 0.830604693233132, 0.966234757101576],
  [0.085662246189585, 0.180380786524069, 0.233956967286346, 0.233956967286346, 0.180380786524069, 0.085662246189585],
] as const;
const FAR = [
  [0.211324865405187, 0.788675134594813],
  [0.5, 0.5],
] as const;

/**
 * Mean of 1/√(R² + a²) over two segments, R the distance between a point of each: the potential coefficient of two
 * uniformly charged wires times 4πε, and the kernel of their mutual inductance.
 * Parallel segments in closed form (Howe's double integral); others analytic along the longer, Gauss along the shorter.
 * @param a softening distance: the wire radius (thin-wire kernel). @returns 1/length.
 */
export function meanInverseDistance(first: Segment, second: Segment, a: number): number {
  const l1 = Math.hypot(first.to[0] - first.from[0], first.to[1] - first.from[1], first.to[2] - first.from[2]);
  const l2 = Math.hypot(second.to[0] - second.from[0], second.to[1] - second.from[1], second.to[2] - second.from[2]);
  // Equal lengths must not change places by their last digit: the answer would jump by the quadrature's error.
  const [long, short, L, l] = l1 >= l2 * (1 - 1e-9) ? [first, second, l1, l2] : [second, first, l2, l1];
  const [ax, ay, az] = long.from;
  const ux = (long.to[0] - ax) / L;
  const uy = (long.to[1] - ay) / L;
  const uz = (long.to[2] - az) / L;
  const [px, py, pz] = short.from;
  const dx = short.to[0] - px;
  const dy = short.to[1] - py;
  const dz = short.to[2] - pz;
  // The shorter one's start, seen along the longer (t) and across it (squared).
  const wx = px - ax;
  const wy = py - ay;
  const wz = pz - az;
  const t0 = wx * ux + wy * uy + wz * uz;
  const dt = dx * ux + dy * uy + dz * uz;
  if (l * l - dt * dt < 1e-18 * l * l) {
    const cx = wx - t0 * ux;
    const cy = wy - t0 * uy;
    const cz = wz - t0 * uz;
    const rho2 = cx * cx + cy * cy + cz * cz + a * a;
    const lo = Math.min(t0, t0 + dt);
    const hi = Math.max(t0, t0 + dt);
    const rho = Math.sqrt(rho2);
    return (primitive(hi, rho) - primitive(lo, rho) - primitive(L - hi, rho) + primitive(L - lo, rho)) / (l * L);
  }
  // Two points are as good as six when they are far apart.
  const middle =
    (wx + dx / 2 - (ux * L) / 2) ** 2 + (wy + dy / 2 - (uy * L) / 2) ** 2 + (wz + dz / 2 - (uz * L) / 2) ** 2;
  const [nodes, weights] = middle > (2 * L + l) ** 2 ? FAR : NEAR;
  let mean = 0;
  for (let k = 0; k < nodes.length; k++) {
    const t = t0 + nodes[k] * dt;
    const cx = wx + nodes[k] * dx - t * ux;
    const cy = wy + nodes[k] * dy - t * uy;
    const cz = wz + nodes[k] * dz - t * uz;
    const rho = Math.sqrt(cx * cx + cy * cy + cz * cz + a * a);
    mean += weights[k] * (Math.asinh((L - t) / rho) + Math.asinh(t / rho));
  }
  return mean / L;
}

/** Second integral of 1/√(q² + ρ²). */
const primitive = (q: number, rho: number): number => q * Math.asinh(q / rho) - Math.sqrt(q * q + rho * rho);

/** Reflected in the plane z = 0. */
export const mirrored = (segment: Segment): Segment => ({
  from: [segment.from[0], segment.from[1], -segment.from[2]],
  to: [segment.to[0], segment.to[1], -segment.to[2]],
});

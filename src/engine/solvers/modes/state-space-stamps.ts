import type { Topology } from './state-space-topology.ts';

interface Branch {
  readonly from: string;
  readonly to: string;
}

/** What branches are over the free potentials, and over the emfs: M·p + Me·e, row by row. */
interface Stamped {
  readonly M: Float64Array;
  readonly Me: Float64Array;
}

/** Index of a node's free potential; below 0 where it has none. */
export const potentialOf = (t: Topology, node: string): number => t.potential[t.nodeIndex.get(node)!];

/** By how much of emf `k` of `emfs` a node stands over its free potential. */
const lift = (t: Topology, emfs: number, node: string, k: number): number =>
  t.offset[t.nodeIndex.get(node)! * emfs + k];

/** Two-pole branches over the free potentials p: C·p′ + Ce·e′ or G·p + Ge·e in C·p′ + Ce·e′ + G·p + Ge·e + A·j + D·i = 0. */
export function stamps(t: Topology, emfs: number, list: readonly Branch[], value: (k: number) => number): Stamped {
  const P = t.potentials;
  const M = new Float64Array(P * P);
  const Me = new Float64Array(P * emfs);
  list.forEach((b, k) => {
    const g = value(k);
    const ends = [potentialOf(t, b.from), potentialOf(t, b.to)];
    for (const side of [0, 1]) {
      const row = ends[side];
      if (row < 0) continue;
      const sign = side === 0 ? 1 : -1;
      if (ends[0] >= 0) M[row * P + ends[0]] += sign * g;
      if (ends[1] >= 0) M[row * P + ends[1]] -= sign * g;
      for (let m = 0; m < emfs; m++)
        Me[row * emfs + m] += sign * g * (lift(t, emfs, b.from, m) - lift(t, emfs, b.to, m));
    }
  });
  return { M, Me };
}

/** Which free potentials a branch's current leaves (1) and enters (−1), a column a branch, and the emfs in its voltage. */
export function incidences(t: Topology, emfs: number, list: readonly Branch[]): Stamped {
  const count = list.length;
  const M = new Float64Array(t.potentials * count);
  const Me = new Float64Array(count * emfs);
  list.forEach((b, k) => {
    const [from, to] = [potentialOf(t, b.from), potentialOf(t, b.to)];
    if (from >= 0) M[from * count + k] += 1;
    if (to >= 0) M[to * count + k] -= 1;
    for (let m = 0; m < emfs; m++) Me[k * emfs + m] = lift(t, emfs, b.from, m) - lift(t, emfs, b.to, m);
  });
  return { M, Me };
}

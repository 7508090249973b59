import { warning } from '../../facts/warning.ts';
import { EARTH } from '../../network/elements.ts';
import type { Primitives } from './state-space-expand.ts';

/** A detector that only coils lead to is given its own capacitance, F: no point contact has less. */
const DETECTOR_STRAY = 1e-12;

/** Disjoint sets of numbers 0…n−1. */
class Groups {
  readonly parent: Int32Array;
  constructor(n: number) {
    this.parent = Int32Array.from({ length: n }, (_, i) => i);
  }
  root(i: number): number {
    while (this.parent[i] !== i) i = this.parent[i];
    return i;
  }
  join(a: number, b: number): void {
    const [x, y] = [this.root(a), this.root(b)];
    if (x !== y) this.parent[Math.max(x, y)] = Math.min(x, y); // the lowest stays root, so earth does
  }
}

/** Which nodes hang together, and by what: the frame the differential equations are written in. */
export interface Topology {
  readonly nodeIndex: ReadonlyMap<string, number>;
  /** Node → free potential it shares, −1 for earth's; nodes joined by emfs and joins share one. */
  readonly potential: Int32Array;
  readonly potentials: number;
  /** Node → emfs that lift it above that potential, one row of `emfs` numbers each. */
  readonly offset: Float64Array;
  /** Potential → group joined by capacitors; −1 where that group holds earth. */
  readonly capacitive: Int32Array;
  /** Potential → group joined by capacitors and resistors; −1 for earth's. */
  readonly resistive: Int32Array;
}

/**
 * @param primitives capacitors may be added to it (see `DETECTOR_STRAY`).
 * @throws RangeError when emfs are joined in a ring that contradicts itself.
 */
export function topology(primitives: Primitives): Topology {
  const { conductances, capacitors, inductors, shorts, emfs, detectors } = primitives;
  const nodeIndex = new Map<string, number>([[EARTH, 0]]);
  for (const b of [...conductances, ...capacitors, ...inductors, ...shorts, ...emfs, ...detectors]) {
    for (const name of [b.from, b.to]) if (!nodeIndex.has(name)) nodeIndex.set(name, nodeIndex.size);
  }
  const at = (name: string) => nodeIndex.get(name)!;
  const n = nodeIndex.size;
  const e = emfs.length;
  const supply = new Supply(n, e);
  for (const b of shorts) supply.join(at(b.from), at(b.to), -1);
  emfs.forEach((b, k) => {
    if (!supply.join(at(b.from), at(b.to), k))
      throw new RangeError(`"${b.name}" is short-circuited, or in a ring of emfs with no resistance`);
  });

  const rc = new Groups(n);
  for (let i = 0; i < n; i++) rc.join(i, supply.root(i));
  for (const b of [...capacitors, ...conductances]) rc.join(at(b.from), at(b.to));
  for (const d of detectors) {
    if (rc.root(at(d.from)) === rc.root(at(d.to))) continue;
    capacitors.push({ from: d.from, to: d.to, farads: DETECTOR_STRAY });
    rc.join(at(d.from), at(d.to));
    primitives.warnings.push(warning('waves.detector-stray', { capacitance: DETECTOR_STRAY }));
  }
  // A part of the circuit that nothing but a field joins to earth may be earthed anywhere without a current.
  const all = new Groups(n);
  for (let i = 0; i < n; i++) all.join(i, rc.root(i));
  for (const b of inductors) all.join(at(b.from), at(b.to));
  for (let i = 0; i < n; i++) {
    if (all.root(i) === 0) continue;
    supply.join(0, i, -1);
    rc.join(0, i);
    all.join(0, i);
  }
  return number(
    nodeIndex,
    supply,
    capacitors.map((b) => [at(b.from), at(b.to)] as const),
    rc,
  );
}

function number(
  nodeIndex: ReadonlyMap<string, number>,
  supply: Supply,
  capacitors: readonly (readonly [number, number])[],
  rc: Groups,
): Topology {
  const n = nodeIndex.size;
  const c = new Groups(n);
  for (let i = 0; i < n; i++) c.join(i, supply.root(i));
  for (const [a, b] of capacitors) c.join(a, b);
  const potential = new Int32Array(n).fill(-1);
  const numbers = new Map<number, number>([[supply.root(0), -1]]);
  const first: number[] = [];
  for (let i = 0; i < n; i++) {
    const root = supply.root(i);
    if (!numbers.has(root)) {
      numbers.set(root, first.length);
      first.push(i);
    }
    potential[i] = numbers.get(root)!;
  }
  const label = (groups: Groups) => {
    const names = new Map<number, number>([[groups.root(0), -1]]);
    return Int32Array.from(first, (node) => {
      const root = groups.root(node);
      if (!names.has(root)) names.set(root, names.size - 1);
      return names.get(root)!;
    });
  };
  return {
    nodeIndex,
    potential,
    potentials: first.length,
    offset: supply.offsets(),
    capacitive: label(c),
    resistive: label(rc),
  };
}

/** Nodes tied by emfs: each is its root plus a sum of emfs. */
class Supply {
  private readonly parent: Int32Array;
  private readonly lift: Float64Array;
  private readonly e: number;
  constructor(n: number, e: number) {
    this.parent = Int32Array.from({ length: n }, (_, i) => i);
    this.lift = new Float64Array(n * e);
    this.e = e;
  }
  root(i: number): number {
    while (this.parent[i] !== i) i = this.parent[i];
    return i;
  }
  private total(i: number): Float64Array {
    const sum = new Float64Array(this.e);
    for (let at = i; this.parent[at] !== at; at = this.parent[at]) {
      for (let k = 0; k < this.e; k++) sum[k] += this.lift[at * this.e + k];
    }
    return sum;
  }
  /** Make v(b) = v(a) + emf k (none if k < 0). @returns false when they were tied otherwise already. */
  join(a: number, b: number, k: number): boolean {
    const [x, y] = [this.root(a), this.root(b)];
    const difference = this.total(a); // v(b) − root(a), once joined
    if (k >= 0) difference[k] += 1;
    const have = this.total(b);
    for (let j = 0; j < this.e; j++) difference[j] -= have[j]; // root(b) − root(a)
    if (x === y) return difference.every((d) => d === 0);
    const [child, base, sign] = y > x ? [y, x, 1] : [x, y, -1];
    this.parent[child] = base;
    for (let j = 0; j < this.e; j++) this.lift[child * this.e + j] = sign * difference[j];
    return true;
  }
  offsets(): Float64Array {
    const out = new Float64Array(this.parent.length * this.e);
    for (let i = 0; i < this.parent.length; i++) out.set(this.total(i), i * this.e);
    return out;
  }
}

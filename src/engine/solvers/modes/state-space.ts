import { type Warning, warning } from '../../facts/warning.ts';
import { type Circuit, EARTH } from '../../network/elements.ts';
import { cholesky, solveTransposedUpper, solveUpper } from '../../numerics/cholesky.ts';
import type { Complex } from '../../numerics/complex.ts';
import { addDense, multiplyDense, scaleDense, transposeDense } from '../../numerics/dense.ts';
import { solveInPlace } from '../../numerics/linear-solve.ts';
import { expandCircuit, type FreezeOptions, type Primitives } from './state-space-expand.ts';
import { incidences, potentialOf, stamps } from './state-space-stamps.ts';
import { type Topology, topology } from './state-space-topology.ts';

/** Something to look at: a combination of states, emfs and detector currents. */
export interface OutputRow {
  readonly states: Float64Array;
  readonly emfs: Float64Array;
  readonly detectors: Float64Array;
}

/**
 * The linear part of a circuit as x′ = A·x + B·e + G·i, with e the emfs (sources, then cells, in the order they are
 * listed) and i the currents through the detectors. States are √C·v and √L·i of independent capacitors and coils, so
 * |x|²/2 is the stored energy and A + Aᵀ is nowhere positive.
 */
export interface StateSpace {
  readonly order: number;
  /** order × order, 1/s. */
  readonly A: Float64Array;
  /** order × number of emfs. */
  readonly B: Float64Array;
  /** order × number of detectors. */
  readonly G: Float64Array;
  readonly emfs: readonly { readonly name: string; readonly source?: Complex; readonly volts?: number }[];
  /** Name and voltage (anode to cathode) of each detector. */
  readonly detectors: readonly { readonly name: string; readonly row: OutputRow }[];
  readonly nodes: readonly string[];
  /** Voltage of one node over another (earth). @throws RangeError for a node that is not there. */
  voltage(node: string, over?: string): OutputRow;
  /** Current through a coil, from its `from` to its `to`. @throws RangeError for a coil that is not there. */
  current(inductor: string): OutputRow;
  readonly warnings: readonly Warning[];
}

/**
 * Differential equations of any list of elements. Rings of capacitors and emfs, coils in series, nodes where only
 * resistors meet and parts that only a field joins are all allowed: what they tie together is taken out exactly.
 * @throws RangeError naming what is wrong when no such network can exist.
 */
export function stateSpace(circuit: Circuit, options: FreezeOptions): StateSpace {
  const primitives = expandCircuit(circuit, options);
  const t = topology(primitives);
  return assemble(primitives, t, coilMatrix(primitives));
}

/** Inductances and mutuals; these cannot exceed √(L1·L2), and at exactly that the field has no room for leakage. */
function coilMatrix({ inductors, mutuals, warnings }: Primitives): Float64Array {
  const n = inductors.length;
  const index = new Map(inductors.map((l, i) => [l.name, i]));
  const L = new Float64Array(n * n);
  inductors.forEach((l, i) => {
    L[i * n + i] = l.henries;
  });
  for (const m of mutuals) {
    const [i, j] = [index.get(m.first), index.get(m.second)];
    if (i === undefined || j === undefined || i === j || !Number.isFinite(m.mutual))
      throw new RangeError(`the coupling "${m.id}" needs two coils with inductance and a number of henries`);
    L[i * n + j] += m.mutual;
    L[j * n + i] += m.mutual;
  }
  if (n === 0 || cholesky(L, n)) return L;
  const eased = L.map((v, k) => (k % (n + 1) === 0 ? v : v * (1 - 1e-6)));
  if (!cholesky(eased, n)) {
    throw new RangeError(
      `the couplings of ${mutuals.map((m) => `"${m.id}"`).join(', ')} are more than those coils can have`,
    );
  }
  warnings.push(warning('waves.coupling-reduced'));
  return eased;
}

function assemble(primitives: Primitives, t: Topology, L: Float64Array): StateSpace {
  const { conductances, capacitors, inductors, emfs, detectors } = primitives;
  const P = t.potentials;
  const E = emfs.length;
  const D = detectors.length;
  const nL = inductors.length;
  const cap = stamps(t, E, capacitors, (k) => capacitors[k].farads);
  const con = stamps(t, E, conductances, (k) => conductances[k].siemens);
  const coil = incidences(t, E, inductors);
  const det = incidences(t, E, detectors);

  const { Sw, S1, S2, nw, n1, n2 } = selections(t);
  const { K, tree } = loops(primitives, t, n2);
  const nl = nL - tree.length;
  const n = nw + nl;
  const T = transposeDense;
  const mul = multiplyDense;

  // q1, the groups only resistors hold: G11·q1 = −S1ᵀ(G·Sw·w + Ge·e + A·K·j + D·i).
  const AK = mul(coil.M, K, P, nL, nl);
  const joinRight = (w: Float64Array, j: Float64Array, e: Float64Array, d: Float64Array, rows: number) => {
    const c = nw + nl + E + D;
    const out = new Float64Array(rows * c);
    for (let i = 0; i < rows; i++) {
      out.set(w.subarray(i * nw, (i + 1) * nw), i * c);
      out.set(j.subarray(i * nl, (i + 1) * nl), i * c + nw);
      out.set(e.subarray(i * E, (i + 1) * E), i * c + nw + nl);
      out.set(d.subarray(i * D, (i + 1) * D), i * c + nw + nl + E);
    }
    return out;
  };
  const c = nw + nl + E + D;
  const GSw = mul(con.M, Sw, P, P, nw);
  const driven = joinRight(GSw, AK, con.Me, det.M, P); // G·Sw·w + A·j + Ge·e + D·i
  const q1 = scaleDense(mul(T(S1, P, n1), driven, n1, P, c), -1);
  if (n1 > 0) {
    const G11 = mul(T(S1, P, n1), mul(con.M, S1, P, P, n1), n1, P, n1);
    const Rg = cholesky(G11, n1, 1e-15);
    if (!Rg) throw new RangeError('the resistances of this circuit differ by too many decades to be told apart');
    solveTransposedUpper(Rg, n1, q1, c);
    solveUpper(Rg, n1, q1, c);
  }
  // Potentials but for q2: p = Pot·(w, j, e, i).
  const Pot = addDense(
    joinRight(Sw, new Float64Array(P * nl), new Float64Array(P * E), new Float64Array(P * D), P),
    mul(S1, q1, P, n1, c),
  );
  // Cw·w′ + Cwe·e′ = F·(w, j, e, i)
  const currents = addDense(mul(con.M, Pot, P, P, c), joinRight(new Float64Array(P * nw), AK, con.Me, det.M, P));
  const F = scaleDense(mul(T(Sw, P, nw), currents, nw, P, c), -1);
  const Cw = mul(T(Sw, P, nw), mul(cap.M, Sw, P, P, nw), nw, P, nw);
  const Cwe = mul(T(Sw, P, nw), cap.Me, nw, P, E);
  // Lk·j′ = H·(w, j, e, i): voltage across each loop's coils less their resistance.
  const coilVolts = mul(T(coil.M, P, nL), Pot, nL, P, c);
  for (let k = 0; k < nL; k++) {
    for (let j = 0; j < nl; j++) coilVolts[k * c + nw + j] -= inductors[k].ohms * K[k * nl + j];
    for (let m = 0; m < E; m++) coilVolts[k * c + nw + nl + m] += coil.Me[k * E + m];
  }
  const H = mul(T(K, nL, nl), coilVolts, nl, nL, c);
  const Lk = mul(T(K, nL, nl), mul(L, K, nL, nL, nl), nl, nL, nl);

  const Rc = nw > 0 ? cholesky(Cw, nw) : new Float64Array(0);
  const Rl = nl > 0 ? cholesky(Lk, nl) : new Float64Array(0);
  if (!Rc) throw new RangeError('the capacitances of this circuit differ by too many decades to be told apart');
  if (!Rl) throw new RangeError('the inductances of this circuit differ by too many decades to be told apart');
  solveTransposedUpper(Rc, nw, F, c);
  solveTransposedUpper(Rl, nl, H, c);
  const raw = new Float64Array(n * c);
  raw.set(F);
  raw.set(H, nw * c);

  // From (w, j) to energy states: w = Rc⁻¹·xw − Me·e, j = Rl⁻¹·xl.
  const W = identity(nw);
  solveUpper(Rc, nw, W, nw);
  const J = identity(nl);
  solveUpper(Rl, nl, J, nl);
  const Me = Cwe.slice();
  solveTransposedUpper(Rc, nw, Me, E);
  solveUpper(Rc, nw, Me, E);
  const turn = (rows: Float64Array, count: number) => toStates(rows, count, { nw, nl, E, D, W, J, Me });
  const { x: A, e: B, d: G } = turn(raw, n);

  // q2 from the tree coils: Aₜᵀ·S2·q2 = L·K·j′ + R·K·j − Aₜᵀ·p − Ae·e, j′ = Lk⁻¹·H.
  const q2 = new Float64Array(n2 * c);
  if (n2 > 0) {
    const slope = H.slice();
    solveUpper(Rl, nl, slope, c);
    const back = addDense(mul(mul(L, K, nL, nL, nl), slope, nL, nl, c), coilVolts, -1);
    const branch = mul(T(coil.M, P, nL), S2, nL, P, n2);
    const M = new Float64Array(n2 * n2);
    tree.forEach((k, i) => {
      M.set(branch.subarray(k * n2, (k + 1) * n2), i * n2);
      q2.set(back.subarray(k * c, (k + 1) * c), i * c);
    });
    solveColumns(M, n2, q2, c);
  }
  const full = turn(addDense(Pot, mul(S2, q2, P, n2, c)), P);
  const loopCurrent = turn(
    joinRight(new Float64Array(nL * nw), K, new Float64Array(nL * E), new Float64Array(nL * D), nL),
    nL,
  );

  const voltage = (node: string, over: string = EARTH): OutputRow => difference(t, full, { n, E, D }, node, over);
  return {
    order: n,
    A,
    B,
    G,
    emfs,
    detectors: detectors.map((d) => ({ name: d.name, row: voltage(d.from, d.to) })),
    nodes: [...t.nodeIndex.keys()].filter((name) => !name.includes('\u0000')),
    voltage,
    current(name) {
      const k = inductors.findIndex((l) => l.name === name);
      if (k < 0) throw new RangeError(`there is no coil "${name}" in this circuit`);
      return {
        states: loopCurrent.x.slice(k * n, (k + 1) * n),
        emfs: loopCurrent.e.slice(k * E, (k + 1) * E),
        detectors: loopCurrent.d.slice(k * D, (k + 1) * D),
      };
    },
    warnings: primitives.warnings,
  };
}

interface Rows {
  readonly x: Float64Array;
  readonly e: Float64Array;
  readonly d: Float64Array;
}

/** How many states, emfs and detectors there are. */
interface Sizes {
  readonly n: number;
  readonly E: number;
  readonly D: number;
}

/** Voltage of one node over another, from the rows of the free potentials. */
function difference(t: Topology, potentials: Rows, sizes: Sizes, node: string, over: string): OutputRow {
  const [a, b] = [nodeRow(t, potentials, sizes, node), nodeRow(t, potentials, sizes, over)];
  return {
    states: addDense(a.states, b.states, -1),
    emfs: addDense(a.emfs, b.emfs, -1),
    detectors: addDense(a.detectors, b.detectors, -1),
  };
}

function nodeRow(t: Topology, { x, e, d }: Rows, { n, E, D }: Sizes, name: string): OutputRow {
  const node = t.nodeIndex.get(name);
  if (node === undefined) throw new RangeError(`there is no node "${name}" in this circuit`);
  const i = t.potential[node];
  const emfs = t.offset.slice(node * E, (node + 1) * E);
  if (i < 0) return { states: new Float64Array(n), emfs, detectors: new Float64Array(D) };
  for (let k = 0; k < E; k++) emfs[k] += e[i * E + k];
  return { states: x.slice(i * n, (i + 1) * n), emfs, detectors: d.slice(i * D, (i + 1) * D) };
}

const identity = (n: number): Float64Array => {
  const I = new Float64Array(n * n);
  for (let i = 0; i < n; i++) I[i * n + i] = 1;
  return I;
};

/** Solve M·X = B in place for all columns of B. */
function solveColumns(M: Float64Array, n: number, B: Float64Array, columns: number): void {
  const right = Array.from({ length: columns }, (_, j) =>
    Float64Array.from({ length: n }, (_, i) => B[i * columns + j]),
  );
  solveInPlace(M.slice(), ...right);
  right.forEach((b, j) => {
    for (let i = 0; i < n; i++) B[i * columns + j] = b[i];
  });
}

interface Change {
  readonly nw: number;
  readonly nl: number;
  readonly E: number;
  readonly D: number;
  readonly W: Float64Array;
  readonly J: Float64Array;
  readonly Me: Float64Array;
}
/** Rows over (w, j, e, i) rewritten over (x, e, i). */
function toStates(rows: Float64Array, count: number, { nw, nl, E, D, W, J, Me }: Change): Rows {
  const n = nw + nl;
  const c = n + E + D;
  const x = new Float64Array(count * n);
  const e = new Float64Array(count * E);
  const d = new Float64Array(count * D);
  for (let i = 0; i < count; i++) {
    const r = rows.subarray(i * c, (i + 1) * c);
    for (let k = 0; k < nw; k++) {
      const a = r[k];
      if (a === 0) continue;
      for (let j = 0; j < nw; j++) x[i * n + j] += a * W[k * nw + j];
      for (let j = 0; j < E; j++) e[i * E + j] -= a * Me[k * E + j];
    }
    for (let k = 0; k < nl; k++) for (let j = 0; j < nl; j++) x[i * n + nw + j] += r[nw + k] * J[k * nl + j];
    for (let j = 0; j < E; j++) e[i * E + j] += r[n + j];
    for (let j = 0; j < D; j++) d[i * D + j] = r[n + E + j];
  }
  return { x, e, d };
}

/** Columns that pick, from the free potentials, those the capacitors store and those resistors or coils leave over. */
function selections(t: Topology) {
  const P = t.potentials;
  const seenC = new Set<number>();
  const seenR = new Set<number>();
  const w: number[] = [];
  const groups: number[] = []; // capacitive groups with a q1
  for (let i = 0; i < P; i++) {
    const group = t.capacitive[i];
    if (group < 0) {
      w.push(i);
      continue;
    }
    if (seenC.has(group)) {
      w.push(i);
      continue;
    }
    seenC.add(group);
    const r = t.resistive[i];
    if (r >= 0 && !seenR.has(r)) seenR.add(r);
    else groups.push(group);
  }
  const parts = [...seenR].sort((a, b) => a - b);
  const [nw, n1, n2] = [w.length, groups.length, parts.length];
  const Sw = new Float64Array(P * nw);
  const S1 = new Float64Array(P * n1);
  const S2 = new Float64Array(P * n2);
  w.forEach((node, k) => {
    Sw[node * nw + k] = 1;
  });
  for (let i = 0; i < P; i++) {
    const a = groups.indexOf(t.capacitive[i]);
    if (a >= 0) S1[i * n1 + a] = 1;
    const b = parts.indexOf(t.resistive[i]);
    if (b >= 0) S2[i * n2 + b] = 1;
  }
  return { Sw, S1, S2, nw, n1, n2 };
}

/** Independent currents of the coils: one for each coil outside a tree that spans what only coils join. */
function loops({ inductors }: Primitives, t: Topology, n2: number) {
  const p = (name: string) => potentialOf(t, name);
  const group = (name: string) => (p(name) < 0 ? -1 : t.resistive[p(name)]) + 1;
  const parent = new Int32Array(n2 + 1).fill(-1); // coil that leads towards earth
  const reached = new Set<number>([0]);
  const tree: number[] = [];
  for (let grown = true; grown; ) {
    grown = false;
    inductors.forEach((l, k) => {
      const [a, b] = [group(l.from), group(l.to)];
      if (reached.has(a) === reached.has(b)) return;
      const child = reached.has(a) ? b : a;
      reached.add(child);
      parent[child] = k;
      tree.push(k);
      grown = true;
    });
  }
  const links = inductors.map((_, k) => k).filter((k) => !tree.includes(k));
  const nl = links.length;
  const K = new Float64Array(inductors.length * nl);
  links.forEach((link, column) => {
    K[link * nl + column] = 1;
    // The current that arrives at `to` runs to earth and that taken from `from` comes out of earth, by the tree.
    const walk = (start: number, sign: number) => {
      for (let at = start; at !== 0; ) {
        const k = parent[at];
        const outward = group(inductors[k].from) === at;
        K[k * nl + column] += outward ? sign : -sign;
        at = outward ? group(inductors[k].to) : group(inductors[k].from);
      }
    };
    walk(group(inductors[link].to), 1);
    walk(group(inductors[link].from), -1);
  });
  return { K, tree };
}

import { ringMutual, ringSelf } from './ring.ts';
import type { Winding } from './winding.ts';

/**
 * Sums of turn-to-turn inductances over the first a and the first b turns of a coil wound layer upon full layer, H. Two
 * turns' mutual inductance depends on their layers and on how many columns they are apart, m(|c − d|). With G the second
 * sum of m (its second difference is m), all pairs of two runs of columns are four values of G, without approximation:
 * Σ m(c − d) = G(c₂ − d₁) + G(c₁ − d₂) − G(c₂ − d₂) − G(c₁ − d₁). Whole layers are summed once, so that a question costs as
 * many steps as there are layers, however many turns.
 * @param w as `isLayered` accepts it
 * @returns a function of two whole counts of turns; good to rounding, 1e-12 of the whole
 */
export function layerSums(w: Winding): (a: number, b: number) => number {
  const { columns, radii, column } = w;
  const R = radii.length;
  const second = secondSums(w);
  /** All pairs of columns [c1, c2) of one layer and [d1, d2) of another. */
  const runs = (l: number, c1: number, c2: number, k: number, d1: number, d2: number): number => {
    const G = second(Math.min(l, k), Math.max(l, k));
    return G[Math.abs(c2 - d1)] + G[Math.abs(c1 - d2)] - G[Math.abs(c2 - d2)] - G[Math.abs(c1 - d1)];
  };
  let layers: Float64Array | undefined;
  /** Pairs of the first whole layers with the first whole layers. */
  const wholeLayers = (A: number, B: number): number => {
    layers ??= runningSums(R, (l, k) => runs(l, 0, columns, k, 0, columns));
    return layers[A * (R + 1) + B];
  };
  /** Columns of a layer that its first turns fill. */
  const partialOf = (layer: number, turns: number): readonly [number, number] =>
    turns === 0 || column[layer * columns] === 0 ? [0, turns] : [columns - turns, columns];
  return (a, b) => {
    const [A, B] = [Math.floor(a / columns), Math.floor(b / columns)];
    const [c1, c2] = partialOf(A, a - A * columns);
    const [d1, d2] = partialOf(B, b - B * columns);
    let sum = wholeLayers(A, B);
    if (c2 > c1) for (let k = 0; k < B; k++) sum += runs(A, c1, c2, k, 0, columns);
    if (d2 > d1) for (let l = 0; l < A; l++) sum += runs(l, 0, columns, B, d1, d2);
    if (c2 > c1 && d2 > d1) sum += runs(A, c1, c2, B, d1, d2);
    return sum;
  };
}

/** Whether every layer is full, one wound after another. */
export const isLayered = ({ full, weave, columns, radii, radius, layer }: Winding): boolean =>
  full && !weave && columns > 1 && radius.length === columns * radii.length && layer[columns - 1] === 0;

/** G of each two layers at 0 … columns, made when it is first asked for: even, and 0 at 0. */
function secondSums({ radii, columns, zStep, wireRadius }: Winding): (low: number, high: number) => Float64Array {
  const known = new Map<number, Float64Array>();
  return (low, high) => {
    const key = low * radii.length + high;
    let G = known.get(key);
    if (!G) {
      G = new Float64Array(columns + 1);
      const mutual = low === high ? ringSelf(radii[low], wireRadius) : ringMutual(radii[low], radii[high], 0);
      let slope = mutual / 2;
      for (let k = 1; k <= columns; k++) {
        G[k] = G[k - 1] + slope;
        slope += ringMutual(radii[low], radii[high], k * zStep);
      }
      known.set(key, G);
    }
    return G;
  };
}

/** At (i, j) the sum over all before i and before j. */
export function runningSums(n: number, at: (i: number, j: number) => number): Float64Array {
  const m = n + 1;
  const S = new Float64Array(m * m);
  for (let i = 0; i < n; i++) {
    let row = 0;
    for (let j = 0; j < n; j++) {
      row += at(i, j);
      S[(i + 1) * m + j + 1] = S[i * m + j + 1] + row;
    }
  }
  return S;
}

import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { SingularEquations, solveInPlace } from '../../numerics/linear-solve.ts';
import { meanInverseDistance, mirrored, type Segment } from '../../numerics/segment-potential.ts';
import { EPSILON_0, type Farads, type Henries, type Metres, MU_0 } from '../../units/quantities.ts';
import type { WireTree } from './shapes.ts';

/** A piece of the wire, from the set outwards, with its share of the charge. */
export interface ChargedSegment extends Segment {
  readonly length: Metres;
  /** The segment it hangs from, −1 at the set. */
  readonly parent: number;
  /** Charge per volt on the aerial. */
  readonly capacitance: Farads;
  /** Part of the foot's current that flows through its middle, when the whole charges evenly in time. */
  readonly share: number;
}

export interface StaticCharge {
  readonly segments: readonly ChargedSegment[];
  readonly capacitance: Farads;
  /** Mean height of the charge, ground counted as zero. */
  readonly effectiveHeight: Metres;
  /**
   * Of the wire, for the current that charges it out of its foot: the term of second order in frequency, retardation
   * included. Above 0 for every shape.
   */
  readonly inductance: Henries;
  /** Mean of 1/distance from charge to mirrored charge, weighted by both: what the ground beneath sees. */
  readonly meanImageDistanceInverse: number;
}

/**
 * Charge on wires at one potential over perfect ground, by moments: pulses tested by their mean potential (Harrington,
 * Field Computation by Moment Methods, 1968, §2-4), thin-wire kernel, mirror image of opposite sign.
 * @param radius of the wire. @param count segments to aim for; 48 is within 0.1 % of the limit for ordinary aerials.
 */
export function staticCharge(tree: WireTree, radius: Metres, count = 48): StaticCharge {
  const pieces = divide(tree, count, 2 * radius);
  const n = pieces.length;
  const images = pieces.map(mirrored);
  const own = new Float64Array(n * n);
  const image = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      own[i * n + j] = own[j * n + i] = meanInverseDistance(pieces[i], pieces[j], radius);
      image[i * n + j] = image[j * n + i] = meanInverseDistance(pieces[i], images[j], radius);
    }
  }
  // Σ_j K_ij q_j = 4πε₀ for one volt.
  const charge = new Float64Array(n).fill(4 * Math.PI * EPSILON_0);
  try {
    solveInPlace(
      own.map((k, at) => k - image[at]),
      charge,
    );
  } catch (refusal) {
    if (refusal instanceof SingularEquations) throw new ImpossibleValues({ code: 'aerial.unsolvable' });
    throw refusal;
  }

  let capacitance = 0;
  let moment = 0;
  for (let i = 0; i < n; i++) {
    capacitance += charge[i];
    moment += (charge[i] * (pieces[i].from[2] + pieces[i].to[2])) / 2;
  }
  // The current through a piece is the charge beyond it: half its own and all that hangs from it.
  const beyond = charge.slice();
  for (let i = n - 1; i >= 0; i--) if (pieces[i].parent >= 0) beyond[pieces[i].parent] += beyond[i];
  const share = beyond.map((q, i) => (q - charge[i] / 2) / capacitance);

  const middles = pieces.map(({ from, to }) => [0, 1, 2].map((axis) => (from[axis] + to[axis]) / 2));
  let inductance = 0;
  let imaged = 0;
  let delay = 0;
  const foot = pieces[0].from;
  for (let i = 0; i < n; i++) {
    const p = pieces[i];
    const [px, py, pz] = [p.to[0] - p.from[0], p.to[1] - p.from[1], p.to[2] - p.from[2]];
    for (let j = 0; j < n; j++) {
      const s = pieces[j];
      const level = px * (s.to[0] - s.from[0]) + py * (s.to[1] - s.from[1]);
      const upright = pz * (s.to[2] - s.from[2]);
      const k = i * n + j;
      // Neumann's integral; in the ground level currents return reversed, upright ones do not.
      inductance += share[i] * share[j] * ((level + upright) * own[k] + (upright - level) * image[k]);
      imaged += charge[i] * charge[j] * image[k];
      // e^(−jkR)/R = 1/R − jk − k²R/2: the last term, from the charges, is of the same order as the inductance.
      delay += charge[i] * charge[j] * nearerThanImage(middles[i], middles[j]);
    }
    // Charge is conserved: what is on the wire has left the foot. Without this the inductance of a high wire is below 0.
    delay -= 2 * charge[i] * capacitance * nearerThanImage(middles[i], foot);
  }
  delay += capacitance ** 2 * nearerThanImage(foot, foot);
  return {
    segments: pieces.map((piece, i) => ({ ...piece, capacitance: charge[i], share: share[i] })),
    capacitance,
    effectiveHeight: moment / capacitance,
    inductance: (MU_0 / (4 * Math.PI)) * (inductance + delay / (2 * capacitance ** 2)),
    meanImageDistanceInverse: imaged / capacitance ** 2,
  };
}

/** Distance to a point less that to its mirror image in the ground, m; never above 0. */
function nearerThanImage(p: readonly number[], q: readonly number[]): Metres {
  const level2 = (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2;
  return Math.sqrt(level2 + (p[2] - q[2]) ** 2) - Math.sqrt(level2 + (p[2] + q[2]) ** 2);
}

type Piece = Segment & { readonly length: Metres; readonly parent: number };

/** Where cut k of n lies along a span, 0 to 1: closer together towards its ends. */
const cutAt = (k: number, n: number): number => 0.05 * (k / n) + 0.475 * (1 - Math.cos((Math.PI * k) / n));

/**
 * Cut the spans into segments, finer towards joints and ends, where the charge changes fastest; parents come first.
 * None is shorter than `shortest` unless its span is: charges on pieces shorter than the wire is thick swing in sign.
 */
function divide({ points, parents }: WireTree, count: number, shortest: Metres): Piece[] {
  const lengths = points.map((p, i) => {
    const q = points[Math.max(0, parents[i])];
    return i === 0 ? 0 : Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
  });
  const total = lengths.reduce((sum, l) => sum + l, 0);
  const fewest = points.length > 12 ? 2 : 4;
  const pieces: Piece[] = [];
  const last: number[] = [-1];
  points.forEach((to, i) => {
    if (i === 0) return;
    const from = points[parents[i]];
    let n = Math.max(fewest, Math.round((count * lengths[i]) / total));
    while (n > 1 && !(cutAt(1, n) * lengths[i] >= shortest)) n--;
    let parent = last[parents[i]];
    const at = (k: number) => {
      const s = cutAt(k, n);
      return [0, 1, 2].map((axis) => from[axis] + s * (to[axis] - from[axis])) as [number, number, number];
    };
    for (let k = 0; k < n; k++) {
      const piece = { from: at(k), to: at(k + 1) };
      const length = Math.hypot(piece.to[0] - piece.from[0], piece.to[1] - piece.from[1], piece.to[2] - piece.from[2]);
      pieces.push({ ...piece, length, parent });
      parent = pieces.length - 1;
    }
    last[i] = parent;
  });
  return pieces;
}

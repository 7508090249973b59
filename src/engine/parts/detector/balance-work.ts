import type { Complex } from '../../numerics/complex.ts';
import { type Samples, samples } from './audio-cycle.ts';
import { type AveragedCurrents, type AveragedDetector, averagedCurrents } from './averaged.ts';

/** What the balance of one modulated carrier is struck between; phasors of the audio cycle, index k + K for k = -K … K. */
export interface Balance {
  readonly averaged: AveragedDetector;
  readonly K: number;
  /** Open-circuit carrier and sidebands at the device. */
  readonly emf: readonly Complex[];
  /** What the device looks into at each. */
  readonly source: readonly Complex[];
  /** Load at k = 0 … K times the audio frequency. */
  readonly load: readonly Complex[];
  readonly bias: number;
}

/** Voltages found (same index; `direct` for k = 0 … K, with the negative ones their conjugates) and the currents there. */
export interface BalanceState {
  readonly carrier: Complex[];
  readonly direct: Complex[];
  readonly carrierCurrent: Complex[];
  readonly meanCurrent: Complex[];
  /** Least mean current and least slope of it in the cycle. */
  readonly leastCurrent: number;
  readonly leastSlope: number;
  /** Largest harmonic K + 1 that the balance leaves out, over the first: of the load's voltage or of the carrier. */
  readonly leftOut: number;
  readonly converged: boolean;
  readonly iterations: number;
}

/** What a balance of K harmonics is worked out in. */
export interface BalanceWork {
  readonly K: number;
  /** Instants of the cycle. */
  readonly N: number;
  readonly size: number;
  /** Where among the unknowns the direct voltage stands, the audio harmonics behind it. */
  readonly direct: number;
  /** Unknowns: re and im of each carrier phasor, then the direct one, then re and im of the audio ones (halved phasors). */
  readonly x: Float64Array;
  /** Equations left over, and their slopes by the unknowns. */
  readonly F: Float64Array;
  readonly J: Float64Array;
  /** At each instant: voltages of carrier and audio at which the device's slopes are taken, its currents. */
  readonly V: Samples;
  readonly v0: Float64Array;
  readonly I1: Samples;
  readonly I0: Float64Array;
  /** Voltages of the harmonics, and the currents there by the slopes. */
  readonly T: Samples;
  readonly t0: Float64Array;
  readonly C1: Samples;
  readonly C0: Float64Array;
  /** Slopes there: δI1 = a·δV + b·δV* + 2h·δv0 and δI0 = Re(h*·δV) + e·δv0. */
  readonly a: Float64Array;
  readonly bb: Samples;
  readonly h: Samples;
  readonly e: Float64Array;
  /** Harmonics of the currents, of their slopes, and of the currents with one more at the end. */
  readonly i1: Samples;
  readonly i0: Samples;
  readonly A: Samples;
  readonly B: Samples;
  readonly G: Samples;
  readonly E: Samples;
  readonly last1: Samples;
  readonly last0: Samples;
  readonly out: AveragedCurrents;
}

function makeWorkspace(K: number): BalanceWork {
  const N = K <= 2 ? 8 : K <= 3 ? 16 : K <= 7 ? 32 : 64;
  const width = 2 * K + 1;
  const size = 3 * width;
  return {
    K,
    N,
    size,
    direct: 2 * width,
    x: new Float64Array(size),
    F: new Float64Array(size),
    J: new Float64Array(size * size),
    V: samples(N),
    v0: new Float64Array(N),
    I1: samples(N),
    I0: new Float64Array(N),
    T: samples(N),
    t0: new Float64Array(N),
    C1: samples(N),
    C0: new Float64Array(N),
    a: new Float64Array(N),
    bb: samples(N),
    h: samples(N),
    e: new Float64Array(N),
    i1: samples(width),
    i0: samples(width),
    A: samples(4 * K + 1),
    B: samples(4 * K + 1),
    G: samples(4 * K + 1),
    E: samples(4 * K + 1),
    last1: samples(width + 2),
    last0: samples(width + 2),
    out: averagedCurrents(),
  };
}
const workspaces = new Map<number, BalanceWork>();
/** Kept, since every station asks for the same few. */
export function balanceWork(K: number): BalanceWork {
  let space = workspaces.get(K);
  if (!space) workspaces.set(K, (space = makeWorkspace(K)));
  return space;
}

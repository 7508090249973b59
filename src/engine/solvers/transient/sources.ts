import type { Complex } from '../../numerics/complex.ts';
import type { Hertz, Radians, Volts } from '../../units/quantities.ts';
import type { StateSpace } from '../modes/state-space.ts';

/** One modulating tone: the carrier's amplitude is multiplied by 1 + Σ depth·cos(2πft + phase). */
export interface ModulationTone {
  readonly frequency: Hertz;
  readonly depth: number;
  readonly phase?: Radians;
}
/** A station as it arrives at the sources of the circuit. */
export interface StationWave {
  readonly frequency: Hertz;
  /** Peak of the unmodulated carrier, V; every source gives its own emf (1 V for a whole aerial) times this. */
  readonly emf: Volts;
  readonly phase?: Radians;
  readonly modulation?: readonly ModulationTone[];
  /** Amplitude of the carrier at a time, as a multiple of `emf`; replaces `modulation`. */
  readonly envelope?: (time: number) => number;
}

/** How one wave drives each emf of a circuit: as its source says; cells not at all. */
export const sourceWeights = (emfs: StateSpace['emfs']): Complex[] => emfs.map((e) => e.source ?? { re: 0, im: 0 });

/** Steps between two exact values of the envelopes; in between they run straight. */
export const GROUP = 8;
/** Steps between two exact carrier phases. */
const ANCHOR = 1024;

/** Sum of all stations, `GROUP` steps at a time: Σ a(t)·cos φ(t) and Σ a(t)·sin φ(t). */
export interface Oscillators {
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
  /** Fill the group whose first value is at step `first` + 1, `first` a multiple of `GROUP`. */
  fill(first: number): void;
  /** Σ a·cos φ and Σ a·sin φ at a step, exactly. */
  at(step: number): Complex;
}

export function oscillators(stations: readonly StationWave[], h: number): Oscillators {
  const n = stations.length;
  const w = Float64Array.from(stations, (s) => 2 * Math.PI * s.frequency);
  const start = Float64Array.from(stations, (s) => s.phase ?? 0);
  const turnRe = w.map((x) => Math.cos(x * h));
  const turnIm = w.map((x) => Math.sin(x * h));
  const re = new Float64Array(n);
  const im = new Float64Array(n);
  const cosine = new Float64Array(GROUP);
  const sine = new Float64Array(GROUP);
  const tones = stations.map((s) =>
    (s.modulation ?? []).map((m) => ({ w: 2 * Math.PI * m.frequency, depth: m.depth, phase: m.phase ?? 0 })),
  );
  const amplitude = (k: number, t: number): number => {
    const s = stations[k];
    if (s.envelope) return s.emf * s.envelope(t);
    let a = 1;
    for (const m of tones[k]) a += m.depth * Math.cos(m.w * t + m.phase);
    return s.emf * a;
  };
  const next = new Float64Array(n);
  let expected = -1;
  return {
    cosine,
    sine,
    fill(first) {
      if (first !== expected || first % ANCHOR === 0) {
        for (let k = 0; k < n; k++) {
          const angle = w[k] * (first * h) + start[k];
          re[k] = Math.cos(angle);
          im[k] = Math.sin(angle);
          if (first !== expected) next[k] = amplitude(k, first * h);
        }
      }
      expected = first + GROUP;
      cosine.fill(0);
      sine.fill(0);
      for (let k = 0; k < n; k++) {
        let a = next[k];
        next[k] = amplitude(k, expected * h);
        const slope = (next[k] - a) / GROUP;
        const cr = turnRe[k];
        const ci = turnIm[k];
        let x = re[k];
        let y = im[k];
        for (let j = 0; j < GROUP; j++) {
          const t = x * cr - y * ci;
          y = x * ci + y * cr;
          x = t;
          a += slope;
          cosine[j] += a * x;
          sine[j] += a * y;
        }
        re[k] = x;
        im[k] = y;
      }
    },
    at(step) {
      let c = 0;
      let s = 0;
      for (let k = 0; k < n; k++) {
        const a = amplitude(k, step * h);
        c += a * Math.cos(w[k] * (step * h) + start[k]);
        s += a * Math.sin(w[k] * (step * h) + start[k]);
      }
      return { re: c, im: s };
    },
  };
}

import type { Henries, Ratio } from '../../units/quantities.ts';
import type { CoilModel } from './model.ts';

export interface Section {
  /** Turns from the start. */
  readonly from: number;
  readonly to: number;
  readonly inductance: Henries;
  /** Its part of the wire, and so of the resistance. */
  readonly share: Ratio;
}

/** A coil cut at its taps into inductors that are all coupled: what an autotransformer is. */
export interface TappedCoil {
  /** In order from the start of the winding. */
  readonly sections: readonly Section[];
  /** Mutual inductance of sections i and j; the diagonal is their own inductance. All of it sums to the whole. */
  readonly matrix: readonly (readonly Henries[])[];
}

/**
 * @param taps turns counted from the start, in any order; those at the very ends or twice the same are left out.
 * @throws RangeError for a tap beyond the coil.
 */
export function tappedCoil(coil: CoilModel, taps: readonly number[]): TappedCoil {
  for (const tap of taps) {
    if (!(tap >= 0 && tap <= coil.turns))
      throw new RangeError(`a tap at turn ${tap} of ${coil.turns} is not on the coil`);
  }
  const edges = [...new Set([0, ...taps, coil.turns])].sort((a, b) => a - b);
  const parts = edges.slice(1).map((to, i) => [edges[i], to] as const);
  const whole = coil.wireLengthTo(coil.turns);
  const sections = parts.map(([from, to]) => ({
    from,
    to,
    inductance: coil.partial(from, to),
    share: Number.isFinite(whole)
      ? (coil.wireLengthTo(to) - coil.wireLengthTo(from)) / whole
      : (to - from) / coil.turns,
  }));
  const matrix = parts.map((p, i) => parts.map((r, j) => (i === j ? sections[i].inductance : coil.mutual(p, r))));
  return { sections, matrix };
}

/**
 * Voltage at a tap over that of the whole coil when nothing loads the tap: (L_part + M)/L, which is the ratio of turns
 * only if all turns share all flux.
 */
export const tapRatio = (coil: CoilModel, tap: number): Ratio => {
  const part = coil.partial(0, tap);
  if (tap >= coil.turns) return 1;
  return (part + coil.mutual([0, tap], [tap, coil.turns])) / coil.inductance;
};

/** The tap at which the unloaded voltage is a given part of the whole. @returns turns from the start. */
export function tapForRatio(coil: CoilModel, ratio: Ratio): number {
  if (!(ratio > 0 && ratio <= 1)) throw new RangeError(`a tap at ${ratio} of the voltage: above 0 and up to 1 needed`);
  let low = 0;
  let high = coil.turns;
  for (let k = 0; k < 50; k++) {
    const middle = (low + high) / 2;
    if (tapRatio(coil, middle) < ratio) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

import { besselTable } from '../../numerics/bessel-table.ts';
import type { Bank } from './bank.ts';
import type { EnvelopeLaw } from './device-law.ts';
import { type LawAt, plainLaw } from './law-lookup.ts';

/** A detector's law and the network it meets at the end of a step, in units of s and Is, and room for its Newton steps. */
export interface Junction {
  law: EnvelopeLaw;
  perSlope: number;
  /** 2Is/s, S. */
  c2: number;
  /** What a unit of eᵘ takes from the mean voltage, over s. */
  q: number;
  /** Impedance to the carrier, Ω; mean voltage taken by a unit of mean current, Ω. */
  kr: number;
  ki: number;
  meanDrop: number;
  readonly bessel: Float64Array;
  /** ln I0 and I1/I0 of the carrier, and of a distant station. */
  readonly at: Float64Array;
  readonly atDistant: Float64Array;
  readonly lawAt: LawAt;
  /** Left over in F2 and its slope by u, distant stations eliminated; the step taken and how far things moved. */
  sum: number;
  slope: number;
  du: number;
  scale: number;
  change: number;
}

export const junctionFor = (law: EnvelopeLaw): Junction => ({
  law,
  perSlope: Number.NaN,
  c2: Number.NaN,
  q: Number.NaN,
  kr: Number.NaN,
  ki: Number.NaN,
  meanDrop: Number.NaN,
  bessel: besselTable(),
  at: new Float64Array(2),
  atDistant: new Float64Array(2),
  lawAt: plainLaw(),
  sum: Number.NaN,
  slope: Number.NaN,
  du: Number.NaN,
  scale: Number.NaN,
  change: Number.NaN,
});

/** Puts a junction between the two sides of a network as they stand. */
export function joinJunction(junction: Junction, law: EnvelopeLaw, radio: Bank, audio: Bank): void {
  if (law.table === undefined && junction.law.table !== undefined) Object.assign(junction.lawAt, plainLaw());
  junction.law = law;
  junction.perSlope = 1 / law.slope;
  junction.c2 = (2 * law.current) / law.slope;
  junction.kr = radio.kr;
  junction.ki = radio.ki;
  junction.meanDrop = Math.max(audio.kr, 0);
  junction.q = junction.meanDrop * law.current * junction.perSlope;
}

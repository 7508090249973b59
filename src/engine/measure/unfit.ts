import type { Coded, NoFigures } from '../units/coded.ts';

/** Why no figure follows from readings that are possible one by one. */
export interface UnfitReasons {
  readonly 'resonance.not-falling': NoFigures;
  readonly 'dial.not-rising': NoFigures;
  readonly 'width.no-peak': NoFigures;
  readonly 'detector.not-rising': NoFigures;
  readonly 'decay.no-ringing': NoFigures;
  /** How many different values of what was set are needed. */
  readonly 'too-few-different': { readonly least: number; readonly given: number };
}

export type UnfitReason = Coded<UnfitReasons>;

/** Readings that no model of their kind can follow. */
export class UnfitReadings extends RangeError {
  readonly reason: UnfitReason;
  constructor(reason: UnfitReason) {
    super(reason.code);
    this.reason = reason;
  }
}

/** @throws UnfitReadings unless at least `least` of the values differ. */
export function requireDifferent(values: readonly number[], least: number): void {
  const given = new Set(values).size;
  if (!(given >= least)) throw new UnfitReadings({ code: 'too-few-different', least, given });
}

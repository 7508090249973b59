import type { Coded, NoFigures } from '../units/coded.ts';

/** Why no figure follows from readings that are possible one by one. */
export interface UnfitReasons {
  readonly 'resonance.not-falling': NoFigures;
  readonly 'dial.not-rising': NoFigures;
  /** Neither readings nor a set say what the capacitor is. */
  readonly 'dial.no-capacitor': NoFigures;
  /** The set's capacitor is fixed, or its capacitance does not rise all along its scale. */
  readonly 'dial.no-scale': NoFigures;
  /** A law that cannot begin at no capacitance. */
  readonly 'dial.law-from-nothing': { readonly law: string };
  readonly 'width.no-peak': NoFigures;
  readonly 'detector.not-rising': NoFigures;
  readonly 'decay.no-ringing': NoFigures;
  readonly 'detector.both-ways': {
    readonly forward: number;
    readonly reverse: number;
    readonly leastForward: number;
    readonly leastReverse: number;
  };
  /** Index from 0 of the reading, here and below. */
  readonly 'detector.current-against-voltage': { readonly index: number };
  readonly 'detector.no-current': { readonly index: number };
  readonly 'upper-not-above-lower': NoFigures;
  readonly 'ratio-not-above-one': NoFigures;
  readonly 'aerial.adds-nothing': { readonly index: number };
  readonly 'aerial.more-than-series': { readonly index: number };
  readonly 'aerial.level-not-falling': NoFigures;
  readonly 'aiding-not-above-opposing': NoFigures;
  readonly 'coupling-above-one': NoFigures;
  readonly 'earth.not-above-zero': NoFigures;
  readonly 'earth.too-near': NoFigures;
  readonly 'resistance-of-leads': NoFigures;
  readonly 'no-triangle': NoFigures;
  readonly 'as-open': NoFigures;
  readonly 'field.calibration-not-rising': NoFigures;
  /** Amperes. */
  readonly 'field.outside-calibration': {
    readonly current: number;
    readonly lowest: number;
    readonly highest: number;
  };
  readonly 'analyser.two-ports': NoFigures;
  /** Hz. */
  readonly 'analyser.standards-do-not-reach': {
    readonly frequency: number;
    readonly lowest: number;
    readonly highest: number;
  };
  readonly 'analyser.standards-all-three': NoFigures;
  /** The largest magnitude of the reflection. */
  readonly 'analyser.not-calibrated': { readonly highest: number };
  /** How many times the noise the model leaves; a resonance that was seen, Hz. */
  readonly 'analyser.not-this-part': {
    readonly part: 'coil' | 'capacitor' | 'aerial' | 'crystal earpiece';
    readonly times: number;
    readonly resonance?: number;
  };
  readonly 'analyser.more-shorted-than-open': NoFigures;
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

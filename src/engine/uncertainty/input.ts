import type { PartChanges } from '../built/changed-parts.ts';
import type { Ratio } from '../units/quantities.ts';
import type { Spread } from './spread.ts';

/** What a builder can measure, or find out, and so be surer of. */
export type Measurable =
  | 'field strength'
  | 'modulation'
  | 'effective height'
  | 'aerial'
  | 'earth'
  | 'coil'
  | 'coupling'
  | 'tuning capacitor'
  | 'detector'
  | 'phones'
  | 'hearing';

/** What of the parts of a set is not known. */
export type PartInput =
  | 'soil'
  | 'contact with the soil'
  | 'effective height'
  | 'aerial capacitance'
  | 'aerial loss'
  | `coil ${number} ${'loss' | 'inductance'}`
  | `loop ${'loss' | 'inductance'}`
  | 'self-capacitance'
  | 'coupling'
  | 'capacitor minimum'
  | 'capacitor maximum'
  | 'saturation current'
  | 'ideality'
  | 'series resistance'
  | 'leakage'
  | 'contact potential'
  | 'load impedance'
  | 'sensitivity'
  | 'transformer loss';

/** A share of another's own deviate, −1 to 1: with one alone, the correlation. Squares add up to 1 at most. */
export interface Following {
  readonly other: PartInput | 'ground';
  readonly share: Ratio;
}

/** One unmeasured figure of a set: how it is spread, what would settle it, and what it changes in the parts. */
export interface SetInput {
  readonly id: PartInput;
  readonly settledBy: Measurable;
  readonly spread: Spread;
  /** The change of a part for a value of it; of one that only adds decibels at the ear, none. */
  readonly changes?: (value: number) => PartChanges;
  /** Where the level at the ear merely rises by the value, dB. */
  readonly adds?: true;
  /** Where it only moves stations along the dial: tuned in again they are as loud. */
  readonly moves?: 'dial';
  /** What it is drawn together with: its shares of the deviates of others, its own makes up the rest; none: by itself. */
  readonly follows?: readonly Following[];
}

import type { QuantityKind } from '../units/parse.ts';
import type { Degrees, Hertz, Ohms } from '../units/quantities.ts';
import type { KindOf, Of } from './by-kind.ts';

/** What a change asks of the builder, least first. */
export const EFFORTS = ['knob', 'tap', 'rewire', 'rewind', 'buy', 'outdoors'] as const;
export type Effort = (typeof EFFORTS)[number];
/** Weight of an effort relative to others. Common practice, no source. */
export const EFFORT_COST: Readonly<Record<Effort, number>> = {
  knob: 0,
  tap: 1,
  rewire: 2,
  rewind: 4,
  buy: 5,
  outdoors: 8,
};

/** A place in a description: keys, and places in lists counted from 0. */
export type Path = readonly (string | number)[];
/** Whether two places are one. */
export const samePath = (a: Path, b: Path): boolean => a.length === b.length && a.every((key, i) => key === b[i]);
/** What an edit writes at a place, as a person would write it: "47 pF", 18, { kind: 'germanium' }. */
export interface Edit {
  readonly path: Path;
  /** Undefined takes the key away. */
  readonly to: unknown;
}

/** The part of a set that a change is made to. */
export type AdjustedPart = 'aerial' | 'earth' | 'tuning' | 'arrangement' | 'detector' | 'load' | `coil:${number}`;
/** The part that a place in a description belongs to; undefined for places outside the set, such as its name. */
export function partAt([first, second]: Path): AdjustedPart | undefined {
  switch (first) {
    case 'coils':
      return typeof second === 'number' ? `coil:${second}` : undefined;
    case 'aerial':
    case 'earth':
    case 'tuning':
    case 'arrangement':
    case 'detector':
    case 'load':
      return first;
    default:
      return undefined;
  }
}

/** The values something can be given. */
export type Domain =
  | { readonly is: 'whole'; readonly from: number; readonly to: number; readonly scale: 'ratio' | 'linear' }
  | {
      readonly is: 'real';
      readonly from: number;
      readonly to: number;
      readonly scale: 'ratio' | 'linear';
      /** Left out: a plain number. */
      readonly unit?: QuantityKind;
      /** Significant digits written, and so evaluated. */
      readonly digits: number;
    }
  /** Preferred values between two ends, both included. */
  | {
      readonly is: 'series';
      readonly series: 'E12';
      readonly from: number;
      readonly to: number;
      readonly unit: QuantityKind;
    }
  /** Ready to be written. */
  | { readonly is: 'choice'; readonly of: readonly unknown[] };

/** For which wish something is tried by itself: louder, clearer of other stations, onto the dial, onto another band. */
export type Wish = 'loudness' | 'clearance' | 'reach' | 'band';

export type ArrangementSetting =
  | 'aerialTap'
  | 'detectorTap'
  | 'usedTurns'
  | 'seriesCapacitor'
  | 'parallelCapacitor'
  | 'distance'
  | 'coupling'
  | 'traps';
export type CoilSetting = 'turns' | 'turnsPerLayer' | 'wire' | 'former';
export type EarthSetting = 'kind' | 'resistance' | 'count' | 'length' | 'side';
type OtherSetting =
  | `arrangement.${ArrangementSetting}`
  | `aerial.${'height' | 'length' | 'side' | 'direction' | 'wire' | 'turns'}`
  | `earth.${EarthSetting}`
  | `tuning.${'maximum' | 'trimmer' | 'kind'}`
  | `detector.${'spot' | 'kind' | 'bias'}`
  | `load.${'make' | 'resistor' | 'transformer.ratio'}`
  /** All windings of a set, their taps in proportion. */
  | 'turns';

/** The place of an adjustment in the description: "arrangement.aerialTap", "coils[0].turns". */
export type AdjustmentId = OtherSetting | `coils[${number}].${CoilSetting}`;
/** What an adjustment is, whichever of the coils it is of. */
export type AdjustmentCode = OtherSetting | `coil.${CoilSetting}`;

export const adjustmentCode = (id: AdjustmentId): AdjustmentCode =>
  id.replace(/^coils\[\d+\]/, 'coil') as AdjustmentCode;

/** One thing about a set that a builder can change. */
export interface Adjustment {
  readonly id: AdjustmentId;
  readonly part: AdjustedPart;
  readonly path: Path;
  readonly effort: Effort;
  readonly domain: Domain;
  /** SI, as read; undefined where it is not fitted. */
  readonly now: unknown;
  readonly serves: readonly Wish[];
  /** All that is written with a value (already as written), the one at `path` first; default that alone. */
  readonly edits?: (to: unknown, value: unknown) => readonly Edit[];
}

/** What a kind of part has to adjust, or why it has nothing. */
export type Adjustments<D> =
  | { readonly none: string }
  | ((description: D, about: AdjustContext, path: Path) => readonly Adjustment[]);

/** A station that interferes with the one to be received. */
export interface Disturber {
  /** As a description names it. */
  readonly name: string;
  readonly frequency: Hertz;
  readonly bearing?: Degrees;
}

/** What a kind of part needs to know of the rest of the set. */
export interface AdjustContext {
  /** Turns of a named coil; undefined for a coil that is not there. */
  readonly turnsOf: (coil: string) => number | undefined;
  /** Places of the taps that a winding carries, and their turns: the frame's or rod's own where no coil is named. */
  readonly tapsOn: (coil: string | undefined) => readonly { readonly path: Path; readonly turns: number }[];
  /** Names of the coils that are tuned. */
  readonly tunedCoils: readonly string[];
  readonly isLoop: boolean;
  /** Turns of the frame or rod. */
  readonly loopTurns?: number;
  readonly wiring: 'single' | 'full-wave' | 'doubler';
  readonly environment: 'city' | 'residential' | 'rural' | 'quiet rural';
  /** Of what one listens with, at 1 kHz. */
  readonly loadImpedance: Ohms;
  /** The strongest other station, where one disturbs. */
  readonly against?: Disturber;
  /** A station beyond the dial lies on this side of it. */
  readonly beyond?: 'below' | 'above';
}

const E12 = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];

/** Values of the E12 series (IEC 60063) from one to another, rising, both ends included. */
export function preferredValues(from: number, to: number): number[] {
  const values: number[] = [];
  for (let decade = Math.floor(Math.log10(from)); decade <= Math.ceil(Math.log10(to)); decade++)
    for (const step of E12) {
      const value = Number(`${step}e${decade}`);
      if (value >= from * (1 - 1e-9) && value <= to * (1 + 1e-9)) values.push(value);
    }
  return values;
}

/** What each kind of a part has to adjust: one entry for each, or it does not compile. */
export type AdjustmentsByKind<D> = { readonly [K in KindOf<D>]: Adjustments<Of<D, K>> };

/** The adjustments of a part of any kind. */
export function adjustmentsIn<D extends { readonly shape: string } | { readonly kind: string }>(
  table: AdjustmentsByKind<D>,
  described: D,
  about: AdjustContext,
  path: Path,
): readonly Adjustment[] {
  const kind = 'kind' in described ? described.kind : described.shape;
  // The compiler cannot follow that the entry under a description's own kind takes that description.
  const entry = (table as unknown as Readonly<Record<string, Adjustments<D>>>)[kind];
  return typeof entry === 'function' ? entry(described, about, path) : [];
}

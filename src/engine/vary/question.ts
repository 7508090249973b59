import type { AdjustedPart, AdjustmentId, Effort, Path } from '../kinds/adjustment.ts';
import type { Loudness, Verdict } from '../reception/path/types.ts';
import type { Decibels, Hertz } from '../units/quantities.ts';

/** What is to be as great as it can be. */
export type Objective =
  /** Sound pressure level, dB SPL; the width a station comes through, Hz; tones up to here less than 3 dB down, Hz. */
  | { readonly of: 'loudness' | 'bandwidth' | 'audio bandwidth'; readonly station: number }
  /** How far a station stands over another, or over the worst of all others, dB. */
  | { readonly of: 'clearance'; readonly station: number; readonly from?: number }
  /** Level over what can just be heard, dB. */
  | { readonly of: 'audibility'; readonly station: number }
  | { readonly of: 'stations heard' }
  /** Share of a band, on a ratio scale, that the dial covers. */
  | { readonly of: 'band covered'; readonly from: Hertz; readonly to: Hertz }
  /**
   * A station well within the dial, other stations left on it, the dial moved as little as can be: dB in all.
   */
  | {
      readonly of: 'reach';
      readonly station: number;
      readonly others: readonly number[];
      /** The low end of the dial as it is. */
      readonly lowest: Hertz;
    }
  /** How many parts there are, as a negative number. */
  | { readonly of: 'parts' }
  /** All of several goals, dB in all. */
  | { readonly of: 'goals'; readonly goals: readonly Goal[] };

/** One of several things that are wanted at once. */
export interface Goal {
  readonly objective: Exclude<Objective, { readonly of: 'goals' }>;
  /** More of its figure is not counted; default all is. */
  readonly enough?: number;
  /** Of each decibel that it is worth, so much is counted; default all. */
  readonly weight?: number;
}

/** What must not get worse, whatever is gained: the figure of an objective, at least. */
export interface Guard {
  readonly objective: Objective;
  readonly atLeast: number;
}

/** What is wanted of a set, and what must stay. */
export interface Question {
  readonly objective: Objective;
  /** Parts and adjustments (by id) that stay as they are. */
  readonly keep?: ReadonlySet<string>;
  readonly guard?: readonly Guard[];
  /** Default one at a time: an answer for each adjustment. */
  readonly unknowns?: 'one at a time' | { readonly together: readonly string[] };
  readonly effortAtMost?: Effort;
  /** What promises less of the score in the search is not judged, dB; default nothing is too little. */
  readonly leastPromise?: number;
}

/** One place of the description, before and after. */
export interface Change {
  /** That it is part of. */
  readonly adjustment: AdjustmentId;
  readonly part: AdjustedPart;
  readonly path: Path;
  /** As read; undefined where nothing was written. */
  readonly from: unknown;
  /** As to be written. */
  readonly to: unknown;
  readonly effort: Effort;
}

/** An adjustment and the values it had and is given, SI. */
export interface Setting {
  readonly adjustment: AdjustmentId;
  readonly from: unknown;
  readonly to: unknown;
}

/** What a set gives of one station. */
export interface Figures {
  readonly isWithin: boolean;
  readonly level: Decibels;
  readonly margin: Decibels;
  /** With no other station, and with the others. */
  readonly heard: Loudness;
  readonly verdict: Verdict;
  /** How far it stands over the worst of the others, dB; infinite where nothing else is heard with it. */
  readonly clearance: Decibels;
  /** The station that it stands least above. */
  readonly worst?: string;
}

/** A change that gains something: what is set to what, and what comes of it. */
export interface Answer {
  readonly settings: readonly Setting[];
  /** All that is to be written, the principal place of each setting first. */
  readonly changes: readonly Change[];
  /** Of the objective's figure; undefined where there was none before, such as for a station beyond the dial. */
  readonly gain: number | undefined;
  /** What the search went by: the objective's figure, or one that also counts loudness. */
  readonly score: number;
  /** The same over what it is now. */
  readonly scoreGain: number;
  readonly effort: Effort;
}

import type { ComparedSets, ResonanceCurve, SetDescription } from '../../../engine/index.ts';
import type { When } from '../../description/when.ts';

/** A set of the shelf as it is kept. */
export interface KeptSet {
  readonly name: string;
  readonly written: unknown;
  readonly lastValid?: unknown;
}

/** What the worker that compares sets is asked. */
export interface SetsQuestion {
  /** At its place all are compared. */
  readonly first: SetDescription;
  readonly others: readonly KeptSet[];
  /** Index in the place of the first. */
  readonly station: number;
  readonly time: When;
}

export interface SetsAnswer {
  /** Undefined where none of the others could be read. */
  readonly compared?: ComparedSets;
  /** Undefined for a set that does not tune to the station. */
  readonly curves: readonly (ResonanceCurve | undefined)[];
  /** Names of sets that cannot be read, and of those whose refused fields have stand-ins. */
  readonly unread: readonly string[];
  readonly withStandIns: readonly string[];
}

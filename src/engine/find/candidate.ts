import type { TurnsChosen } from './choices.ts';

/** A set of a search with what it is worth for each want (dB), and less effort as the last score. */
export interface Candidate {
  /** Places in the lists of front and back ends. */
  readonly front: number;
  readonly back: number;
  readonly turns: TurnsChosen;
  readonly scores: readonly number[];
  /** A wanted station lies at an end of the dial: medians of sets as built may differ from the usual set by more. */
  readonly isAtEnd?: boolean;
}

/** An answer to a check. */
export interface Answered {
  /** Id of the check. */
  readonly check: string;
  /** Which of its answers, from 0. */
  readonly answer: number;
}

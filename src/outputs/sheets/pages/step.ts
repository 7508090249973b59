/** Of bringing up: what to do, what to find, and what to suspect otherwise. */
export interface Step {
  readonly act: string;
  readonly expect: string;
  readonly suspect: string;
}

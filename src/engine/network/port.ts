/** A pair of nodes looked into from outside. */
export interface Port {
  readonly from: string;
  readonly to: string;
}

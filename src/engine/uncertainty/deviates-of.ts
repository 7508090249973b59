import { DRAWS, deviates } from './draws.ts';
import type { SetInput } from './input.ts';

/** The deviate of what follows another, from that one's and its own. */
export const following = (correlation: number, other: number, own: number): number =>
  correlation * other + Math.sqrt(1 - correlation * correlation) * own;

/** The deviates of an input in every set drawn, together with what it follows. */
export function deviatesOf({ id, follows }: SetInput): Float64Array {
  const own = deviates(id);
  if (!follows) return own;
  const other = deviates(follows.other);
  return Float64Array.from({ length: DRAWS }, (_, k) => following(follows.correlation, other[k], own[k]));
}

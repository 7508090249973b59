import type { AerialDescription } from '../../kinds/aerials/aerial-schema.ts';
import { isLoop } from '../../kinds/loops.ts';
import { towards } from '../../parts/aerial/frame.ts';
import type { Degrees, Ratio } from '../../units/quantities.ts';

/** No null is perfect: the frame's own wiring and what stands about leave this much. Common practice, no source. */
const DEEPEST_NULL: Ratio = 0.03;

/**
 * Share of its full emf that a frame or rod has from a station, by where it points: its own `direction`, or else the
 * station tuned to, to which it is then turned. Wires take all directions alike, and so does what has no bearing.
 */
export function directionShare(aerial: AerialDescription, bearing?: Degrees, facing?: Degrees): Ratio {
  if (!isLoop(aerial)) return 1;
  const direction = aerial.direction ?? facing;
  if (direction === undefined || bearing === undefined) return 1;
  return Math.max(DEEPEST_NULL, Math.abs(towards(bearing - direction)));
}

/** Whether the aerial is turned to the station tuned to. */
export const isTurned = (aerial: AerialDescription): boolean => isLoop(aerial) && aerial.direction === undefined;

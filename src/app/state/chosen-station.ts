import type { StationReception } from '../../engine/index.ts';
import { useLeftOut } from './pieces.ts';
import { useOpenSet } from './set-context.ts';

/** The chosen station with its figures; undefined while the figures leave it out. */
export function useChosenStation(): StationReception | undefined {
  const station = useOpenSet().chosen.value;
  const leftOut = useLeftOut();
  return station && !leftOut.has(station.index) ? station : undefined;
}

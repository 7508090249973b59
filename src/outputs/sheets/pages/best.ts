import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import { isHeard } from '../../../engine/reception/verdict.ts';

/** The station that can be tuned in and is heard best: the one to begin with. */
export const heardBest = (reception: Reception): StationReception | undefined =>
  reception.best.map((i) => reception.stations[i]).find((s) => s?.dial && isHeard(s.verdict));

/** The same, or where none is heard the one that comes nearest to it. */
export const bestOf = (reception: Reception): StationReception | undefined =>
  heardBest(reception) ?? reception.stations[reception.best[0]];

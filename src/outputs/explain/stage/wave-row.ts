import type { PointId } from '../model/points.ts';
import type { Waves } from '../model/waves.ts';

/** One of the traces below one another. */
export interface WaveRow {
  readonly waves: Waves;
  readonly point: PointId;
  /** In place of the point's own. */
  readonly title?: string;
  /** Against the other rows; default 1. */
  readonly height?: number;
}

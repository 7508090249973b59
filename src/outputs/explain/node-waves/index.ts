import type { NodeWaves } from '../../../engine/waves/node-waves.ts';
import type { ShownWaves } from './shown-waves.ts';
import { keptWave } from './trace.ts';

export { Columns } from '../stage/pixel-columns.ts';
export { closer, nodeWaveScene, paintNodeWaves, viewWithin } from './picture.ts';
export type { ShownWaves } from './shown-waves.ts';
export { nodeWavesCsv } from './waves-csv.ts';

/**
 * A run made ready for drawing.
 * @param run as `nodeWaves` has it
 * @returns the same with its waves kept for drawing at any width
 */
export const shownWaves = (run: NodeWaves): ShownWaves => ({
  ...run,
  waves: run.waves.map(({ samples, ...wave }) => ({ ...wave, kept: keptWave(samples) })),
});

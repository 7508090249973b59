import type { NodeWave, NodeWaves } from '../../../engine/waves/node-waves.ts';
import type { KeptWave } from './trace.ts';

/** A run as it is shown: its waves with what makes them quick to draw. */
export interface ShownWaves extends Omit<NodeWaves, 'waves'> {
  readonly waves: readonly (Omit<NodeWave, 'samples'> & { readonly kept: KeptWave })[];
}

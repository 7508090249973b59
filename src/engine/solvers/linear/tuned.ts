import type { Assembly } from '../../kinds/arrangements/assembly.ts';
import { capacitorTuned } from './capacitor-tuned.ts';
import { coilTuned } from './coil-tuned.ts';
import type { TunedNetwork } from './views.ts';

/** A set's radio-frequency side for any frequency and position. */
export const tunedNetwork = (assembly: Assembly): TunedNetwork =>
  assembly.tuning.length > 0 ? capacitorTuned(assembly) : coilTuned(assembly);

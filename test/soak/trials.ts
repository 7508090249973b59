import { LAW_TRIALS } from './law-trials.ts';
import { listeningTrial } from './listening-trials.ts';
import { BYTE_TRIALS } from './readers/byte-trials.ts';
import { DESCRIPTION_TRIALS } from './readers/description-trials.ts';
import { TABLE_TRIALS } from './readers/table-trials.ts';
import { STORAGE_TRIALS } from './storage-trials.ts';
import type { Trial } from './trial.ts';

/** Everything that is tried. @param listened s of sound in each stretch of listening */
export const trialsWith = (listened: number): readonly Trial[] => [
  ...DESCRIPTION_TRIALS,
  ...TABLE_TRIALS,
  ...BYTE_TRIALS,
  ...LAW_TRIALS,
  ...STORAGE_TRIALS,
  listeningTrial(listened),
];

import type { Warning, WarningFacts } from '../../../../engine/facts/warning.ts';
import { measureWarnings } from '../measure/warnings.ts';
import { aerialWarnings } from './aerial.ts';
import { arrangementWarnings } from './arrangement.ts';
import { capacitorWarnings } from './capacitor.ts';
import { coilWarnings } from './coil.ts';
import { detectorWarnings } from './detector.ts';
import { earthWarnings } from './earth.ts';
import { loadWarnings } from './load.ts';
import { placeWarnings } from './place.ts';
import { receptionWarnings } from './reception.ts';
import type { SentencesFor } from './sentences-for.ts';
import { wavesWarnings } from './waves.ts';

/** One sentence for each warning: what is not to be trusted, and why. */
export const warningWords: SentencesFor<WarningFacts> = {
  ...aerialWarnings,
  ...arrangementWarnings,
  ...capacitorWarnings,
  ...coilWarnings,
  ...detectorWarnings,
  ...earthWarnings,
  ...loadWarnings,
  ...measureWarnings,
  ...placeWarnings,
  ...receptionWarnings,
  ...wavesWarnings,
};

/**
 * The sentence of a warning.
 * @param w its code and figures, SI
 * @returns text
 */
export const warningSentence = (w: Warning): string => (warningWords[w.code] as (figures: Warning) => string)(w);

/**
 * The sentences of several.
 * @param all their codes and figures, SI
 * @returns one text for each
 */
export const warningSentences = (all: readonly Warning[]): string[] => all.map(warningSentence);

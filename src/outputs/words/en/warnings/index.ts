import type { Warned, Warning, WarningFacts } from '../../../../engine/facts/warning.ts';
import { aerialWarnings } from './aerial.ts';
import { capacitorWarnings } from './capacitor.ts';
import { coilWarnings } from './coil.ts';
import { earthWarnings } from './earth.ts';
import { loadWarnings } from './load.ts';
import { placeWarnings } from './place.ts';
import type { SentencesFor } from './sentences-for.ts';

/** One sentence for each warning: what is not to be trusted, and why. */
export const warningWords: SentencesFor<WarningFacts> = {
  ...aerialWarnings,
  ...capacitorWarnings,
  ...coilWarnings,
  ...earthWarnings,
  ...loadWarnings,
  ...placeWarnings,
};

/** The sentence of a warning. */
export const warningSentence = (w: Warned): string =>
  typeof w === 'string' ? w : (warningWords[w.code] as (figures: Warning) => string)(w);

/** The sentences of several. */
export const warningSentences = (all: readonly Warned[]): string[] => all.map(warningSentence);

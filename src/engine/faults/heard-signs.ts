import { normalShare } from '../numerics/normal.ts';
import type { Decibels, Ratio } from '../units/quantities.ts';
import type { FaultCode, SignCode } from './fault.ts';
import type { SetShows } from './shown.ts';

/** What an ear tells of a change that it hears happen, and of one between two trials. Common practice in listening. */
const AT_ONCE: Decibels = 1;
const BETWEEN_TRIALS: Decibels = 2.5;
/** σ of either from listener to listener, as a share of it. */
const LISTENERS: Ratio = 0.35;

/** Signs that are a change in loudness: with less than this, nothing is noticed. */
const NOTICED_FROM: Readonly<Partial<Record<SignCode, Decibels>>> = {
  'crackle-on-tapping': AT_ONCE,
  'crackle-on-turning': AT_ONCE,
  'jumps-on-sliding': AT_ONCE,
  'sound-with-cord-moved': AT_ONCE,
  'changes-on-knock': AT_ONCE,
  'louder-with-hand-on-earth': AT_ONCE,
  'louder-at-another-spot': BETWEEN_TRIALS,
  'louder-with-other-wire': BETWEEN_TRIALS,
  'louder-with-other-earth': BETWEEN_TRIALS,
  'louder-with-other-phones': BETWEEN_TRIALS,
  'louder-with-other-detector': BETWEEN_TRIALS,
  'louder-with-by-pass-off': BETWEEN_TRIALS,
  'louder-with-capacitor-bridged': AT_ONCE,
  'weaker-when-wet': BETWEEN_TRIALS,
};

/** Plates that touch are heard where no station is: they take away what lies beyond, and are no loss on any other. */
const BETWEEN_STATIONS: ReadonlySet<FaultCode> = new Set(['vanes-touch']);

/** Whether a sign is a change in loudness. */
export const isByEar = (sign: SignCode): boolean => NOTICED_FROM[sign] !== undefined;

/**
 * How likely it is that somebody who makes up for a fault notices a change: by what the set loses by it.
 * @param sign looked for
 * @param fault planted
 * @param margins of the stations listened for, above the threshold
 * @param mended the same without that fault; left out: it is lost altogether
 * @returns 1 for signs that are no change in loudness
 */
export function noticedShare(
  sign: SignCode,
  fault: FaultCode,
  { margins }: Pick<SetShows, 'margins'>,
  mended: readonly Decibels[] | undefined,
): Ratio {
  const from = NOTICED_FROM[sign];
  if (from === undefined || !mended || BETWEEN_STATIONS.has(fault)) return 1;
  // Below the threshold nothing is heard, before or after.
  const change = Math.max(...mended.map((margin, i) => Math.max(0, margin) - Math.max(0, margins[i])));
  return normalShare((change - from) / (LISTENERS * from));
}

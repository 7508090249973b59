import type { AerialWarnings } from './aerial-warnings.ts';
import type { ArrangementWarnings } from './arrangement-warnings.ts';
import type { CapacitorWarnings } from './capacitor-warnings.ts';
import type { CoilWarnings } from './coil-warnings.ts';
import type { DetectorWarnings } from './detector-warnings.ts';
import type { EarthWarnings } from './earth-warnings.ts';
import type { LoadWarnings } from './load-warnings.ts';
import type { MeasureWarnings } from './measure-warnings.ts';
import type { PlaceWarnings } from './place-warnings.ts';
import type { ReceptionWarnings } from './reception-warnings.ts';
import type { WavesWarnings } from './waves-warnings.ts';

/** Every warning the engine gives: its code, and the figures that a sentence about it needs (SI). */
export interface WarningFacts
  extends AerialWarnings,
    ArrangementWarnings,
    CapacitorWarnings,
    CoilWarnings,
    DetectorWarnings,
    EarthWarnings,
    LoadWarnings,
    MeasureWarnings,
    PlaceWarnings,
    ReceptionWarnings,
    WavesWarnings {}

export type WarningCode = keyof WarningFacts;

/** One warning: a code and its figures. Sentences are made from it in `outputs/words`. */
export type Warning = { readonly [C in WarningCode]: { readonly code: C } & Readonly<WarningFacts[C]> }[WarningCode];

/**
 * @param code which warning
 * @param figures what a sentence about it needs, SI; none where the code has no figures
 * @returns the warning with this code.
 */
export const warning = <C extends WarningCode>(
  code: C,
  ...[figures]: keyof WarningFacts[C] extends never ? [] : [WarningFacts[C]]
): Warning => ({ code, ...figures }) as unknown as Warning;

/**
 * The same, each once, in order of first appearance.
 * @param warnings in any order, any of them more than once
 * @returns a new list
 */
export function distinctWarnings(warnings: readonly Warning[]): Warning[] {
  const known = new Set<string>();
  return warnings.filter((w) => {
    const key = JSON.stringify(w);
    if (known.has(key)) return false;
    known.add(key);
    return true;
  });
}

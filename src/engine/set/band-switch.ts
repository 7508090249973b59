import { isRecord } from '../fields/introspect.ts';
import type { ArrangementDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { coilNamesOf } from '../kinds/arrangements/coil-names.ts';

/** A band of a set with a band switch, as far as the switch is concerned. */
interface SwitchedBand {
  readonly name: string;
  /** Left out for the band that the switch stands on: that one's is the set's own. */
  readonly arrangement?: unknown;
}

/** A set as read or as written, with a band switch or without. */
interface Switched {
  readonly arrangement: unknown;
  readonly bands?: readonly SwitchedBand[];
}

const bandsIn = (set: unknown): readonly unknown[] => (isRecord(set) && Array.isArray(set.bands) ? set.bands : []);

/**
 * The band that the switch stands on: the one whose arrangement is the set's own.
 * @param set as read or as written, whatever is in it
 * @returns its place in the list of bands; undefined for a set without a band switch
 */
export function standingBand(set: unknown): number | undefined {
  const index = bandsIn(set).findIndex((band) => isRecord(band) && band.arrangement === undefined);
  return index < 0 ? undefined : index;
}

/**
 * Turn the band switch: the arrangement of that band becomes the set's own, and the one before goes back to its band.
 * Nothing else changes, so turning back gives the same set, and whatever knows nothing of bands works with the result.
 * @param set as read or as written, whatever is in it
 * @param index the band's place in the list
 * @returns the same object where the switch stands there already, or there is no such band
 */
export function turnSwitch<T>(set: T, index: number): T {
  const bands = bandsIn(set);
  const now = standingBand(set);
  const to = bands[index];
  if (!isRecord(set) || now === undefined || !isRecord(to) || to.arrangement === undefined) return set;
  if (set.arrangement === undefined) return set;
  const { arrangement, ...free } = to;
  const from = { ...(bands[now] as object), arrangement: set.arrangement };
  return {
    ...set,
    arrangement,
    bands: bands.map((band, i) => (i === index ? free : i === now ? from : band)),
  };
}

/** How a band's name is compared: capitals, hyphens and spaces at the ends make no other name. */
export const foldedBand = (name: string): string => name.trim().toLowerCase().replaceAll('-', ' ');

/**
 * The band that a text names.
 * @param set as read
 * @param text its name; "long-wave" is "Long wave"
 * @returns its place in the list of bands; undefined where none is meant
 */
export function bandNamed(set: Switched, text: string): number | undefined {
  const bands = set.bands ?? [];
  const exact = bands.findIndex(({ name }) => name === text);
  const index = exact >= 0 ? exact : bands.findIndex(({ name }) => foldedBand(name) === foldedBand(text));
  return index < 0 ? undefined : index;
}

/**
 * The set with its band switch on a band.
 * @param set as read
 * @param band its name, as `bandNamed` finds it
 * @returns a set whose arrangement is the band's: all that is calculated and drawn of it is of that band
 * @throws RangeError for a band that the set does not have
 */
export function switchBand<T extends Switched>(set: T, band: string): T {
  const index = bandNamed(set, band);
  if (index === undefined) throw new RangeError(`no band "${band}"`);
  return turnSwitch(set, index);
}

/**
 * Coils that other bands have in circuit and this one has not.
 * @param set as read, its switch on a band
 * @returns their names; none for a set without a band switch
 */
export function switchedOutCoils({
  arrangement,
  bands = [],
}: {
  readonly arrangement: ArrangementDescription;
  readonly bands?: readonly { readonly arrangement?: ArrangementDescription }[];
}): readonly string[] {
  const used = coilNamesOf(arrangement);
  const others = bands.flatMap((band) => (band.arrangement ? [...coilNamesOf(band.arrangement)] : []));
  return [...new Set(others)].filter((name) => !used.has(name));
}

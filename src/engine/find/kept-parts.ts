import type { SetDescription, WrittenDescription } from '../set/description.ts';
import { ARRANGEMENTS_FOUND, type BoxDescription, type WrittenBox } from './box-schema.ts';

/** A box as read and as written. */
export interface BoxBoth {
  readonly box: BoxDescription;
  readonly written: WrittenBox;
}

/** Parts of a set that can take the place of those of a box. */
const KEPT_WHOLE = ['aerial', 'earth', 'tuning', 'arrangement', 'detector', 'load'] as const;

/** Why a part cannot be kept while sets are looked for. */
export type KeepRefusal = 'no set' | 'coils' | 'whole parts' | 'wound aerial' | 'fixed tuning' | 'arrangement';

/**
 * Why a part cannot be kept while sets are looked for.
 * @param set that stands at the place, as read; undefined for a place by itself
 * @param part as an entry of `keep` names it
 * @returns undefined where `withKept` can keep it
 */
export function keepRefusal(
  set: Pick<SetDescription, 'aerial' | 'tuning' | 'arrangement'> | undefined,
  part: string,
): KeepRefusal | undefined {
  if (!set) return 'no set';
  if (/^coils\b/.test(part)) return 'coils';
  if (!KEPT_WHOLE.some((one) => one === part)) return 'whole parts';
  const { aerial, tuning, arrangement } = set;
  if (part === 'aerial' && (aerial.kind === 'frame' || aerial.kind === 'ferrite rod')) return 'wound aerial';
  if (part === 'tuning' && tuning.kind === 'fixed') return 'fixed tuning';
  if (part === 'arrangement' && !ARRANGEMENTS_FOUND.some((kind) => kind === arrangement.kind)) return 'arrangement';
  return undefined;
}

/**
 * The parts of a set that `withKept` can keep.
 * @param set that stands at the place, as read; undefined for a place by itself
 * @returns their keys in a description, such as "load"; none without a set
 */
export const keepableParts = (set: Parameters<typeof keepRefusal>[0]): string[] =>
  KEPT_WHOLE.filter((part) => keepRefusal(set, part) === undefined);

/**
 * A box in which the parts that are kept are those of a set, and no others.
 * @param options the box, as read and as written
 * @param set as read, and as written
 * @param keep parts of the set that `keepRefusal` does not refuse; others are left out of account
 * @returns the box to look through
 */
export function withKept(
  { box, written }: BoxBoth,
  set: { readonly read: SetDescription; readonly written: WrittenDescription },
  keep: readonly string[],
): BoxBoth {
  const isKept = (part: string): boolean => keep.includes(part) && keepRefusal(set.read, part) === undefined;
  const from = <B extends WrittenBox | BoxDescription>(into: B, of: SetDescription | WrittenDescription): B => {
    const { kind } = set.read.arrangement;
    const fixed = (into.capacitors ?? []).filter(({ capacitor }) => capacitor.kind === 'fixed');
    return {
      ...into,
      ...(isKept('aerial') ? { aerials: [{ aerial: of.aerial }] } : {}),
      ...(isKept('earth') ? { earths: [{ earth: of.earth }] } : {}),
      ...(isKept('tuning') ? { capacitors: [{ capacitor: of.tuning, gangs: 1, count: 1 }, ...fixed], foils: [] } : {}),
      ...(isKept('detector') ? { detectors: [{ detector: of.detector, count: 1 }] } : {}),
      ...(isKept('load') ? { loads: [{ load: of.load, count: 1 }], transformers: [] } : {}),
      ...(isKept('arrangement') ? { limits: { tapEvery: 1, ...into.limits, arrangements: [kind] } } : {}),
    } as B;
  };
  return { box: from(box, set.read), written: from(written, set.written) };
}

import type { SetDescription, WrittenDescription } from '../set/description.ts';
import type { BoxDescription, WrittenBox } from './box-schema.ts';

/** A box as read and as written. */
export interface BoxBoth {
  readonly box: BoxDescription;
  readonly written: WrittenBox;
}

/**
 * A box in which the parts that are kept are those of a set, and no others.
 * @param options the box, as read and as written
 * @param set as read, and as written
 * @param keep parts of the set: "aerial", "earth", "tuning", "arrangement", "detector", "load"
 * @returns the box to look through
 */
export function withKept(
  { box, written }: BoxBoth,
  set: { readonly read: SetDescription; readonly written: WrittenDescription },
  keep: readonly string[],
): BoxBoth {
  const isKept = (part: string): boolean => keep.includes(part);
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

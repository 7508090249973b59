import { coilModel } from '../kinds/models.ts';
import type { Metres } from '../units/quantities.ts';
import type { BoxDescription } from './box-schema.ts';
import { coilOn } from './wound.ts';

/** How much room and wire a winding takes. */
export interface WindingSize {
  readonly windingLength: Metres;
  readonly outerDiameter: Metres;
  readonly wireLength: Metres;
}

/** One winding is asked for by hundreds of front ends: each box keeps what was worked out. */
const known = new WeakMap<BoxDescription, Map<string, WindingSize>>();

/**
 * The size of so many turns on a tube or plate of a box.
 * @param box as read
 * @param placed places of former and reel in the box
 * @throws RangeError for what cannot be wound
 */
export function windingSize(
  box: BoxDescription,
  { former, reel }: { readonly former: number; readonly reel: number },
  turns: number,
): WindingSize {
  let ofBox = known.get(box);
  if (!ofBox) known.set(box, (ofBox = new Map()));
  const key = `${former} ${reel} ${turns}`;
  let size = ofBox.get(key);
  if (!size) {
    const { windingLength, outerDiameter, wireLength } = coilModel(coilOn(box, { former, reel }, turns));
    ofBox.set(key, (size = { windingLength, outerDiameter, wireLength }));
  }
  return size;
}

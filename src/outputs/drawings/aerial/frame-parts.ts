import type { LoopDescription } from '../../../engine/kinds/loops.ts';

type Frame = Extract<LoopDescription, { kind: 'frame' }>;

/** How far a lath reaches beyond the wire at either end, m. */
const BEYOND = 0.01;
/** Of the side: what the frame stands clear of its foot, and how wide the foot is. Common practice, no source. */
const CLEAR = 0.12;
const FOOT = 0.4;
/** A winding deeper than this, m, is not held by combs that hang by one end. Common practice, no source. */
const DEEP = 0.1;

/** Sizes, m, of the wooden parts of a frame whose sides are as described, measured where the wire lies. */
export interface FrameParts {
  /** Turns seen side by side where most of them are. */
  readonly wires: number;
  /** From the first turn to the last: across the combs of a box, inward along the side's middle of a spiral. */
  readonly depth: number;
  /** From the crossing of the laths to the outermost wire. */
  readonly reach: number;
  readonly lath: number;
  /** From notch to notch along a comb or, of a spiral, along a lath. */
  readonly notch: number;
  /** Crosses of laths: two for a deep box. */
  readonly crosses: number;
  /** From the foot to the crossing. */
  readonly mast: number;
  readonly foot: number;
}

export function frameParts({ outline, side, turns, pitch, winding }: Frame): FrameParts {
  // Laths lie along the diagonals of a square and across a circle.
  const slant = outline === 'square' ? Math.SQRT2 : 1;
  const wires = Math.ceil(turns - 1e-9);
  const depth = (wires - 1) * pitch;
  return {
    wires,
    depth,
    reach: (side / 2) * slant,
    lath: side * slant + 2 * BEYOND,
    notch: winding === 'spiral' ? pitch * slant : pitch,
    crosses: winding === 'box' && depth > DEEP ? 2 : 1,
    mast: side / 2 + side * CLEAR,
    foot: side * FOOT,
  };
}

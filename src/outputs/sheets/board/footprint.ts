import type { Item, Point } from '../../scene/scene.ts';
import type { Shape } from '../view/solid.ts';

/** What a part covers of the board, about its middle; x to the right, y down, mm. */
export interface Footprint {
  readonly w: number;
  readonly h: number;
  readonly items: readonly Item[];
  /** Where wires are joined. */
  readonly terminals: Readonly<Record<string, Point>>;
  /** Its bodies, for the view of the whole set. */
  readonly shapes: readonly Shape[];
  /** Holes: place and diameter. */
  readonly drills: readonly { readonly at: Point; readonly diameter: number }[];
  /** A body of unknown size is drawn dashed. */
  readonly assumed?: boolean;
  /** Width of the body alone, where something stands out of it; default `w`. */
  readonly body?: number;
  /** Room for words inside. */
  readonly words: 'inside' | 'above';
  /** Axis of a coil: along x, along y, or up through the board. */
  readonly axis?: 'x' | 'y' | 'up';
}

export const OUTLINE = { stroke: 'ink', width: 0.3 } as const;
export const DASHED = { ...OUTLINE, dash: [2, 1.2] } as const;

/** A box that stands on the board, its middle at a place of the part. mm */
export const upright = (x: number, y: number, w: number, d: number, height: number, assumed = false): Shape => ({
  kind: 'box',
  from: [x - w / 2, y - d / 2, 0],
  to: [x + w / 2, y + d / 2, height],
  assumed,
});

import type { Item, Point } from '../../scene/scene.ts';

/** What a part covers of the board, about its middle; x to the right, y down, mm. */
export interface Footprint {
  readonly w: number;
  readonly h: number;
  readonly items: readonly Item[];
  /** Where wires are joined. */
  readonly terminals: Readonly<Record<string, Point>>;
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

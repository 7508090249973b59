import type { Role } from '../../scene/scene.ts';
import type { CoverageMap } from './pixel-coverage.ts';

/** Something to draw with: a canvas that moves, or a list that becomes SVG. Lengths in px, y downwards. */
export interface Pen {
  rect(x: number, y: number, w: number, h: number, fill: Role, opacity?: number, radius?: number): void;
  line(x1: number, y1: number, x2: number, y2: number, stroke: Role, width?: number, opacity?: number): void;
  /** Through n points. */
  polyline(
    xs: ArrayLike<number>,
    ys: ArrayLike<number>,
    n: number,
    stroke: Role,
    width?: number,
    opacity?: number,
  ): void;
  polygon(xs: ArrayLike<number>, ys: ArrayLike<number>, n: number, fill: Role, opacity?: number): void;
  circle(
    x: number,
    y: number,
    radius: number,
    look: { fill?: Role; stroke?: Role; width?: number; opacity?: number },
  ): void;
  /**
   * A trace as the area between two lines: n columns from x, `dx` apart. Columns are filled from `top` to `bottom`, which
   * lie half a line's width outside the least and greatest value.
   */
  band(x: number, dx: number, top: Float64Array, bottom: Float64Array, n: number, fill: Role, opacity?: number): void;
  /** A trace as shares of pixels, so many to a px; only on a pen that has pixels. */
  coverage?(x: number, y: number, map: CoverageMap, density: number, fill: Role, opacity: number): void;
  text(x: number, y: number, words: string, size: number, look?: TextLook): void;
  /** Draw only within a box until `unclip`. */
  clip(x: number, y: number, w: number, h: number): void;
  unclip(): void;
}

export interface TextLook {
  readonly role?: Role;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** A rim of paper, where traces run behind. */
  readonly rim?: boolean;
  readonly opacity?: number;
}

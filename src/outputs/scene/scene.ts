/**
 * What a drawing or plot is made of: plain data that SVG, a canvas or a PDF can draw. Lengths are in the scene's unit,
 * y grows downwards, angles are degrees clockwise as seen.
 */
export type Role =
  | 'ink'
  | 'soft'
  | 'faint'
  | 'copper'
  | 'accent'
  | 'warning'
  | 'paper'
  | 'card'
  | 'soil'
  | 'metal'
  | 'sea'
  | 'none';

export type Point = readonly [x: number, y: number];

/** Which workbench an item belongs to, and what a pointer resting on it is told. */
export interface Meaning {
  /** Part of the description, e.g. "coils.0", "tuning", "arrangement.traps.0". */
  readonly part?: string;
  readonly title?: string;
}

export interface Look extends Meaning {
  /** Default none. */
  readonly stroke?: Role;
  /** Default none. */
  readonly fill?: Role;
  /** Of the stroke, in the scene's unit; default 1. */
  readonly width?: number;
  readonly dash?: readonly number[];
  /** Default round. */
  readonly cap?: 'butt' | 'round';
  /** 0..1, default 1. */
  readonly opacity?: number;
}

export type LineItem = Look & { readonly kind: 'line'; readonly from: Point; readonly to: Point };
export type PolylineItem = Look & {
  readonly kind: 'polyline';
  readonly points: readonly Point[];
  readonly closed?: boolean;
};
/** Move, line, cubic curve, circular arc (radius, the long way round, clockwise), close. */
export type PathSegment =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['A', radius: number, long: boolean, clockwise: boolean, x: number, y: number]
  | readonly ['Z'];
export type PathItem = Look & { readonly kind: 'path'; readonly segments: readonly PathSegment[] };
export type CircleItem = Look & { readonly kind: 'circle'; readonly centre: Point; readonly radius: number };
export type RectItem = Look & {
  readonly kind: 'rect';
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** Of the corners, default 0. */
  readonly radius?: number;
};
export type Anchor = 'start' | 'middle' | 'end';
export type TextItem = Meaning & {
  readonly kind: 'text';
  readonly at: Point;
  readonly text: string;
  /** Height of the letters' em, in the scene's unit. */
  readonly size: number;
  /** Default start. */
  readonly anchor?: Anchor;
  /** What of the text lies at `at`: its base line (default), its middle or its top. */
  readonly sits?: 'base' | 'middle' | 'top';
  /** Default ink. */
  readonly role?: Role;
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** Turned about `at`. */
  readonly turn?: number;
  /** A rim of paper round the letters, where lines run behind them. */
  readonly rim?: boolean;
};
export type GroupItem = Meaning & {
  readonly kind: 'group';
  readonly items: readonly Item[];
  /** Applied last to first: scaled, then turned, then moved. */
  readonly move?: Point;
  readonly turn?: number;
  readonly scale?: number;
  /** Only what lies within is seen; in the group's own coordinates. */
  readonly clip?: { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
  readonly opacity?: number;
};
/** One colour laid on with a share for each pixel of a box; only in a drawing that is to become pixels. */
export type SharesItem = Meaning & {
  readonly kind: 'shares';
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly columns: number;
  readonly rows: number;
  /** 0 to 255, row by row. */
  readonly shares: Uint8Array;
  readonly fill: Role;
  /** 0..1, default 1. */
  readonly opacity?: number;
};
/** One thing that is drawn: a line, a shape, a text, shares of pixels, or a group of them. */
export type Item = LineItem | PolylineItem | PathItem | CircleItem | RectItem | TextItem | SharesItem | GroupItem;

/** A drawing as data, for SVG, canvas and PDF alike. */
export interface Scene {
  /** mm for drawings to scale, px for plots and diagrams. */
  readonly unit: 'mm' | 'px';
  readonly width: number;
  readonly height: number;
  /** What it is: "Resonance curve, 693 kHz". */
  readonly title: string;
  /** What it says, in words with figures, for who cannot see it. */
  readonly description: string;
  readonly items: readonly Item[];
  /** Of a drawing: millimetres on paper for a millimetre of the thing; 0.5 is 1:2. */
  readonly drawnAt?: number;
  /** Sentences that belong beside it. */
  readonly warnings?: readonly string[];
}

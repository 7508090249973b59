import type { PartId } from '../../../engine/network/ids.ts';
import type { Point } from '../../scene/scene.ts';
import { textWidth } from '../../scene/text-width.ts';
import { BODY, HALF, type SymbolKind } from './symbols.ts';

export interface SymbolTerminal {
  readonly at: Point;
  readonly node: string;
}

/** A symbol where it stands. Its terminals know their nodes; what joins them is drawn as wires. */
export interface PlacedSymbol {
  readonly kind: SymbolKind;
  /** Of one element that a part consists of, its id; what stands for a whole part has the part's. */
  readonly id: string;
  readonly part: PartId;
  /** Place in the description: "coils.0". */
  readonly at: string;
  /** In words: "tuning capacitor". */
  readonly name: string;
  readonly terminals: readonly SymbolTerminal[];
  /** Middle of its body, and how it is turned (degrees clockwise; at 0 it lies from left to right). */
  readonly centre: Point;
  readonly turn: number;
  /** Arches of a coil, and whether they bulge to the other side. */
  readonly arches?: number;
  readonly mirrored?: boolean;
  /** What it is called and what it measures, a line each. */
  readonly words: readonly string[];
  /** What it measures, in one line. */
  readonly value: string;
  /** Its words are a figure, with no name before it. */
  readonly isFigure?: boolean;
  readonly wordsAt: Point;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface DiagramWire {
  readonly points: readonly Point[];
  readonly node: string;
}

/** Coils that reach each other, by their parts; drawn as an arrow, or said in words. */
export interface DrawnCoupling {
  readonly first: string;
  readonly second: string;
  readonly words: string;
  /** Ends of the arrow; none when it is only said in words. */
  readonly arrow?: readonly [Point, Point];
}

/** A few words that belong to no symbol. */
export interface Remark {
  readonly at: Point;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface Diagram {
  readonly symbols: readonly PlacedSymbol[];
  readonly wires: readonly DiagramWire[];
  /** Where three or more leads meet. */
  readonly dots: readonly Point[];
  readonly couplings: readonly DrawnCoupling[];
  readonly remarks: readonly Remark[];
  readonly width: number;
  readonly height: number;
  readonly warnings: readonly string[];
}

export const LETTERS = 12;
const LINE = 14;

/** What a symbol is told about itself. */
export interface About {
  readonly id: string;
  readonly part: PartId;
  readonly at: string;
  readonly name: string;
  readonly words: readonly string[];
  readonly value: string;
  readonly isFigure?: boolean;
}

export const wordsWidth = (words: readonly string[]): number =>
  words.reduce((most, w) => Math.max(most, textWidth(w, LETTERS)), 0);

/** A sheet on which symbols and wires are put; y grows downward, px. */
export class DiagramSheet {
  readonly symbols: PlacedSymbol[] = [];
  readonly wires: DiagramWire[] = [];
  readonly couplings: DrawnCoupling[] = [];
  readonly remarks: Remark[] = [];
  readonly warnings: string[] = [];

  wire(node: string, ...points: Point[]): void {
    const kept = points.filter((p, i) => i === 0 || p[0] !== points[i - 1][0] || p[1] !== points[i - 1][1]);
    if (kept.length > 1) this.wires.push({ points: kept, node });
  }

  /** A symbol from left to right, its words above it. @returns x of its right end. */
  series(
    kind: SymbolKind,
    about: About,
    [x, y]: Point,
    nodes: readonly [string, string],
    options: { width?: number; below?: boolean } = {},
  ): number {
    const width = options.width ?? seriesWidth(about);
    const middle = x + width / 2;
    const half = HALF[kind];
    const lines = about.words.length;
    const clear = Math.max(10, BODY[kind][1]) + 6;
    const bottom = options.below ? y + clear + LINE * lines : y - clear;
    this.symbols.push({
      kind,
      ...about,
      terminals: [
        { at: [middle - half, y], node: nodes[0] },
        { at: [middle + half, y], node: nodes[1] },
      ],
      centre: [middle, y],
      turn: 0,
      wordsAt: [middle, bottom - LINE * (lines - 1)],
      anchor: 'middle',
    });
    this.wire(nodes[0], [x, y], [middle - half, y]);
    this.wire(nodes[1], [middle + half, y], [x + width, y]);
    return x + width;
  }

  /**
   * A symbol from top to bottom, its words to the right (or left).
   * @param options.middle where its body stands, default halfway. @param options.up its first node is the lower one.
   * @returns x up to which it and its words reach.
   */
  shunt(
    kind: SymbolKind,
    about: About,
    x: number,
    [top, bottom]: readonly [number, number],
    nodes: readonly [top: string, bottom: string],
    options: {
      middle?: number;
      up?: boolean;
      left?: boolean;
      arches?: number;
      mirrored?: boolean;
      wordsAt?: Point;
    } = {},
  ): number {
    const { middle = (top + bottom) / 2, up = false, left = false, arches } = options;
    const half = arches === undefined ? HALF[kind] : arches * 6;
    const reach = kind === 'inductor' ? (left ? 8 : 13) : kind === 'valve' ? 31 : 16;
    const lines = about.words.length;
    const terminals: SymbolTerminal[] = [
      { at: [x, middle - half], node: nodes[0] },
      { at: [x, middle + half], node: nodes[1] },
    ];
    this.symbols.push({
      kind,
      ...about,
      terminals: up ? terminals.reverse() : terminals,
      centre: [x, middle],
      turn: up ? -90 : 90,
      arches,
      mirrored: options.mirrored,
      wordsAt: options.wordsAt ?? [x + (left ? -reach : reach), middle + 4.5 - (LINE * (lines - 1)) / 2],
      anchor: options.wordsAt ? 'middle' : left ? 'end' : 'start',
    });
    this.wire(nodes[0], [x, top], [x, middle - half]);
    this.wire(nodes[1], [x, middle + half], [x, bottom]);
    return x + reach + (left ? 0 : wordsWidth(about.words));
  }

  /** A symbol with one lead (aerial, earth) or of its own shape. */
  place(symbol: PlacedSymbol): void {
    this.symbols.push(symbol);
  }

  finished(width: number, height: number): Diagram {
    return {
      symbols: this.symbols,
      wires: this.wires,
      dots: junctions(this.symbols, this.wires),
      couplings: this.couplings,
      remarks: saidOnce(this.remarks),
      width,
      height,
      warnings: this.warnings,
    };
  }
}

/** Two leads at one tap need its turn only once. */
const saidOnce = (remarks: readonly Remark[]): Remark[] =>
  remarks.filter(
    (r, i) =>
      !remarks.slice(0, i).some((o) => o.text === r.text && Math.hypot(o.at[0] - r.at[0], o.at[1] - r.at[1]) < 60),
  );

export const seriesWidth = (about: About): number => Math.max(64, wordsWidth(about.words) + 14);

const same = (a: Point, b: Point): boolean => Math.abs(a[0] - b[0]) < 0.01 && Math.abs(a[1] - b[1]) < 0.01;

/** Does a point lie on a piece of wire (level or upright). */
function onPiece(p: Point, a: Point, b: Point): boolean {
  const e = 0.01;
  return (
    p[0] >= Math.min(a[0], b[0]) - e &&
    p[0] <= Math.max(a[0], b[0]) + e &&
    p[1] >= Math.min(a[1], b[1]) - e &&
    p[1] <= Math.max(a[1], b[1]) + e
  );
}

export const onWire = (p: Point, wire: DiagramWire): boolean =>
  wire.points.some((b, i) => i > 0 && onPiece(p, wire.points[i - 1], b));

/** Places where three or more leads of one node meet: an end of a wire or a terminal counts one, a wire passing two. */
function junctions(symbols: readonly PlacedSymbol[], wires: readonly DiagramWire[]): Point[] {
  const ends: { at: Point; node: string }[] = [
    ...wires.flatMap((w) => [
      { at: w.points[0], node: w.node },
      { at: w.points[w.points.length - 1], node: w.node },
    ]),
    ...symbols.flatMap((s) => s.terminals),
  ];
  const dots: Point[] = [];
  for (const { at, node } of ends) {
    if (dots.some((d) => same(d, at))) continue;
    const meeting = ends.filter((e) => e.node === node && same(e.at, at)).length;
    const passing = wires.filter(
      (w) => w.node === node && onWire(at, w) && !same(at, w.points[0]) && !same(at, w.points[w.points.length - 1]),
    ).length;
    if (meeting + 2 * passing >= 3) dots.push(at);
  }
  return dots;
}

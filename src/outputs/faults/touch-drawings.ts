import type { BuiltSet } from '../../engine/built/built-set.ts';
import type { Check } from '../../engine/faults/checks.ts';
import { touchOf } from '../../engine/faults/touch.ts';
import type { PartId, TerminalId } from '../../engine/network/ids.ts';
import { drawCircuit } from '../drawings/circuit/draw.ts';
import { circuitDiagram } from '../drawings/circuit/layouts.ts';
import { circle, group, polyline, rect, text } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { type Built, boardLayout } from '../sheets/board/layout.ts';
import { boardParts } from '../sheets/board/parts.ts';
import { touchedNames } from '../sheets/board/touched.ts';
import { terminalPoints } from '../sheets/board/units.ts';
import { faultTouchWords } from '../words/index.ts';

/** The board of a set with its parts: what a picture of where to touch is drawn on. */
export type TouchBoard = Built;

/** @returns the board as its sheet has it. */
export function touchBoard({ set }: BuiltSet): TouchBoard {
  const parts = boardParts(set);
  return { parts, layout: boardLayout(set, parts) };
}

/** A place lit on a drawing: a lead of the meter by its sign, or a part. */
interface Lit {
  readonly at: Point;
  readonly sign?: '+' | '−';
  readonly reach: number;
  /** On which side of the ring its sign stands; default right. */
  readonly side?: 'left' | 'below';
}

const SIGNS = ['+', '−'] as const;

/** A ring, and the sign of the meter's lead beside it. @param size of the letters, in the scene's unit. */
function litItems({ at: [x, y], sign, reach, side }: Lit, size: number): Item[] {
  const ring = circle([x, y], reach, { stroke: 'copper', fill: 'copper', width: size / 5, opacity: 0.35 });
  const edge = circle([x, y], reach, { stroke: 'copper', width: size / 6 });
  if (!sign) return [ring, edge];
  const far = reach + size * 0.3;
  const beside: Point =
    side === 'below' ? [x, y + reach + size] : [side === 'left' ? x - far : x + far, side ? y + size * 0.4 : y - reach];
  const anchor = side === 'below' ? 'middle' : side === 'left' ? 'end' : 'start';
  return [ring, edge, text(beside, sign, size * 1.25, { anchor, role: 'copper', bold: true, rim: true })];
}

/**
 * The circuit diagram with what a check touches lit.
 * @param check of the set
 * @param built the set
 * @returns a scene, px, or nothing where the check touches no part that is drawn
 */
export function touchOnCircuit(check: Check, built: BuiltSet): Scene | undefined {
  const { leads, parts } = touchOf(check, built);
  const { symbols } = circuitDiagram(built.set);
  const own = (part: PartId) => symbols.filter((symbol) => symbol.part === part);
  const lit = [
    ...leads.flatMap(({ part, terminal }, i): Lit[] => {
      const joint = jointOf(built, part, terminal);
      const [first] = own(part);
      const symbol =
        own(part).find(({ terminals }) => terminals.some(({ node }) => built.jointOf(node) === joint)) ?? first;
      if (!symbol) return [];
      const at = symbol.terminals.find(({ node }) => built.jointOf(node) === joint)?.at ?? symbol.centre;
      // Words stand to the right of what is upright, and above what lies.
      return [{ at, sign: SIGNS[i], reach: 7, side: symbol.turn % 180 === 0 ? 'below' : 'left' }];
    }),
    ...parts.flatMap((part) => own(part).map(({ centre }): Lit => ({ at: centre, reach: 22 }))),
  ];
  if (lit.length === 0) return undefined;
  const drawn = drawCircuit(built.set);
  return {
    ...drawn,
    title: faultTouchWords.circuit,
    description: faultTouchWords.description(touchedNames(boardParts(built.set), { leads, parts })),
    items: [...drawn.items, ...lit.flatMap((one) => litItems(one, 14))],
  };
}

const jointOf = ({ parts }: BuiltSet, part: PartId, terminal: TerminalId): string | undefined =>
  parts.get(part)?.terminals.find(({ id }) => id === terminal)?.joint;

/** Pixels that the board's width has on a narrow screen: letters are made to be read there. */
const NARROW = 320;
const LETTERS_PX = 13;

/**
 * The board from above with what a check touches lit; only what is lit is named.
 * @param check of the set
 * @param built the set
 * @param board of the same set
 * @returns a scene, mm, or nothing where the check touches no part on the board
 */
export function touchOnBoard(check: Check, built: BuiltSet, board: TouchBoard): Scene | undefined {
  const { leads, parts } = touchOf(check, built);
  const { width, height, placed, ways } = board.layout;
  const size = (LETTERS_PX * width) / NARROW;
  const points = terminalPoints(placed);
  const names = touchedNames(board.parts, { leads, parts });
  const lit = [
    ...names.leads.flatMap((name, i): (Lit & { name: string })[] => {
      const at = points.get(name);
      return at ? [{ at, sign: SIGNS[i], reach: size * 0.45, name }] : [];
    }),
    ...placed
      .filter(({ part }) => parts.includes(part.id))
      .map(({ part, at, print }) => ({ at, reach: Math.min(print.w, print.h) / 2 + 2, name: part.tag })),
  ];
  if (lit.length === 0) return undefined;
  return {
    unit: 'mm',
    width,
    height,
    title: faultTouchWords.board,
    description: faultTouchWords.description(names),
    items: [
      rect(0, 0, width, height, { stroke: 'ink', width: 0.5 }),
      ...ways.map((way) => polyline(way, { stroke: 'soft', width: 0.35 })),
      ...placed.map(({ print, at, turn }) => group(print.items.filter(isNoText), { move: at, turn })),
      ...[...points.values()].map((at) => circle(at, 0.9, { fill: 'ink' })),
      ...lit.flatMap((one) => litItems(one, size)),
      ...lit.map((one) => nameItem(one, size, width)),
    ],
  };
}

const isNoText = (item: Item): boolean => item.kind !== 'text';

/** Beside the ring, on the side where the board has room. */
function nameItem({ at: [x, y], reach, name }: Lit & { readonly name: string }, size: number, width: number): Item {
  const isRight = x + reach + textWidth(name, size) + size > width;
  return text([isRight ? x - reach : x + reach, y + reach + size], name, size, {
    anchor: isRight ? 'end' : 'start',
    bold: true,
    rim: true,
  });
}

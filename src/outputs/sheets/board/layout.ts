import type { SetDescription } from '../../../engine/set/description.ts';
import type { Point } from '../../scene/scene.ts';
import type { BoardWarning } from '../../words/index.ts';
import type { BoardParts } from './parts.ts';
import { inOrder, type Laid, laidOut, placeParts, type Spacing } from './place-parts.ts';
import { lengthOf, routes } from './route.ts';
import { terminalPoints, type Unit, unitsOf } from './units.ts';
import { type BoardWiring, netsOf, wiringOf } from './wiring.ts';

export interface BoardLayout extends Laid {
  readonly wiring: BoardWiring;
  /** The way of each wire of the list over the board, round what stands in between. */
  readonly ways: readonly (readonly Point[])[];
  /** Of each wire of the list, mm, with what its ends take. */
  readonly lengths: readonly number[];
  readonly warnings: readonly BoardWarning[];
}

/** The parts of a set and where they stand. */
export interface Built {
  readonly parts: BoardParts;
  readonly layout: BoardLayout;
}

/** Clear of the edge and between parts, mm: as one likes it, and as close as it may be to stay on one page. */
const EASY: Spacing = { edge: 8, gap: 9 };
const TIGHT: Spacing = { edge: 5, gap: 6 };

/** A board so long, in mm, fits one page of A4 with its test ruler; one so wide, any page. */
const ONE_PAGE = { width: 178, height: 204 };

/** Where the parts of a set stand and its wires run. @param board mm; default what the parts need */
export function boardLayout(
  set: SetDescription,
  parts: BoardParts,
  board: { width?: number; height?: number } = {},
): BoardLayout {
  const units = unitsOf(set, parts);
  const nets = netsOf(parts);
  const widest = Math.ceil(Math.max(...units.map((unit) => unit.w)) + 2 * EASY.edge);
  const [width, spacing] =
    board.width === undefined ? room(units, widest) : ([Math.max(board.width, widest), EASY] as const);
  const laid = placeParts(units, nets, { width, height: ONE_PAGE.height }, spacing);
  const warnings: BoardWarning[] = [];
  if (board.width !== undefined && widest > board.width)
    warnings.push({ code: 'board.too-narrow', width: widest / 1e3 });
  if (board.height !== undefined && board.height < laid.height)
    warnings.push({ code: 'board.too-short', length: laid.height / 1e3 });
  const height = Math.max(laid.height, board.height ?? 0);
  const at = terminalPoints(laid.placed);
  const wiring = wiringOf(nets, at);
  const bodies = laid.placed.map(({ print, at, turn }) => ({ at, turn, w: print.w, h: print.h }));
  const ways = routes(
    wiring.lines.map(({ from, to }) => [at.get(from)!, at.get(to)!] as const),
    bodies,
    { width: laid.width, height },
    [...at.values()],
  );
  const lengths = ways.map((way) => Math.ceil((lengthOf(way) * 1.15 + 25) / 10) * 10);
  return { ...laid, height, wiring, ways, lengths, warnings };
}

/** The narrowest board, and the widest spacing, that fit a page; where none do, those that waste least. */
function room(units: readonly Unit[], widest: number): readonly [width: number, spacing: Spacing] {
  const choices = [EASY, TIGHT].flatMap((spacing) =>
    [130, 142, 154, 166, ONE_PAGE.width].map((width) => [Math.max(width, widest), spacing] as const),
  );
  const height = ([width, spacing]: (typeof choices)[number]): number => laidOut(inOrder(units), width, spacing).height;
  return (
    choices.find((one) => one[0] <= ONE_PAGE.width && height(one) <= ONE_PAGE.height) ??
    choices.reduce((a, b) => (b[0] * height(b) < a[0] * height(a) ? b : a))
  );
}

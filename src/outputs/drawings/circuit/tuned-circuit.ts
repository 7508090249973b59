import { EARTH } from '../../../engine/network/elements.ts';
import type { PartId } from '../../../engine/network/ids.ts';
import { PART } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { diagramText, type SymbolLabel } from '../../words/index.ts';
import { about, tuningLabel } from './about.ts';
import { type ColumnStretch, drawCoilColumn, toRail } from './coil-column.ts';
import { type DiagramSheet, wordsWidth } from './diagram.ts';
import type { Levels } from './ends.ts';

/** Px of the line over the end of turns that are left open. */
export const OPEN_END = 12;

export interface Tuned {
  readonly x: number;
  readonly live: string;
  readonly lower?: { node: string; level: number };
}

/**
 * The tuning coil with its capacitor to the right, and the lead to the detector brought up to the line.
 * @param feed level and node at which the aerial comes in from the left at `left`, if it does.
 */
export function drawTuned(
  sheet: DiagramSheet,
  set: SetDescription,
  x: number,
  levels: Levels,
  coil: {
    readonly stretches: readonly ColumnStretch[];
    readonly nodeAt: (turn: number) => string;
    readonly part: PartId;
    readonly label: SymbolLabel;
    /** In use, up to the top of the tuned circuit. */
    readonly turns: number;
    /** What becomes of those above, where there are any. */
    readonly rest?: 'shorted' | 'open';
    readonly first: string;
    readonly middle?: number;
    readonly detectorTurn: number;
    readonly aerialTurn?: number;
    readonly left: number;
    /** Something stands close at the left: the aerial tap's turn is written at the right. */
    readonly beside?: boolean;
  },
): Tuned {
  const y = levels.line;
  const { first, middle, rest } = coil;
  // The end of turns that are left open stays below the line, which passes over it.
  const drawn = drawCoilColumn(sheet, x, rest === 'open' ? y + OPEN_END : y, coil.stretches, {
    set,
    ...coil,
    wordsOver: y,
  });
  const used = drawn.levelAt(coil.turns);
  const column = { ...drawn, levelAt: (turn: number) => (turn === coil.turns ? y : drawn.levelAt(turn)) };
  const split = middle !== undefined;
  const lowLevel = split ? column.bottom : levels.rail;
  if (!split) toRail(sheet, x, column.bottom, levels, first);
  else {
    const level = column.levelAt(middle);
    sheet.wire(EARTH, [x, level], [x - 13, level], [x - 13, levels.rail]);
  }
  const aerialText = coil.aerialTurn === undefined ? '' : diagramText.turn(coil.aerialTurn);
  if (coil.aerialTurn !== undefined) {
    const level = column.levelAt(coil.aerialTurn);
    const node = coil.nodeAt(coil.aerialTurn);
    if (level === y) sheet.wire(node, [coil.left, y], [rest === 'open' ? x + 20 : x, y]);
    else {
      const drop = x - 26;
      sheet.wire(node, [coil.left, y], [drop, y], [drop, level], [x, level]);
      if (coil.aerialTurn < coil.turns && coil.aerialTurn > 0)
        sheet.remarks.push(
          coil.beside
            ? { at: [x + 13, level - 5], text: aerialText, anchor: 'start' }
            : { at: [drop - 5, level + 4], text: aerialText, anchor: 'end' },
        );
    }
  }
  if (rest !== undefined) {
    sheet.wire('top', [x, used], [x + 20, used], [x + 20, y]);
    sheet.remarks.push({ at: [x + 25, used + 4], text: diagramText.turn(coil.turns), anchor: 'start' });
  }
  const tapLevel = column.levelAt(coil.detectorTurn);
  const tapped = !split && tapLevel !== y;
  const tapText = diagramText.turn(coil.detectorTurn);
  const capacitor =
    x +
    Math.max(
      50,
      wordsWidth(coil.label.lines) / 2 + 14,
      tapped ? 26 + wordsWidth([tapText]) : 0,
      rest === undefined ? 0 : 40 + wordsWidth([diagramText.turn(coil.turns)]),
      coil.beside ? 26 + wordsWidth([aerialText]) : 0,
    );
  const top = rest === undefined ? coil.stretches[0].top : 'top';
  sheet.wire(top, [rest === 'open' ? x + 20 : x, y], [capacitor, y]);
  if (split) sheet.wire(first, [x, lowLevel], [capacitor, lowLevel]);
  // Body and words keep clear of a tap's lead, which crosses below or above.
  let centre = (y + lowLevel) / 2;
  if (tapped && Math.abs(tapLevel - centre) < 34)
    centre = tapLevel + 36 + 13 <= lowLevel ? tapLevel + 36 : tapLevel - 36;
  const reach = sheet.shunt(
    'variable capacitor',
    about(set, PART.tuning, tuningLabel(set.tuning)),
    capacitor,
    [y, lowLevel],
    [top, first],
    { middle: centre },
  );
  const live = coil.nodeAt(coil.detectorTurn);
  const end = reach + 14;
  if (tapped) {
    sheet.wire(live, [x, tapLevel], [end, tapLevel], [end, y]);
    sheet.remarks.push({ at: [x + 13, tapLevel - 5], text: tapText, anchor: 'start' });
  } else sheet.wire(live, [capacitor, y], [end, y]);
  if (split) sheet.wire(first, [capacitor, lowLevel], [end, lowLevel]);
  return { x: end, live, lower: split ? { node: first, level: lowLevel } : undefined };
}

import { EARTH } from '../../../engine/network/elements.ts';
import { PART } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { about, aerialLabel, earthLabel } from './about.ts';
import { type DiagramSheet, wordsWidth } from './diagram.ts';

/** Levels of the sheet, px from its top: the line that the signal runs along, and the earth rail. */
export interface Levels {
  readonly line: number;
  readonly rail: number;
}
export const LINE = 112;
/** Where aerial and earth stand. */
export const START = 34;
const AERIAL_FOOT = 60;
/** The second way round, for two parts side by side: parallel traps, an equaliser's capacitor. */
export const BYWAY = 46;

/** The aerial at the left top, its lead down to the line. @returns x up to which its words reach. */
export function drawAerialSymbol(sheet: DiagramSheet, set: SetDescription, levels: Levels, node: string): number {
  const label = aerialLabel(set.aerial);
  sheet.place({
    kind: 'aerial',
    ...about(set, PART.aerial, label),
    terminals: [{ at: [START, AERIAL_FOOT], node }],
    centre: [START, AERIAL_FOOT],
    turn: 0,
    wordsAt: [START + 16, AERIAL_FOOT - 24],
    anchor: 'start',
  });
  sheet.wire(node, [START, AERIAL_FOOT], [START, levels.line]);
  return START + 16 + wordsWidth(label.lines);
}

export function drawEarthSymbol(sheet: DiagramSheet, set: SetDescription, levels: Levels): void {
  sheet.place({
    kind: 'earth',
    ...about(set, PART.earth, earthLabel(set.earth)),
    terminals: [{ at: [START, levels.rail], node: EARTH }],
    centre: [START, levels.rail],
    turn: 0,
    wordsAt: [START + 16, levels.rail + 20],
    anchor: 'start',
  });
}

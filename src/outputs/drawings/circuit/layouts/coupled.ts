import type { ArrangementOf } from '../../../../engine/kinds/arrangements/kit.ts';
import { EARTH } from '../../../../engine/network/elements.ts';
import { PART } from '../../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { diagramText } from '../../../words/index.ts';
import { about, aerialTuningLabel, coilLabel } from '../about.ts';
import { finish } from '../close-sheet.ts';
import {
  arches,
  coilOf,
  drawCoilColumn,
  endsOf,
  LEAD,
  railFor,
  renameMiddle,
  stretchesOf,
  toRail,
} from '../coil-column.ts';
import { type Diagram, DiagramSheet, wordsWidth } from '../diagram.ts';
import { LINE, START } from '../ends.ts';
import { drawAbsorptions, drawFeed } from '../feed.ts';
import { drawTuned } from '../tuned-circuit.ts';

/** An aerial coil, tuned or not, beside the tuned one. */
export function coupled(set: SetDescription, arrangement: ArrangementOf<'coupled' | 'two circuits'>): Diagram {
  const primary = coilOf(set, arrangement.aerialCoil);
  const secondary = coilOf(set, arrangement.coil);
  const { first, middle, detectorTurn } = endsOf(set, secondary.turns, arrangement.detectorTap);
  const aerialTurn = arrangement.kind === 'two circuits' ? (arrangement.aerialTap ?? primary.turns) : primary.turns;
  const winding = stretchesOf(primary.part, primary.turns, [aerialTurn], {
    first: EARTH,
    last: 'aerial coil',
    prefix: 'aerial ',
  });
  const wound = stretchesOf(
    secondary.part,
    secondary.turns,
    [detectorTurn, ...(middle === undefined ? [] : [middle])],
    { first, last: 'top' },
    renameMiddle(middle, secondary.turns),
  );
  const levels = {
    line: LINE,
    rail: railFor(Math.max(winding.stretches.length, wound.stretches.length), middle !== undefined),
  };
  const sheet = new DiagramSheet();
  const target = winding.nodeAt(aerialTurn);
  const feed = drawFeed(sheet, set, levels, target);
  const y = levels.line;
  const label = coilLabel(primary.description);
  let x = feed;
  let left = feed;
  const tapped = aerialTurn < primary.turns && aerialTurn > 0;
  if (arrangement.kind === 'two circuits') {
    // The first circuit's own capacitor stands left of its coil; a tapped lead passes under it.
    const capacitor = x + 18;
    const tapLevel = y + LEAD + arches(winding.stretches.length) * 12;
    const reach = sheet.shunt(
      'variable capacitor',
      about(set, PART.aerialTuning, aerialTuningLabel(arrangement.aerialTuning ?? set.tuning)),
      capacitor,
      [y, levels.rail],
      ['aerial coil', EARTH],
      { middle: tapped ? tapLevel + 34 : undefined },
    );
    x = Math.max(reach + 16, capacitor + wordsWidth(label.lines) / 2 + 10);
    if (tapped) {
      sheet.wire(target, [left, y], [left + 4, y], [left + 4, tapLevel], [x, tapLevel]);
      sheet.remarks.push({ at: [x - 6, tapLevel - 5], text: diagramText.turn(aerialTurn), anchor: 'end' });
      sheet.wire('aerial coil', [capacitor, y], [x, y]);
    } else sheet.wire('aerial coil', [left, y], [x, y]);
  } else {
    x += Math.max(34, wordsWidth(label.lines) / 2);
    sheet.wire(target, [left, y], [x, y]);
  }
  const column = drawCoilColumn(sheet, x, y, winding.stretches, { set, part: primary.part, label });
  toRail(sheet, x, column.bottom, levels, EARTH);
  left = x;
  const second = coilLabel(secondary.description);
  // An absorption trap stands beyond its coil's earth side, between the two.
  const trapped = drawAbsorptions(sheet, set, x + 12, levels, secondary.part);
  x += Math.max(
    84,
    trapped > x + 12 ? trapped - x + 10 : 0,
    (wordsWidth(label.lines) + wordsWidth(second.lines)) / 2 + 12,
  );
  const arrowLevel = y + LEAD + 18;
  sheet.couplings.push({
    first: primary.part,
    second: secondary.part,
    words: diagramText.coupling(arrangement),
    arrow: [
      [left + 14, arrowLevel],
      [x - 14, arrowLevel],
    ],
  });
  const tuned = drawTuned(sheet, set, x, levels, {
    ...wound,
    part: secondary.part,
    label: second,
    turns: secondary.turns,
    first,
    middle,
    detectorTurn,
    left: x,
  });
  return finish(sheet, set, tuned, levels, START);
}

import type { ArrangementOf } from '../../../../engine/kinds/arrangements/kit.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { diagramText } from '../../../words/index.ts';
import { coilLabel } from '../about.ts';
import { finish } from '../close-sheet.ts';
import { coilOf, endsOf, railFor, renameMiddle, stretchesOf } from '../coil-column.ts';
import { type Diagram, DiagramSheet, wordsWidth } from '../diagram.ts';
import { LINE, START } from '../ends.ts';
import { drawAbsorptions, drawFeed } from '../feed.ts';
import { drawTuned } from '../tuned-circuit.ts';

/** One tuned circuit, the aerial on its top, a tap or through a capacitor. */
export function single(
  set: SetDescription,
  arrangement: ArrangementOf<'direct' | 'series capacitor' | 'tapped'>,
): Diagram {
  const { description, part, turns } = coilOf(set, arrangement.coil);
  const { first, middle, detectorTurn } = endsOf(set, turns, arrangement.detectorTap);
  const aerialTurn = arrangement.kind === 'tapped' ? arrangement.aerialTap : turns;
  const { stretches, nodeAt } = stretchesOf(
    part,
    turns,
    [aerialTurn, detectorTurn, ...(middle === undefined ? [] : [middle])],
    { first, last: 'top' },
    renameMiddle(middle, turns),
  );
  const levels = { line: LINE, rail: railFor(stretches.length, middle !== undefined) };
  const sheet = new DiagramSheet();
  const feed = drawFeed(sheet, set, levels, nodeAt(aerialTurn));
  const trapped = drawAbsorptions(sheet, set, feed, levels, part);
  const label = coilLabel(description);
  const tapText = aerialTurn < turns && trapped === feed ? wordsWidth([diagramText.turn(aerialTurn)]) : 0;
  const x = Math.max(trapped + 34, feed + wordsWidth(label.lines) / 2, feed + 34 + tapText);
  const tuned = drawTuned(sheet, set, x, levels, {
    stretches,
    nodeAt,
    part,
    label,
    turns,
    first,
    middle,
    detectorTurn,
    aerialTurn,
    left: feed,
    beside: trapped !== feed,
  });
  return finish(sheet, set, tuned, levels, START);
}

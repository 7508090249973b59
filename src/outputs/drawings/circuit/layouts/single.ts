import type { ArrangementOf } from '../../../../engine/kinds/arrangements/kit.ts';
import { lastNode, usedTurns } from '../../../../engine/kinds/arrangements/used-turns.ts';
import { turnsInId } from '../../../../engine/network/ids.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { diagramText } from '../../../words/index.ts';
import { coilLabel } from '../about.ts';
import { finish } from '../close-sheet.ts';
import { coilOf, endsOf, railFor, renameMiddle, stretchesOf } from '../coil-column.ts';
import { type Diagram, DiagramSheet, wordsWidth } from '../diagram.ts';
import { LINE, START } from '../ends.ts';
import { drawAbsorptions, drawFeed } from '../feed.ts';
import { drawTuned, OPEN_END } from '../tuned-circuit.ts';

/** One tuned circuit, the aerial on its top, a tap or through a capacitor. */
export function single(
  set: SetDescription,
  arrangement: ArrangementOf<'direct' | 'series capacitor' | 'tapped'>,
): Diagram {
  const { description, part, turns } = coilOf(set, arrangement.coil);
  const inUse = usedTurns(arrangement, turns);
  const { used } = inUse;
  const { first, middle, detectorTurn } = endsOf(set, used, arrangement.detectorTap);
  const aerialTurn = arrangement.kind === 'tapped' ? arrangement.aerialTap : used;
  const tap = `turn ${turnsInId(used)}`;
  const renameTop = (node: string): string => (inUse.rest !== undefined && node === tap ? 'top' : node);
  const renamed = renameMiddle(middle, used);
  const { stretches, nodeAt } = stretchesOf(
    part,
    turns,
    [used, aerialTurn, detectorTurn, ...(middle === undefined ? [] : [middle])],
    { first, last: lastNode(inUse) },
    (node) => renamed(renameTop(node)),
  );
  const rail = railFor(stretches.length, middle !== undefined) + (inUse.rest === 'open' ? OPEN_END : 0);
  const levels = { line: LINE, rail };
  const sheet = new DiagramSheet();
  const feed = drawFeed(sheet, set, levels, nodeAt(aerialTurn));
  const trapped = drawAbsorptions(sheet, set, feed, levels, part);
  const label = coilLabel(description);
  const tapText = aerialTurn < used && trapped === feed ? wordsWidth([diagramText.turn(aerialTurn)]) : 0;
  const x = Math.max(trapped + 34, feed + wordsWidth(label.lines) / 2, feed + 34 + tapText);
  const tuned = drawTuned(sheet, set, x, levels, {
    stretches,
    nodeAt,
    part,
    label,
    turns: used,
    rest: inUse.rest,
    first,
    middle,
    detectorTurn,
    aerialTurn,
    left: feed,
    beside: trapped !== feed,
  });
  return finish(sheet, set, tuned, levels, START);
}

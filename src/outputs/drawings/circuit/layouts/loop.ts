import type { ArrangementOf } from '../../../../engine/kinds/arrangements/kit.ts';
import { isLoop } from '../../../../engine/kinds/loops.ts';
import { PART } from '../../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { symbolNames } from '../../../words/index.ts';
import { about, aerialLabel, NO_LABEL } from '../about.ts';
import { finish } from '../close-sheet.ts';
import { arches, endsOf, heightOf, railFor, renameMiddle, stretchesOf } from '../coil-column.ts';
import { type Diagram, DiagramSheet, wordsWidth } from '../diagram.ts';
import { LINE } from '../ends.ts';
import { drawAbsorptions } from '../feed.ts';
import { drawTuned } from '../tuned-circuit.ts';

/** A frame or rod: the aerial is the coil. */
export function loop(set: SetDescription, arrangement: ArrangementOf<'frame' | 'ferrite rod'>): Diagram {
  const aerial = set.aerial;
  if (!isLoop(aerial)) throw new RangeError('a frame or rod arrangement needs a frame or rod aerial');
  const turns = aerial.turns;
  const { first, middle, detectorTurn } = endsOf(set, turns, arrangement.detectorTap);
  const { stretches, nodeAt } = stretchesOf(
    PART.loop,
    turns,
    [detectorTurn, ...(middle === undefined ? [] : [middle])],
    { first: 'foot', last: 'top' },
    // The field's emf acts in the turns themselves: its foot is the coil's.
    (node) => (node === 'foot' ? first : renameMiddle(middle, turns)(node)),
  );
  const levels = { line: LINE, rail: railFor(stretches.length, middle !== undefined) };
  const sheet = new DiagramSheet();
  const label = aerialLabel(aerial);
  const trapped = drawAbsorptions(sheet, set, 0, levels, PART.loop);
  const x = Math.max(54, wordsWidth(label.lines) / 2 + 10, trapped > 0 ? trapped + 20 : 0);
  const tuned = drawTuned(sheet, set, x, levels, {
    stretches,
    nodeAt,
    part: PART.loop,
    label,
    turns,
    first,
    middle,
    detectorTurn,
    left: x,
  });
  sheet.place({
    kind: 'transformer',
    ...about(set, PART.loop, NO_LABEL, {
      id: `${PART.loop}/${aerial.kind === 'frame' ? 'outline' : 'core'}`,
      name: aerial.kind === 'frame' ? symbolNames.outline : symbolNames.rod,
    }),
    terminals: [],
    centre: [x, LINE + heightOf(stretches.length) / 2],
    turn: 90,
    wordsAt: [x, LINE],
    anchor: 'middle',
    arches: stretches.length * arches(stretches.length),
  });
  return finish(sheet, set, tuned, levels, trapped > 0 ? 16 : x, false);
}

import type { ArrangementOf } from '../../../../engine/kinds/arrangements/kit.ts';
import { EARTH } from '../../../../engine/network/elements.ts';
import { PART } from '../../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { about, coilLabel, figureLabel } from '../about.ts';
import { finish } from '../close-sheet.ts';
import { coilOf, windingId } from '../coil-column.ts';
import { type Diagram, DiagramSheet } from '../diagram.ts';
import { LINE, START } from '../ends.ts';
import { drawAbsorptions, drawFeed } from '../feed.ts';

/** Two coils in series, one turning within the other. */
export function variometer(set: SetDescription, arrangement: ArrangementOf<'variometer'>): Diagram {
  const stator = coilOf(set, arrangement.coil);
  const rotor = coilOf(set, arrangement.rotor);
  const levels = { line: LINE, rail: LINE + 172 };
  const sheet = new DiagramSheet();
  const feed = drawFeed(sheet, set, levels, 'top');
  const y = levels.line;
  const trapped = drawAbsorptions(sheet, set, feed, levels, stator.part);
  const x = trapped + 30;
  const n = 5;
  const [a, b] = [coilLabel(stator.description), coilLabel(rotor.description)];
  const middle = y + 86;
  sheet.wire('top', [feed, y], [x, y]);
  const right = Math.max(
    sheet.shunt('inductor', about(set, stator.part, a, { id: windingId(stator) }), x, [y, middle], ['top', 'middle'], {
      arches: n,
    }),
    sheet.shunt(
      'inductor',
      about(set, rotor.part, b, { id: windingId(rotor) }),
      x,
      [middle, levels.rail],
      ['middle', EARTH],
      { arches: n },
    ),
  );
  sheet.couplings.push({
    first: stator.part,
    second: rotor.part,
    words: '',
    arrow: [
      [x - 14, middle + 30],
      [x + 11, middle - 19],
    ],
  });
  let end = right + 10;
  sheet.wire('top', [x, y], [end, y]);
  if (arrangement.parallelCapacitor > 0) {
    const value = formatQuantity(arrangement.parallelCapacitor, 'capacitance');
    const symbol = about(set, PART.parallelCapacitor, figureLabel(value));
    const reach = sheet.shunt('capacitor', symbol, end, [y, levels.rail], ['top', EARTH]);
    sheet.wire('top', [end, y], [reach + 10, y]);
    end = reach + 10;
  }
  return finish(sheet, set, { x: end, live: 'top' }, levels, START);
}

import type { ArrangementOf } from '../../../../engine/kinds/arrangements/kit.ts';
import { EARTH } from '../../../../engine/network/elements.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { finish } from '../close-sheet.ts';
import { coilOf } from '../coil-column.ts';
import { type Diagram, DiagramSheet } from '../diagram.ts';
import { drawAbsorptions, drawFeed, LINE, START } from '../ends.ts';
import { coilLabel } from '../words.ts';

/** Two coils in series, one turning within the other. */
export function variometer(set: SetDescription, arrangement: ArrangementOf<'variometer'>): Diagram {
  const stator = coilOf(set, arrangement.coil);
  const rotor = coilOf(set, arrangement.rotor);
  const levels = { line: LINE, rail: LINE + 172 };
  const sheet = new DiagramSheet();
  const feed = drawFeed(sheet, set, levels, 'top');
  const y = levels.line;
  const trapped = drawAbsorptions(sheet, set, feed, levels, stator.description.name);
  const x = trapped + 30;
  const n = 5;
  const [a, b] = [coilLabel(stator.description), coilLabel(rotor.description)];
  const middle = y + 86;
  sheet.wire('top', [feed, y], [x, y]);
  const right = Math.max(
    sheet.shunt(
      'inductor',
      { name: stator.description.name, part: stator.part, words: a },
      x,
      [y, middle],
      ['top', 'middle'],
      { arches: n },
    ),
    sheet.shunt(
      'inductor',
      { name: rotor.description.name, part: rotor.part, words: b },
      x,
      [middle, levels.rail],
      ['middle', EARTH],
      { arches: n },
    ),
  );
  sheet.couplings.push({
    first: stator.description.name,
    second: rotor.description.name,
    words: '',
    arrow: [
      [x - 14, middle + 30],
      [x + 11, middle - 19],
    ],
  });
  let end = right + 10;
  sheet.wire('top', [x, y], [end, y]);
  if (arrangement.parallelCapacitor > 0) {
    const about = {
      name: 'parallel capacitor',
      part: 'arrangement',
      words: [formatQuantity(arrangement.parallelCapacitor, 'capacitance')],
    };
    const reach = sheet.shunt('capacitor', about, end, [y, levels.rail], ['top', EARTH]);
    sheet.wire('top', [end, y], [reach + 10, y]);
    end = reach + 10;
  }
  return finish(sheet, set, { x: end, live: 'top' }, levels, START);
}

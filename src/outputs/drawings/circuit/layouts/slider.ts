import type { ArrangementOf } from '../../../../engine/kinds/arrangements/kit.ts';
import { EARTH } from '../../../../engine/network/elements.ts';
import { PART } from '../../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { diagramText } from '../../../words/index.ts';
import { about, coilLabel, figureLabel } from '../about.ts';
import { finish } from '../close-sheet.ts';
import { coilOf, drawCoilColumn, heightOf, stretchesOf, toRail } from '../coil-column.ts';
import { type Diagram, DiagramSheet, wordsWidth } from '../diagram.ts';
import { LINE, START } from '../ends.ts';
import { drawAbsorptions, drawFeed } from '../feed.ts';

/** A coil tuned by a slider along it. */
export function slider(set: SetDescription, arrangement: ArrangementOf<'slider'>): Diagram {
  const { description, part, turns } = coilOf(set, arrangement.coil);
  const fixed = arrangement.detectorTap;
  const fewest = Math.min(arrangement.fewest, turns);
  const at = fewest + (turns - fewest) / 2;
  const { stretches, nodeAt } = stretchesOf(part, turns, fixed === undefined ? [at] : [at, fixed], {
    first: EARTH,
    last: 'far end',
  });
  // Slider and detector lead are only contacts: their ends are the coil's own nodes.
  const sliderNode = nodeAt(at);
  const levels = { line: LINE, rail: LINE + Math.max(148, heightOf(stretches.length) + 20) };
  const sheet = new DiagramSheet();
  const feed = drawFeed(sheet, set, levels, sliderNode);
  const label = coilLabel(description);
  const y = levels.line;
  let x = feed;
  if (arrangement.parallelCapacitor > 0) {
    const capacitor = x + 12;
    const value = formatQuantity(arrangement.parallelCapacitor, 'capacitance');
    const symbol = about(set, PART.parallelCapacitor, figureLabel(value));
    const reach = sheet.shunt('capacitor', symbol, capacitor, [y, levels.rail], [sliderNode, EARTH]);
    sheet.wire(sliderNode, [x, y], [capacitor, y], [reach + 8, y]);
    x = reach + 8;
  }
  const trapped = drawAbsorptions(sheet, set, x, levels, part);
  const coil = Math.max(x + wordsWidth(label.lines) / 2 + 20, x + 36 + wordsWidth([diagramText.slider]), trapped + 34);
  const column = drawCoilColumn(sheet, coil, y + 14, stretches, { set, part, label, wordsOver: y });
  toRail(sheet, coil, column.bottom, levels, EARTH);
  const level = column.levelAt(at);
  // The slider comes from the left with an arrow; the lead to the detector leaves from it or from the fixed tap.
  sheet.wire(sliderNode, [x, y], [coil - 30, y], [coil - 30, level], [coil, level]);
  sheet.couplings.push({
    first: 'slider',
    second: 'slider',
    words: '',
    arrow: [
      [coil - 20, level],
      [coil - 2, level],
    ],
  });
  sheet.remarks.push(
    trapped > x
      ? { at: [coil + 13, level - 5], text: diagramText.slider, anchor: 'start' }
      : { at: [coil - 35, level + 4], text: diagramText.slider, anchor: 'end' },
  );
  const end =
    coil +
    Math.max(
      trapped > x ? 26 + wordsWidth([diagramText.slider]) : 40,
      wordsWidth(label.lines) / 2 + 8,
      fixed === undefined ? 0 : 26 + wordsWidth([diagramText.turn(fixed)]),
    );
  let live = sliderNode;
  if (fixed !== undefined) {
    live = nodeAt(fixed);
    const tapLevel = column.levelAt(fixed);
    sheet.wire(live, [coil, tapLevel], [end, tapLevel], [end, y]);
    sheet.remarks.push({ at: [coil + 13, tapLevel - 5], text: diagramText.turn(fixed), anchor: 'start' });
  } else sheet.wire(live, [coil - 30, y], [end, y]);
  return finish(sheet, set, { x: end, live }, levels, START);
}

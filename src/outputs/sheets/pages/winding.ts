import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import type { Tap } from '../../drawings/coil/drawn.ts';
import { rect, text } from '../../scene/build.ts';
import type { Item } from '../../scene/scene.ts';
import { tallyText } from '../../words/index.ts';
import { type Flow, tickBox } from '../paper/flow.ts';
import { PAGE_SMALL, TOP } from '../paper/page.ts';

/** Wire left at either end, and what a twisted tap takes, m. */
export const TAIL = 0.15;
export const TAP_LOOP = 0.08;

type Wound = Pick<CoilModel, 'wireLength'> & Partial<Pick<CoilModel, 'shape' | 'windingLength'>>;

/** Wire that one tap takes, m: out of a pile it is led to the nearer cheek first, never more than half the winding away. */
export const tapWire = ({ shape, windingLength = 0 }: Wound): number =>
  TAP_LOOP + (shape === 'multilayer' ? windingLength : 0);

/** Wire to cut for a coil: what is wound, its ends, its taps, and three in a hundred for the hand. */
export const wireToCut = (coil: Wound, taps: number): number =>
  1.03 * coil.wireLength + 2 * TAIL + taps * tapWire(coil);

/** Boxes to tick, a turn each; ten to a block, taps set off by a thick box. */
export function tally(flow: Flow, turns: number, taps: readonly Tap[]): void {
  const each = turns > 600 ? 10 : 1;
  const boxes = Math.ceil(turns / each - 1e-9);
  const perRow = 20;
  const side = 5;
  const step = 7;
  const rowHeight = 8.6;
  const height = Math.ceil(boxes / perRow) * rowHeight + 2;
  // On one page where it fits one, and otherwise from wherever there is room.
  flow.heading(each === 1 ? tallyText.everyTurn : tallyText.everyTen, height < flow.bottom - TOP - 12 ? height : 20);
  for (let row = 0; row * perRow < boxes; row++) {
    flow.need(9.5);
    const items: Item[] = [];
    for (let k = 0; k < perRow; k++) {
      const n = row * perRow + k + 1;
      if (n > boxes) break;
      const x = flow.left + 14 + k * step + (k >= 10 ? 4 : 0);
      const here = taps.filter((t) => Math.ceil(t.turn / each - 1e-9) === n);
      items.push(
        here.length > 0 ? rect(x, flow.y + 3, side, side, { stroke: 'ink', width: 0.9 }) : tickBox(x, flow.y + 3, side),
      );
      if (here.length > 0)
        items.push(
          text([x + side / 2, flow.y + 2.2], tallyText.tap(here[0].turn), 2, {
            anchor: 'middle',
            bold: true,
          }),
        );
    }
    items.push(
      text([flow.left + 11, flow.y + 6.8], `${row * perRow * each + each}`, PAGE_SMALL, {
        anchor: 'end',
        role: 'soft',
      }),
    );
    const last = Math.min(boxes, (row + 1) * perRow);
    const end = flow.left + 14 + ((last - 1) % perRow) * step + ((last - 1) % perRow >= 10 ? 4 : 0) + side + 1.5;
    items.push(text([end, flow.y + 6.8], formatNumber(Math.min(last * each, turns), 5), PAGE_SMALL, { bold: true }));
    flow.add('P', items).space(rowHeight);
  }
  flow.space(1.5);
}

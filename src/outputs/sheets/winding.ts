import type { CoilModel } from '../../engine/parts/coil/model.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { nearestGauge } from '../../engine/units/gauge.ts';
import type { Tap, WoundDescription } from '../drawings/coil/drawn.ts';
import { rect, text } from '../scene/build.ts';
import type { Item } from '../scene/scene.ts';
import { type Flow, tickBox } from './flow.ts';
import { SMALL } from './page.ts';

/** Wire left at either end, and what a twisted tap takes, m. */
export const TAIL = 0.15;
export const TAP_LOOP = 0.08;

/** Wire to cut for a coil: what is wound, its ends, its taps, and three in a hundred for the hand. */
export const wireToCut = ({ wireLength }: Pick<CoilModel, 'wireLength'>, taps: number): number =>
  1.03 * wireLength + 2 * TAIL + taps * TAP_LOOP;

export function wireWords(wire: WoundDescription['wire']): string {
  const mm = formatQuantity(wire.size, 'length', 3);
  const gauges = (['SWG', 'AWG'] as const)
    .map((g) => ({ g, ...nearestGauge(g, wire.size) }))
    .filter((x) => Math.abs(x.error) < 0.06)
    .map((x) => `${x.number} ${x.g}`);
  const strands = (wire.strands ?? 1) > 1 ? `${wire.strands} strands of ` : '';
  const covering =
    wire.covering === 'bare' ? 'bare' : wire.covering === 'enamel' ? 'enamelled' : `${wire.covering}-covered`;
  return `${strands}${mm} ${covering} ${wire.metal ?? 'copper'} wire${gauges.length > 0 ? ` (near ${gauges.join(', ')})` : ''}`;
}

/** Boxes to tick, a turn each; ten to a block, taps set off by a thick box. */
export function tally(flow: Flow, turns: number, taps: readonly Tap[]): void {
  const each = turns > 600 ? 10 : 1;
  const boxes = Math.ceil(turns / each - 1e-9);
  flow.heading(each === 1 ? 'Tally: a tick for every turn' : 'Tally: a tick for every ten turns', 20);
  const perRow = 20;
  const side = 5;
  const step = 7;
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
          text([x + side / 2, flow.y + 2.2], `tap ${formatNumber(here[0].turn, 4)}`, 2, {
            anchor: 'middle',
            bold: true,
          }),
        );
    }
    items.push(
      text([flow.left + 11, flow.y + 6.8], `${row * perRow * each + each}`, SMALL, { anchor: 'end', role: 'soft' }),
    );
    const last = Math.min(boxes, (row + 1) * perRow);
    const end = flow.left + 14 + ((last - 1) % perRow) * step + ((last - 1) % perRow >= 10 ? 4 : 0) + side + 1.5;
    items.push(text([end, flow.y + 6.8], formatNumber(Math.min(last * each, turns), 5), SMALL, { bold: true }));
    flow.add('P', items).space(8.6);
  }
  flow.space(1.5);
}

import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { aerialLead } from '../../../engine/kinds/arrangements/aerial-lead.ts';
import { AERIAL } from '../../../engine/kinds/arrangements/assembly.ts';
import type { TrapAsMade } from '../../../engine/kinds/arrangements/traps.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { owned, type PartId } from '../../../engine/network/ids.ts';
import { PART, trapCapacitor, trapCoil } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { symbolLabels } from '../../words/index.ts';
import { about, figureLabel } from './about.ts';
import { type About, type DiagramSheet, seriesWidth } from './diagram.ts';
import { BYWAY, drawAerialSymbol, type Levels, START } from './ends.ts';

const trapSymbols = (set: SetDescription, trap: TrapAsMade, i: number): { coil: About; capacitor: About } => ({
  coil: about(set, trapCoil(i), symbolLabels.trap({ number: i + 1, inductance: trap.inductance }), {
    id: owned(trapCoil(i), 'winding').id,
  }),
  capacitor: about(set, trapCapacitor(i), figureLabel(formatQuantity(trap.capacitance, 'capacitance', 3))),
});

/** What lies in the aerial lead: parallel and series traps, a series capacitor. Absorption traps stand by their coil. */
export function drawFeed(sheet: DiagramSheet, set: SetDescription, levels: Levels, target: string): number {
  const { seriesCapacitor } = aerialLead(set.arrangement);
  const { traps } = setCircuit(set);
  const parallel = traps.flatMap((t, i) => (t.kind === 'parallel' ? [`after trap ${i + 1}`] : []));
  // Without a capacitor in it the last stretch of the lead is the target itself.
  const nodes = [AERIAL, ...parallel];
  if (seriesCapacitor === undefined) nodes[nodes.length - 1] = target;
  let k = 0;
  const reach = drawAerialSymbol(sheet, set, levels, nodes[0]);
  const y = levels.line;
  let x = START;
  const advance = (to: number): void => {
    sheet.wire(nodes[k], [x, y], [to, y]);
    x = to;
  };
  traps.forEach((trap, i) => {
    const words = trapSymbols(set, trap, i);
    if (trap.kind === 'parallel') {
      advance(Math.max(x + 14, reach + 4));
      const width = Math.max(seriesWidth(words.coil), seriesWidth(words.capacitor), 84);
      const pair = [nodes[k], nodes[k + 1]] as const;
      const end = sheet.series('inductor', words.coil, [x, y], pair, { width, below: true });
      sheet.series('capacitor', words.capacitor, [x, y - BYWAY], pair, { width });
      sheet.wire(pair[0], [x, y], [x, y - BYWAY]);
      sheet.wire(pair[1], [end, y], [end, y - BYWAY]);
      x = end;
      k++;
    } else if (trap.kind === 'series') {
      const middle = `trap ${i + 1} middle`;
      advance(x + 22);
      const half = (levels.rail - y) / 2;
      const a = sheet.shunt('inductor', words.coil, x, [y, y + half], [nodes[k], middle], { arches: 4 });
      const b = sheet.shunt('capacitor', words.capacitor, x, [y + half, levels.rail], [middle, EARTH]);
      advance(Math.max(a, b) + 6);
    }
  });
  if (seriesCapacitor !== undefined) {
    advance(x + 10);
    const symbol = about(set, PART.seriesCapacitor, figureLabel(formatQuantity(seriesCapacitor, 'capacitance')));
    x = sheet.series('capacitor', symbol, [x, y], [nodes[k], target]);
    nodes.push(target);
    k++;
  }
  advance(x + 10);
  return x;
}

/**
 * A closed loop of coil and capacitor on the rail, beside the coil that it draws from, which is to its right.
 * @param nearest with an arrow towards that coil; what stands further off only says so.
 * @returns x up to which it reaches, its arrow included.
 */
function drawAbsorption(
  sheet: DiagramSheet,
  set: SetDescription,
  trap: TrapAsMade,
  i: number,
  x: number,
  levels: Levels,
  from: PartId,
  nearest: boolean,
): number {
  const { coil: symbol, capacitor } = trapSymbols(set, trap, i);
  const loop = `trap ${i + 1} loop`;
  const [top, middle] = [levels.rail - 84, levels.rail - 42];
  const span = [top, levels.rail] as const;
  const { lines, value } = symbolLabels.absorption({ ...trap, number: i + 1 });
  const right = sheet.shunt('capacitor', { ...capacitor, words: lines, value }, x, span, [loop, EARTH], { middle });
  const coil = right + 14;
  sheet.shunt('inductor', { ...symbol, words: [] }, coil, span, [loop, EARTH], { middle, arches: 4 });
  sheet.wire(loop, [x, top], [coil, top]);
  const arrow = [
    [coil + 12, middle],
    [coil + 34, middle],
  ] as const;
  sheet.couplings.push({ first: symbol.part, second: from, words: '', arrow: nearest ? arrow : undefined });
  return coil + (nearest ? 36 : 10);
}

/** The absorption traps among a set's, one after another from x. @returns x up to which they reach. */
export function drawAbsorptions(
  sheet: DiagramSheet,
  set: SetDescription,
  x: number,
  levels: Levels,
  from: PartId,
): number {
  const { traps } = setCircuit(set);
  const list = traps.flatMap((trap, i) => (trap.kind === 'absorption' ? [{ trap, i }] : []));
  return list.reduce(
    (at, { trap, i }, k) => drawAbsorption(sheet, set, trap, i, at + 16, levels, from, k === list.length - 1),
    x,
  );
}

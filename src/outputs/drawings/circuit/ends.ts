import type { TrapDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import { AERIAL, OUT } from '../../../engine/kinds/arrangements/assembly.ts';
import { PUMP_CAPACITANCE } from '../../../engine/kinds/arrangements/detector-wiring.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { owned, type PartId, sideOf } from '../../../engine/network/ids.ts';
import { PART, trapCapacitor, trapCoil } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { diagramText, symbolLabels, symbolNames } from '../../words/index.ts';
import { about, aerialLabel, detectorLabel, earthLabel, figure, NO_LABEL } from './about.ts';
import { type About, type DiagramSheet, seriesWidth, wordsWidth } from './diagram.ts';

/** Levels of the sheet, px from its top: the line that the signal runs along, and the earth rail. */
export interface Levels {
  readonly line: number;
  readonly rail: number;
}
export const LINE = 112;
/** Where aerial and earth stand. */
export const START = 34;
const AERIAL_FOOT = 60;
/** The second way round, for two parts side by side: parallel traps, an equaliser's capacitor. */
const BYWAY = 46;

/** The aerial at the left top, its lead down to the line. @returns x up to which its words reach. */
export function drawAerialSymbol(sheet: DiagramSheet, set: SetDescription, levels: Levels, node: string): number {
  const label = aerialLabel(set.aerial);
  sheet.place({
    kind: 'aerial',
    ...about(set, PART.aerial, label),
    terminals: [{ at: [START, AERIAL_FOOT], node }],
    centre: [START, AERIAL_FOOT],
    turn: 0,
    wordsAt: [START + 16, AERIAL_FOOT - 24],
    anchor: 'start',
  });
  sheet.wire(node, [START, AERIAL_FOOT], [START, levels.line]);
  return START + 16 + wordsWidth(label.lines);
}

export function drawEarthSymbol(sheet: DiagramSheet, set: SetDescription, levels: Levels): void {
  sheet.place({
    kind: 'earth',
    ...about(set, PART.earth, earthLabel(set.earth)),
    terminals: [{ at: [START, levels.rail], node: EARTH }],
    centre: [START, levels.rail],
    turn: 0,
    wordsAt: [START + 16, levels.rail + 20],
    anchor: 'start',
  });
}

const trapSymbols = (set: SetDescription, trap: TrapDescription, i: number): { coil: About; capacitor: About } => ({
  coil: about(set, trapCoil(i), symbolLabels.trap({ number: i + 1, inductance: trap.inductance }), {
    id: owned(trapCoil(i), 'winding').id,
  }),
  capacitor: about(set, trapCapacitor(i), figure(formatQuantity(trap.capacitance, 'capacitance'))),
});

/** What lies in the aerial lead: parallel and series traps, a series capacitor. Absorption traps stand by their coil. */
export function drawFeed(sheet: DiagramSheet, set: SetDescription, levels: Levels, target: string): number {
  const arrangement = set.arrangement as { traps?: readonly TrapDescription[]; seriesCapacitor?: number };
  const traps = arrangement.traps ?? [];
  const { seriesCapacitor } = arrangement;
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
    const symbol = about(set, PART.seriesCapacitor, figure(formatQuantity(seriesCapacitor, 'capacitance')));
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
  trap: TrapDescription,
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
  const { traps = [] } = set.arrangement as { traps?: readonly TrapDescription[] };
  const list = traps.flatMap((trap, i) => (trap.kind === 'absorption' ? [{ trap, i }] : []));
  return list.reduce(
    (at, { trap, i }, k) => drawAbsorption(sheet, set, trap, i, at + 16, levels, from, k === list.length - 1),
    x,
  );
}

/** The device's symbol, from its anode to its cathode. */
const deviceOf = (set: SetDescription) => (set.detector.kind === 'valve' ? 'valve' : 'diode');

/**
 * The detector, or two of them, from the line at x to the node "out".
 * @param lower of a full-wave pair: the other end of the coil, and its level.
 * @returns x where "out" begins, on the line.
 */
export function drawDetector(
  sheet: DiagramSheet,
  set: SetDescription,
  x: number,
  levels: Levels,
  live: string,
  lower?: { readonly node: string; readonly level: number },
): number {
  const y = levels.line;
  const device = deviceOf(set);
  const first = about(set, PART.detector, detectorLabel(set.detector));
  const second = about(set, PART.secondDetector, NO_LABEL);
  const { wiring } = set.detector;
  const bias = set.detector.bias ?? 0;
  if (wiring === 'doubler') {
    const pumped = sheet.series(
      'capacitor',
      about(set, PART.pumpCapacitor, figure(formatQuantity(PUMP_CAPACITANCE, 'capacitance'))),
      [x, y],
      [live, 'pump'],
    );
    sheet.wire('pump', [pumped, y], [pumped + 14, y]);
    sheet.shunt(device, second, pumped + 14, [y, levels.rail], ['pump', EARTH], { up: true });
    sheet.wire('pump', [pumped + 14, y], [pumped + 28, y]);
    return sheet.series(device, first, [pumped + 28, y], ['pump', OUT]);
  }
  if (wiring === 'full-wave' && lower) {
    const width = seriesWidth(first);
    const end = sheet.series(device, first, [x, y], [live, OUT], { width });
    sheet.series(device, second, [x, lower.level], [lower.node, OUT], { width });
    sheet.wire(OUT, [end, lower.level], [end + 6, lower.level], [end + 6, y]);
    sheet.wire(OUT, [end, y], [end + 20, y]);
    return end + 20;
  }
  let at = x;
  let node = live;
  if (bias !== 0 && wiring === 'single') {
    at = sheet.series(
      'cell',
      about(set, PART.biasCell, figure(formatQuantity(bias, 'voltage'))),
      [at, y],
      [node, 'biased'],
    );
    node = 'biased';
  }
  return sheet.series(device, first, [at, y], [node, OUT]);
}

/** By-pass, equaliser, transformer and what one listens with, from x on the line. @returns x up to which it reaches. */
export function drawLoadSide(sheet: DiagramSheet, set: SetDescription, from: number, levels: Levels): number {
  const { load } = set;
  const y = levels.line;
  const span = [y, levels.rail] as const;
  let x = from;
  let node: string = OUT;
  const on = (to: number): void => {
    sheet.wire(node, [x, y], [to, y]);
    x = to;
  };
  const shunted = (kind: 'capacitor' | 'resistor', symbol: About): void => {
    on(x + 12);
    const reach = sheet.shunt(kind, symbol, x, span, [node, EARTH]);
    on(reach + 2);
  };
  if (load.bypass > 0) shunted('capacitor', about(set, PART.byPass, symbolLabels.byPass(load.bypass)));
  if (load.equalizer) {
    on(x + 12);
    const resistor = about(
      set,
      PART.equaliserResistor,
      figure(formatQuantity(load.equalizer.resistance, 'resistance')),
    );
    const capacitor = about(
      set,
      PART.equaliserCapacitor,
      figure(formatQuantity(load.equalizer.capacitance, 'capacitance')),
    );
    const width = Math.max(seriesWidth(resistor), seriesWidth(capacitor));
    const end = sheet.series('resistor', resistor, [x, y], [node, 'equalised'], { width, below: true });
    sheet.series('capacitor', capacitor, [x, y - BYWAY], [node, 'equalised'], { width });
    sheet.wire(node, [x, y], [x, y - BYWAY]);
    sheet.wire('equalised', [end, y], [end, y - BYWAY]);
    node = 'equalised';
    x = end;
  }
  if (load.transformer) {
    on(x + 22);
    const side = (role: 'primary' | 'secondary'): About =>
      about(set, PART.transformer, NO_LABEL, { id: sideOf(PART.transformer, role), name: symbolNames[role] });
    const [primary, secondary] = [side('primary'), side('secondary')];
    const ratio = figure(diagramText.transformer(load.transformer.ratio));
    sheet.shunt('inductor', primary, x, span, [node, EARTH], { arches: 4 });
    const other = x + 28;
    sheet.shunt('inductor', secondary, other, span, ['load secondary', EARTH], {
      arches: 4,
      mirrored: true,
    });
    const middle = (y + levels.rail) / 2;
    sheet.place({
      kind: 'transformer',
      ...about(set, PART.transformer, ratio, { id: `${PART.transformer}/core`, name: symbolNames.core }),
      terminals: [],
      centre: [x + 14, middle],
      turn: 90,
      wordsAt: [x + 14, y - 8],
      anchor: 'middle',
    });
    sheet.couplings.push({ first: primary.id, second: secondary.id, words: '' });
    node = 'load secondary';
    x = other;
    on(x + 16);
  }
  return drawTransducer(sheet, set, x, levels, node);
}

function drawTransducer(sheet: DiagramSheet, set: SetDescription, from: number, levels: Levels, live: string): number {
  const { load } = set;
  const y = levels.line;
  const span = [y, levels.rail] as const;
  let x = from;
  let node = live;
  const on = (to: number): void => {
    sheet.wire(node, [x, y], [to, y]);
    x = to;
  };
  switch (load.kind) {
    case 'phones':
    case 'moving-coil phones': {
      on(x + 20);
      const label = symbolLabels.phones(load.kind === 'phones' ? load.resistance : load.impedance);
      return sheet.shunt('phones', about(set, PART.load, label), x, span, [node, EARTH]);
    }
    case 'crystal earpiece': {
      if (load.resistor !== undefined) {
        on(x + 12);
        const symbol = about(set, PART.loadResistor, figure(formatQuantity(load.resistor, 'resistance')));
        on(sheet.shunt('resistor', symbol, x, span, [node, EARTH]) + 2);
      }
      on(x + 16);
      const label = symbolLabels.earpiece(load.capacitance);
      return sheet.shunt('earpiece', about(set, PART.load, label), x, span, [node, EARTH]);
    }
    case 'amplifier': {
      if (load.loadResistor !== undefined) {
        on(x + 12);
        const symbol = about(set, PART.loadResistor, figure(formatQuantity(load.loadResistor, 'resistance')));
        on(sheet.shunt('resistor', symbol, x, span, [node, EARTH]) + 2);
      }
      if (load.couplingCapacitor !== undefined) {
        const symbol = about(
          set,
          PART.couplingCapacitor,
          figure(formatQuantity(load.couplingCapacitor, 'capacitance')),
        );
        x = sheet.series('capacitor', symbol, [x, y], [node, 'load in']);
        node = 'load in';
      }
      on(x + 10);
      const label = symbolLabels.amplifier(load.inputResistance);
      sheet.place({
        kind: 'amplifier',
        ...about(set, PART.load, label),
        terminals: [
          { at: [x, y], node },
          { at: [x + 12, y + 10.8], node: EARTH },
        ],
        centre: [x, y],
        turn: 0,
        wordsAt: [x + 20, y + 32],
        anchor: 'start',
      });
      sheet.wire(EARTH, [x + 12, y + 10.8], [x + 12, levels.rail]);
      return x + 20 + Math.max(40, wordsWidth(label.lines));
    }
  }
}

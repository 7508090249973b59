import { OUT } from '../../../engine/kinds/arrangements/assembly.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { LoadDescription } from '../../../engine/kinds/loads/load-schema.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { type PartId, sideOf } from '../../../engine/network/ids.ts';
import { PART } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { diagramText, type SymbolLabel, symbolLabels, symbolNames } from '../../words/index.ts';
import { about, figureLabel, NO_LABEL } from './about.ts';
import { type About, type DiagramSheet, seriesWidth, wordsWidth } from './diagram.ts';
import { BYWAY, type Levels } from './ends.ts';

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
      figureLabel(formatQuantity(load.equalizer.resistance, 'resistance')),
    );
    const capacitor = about(
      set,
      PART.equaliserCapacitor,
      figureLabel(formatQuantity(load.equalizer.capacitance, 'capacitance')),
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
    const ratio = figureLabel(diagramText.transformer(load.transformer.ratio));
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
  return byKind(TRANSDUCERS, load, new Along(sheet, set, levels, x, node));
}

/** Along the line from one part to the next. */
class Along {
  readonly sheet: DiagramSheet;
  readonly set: SetDescription;
  readonly levels: Levels;
  x: number;
  node: string;

  constructor(sheet: DiagramSheet, set: SetDescription, levels: Levels, x: number, node: string) {
    this.sheet = sheet;
    this.set = set;
    this.levels = levels;
    this.x = x;
    this.node = node;
  }

  on(by: number): this {
    this.sheet.wire(this.node, [this.x, this.levels.line], [this.x + by, this.levels.line]);
    this.x += by;
    return this;
  }

  /** A part from the line down to the rail. @returns x up to which it reaches. */
  shunt(kind: 'phones' | 'earpiece' | 'resistor', part: PartId, label: SymbolLabel): number {
    const span = [this.levels.line, this.levels.rail] as const;
    return this.sheet.shunt(kind, about(this.set, part, label), this.x, span, [this.node, EARTH]);
  }

  /** The resistor across what follows, where there is one. */
  resistor(resistance: number | undefined): this {
    if (resistance === undefined) return this;
    this.on(12);
    const reach = this.shunt('resistor', PART.loadResistor, figureLabel(formatQuantity(resistance, 'resistance')));
    return this.on(reach + 2 - this.x);
  }
}

const drawPhones = (along: Along, resistance: number): number =>
  along.on(20).shunt('phones', PART.load, symbolLabels.phones(resistance));

/** What one listens with. @returns x up to which it reaches. */
const TRANSDUCERS: ByKind<LoadDescription, number, [Along]> = {
  phones: ({ resistance }, along) => drawPhones(along, resistance),
  'moving-coil phones': ({ impedance }, along) => drawPhones(along, impedance),
  'crystal earpiece': ({ resistor, capacitance }, along) =>
    along.resistor(resistor).on(16).shunt('earpiece', PART.load, symbolLabels.earpiece(capacitance)),
  amplifier: (load, along) => {
    const { sheet, set, levels } = along.resistor(load.loadResistor);
    const y = levels.line;
    if (load.couplingCapacitor !== undefined) {
      const label = figureLabel(formatQuantity(load.couplingCapacitor, 'capacitance'));
      const symbol = about(set, PART.couplingCapacitor, label);
      along.x = sheet.series('capacitor', symbol, [along.x, y], [along.node, 'load in']);
      along.node = 'load in';
    }
    const { x, node } = along.on(10);
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
  },
};

import type { ArrangementDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import { AERIAL, OUT } from '../../../engine/kinds/arrangements/assembly.ts';
import { PUMP_CAPACITANCE } from '../../../engine/kinds/arrangements/detector-wiring.ts';
import { listedName, listedNode } from '../../../engine/kinds/arrangements/element-list.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { owned, type PartId } from '../../../engine/network/ids.ts';
import { listedPart, PART } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { diagramText, symbolLabels } from '../../words/index.ts';
import { about, aerialLabel, called, coilLabel, detectorLabel, NO_LABEL, namedFigure, tuningLabel } from './about.ts';
import { coilOf } from './coil-column.ts';
import { type About, type Diagram, DiagramSheet } from './diagram.ts';
import { drawAerialSymbol, drawEarthSymbol, LINE, START } from './ends.ts';
import { drawLoadSide } from './load-side.ts';
import { nodeName } from './node-names.ts';
import type { SymbolKind } from './symbols.ts';

type ElementList = Extract<ArrangementDescription, { kind: 'elements' }>;

interface Listed {
  readonly kind: SymbolKind;
  readonly about: About;
  readonly from: string;
  readonly to: string;
}

/** Between two rails, px. */
const ROW = 74;

/**
 * Whatever the builder listed: every node a level rail, every element an upright between two of them. A rail reaches from
 * its first element to its last; what merely crosses it has no dot.
 */
export function elementListDiagram(set: SetDescription, arrangement: ElementList): Diagram {
  const sheet = new DiagramSheet();
  const listed = listOf(set, arrangement, sheet);
  const loopAerial = isLoop(set.aerial);
  const nodes = new Set([AERIAL, ...listed.flatMap((e) => [e.from, e.to]), OUT]);
  nodes.delete(EARTH);
  const order = byNeighbours([...nodes], listed);
  const level = new Map<string, number>(order.map((n, i) => [n, LINE + i * ROW]));
  const rail = LINE + Math.max(order.length * ROW, 148);
  level.set(EARTH, rail);
  const reach = new Map<string, [number, number]>();
  const touch = (node: string, x: number): void => {
    const r = reach.get(node);
    reach.set(node, r ? [Math.min(r[0], x), Math.max(r[1], x)] : [x, x]);
  };
  let x = START + 60;
  if (!loopAerial) {
    const words = drawAerialSymbol(sheet, set, { line: level.get(AERIAL)!, rail }, AERIAL);
    touch(AERIAL, START);
    x = Math.max(x, words - 20);
    touch(EARTH, START);
    drawEarthSymbol(sheet, set, { line: LINE, rail });
  }
  for (const e of listed) {
    const [a, b] = [level.get(e.from)!, level.get(e.to)!];
    const up = a > b;
    const [top, bottom] = up ? [b, a] : [a, b];
    const right = sheet.shunt(e.kind, e.about, x, [top, bottom], up ? [e.to, e.from] : [e.from, e.to], {
      up,
      // In the gap over its lower rail, where no other rail runs through its body.
      middle: bottom - ROW / 2,
      arches: e.kind === 'inductor' ? 4 : undefined,
    });
    touch(e.from, x);
    touch(e.to, x);
    x = right + 22;
  }
  const out = level.get(OUT)!;
  const end = drawLoadSide(sheet, set, x, { line: out, rail });
  touch(OUT, x);
  for (const wire of sheet.wires)
    if (wire.node === EARTH) for (const p of wire.points) if (p[1] === rail) touch(EARTH, p[0]);
  for (const [node, [from, to]] of reach) {
    const y = level.get(node)!;
    sheet.wire(node, [from, y], [to, y]);
    const name = listedName(node);
    if (name !== undefined) sheet.remarks.push({ at: [from - 5, y + 4], text: called(name), anchor: 'end' });
  }
  const mutuals = arrangement.elements.flatMap((e) =>
    e.kind === 'mutual'
      ? [diagramText.mutual({ first: called(e.first), second: called(e.second), mutual: e.mutual })]
      : [],
  );
  mutuals.forEach((words, i) => {
    sheet.remarks.push({ at: [START + 150, rail + 20 + 15 * i], text: words, anchor: 'start' });
  });
  return sheet.finished(
    Math.ceil(Math.max(end + 16, mutuals.length > 0 ? START + 470 : 0)),
    rail + 34 + 15 * Math.max(0, mutuals.length - 1),
  );
}

/** What is drawn: the list as the circuit takes it, with the detector wired as it says. */
function listOf(set: SetDescription, arrangement: ElementList, sheet: DiagramSheet): Listed[] {
  const listed: Listed[] = [];
  const { aerial } = set;
  if (isLoop(aerial))
    listed.push({
      kind: 'inductor',
      from: AERIAL,
      to: EARTH,
      about: about(set, PART.loop, aerialLabel(aerial), {
        id: owned(PART.loop, 'winding', { turns: [0, aerial.turns] }).id,
      }),
    });
  const windings = new Map<string, PartId>();
  let tuning: Listed | undefined;
  let live: string | undefined;
  let cathode: string = OUT;
  arrangement.elements.forEach((e, i) => {
    const part = listedPart(i);
    switch (e.kind) {
      case 'resistor':
        listed.push({
          kind: 'resistor',
          from: listedNode(e.from),
          to: listedNode(e.to),
          about: about(set, part, namedFigure(e.name, formatQuantity(e.resistance, 'resistance'))),
        });
        break;
      case 'capacitor':
        listed.push({
          kind: 'capacitor',
          from: listedNode(e.from),
          to: listedNode(e.to),
          about: about(set, part, namedFigure(e.name, formatQuantity(e.capacitance, 'capacitance'))),
        });
        break;
      case 'inductor':
        windings.set(e.name, part);
        listed.push({
          kind: 'inductor',
          from: listedNode(e.from),
          to: listedNode(e.to),
          about: about(set, part, symbolLabels.inductor({ ...e, name: called(e.name) }), {
            id: owned(part, 'winding').id,
          }),
        });
        break;
      case 'coil': {
        const { description, turns } = coilOf(set, e.coil);
        windings.set(e.name, part);
        listed.push({
          kind: 'inductor',
          from: listedNode(e.from),
          to: listedNode(e.to),
          about: about(set, part, coilLabel(description, e.name), {
            id: owned(part, 'winding', { turns: [0, turns] }).id,
          }),
        });
        break;
      }
      case 'tuning':
        tuning = {
          kind: 'variable capacitor',
          from: listedNode(e.from),
          to: listedNode(e.to),
          about: about(set, PART.tuning, tuningLabel(set.tuning)),
        };
        break;
      case 'mutual':
        break;
      case 'detector':
        [live, cathode] = [listedNode(e.from), listedNode(e.to)];
        break;
    }
  });
  for (const e of arrangement.elements) {
    const [first, second] = e.kind === 'mutual' ? [windings.get(e.first), windings.get(e.second)] : [];
    if (first && second) sheet.couplings.push({ first, second, words: '' });
  }
  if (tuning) listed.push(tuning);
  // With no detector listed its place is across the load, as in the circuit.
  const at = live ?? EARTH;
  if (live === undefined) sheet.warnings.push(diagramText.noDetector);
  const device: SymbolKind = set.detector.kind === 'valve' ? 'valve' : 'diode';
  const first = about(set, PART.detector, detectorLabel(set.detector));
  const second = about(set, PART.secondDetector, NO_LABEL);
  if (set.detector.wiring === 'doubler') {
    listed.push(
      {
        kind: 'capacitor',
        from: at,
        to: 'pump',
        about: about(set, PART.pumpCapacitor, symbolLabels.pump(PUMP_CAPACITANCE)),
      },
      { kind: device, from: EARTH, to: 'pump', about: second },
      { kind: device, from: 'pump', to: OUT, about: first },
    );
  } else {
    const bias = set.detector.bias ?? 0;
    const biased = bias !== 0 && set.detector.wiring === 'single';
    if (biased)
      listed.push({
        kind: 'cell',
        from: at,
        to: 'biased',
        about: about(set, PART.biasCell, symbolLabels.bias(bias)),
      });
    listed.push({
      kind: device,
      from: biased ? 'biased' : at,
      to: set.detector.wiring === 'single' ? cathode : OUT,
      about: first,
    });
    if (set.detector.wiring === 'full-wave') listed.push({ kind: device, from: EARTH, to: OUT, about: second });
  }
  return listed.filter((e) => {
    if (e.from !== e.to) return true;
    sheet.warnings.push(diagramText.bothEnds({ name: e.about.name, node: nodeName(e.from) }));
    return false;
  });
}

/** Nodes in an order that keeps what is joined close: from the aerial on, each next the one most joined to those placed. */
function byNeighbours(names: string[], listed: readonly Listed[]): string[] {
  const left = new Set(names);
  const order: string[] = [];
  const take = (node: string): void => {
    left.delete(node);
    order.push(node);
  };
  if (left.has(AERIAL)) take(AERIAL);
  while (left.size > 0) {
    const joined = (node: string): number =>
      listed.filter((e) => (e.from === node && order.includes(e.to)) || (e.to === node && order.includes(e.from)))
        .length - (node === OUT ? 0.5 : 0);
    take([...left].reduce((best, node) => (joined(node) > joined(best) ? node : best)));
  }
  return order;
}

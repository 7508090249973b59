import type { ArrangementDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import { AERIAL, OUT } from '../../../engine/kinds/arrangements/assembly.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { type About, type Diagram, DiagramSheet } from './diagram.ts';
import { drawAerialSymbol, drawEarthSymbol, drawLoadSide, LINE, START } from './ends.ts';
import type { SymbolKind } from './symbols.ts';
import { aerialLabel, called, coilLabel, detectorLabel, tuningLabel } from './words.ts';

type ElementList = Extract<ArrangementDescription, { kind: 'elements' }>;

/** Nodes that aerial, detector and load have inside; a builder's own of that name is another one, as in the circuit. */
const RESERVED = new Set([
  'biased',
  'pump',
  'loop foot',
  'ground',
  'sky',
  'aerial wire',
  'aerial foot',
  'equalised',
  'phones winding',
  'phones primary',
  'phones secondary',
  'phones in',
]);
const own = (node: string): string => (RESERVED.has(node) ? `listed ${node}` : node);

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
  const names = new Set([AERIAL, ...listed.flatMap((e) => [e.from, e.to]), OUT]);
  names.delete(EARTH);
  const order = byNeighbours([...names], listed);
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
  const end = drawLoadSide(sheet, set.load, x, { line: out, rail });
  touch(OUT, x);
  for (const wire of sheet.wires)
    if (wire.node === EARTH) for (const p of wire.points) if (p[1] === rail) touch(EARTH, p[0]);
  for (const [node, [from, to]] of reach) {
    const y = level.get(node)!;
    sheet.wire(node, [from, y], [to, y]);
    if (node !== EARTH && node !== AERIAL && node !== OUT && !/^(pump|biased)$/.test(node))
      sheet.remarks.push({ at: [from - 5, y + 4], text: called(node), anchor: 'end' });
  }
  const said = arrangement.elements.flatMap((e) =>
    e.kind === 'mutual'
      ? [`${called(e.first)} and ${called(e.second)} coupled: M ${formatQuantity(e.mutual, 'inductance')}`]
      : [],
  );
  said.forEach((words, i) => {
    sheet.remarks.push({ at: [START + 150, rail + 20 + 15 * i], text: words, anchor: 'start' });
  });
  return sheet.finished(
    Math.ceil(Math.max(end + 16, said.length > 0 ? START + 470 : 0)),
    rail + 34 + 15 * Math.max(0, said.length - 1),
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
      about: { name: aerial.kind === 'frame' ? 'frame' : 'rod', part: 'aerial', words: aerialLabel(aerial) },
    });
  let tuning: Listed | undefined;
  let live: string | undefined;
  let cathode: string = OUT;
  const value = (name: string, words: string): readonly string[] => [called(name), words];
  arrangement.elements.forEach((e, i) => {
    const part = `arrangement.elements.${i}`;
    switch (e.kind) {
      case 'resistor':
        listed.push({
          kind: 'resistor',
          from: own(e.from),
          to: own(e.to),
          about: { name: e.name, part, words: value(e.name, formatQuantity(e.resistance, 'resistance')) },
        });
        break;
      case 'capacitor':
        listed.push({
          kind: 'capacitor',
          from: own(e.from),
          to: own(e.to),
          about: { name: e.name, part, words: value(e.name, formatQuantity(e.capacitance, 'capacitance')) },
        });
        break;
      case 'inductor':
        listed.push({
          kind: 'inductor',
          from: own(e.from),
          to: own(e.to),
          about: {
            name: e.name,
            part,
            words: [called(e.name), formatQuantity(e.inductance, 'inductance'), `Q ${formatNumber(e.q, 3)}`],
          },
        });
        break;
      case 'coil': {
        const coil = set.coils.find((c) => c.name === e.coil);
        listed.push({
          kind: 'inductor',
          from: own(e.from),
          to: own(e.to),
          about: { name: e.name, part, words: coil ? [called(e.name), ...coilLabel(coil).slice(1)] : [called(e.name)] },
        });
        break;
      }
      case 'tuning':
        tuning = {
          kind: 'variable capacitor',
          from: own(e.from),
          to: own(e.to),
          about: { name: 'tuning capacitor', part: 'tuning', words: tuningLabel(set.tuning) },
        };
        break;
      case 'mutual':
        sheet.couplings.push({ first: e.first, second: e.second, words: '' });
        break;
      case 'detector':
        [live, cathode] = [own(e.from), own(e.to)];
        break;
    }
  });
  if (tuning) listed.push(tuning);
  // With no detector listed its place is across the load, as in the circuit.
  const at = live ?? EARTH;
  if (live === undefined) sheet.warnings.push('The list has no detector: nothing will be heard.');
  const device: SymbolKind = set.detector.kind === 'valve' ? 'valve' : 'diode';
  const about: About = { name: 'detector', part: 'detector', words: detectorLabel(set.detector) };
  const second: About = { name: 'second detector', part: 'detector', words: [] };
  if (set.detector.wiring === 'doubler') {
    listed.push(
      {
        kind: 'capacitor',
        from: at,
        to: 'pump',
        about: { name: 'pump capacitor', part: 'detector', words: ['pump', '1 nF'] },
      },
      { kind: device, from: EARTH, to: 'pump', about: second },
      { kind: device, from: 'pump', to: OUT, about },
    );
  } else {
    const bias = set.detector.bias ?? 0;
    const biased = bias !== 0 && set.detector.wiring === 'single';
    if (biased)
      listed.push({
        kind: 'cell',
        from: at,
        to: 'biased',
        about: { name: 'bias cell', part: 'detector', words: ['bias', formatQuantity(bias, 'voltage')] },
      });
    listed.push({
      kind: device,
      from: biased ? 'biased' : at,
      to: set.detector.wiring === 'single' ? cathode : OUT,
      about,
    });
    if (set.detector.wiring === 'full-wave') listed.push({ kind: device, from: EARTH, to: OUT, about: second });
  }
  return listed.filter((e) => {
    if (e.from !== e.to) return true;
    sheet.warnings.push(`“${e.about.name}” has both ends at "${e.from}" and does nothing.`);
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

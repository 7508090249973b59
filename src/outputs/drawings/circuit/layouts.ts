import { coilInCircuit } from '../../../engine/circuit/arrangements/coil-sections.ts';
import { EARTH } from '../../../engine/circuit/elements.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { ArrangementDescription } from '../../../engine/set/parts/arrangement.ts';
import type { CoilDescription } from '../../../engine/set/parts/coil.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { turnsOf } from '../coil/coil.ts';
import { type Diagram, DiagramSheet, wordsWidth } from './diagram.ts';
import { elementListDiagram } from './element-list.ts';
import {
  drawAbsorptions,
  drawDetector,
  drawEarthSymbol,
  drawFeed,
  drawLoadSide,
  type Levels,
  LINE,
  START,
} from './ends.ts';
import { aerialLabel, coilLabel, tuningLabel, turnsText } from './words.ts';

type ArrangementOf<K extends ArrangementDescription['kind']> = Extract<ArrangementDescription, { kind: K }>;

/** A set's circuit laid out as the trade draws it: aerial at the left top, earth below, the signal from left to right. */
export function circuitDiagram(set: SetDescription): Diagram {
  const { arrangement } = set;
  switch (arrangement.kind) {
    case 'direct':
    case 'series capacitor':
    case 'tapped':
      return single(set, arrangement);
    case 'coupled':
    case 'two circuits':
      return coupled(set, arrangement);
    case 'frame':
    case 'ferrite rod':
      return loop(set, arrangement);
    case 'slider':
      return slider(set, arrangement);
    case 'variometer':
      return variometer(set, arrangement);
    case 'elements':
      return elementListDiagram(set, arrangement);
  }
}

interface FoundCoil {
  readonly description: CoilDescription;
  readonly part: string;
  readonly turns: number;
}

function coilOf(set: SetDescription, name: string): FoundCoil {
  const index = set.coils.findIndex((c) => c.name === name);
  if (index < 0) throw new RangeError(`no coil "${name}"`);
  const description = set.coils[index];
  return { description, part: `coils.${index}`, turns: turnsOf(description) };
}

interface Stretch {
  readonly name: string;
  readonly top: string;
  readonly bottom: string;
  readonly from: number;
  readonly to: number;
}

/** The stretches between taps from the last turn down, with the circuit's own names of nodes. */
function stretchesOf(
  name: string,
  turns: number,
  taps: readonly number[],
  ends: { first: string; last: string; prefix?: string },
  rename: (node: string) => string = (n) => n,
): { stretches: Stretch[]; nodeAt: (turn: number) => string } {
  const nothing = () => 0;
  const wound = coilInCircuit(
    {
      name,
      turns,
      inductance: 1,
      selfCapacitance: 0,
      resistanceAt: nothing,
      partial: nothing,
      mutual: nothing,
      wireShare: nothing,
    },
    taps,
    ends,
  );
  const stretches = wound.sections
    .map((s) => ({ ...s, top: rename(wound.nodeAt(s.to)), bottom: rename(wound.nodeAt(s.from)) }))
    .toReversed();
  return { stretches, nodeAt: (turn) => rename(wound.nodeAt(turn)) };
}

interface CoilColumn {
  /** Level of a tap; of an end when it lies there. */
  readonly levelAt: (turn: number) => number;
  readonly bottom: number;
}

/** Px of lead between the line and a coil's top, and under its foot. */
const LEAD = 16;
const arches = (stretches: number): number => (stretches === 1 ? 5 : stretches === 2 ? 4 : 3);
const heightOf = (stretches: number): number => stretches * arches(stretches) * 12 + 2 * LEAD;

/** A coil from the line down, with its words over it. */
function drawCoilColumn(
  sheet: DiagramSheet,
  x: number,
  top: number,
  stretches: readonly Stretch[],
  about: {
    part: string;
    words: readonly string[];
    mirrored?: boolean /** Level that the words stay over. */;
    wordsOver?: number;
  },
): CoilColumn {
  const n = arches(stretches.length);
  const levels = new Map<number, number>();
  let y = top + LEAD;
  sheet.wire(stretches[0].top, [x, top], [x, y]);
  levels.set(stretches[0].to, top);
  stretches.forEach((s, i) => {
    const end = y + n * 12;
    sheet.shunt(
      'inductor',
      { name: s.name, part: about.part, words: i === 0 ? about.words : [] },
      x,
      [y, end],
      [s.top, s.bottom],
      {
        wordsAt: i === 0 ? [x, (about.wordsOver ?? top) - 10 - 14 * (about.words.length - 1)] : undefined,
        arches: n,
        mirrored: about.mirrored,
      },
    );
    y = end;
    levels.set(s.from, i === stretches.length - 1 ? y + LEAD : y);
  });
  const foot = stretches[stretches.length - 1].bottom;
  sheet.wire(foot, [x, y], [x, y + LEAD]);
  const ordered = [...levels.keys()];
  return {
    bottom: y + LEAD,
    levelAt: (turn) => {
      const nearest = ordered.reduce((best, t) => (Math.abs(t - turn) < Math.abs(best - turn) ? t : best));
      return levels.get(nearest)!;
    },
  };
}

/** From the foot of the aerial's coil to the rail. */
const toRail = (sheet: DiagramSheet, x: number, from: number, levels: Levels, node: string): void =>
  sheet.wire(node, [x, from], [x, levels.rail]);

interface Tuned {
  readonly x: number;
  readonly live: string;
  readonly lower?: { node: string; level: number };
}

/**
 * The tuning coil with its capacitor to the right, and the lead to the detector brought up to the line.
 * @param feed level and node at which the aerial comes in from the left at `left`, if it does.
 */
function drawTuned(
  sheet: DiagramSheet,
  set: SetDescription,
  x: number,
  levels: Levels,
  coil: {
    readonly stretches: readonly Stretch[];
    readonly nodeAt: (turn: number) => string;
    readonly part: string;
    readonly words: readonly string[];
    readonly turns: number;
    readonly first: string;
    readonly middle?: number;
    readonly detectorTurn: number;
    readonly aerialTurn?: number;
    readonly left: number;
    /** Something stands close at the left: the aerial tap's turn is written at the right. */
    readonly beside?: boolean;
  },
): Tuned {
  const y = levels.line;
  const column = drawCoilColumn(sheet, x, y, coil.stretches, coil);
  const { first, middle } = coil;
  const split = middle !== undefined;
  const lowLevel = split ? column.bottom : levels.rail;
  if (!split) toRail(sheet, x, column.bottom, levels, first);
  else {
    const level = column.levelAt(middle);
    sheet.wire(EARTH, [x, level], [x - 13, level], [x - 13, levels.rail]);
  }
  const aerialText = coil.aerialTurn === undefined ? '' : `turn ${turnsText(coil.aerialTurn)}`;
  if (coil.aerialTurn !== undefined) {
    const level = column.levelAt(coil.aerialTurn);
    const node = coil.nodeAt(coil.aerialTurn);
    if (level === y) sheet.wire(node, [coil.left, y], [x, y]);
    else {
      const drop = x - 26;
      sheet.wire(node, [coil.left, y], [drop, y], [drop, level], [x, level]);
      if (coil.aerialTurn < coil.turns && coil.aerialTurn > 0)
        sheet.remarks.push(
          coil.beside
            ? { at: [x + 13, level - 5], text: aerialText, anchor: 'start' }
            : { at: [drop - 5, level + 4], text: aerialText, anchor: 'end' },
        );
    }
  }
  const tapLevel = column.levelAt(coil.detectorTurn);
  const tapped = !split && tapLevel !== y;
  const tapText = `turn ${turnsText(coil.detectorTurn)}`;
  const capacitor =
    x +
    Math.max(
      50,
      wordsWidth(coil.words) / 2 + 14,
      tapped ? 26 + wordsWidth([tapText]) : 0,
      coil.beside ? 26 + wordsWidth([aerialText]) : 0,
    );
  const top = coil.stretches[0].top;
  sheet.wire(top, [x, y], [capacitor, y]);
  if (split) sheet.wire(first, [x, lowLevel], [capacitor, lowLevel]);
  // Body and words keep clear of a tap's lead, which crosses below or above.
  let centre = (y + lowLevel) / 2;
  if (tapped && Math.abs(tapLevel - centre) < 34)
    centre = tapLevel + 36 + 13 <= lowLevel ? tapLevel + 36 : tapLevel - 36;
  const reach = sheet.shunt(
    'variable capacitor',
    { name: 'tuning capacitor', part: 'tuning', words: tuningLabel(set.tuning) },
    capacitor,
    [y, lowLevel],
    [top, first],
    { middle: centre },
  );
  const live = coil.nodeAt(coil.detectorTurn);
  const end = reach + 14;
  if (tapped) {
    sheet.wire(live, [x, tapLevel], [end, tapLevel], [end, y]);
    sheet.remarks.push({ at: [x + 13, tapLevel - 5], text: tapText, anchor: 'start' });
  } else sheet.wire(live, [capacitor, y], [end, y]);
  if (split) sheet.wire(first, [capacitor, lowLevel], [end, lowLevel]);
  return { x: end, live, lower: split ? { node: first, level: lowLevel } : undefined };
}

/** Detector, load, rail and the size of the sheet: the same for all. */
function finish(
  sheet: DiagramSheet,
  set: SetDescription,
  tuned: Tuned,
  levels: Levels,
  from: number,
  earthed = true,
): Diagram {
  const out = drawDetector(sheet, set, tuned.x, levels, tuned.live, tuned.lower);
  const right = drawLoadSide(sheet, set.load, out, levels);
  return closeSheet(sheet, set, levels, from, right, earthed);
}

export function closeSheet(
  sheet: DiagramSheet,
  set: SetDescription,
  levels: Levels,
  from: number,
  right: number,
  earthed: boolean,
): Diagram {
  if (earthed) drawEarthSymbol(sheet, set, levels);
  // The rail ends at the last thing that stands on it.
  const feet = sheet.wires.flatMap((w) => (w.node === EARTH ? w.points : [])).filter((p) => p[1] === levels.rail);
  const last = Math.max(from, ...feet.map((p) => p[0]));
  sheet.wire(EARTH, [Math.min(from, ...feet.map((p) => p[0])), levels.rail], [last, levels.rail]);
  return sheet.finished(Math.ceil(right + 16), levels.rail + (earthed ? 34 : 20));
}

/** Where the detector joins the coil, and the coil's ends, as the circuit has them. */
function endsOf(set: SetDescription, turns: number, detectorTap: number | undefined) {
  const full = set.detector.wiring === 'full-wave';
  return {
    first: full ? 'bottom' : EARTH,
    middle: full ? turns / 2 : undefined,
    detectorTurn: full ? turns : (detectorTap ?? turns),
  };
}

const middleName = (turns: number): string => `turn ${Number((turns / 2).toFixed(3))}`;
const renameMiddle =
  (middle: number | undefined, turns: number) =>
  (node: string): string =>
    middle !== undefined && node === middleName(turns) ? EARTH : node;

/** High enough for the coil, and for what stands beside it. */
const railFor = (stretches: number, split: boolean, extra = 0): number =>
  LINE + Math.max(148, heightOf(stretches) + (split ? 34 : 0), extra);

function single(set: SetDescription, arrangement: ArrangementOf<'direct' | 'series capacitor' | 'tapped'>): Diagram {
  const { description, part, turns } = coilOf(set, arrangement.coil);
  const { first, middle, detectorTurn } = endsOf(set, turns, arrangement.detectorTap);
  const aerialTurn = arrangement.kind === 'tapped' ? arrangement.aerialTap : turns;
  const { stretches, nodeAt } = stretchesOf(
    description.name,
    turns,
    [aerialTurn, detectorTurn, ...(middle === undefined ? [] : [middle])],
    { first, last: 'top' },
    renameMiddle(middle, turns),
  );
  const levels = { line: LINE, rail: railFor(stretches.length, middle !== undefined) };
  const sheet = new DiagramSheet();
  const feed = drawFeed(sheet, set, levels, nodeAt(aerialTurn));
  const trapped = drawAbsorptions(sheet, set, feed, levels, description.name);
  const words = coilLabel(description);
  const tapText = aerialTurn < turns && trapped === feed ? wordsWidth([`turn ${turnsText(aerialTurn)}`]) : 0;
  const x = Math.max(trapped + 34, feed + wordsWidth(words) / 2, feed + 34 + tapText);
  const tuned = drawTuned(sheet, set, x, levels, {
    stretches,
    nodeAt,
    part,
    words,
    turns,
    first,
    middle,
    detectorTurn,
    aerialTurn,
    left: feed,
    beside: trapped !== feed,
  });
  return finish(sheet, set, tuned, levels, START);
}

function coupled(set: SetDescription, arrangement: ArrangementOf<'coupled' | 'two circuits'>): Diagram {
  const primary = coilOf(set, arrangement.aerialCoil);
  const secondary = coilOf(set, arrangement.coil);
  const { first, middle, detectorTurn } = endsOf(set, secondary.turns, arrangement.detectorTap);
  const aerialTurn = arrangement.kind === 'two circuits' ? (arrangement.aerialTap ?? primary.turns) : primary.turns;
  const winding = stretchesOf(primary.description.name, primary.turns, [aerialTurn], {
    first: EARTH,
    last: 'aerial coil',
    prefix: 'aerial ',
  });
  const wound = stretchesOf(
    secondary.description.name,
    secondary.turns,
    [detectorTurn, ...(middle === undefined ? [] : [middle])],
    { first, last: 'top' },
    renameMiddle(middle, secondary.turns),
  );
  const levels = {
    line: LINE,
    rail: railFor(Math.max(winding.stretches.length, wound.stretches.length), middle !== undefined),
  };
  const sheet = new DiagramSheet();
  const target = winding.nodeAt(aerialTurn);
  const feed = drawFeed(sheet, set, levels, target);
  const y = levels.line;
  const words = coilLabel(primary.description);
  let x = feed;
  let left = feed;
  const tapped = aerialTurn < primary.turns && aerialTurn > 0;
  if (arrangement.kind === 'two circuits') {
    // The first circuit's own capacitor stands left of its coil; a tapped lead passes under it.
    const capacitor = x + 18;
    const label = arrangement.aerialTuning ? tuningLabel(arrangement.aerialTuning) : tuningLabel(set.tuning);
    const tapLevel = y + LEAD + arches(winding.stretches.length) * 12;
    const reach = sheet.shunt(
      'variable capacitor',
      { name: 'aerial tuning capacitor', part: 'arrangement.aerialTuning', words: ['aerial', ...label] },
      capacitor,
      [y, levels.rail],
      ['aerial coil', EARTH],
      { middle: tapped ? tapLevel + 34 : undefined },
    );
    x = Math.max(reach + 16, capacitor + wordsWidth(words) / 2 + 10);
    if (tapped) {
      sheet.wire(target, [left, y], [left + 4, y], [left + 4, tapLevel], [x, tapLevel]);
      sheet.remarks.push({ at: [x - 6, tapLevel - 5], text: `turn ${turnsText(aerialTurn)}`, anchor: 'end' });
      sheet.wire('aerial coil', [capacitor, y], [x, y]);
    } else sheet.wire('aerial coil', [left, y], [x, y]);
  } else {
    x += Math.max(34, wordsWidth(words) / 2);
    sheet.wire(target, [left, y], [x, y]);
  }
  const column = drawCoilColumn(sheet, x, y, winding.stretches, { part: primary.part, words });
  toRail(sheet, x, column.bottom, levels, EARTH);
  left = x;
  const second = coilLabel(secondary.description);
  // An absorption trap stands beyond its coil's earth side, between the two.
  const trapped = drawAbsorptions(sheet, set, x + 12, levels, secondary.description.name);
  x += Math.max(84, trapped > x + 12 ? trapped - x + 10 : 0, (wordsWidth(words) + wordsWidth(second)) / 2 + 12);
  const arrowLevel = y + LEAD + 18;
  sheet.couplings.push({
    first: primary.description.name,
    second: secondary.description.name,
    words: `${formatQuantity(arrangement.distance, 'length', 2)}${arrangement.tilt > 0 ? `, ${turnsText(arrangement.tilt)}°` : ''}`,
    arrow: [
      [left + 14, arrowLevel],
      [x - 14, arrowLevel],
    ],
  });
  const tuned = drawTuned(sheet, set, x, levels, {
    ...wound,
    part: secondary.part,
    words: second,
    turns: secondary.turns,
    first,
    middle,
    detectorTurn,
    left: x,
  });
  return finish(sheet, set, tuned, levels, START);
}

function loop(set: SetDescription, arrangement: ArrangementOf<'frame' | 'ferrite rod'>): Diagram {
  const aerial = set.aerial;
  if (aerial.kind !== 'frame' && aerial.kind !== 'ferrite rod')
    throw new RangeError('a frame or rod arrangement needs a frame or rod aerial');
  const turns = aerial.turns;
  const { first, middle, detectorTurn } = endsOf(set, turns, arrangement.detectorTap);
  const name = aerial.kind === 'frame' ? 'frame' : 'rod';
  const { stretches, nodeAt } = stretchesOf(
    name,
    turns,
    [detectorTurn, ...(middle === undefined ? [] : [middle])],
    { first: 'foot', last: 'top' },
    // The field's emf acts in the turns themselves: its foot is the coil's.
    (node) => (node === 'foot' ? first : renameMiddle(middle, turns)(node)),
  );
  const levels = { line: LINE, rail: railFor(stretches.length, middle !== undefined) };
  const sheet = new DiagramSheet();
  const words = aerialLabel(aerial);
  const trapped = drawAbsorptions(sheet, set, 0, levels, name);
  const x = Math.max(54, wordsWidth(words) / 2 + 10, trapped > 0 ? trapped + 20 : 0);
  const tuned = drawTuned(sheet, set, x, levels, {
    stretches,
    nodeAt,
    part: 'aerial',
    words,
    turns,
    first,
    middle,
    detectorTurn,
    left: x,
  });
  sheet.place({
    kind: 'transformer',
    name: aerial.kind === 'frame' ? 'frame outline' : 'rod core',
    part: 'aerial',
    terminals: [],
    centre: [x, LINE + heightOf(stretches.length) / 2],
    turn: 90,
    words: [],
    wordsAt: [x, LINE],
    anchor: 'middle',
    arches: stretches.length * arches(stretches.length),
  });
  return finish(sheet, set, tuned, levels, trapped > 0 ? 16 : x, false);
}

function slider(set: SetDescription, arrangement: ArrangementOf<'slider'>): Diagram {
  const { description, part, turns } = coilOf(set, arrangement.coil);
  const fixed = arrangement.detectorTap;
  const fewest = Math.min(arrangement.fewest, turns);
  const at = fewest + (turns - fewest) / 2;
  const { stretches, nodeAt } = stretchesOf(description.name, turns, fixed === undefined ? [at] : [at, fixed], {
    first: EARTH,
    last: 'far end',
  });
  // Slider and detector lead are only contacts: their ends are the coil's own nodes.
  const sliderNode = nodeAt(at);
  const levels = { line: LINE, rail: LINE + Math.max(148, heightOf(stretches.length) + 20) };
  const sheet = new DiagramSheet();
  const feed = drawFeed(sheet, set, levels, sliderNode);
  const words = coilLabel(description);
  const y = levels.line;
  let x = feed;
  if (arrangement.parallelCapacitor > 0) {
    const capacitor = x + 12;
    const about = {
      name: 'parallel capacitor',
      part: 'arrangement',
      words: [formatQuantity(arrangement.parallelCapacitor, 'capacitance')],
    };
    const reach = sheet.shunt('capacitor', about, capacitor, [y, levels.rail], [sliderNode, EARTH]);
    sheet.wire(sliderNode, [x, y], [capacitor, y], [reach + 8, y]);
    x = reach + 8;
  }
  const trapped = drawAbsorptions(sheet, set, x, levels, description.name);
  const coil = Math.max(x + wordsWidth(words) / 2 + 20, x + 36 + wordsWidth(['slider']), trapped + 34);
  const column = drawCoilColumn(sheet, coil, y + 14, stretches, { part, words, wordsOver: y });
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
      ? { at: [coil + 13, level - 5], text: 'slider', anchor: 'start' }
      : { at: [coil - 35, level + 4], text: 'slider', anchor: 'end' },
  );
  const end =
    coil +
    Math.max(
      trapped > x ? 26 + wordsWidth(['slider']) : 40,
      wordsWidth(words) / 2 + 8,
      fixed === undefined ? 0 : 26 + wordsWidth([`turn ${turnsText(fixed)}`]),
    );
  let live = sliderNode;
  if (fixed !== undefined) {
    live = nodeAt(fixed);
    const tapLevel = column.levelAt(fixed);
    sheet.wire(live, [coil, tapLevel], [end, tapLevel], [end, y]);
    sheet.remarks.push({ at: [coil + 13, tapLevel - 5], text: `turn ${turnsText(fixed)}`, anchor: 'start' });
  } else sheet.wire(live, [coil - 30, y], [end, y]);
  return finish(sheet, set, { x: end, live }, levels, START);
}

function variometer(set: SetDescription, arrangement: ArrangementOf<'variometer'>): Diagram {
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

import { besideWords, verdictOf } from '../../engine/reception/summary.ts';
import type { Reception, StationReception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { isLoop } from '../../engine/set/loops.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { circuitDiagram, drawCircuit } from '../drawings/index.ts';
import { createWaves, type PointId, waveScene, wavesOfSet } from '../explain/index.ts';
import { itemBox, textBoxes } from '../scene/boxes.ts';
import { circle, group, text } from '../scene/build.ts';
import { boxesAlong, placeLabels } from '../scene/labels.ts';
import type { Item, Point } from '../scene/scene.ts';
import { type BoardLayout, layoutItems } from './build/layout.ts';
import type { BoardParts } from './build/parts.ts';
import { lineText } from './build/wiring.ts';
import { dialText } from './dial-text.ts';
import { Flow } from './flow.ts';
import { MARGIN, PAPERS, type PaperName, type Sheet, TOP } from './page.ts';
import { partsList } from './parts-list.ts';
import { printable } from './words.ts';

const kHz = (f: number): string => formatNumber(f / 1e3, 5);
const bestOf = (reception: Reception): StationReception | undefined =>
  reception.best.map((i) => reception.stations[i]).find((s) => s?.dial && s.heard !== 'not heard') ??
  reception.stations[reception.best[0]];

export interface Built {
  readonly parts: BoardParts;
  readonly layout: BoardLayout;
}

export function glanceSheet(set: SetDescription, reception: Reception, built: Built, paper: PaperName): Sheet {
  const flow = new Flow({
    id: 'glance',
    title: 'The set at a glance',
    heading: printable(set.name) || undefined,
    set: set.name,
    paper,
    file: 'glance',
  });
  flow.para(`Planned for ${printable(set.place.name) || 'its place'}. ${ARRANGEMENTS[set.arrangement.kind]}`);
  if (set.notes) for (const part of set.notes.slice(0, 1500).split(/\n+/)) flow.para(part, { soft: true });
  flow.heading('What should be heard');
  flow.para(reception.summary);
  const heard = [...reception.stations].sort((a, b) => b.margin - a.margin).slice(0, 24);
  if (heard.length > 0)
    flow.table(
      [
        { title: 'Station', share: 4 },
        { title: 'kHz', share: 1.2, anchor: 'end' },
        { title: 'Dial', share: 1.2, anchor: 'end' },
        { title: 'Heard', share: 1.8 },
        { title: 'At the ear', share: 1.9, anchor: 'end' },
        { title: 'Beside it', share: 5 },
      ],
      heard.map((s) => [
        s.name,
        kHz(s.frequency),
        s.dial ? dialText(set, s) : '—',
        verdictOf(s),
        s.heard === 'not heard' ? '—' : `${Math.round(s.soundPressureLevel)} dB ± ${Math.round(s.spread)}`,
        besideWords(s),
      ]),
    );
  for (const sentence of reception.dial.sentences.slice(0, 1)) flow.para(sentence, { small: true });
  flow.heading('Parts');
  flow.table(
    [
      { title: '✓', share: 0.4 },
      { title: 'Qty', share: 0.9, anchor: 'end' },
      { title: 'Part', share: 2.6 },
      { title: 'What it must be', share: 4 },
      { title: 'What will serve instead', share: 3.6 },
    ],
    partsList(set, reception, built.parts, built.layout).map((r) => ['', r.quantity, r.what, r.value, r.instead]),
  );
  return flow.finish(`${printable(set.name)}: what should be heard, and the list of parts.`);
}

const ARRANGEMENTS: Readonly<Record<SetDescription['arrangement']['kind'], string>> = {
  direct: 'One tuned circuit, the aerial straight on its top.',
  'series capacitor': 'One tuned circuit, fed by the aerial through a capacitor.',
  tapped: 'One tuned circuit, the aerial on a tap of its coil.',
  coupled: 'An aerial coil beside a tuned circuit.',
  'two circuits': 'Two tuned circuits, the aerial’s and the detector’s, loosely coupled.',
  slider: 'A coil tuned by a slider.',
  variometer: 'Tuned by turning one coil within another.',
  frame: 'A frame aerial that is its own coil.',
  'ferrite rod': 'A ferrite rod that is its own aerial and coil.',
  elements: 'A circuit of the builder’s own.',
};

/** The diagram as large as the page allows, turned where that makes it larger, with letters at the test points. */
export function circuitSheet(set: SetDescription, reception: Reception, { layout }: Built, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'circuit', title: 'Circuit diagram', set: set.name, paper });
  const scene = drawCircuit(set);
  const points = testPoints(set, reception, scene.items);
  const items = [...scene.items, ...points.items];
  const whole = { ...scene, items };
  const upright = Math.min(flow.width / scene.width, 110 / scene.height);
  const long = PAPERS[paper].height - TOP - 60;
  const turned = Math.min(long / scene.width, (flow.width - 4) / scene.height);
  if (upright * 12 >= 2.6 || turned < upright * 1.15)
    flow.figure(whole, { height: 110, scale: Math.min(upright, 0.4) });
  else {
    const scale = Math.min(turned, 0.4);
    const x = MARGIN + (flow.width + scene.height * scale) / 2;
    flow.add('Figure', [group(items, { move: [x, flow.y], turn: 90, scale })], `${scene.title}. ${scene.description}`);
    flow.space(scene.width * scale + 4);
  }
  if (points.rows.length > 0) {
    flow.heading('Test points');
    flow.table(
      [
        { title: 'Point', share: 0.8 },
        { title: 'Where', share: 3 },
        { title: 'What is there', share: 6 },
      ],
      points.rows,
    );
  }
  flow.heading('Nets, part by part');
  flow.para(scene.description, { small: true });
  for (const warning of scene.warnings ?? []) flow.para(warning, { small: true });
  const warnings = [...new Set([...reception.warnings, ...layout.warnings])];
  if (warnings.length > 0) {
    flow.heading('To bear in mind');
    flow.list(warnings.slice(0, 12));
  }
  return flow.finish(scene.description);
}

/** What the set works into, in a word. */
const OUT_WORDS: Readonly<Record<SetDescription['load']['kind'], string>> = {
  phones: 'phones',
  'moving-coil phones': 'phones',
  'crystal earpiece': 'earpiece',
  amplifier: 'amplifier',
};

function testPoints(
  set: SetDescription,
  reception: Reception,
  drawn: readonly Item[],
): { items: Item[]; rows: string[][] } {
  const diagram = circuitDiagram(set);
  const best = bestOf(reception);
  const wires = diagram.wires.filter((w) => w.points.length > 1);
  const detector = diagram.symbols.find((s) => s.name === 'detector');
  const live = detector?.terminals[0]?.node;
  const out = detector?.terminals[1]?.node;
  const aerial = diagram.symbols.find((s) => s.name === 'aerial')?.terminals[0]?.node;
  const at = best ? ` with ${printable(best.name)} tuned in` : '';
  const wanted = [
    aerial !== undefined && aerial !== live && aerial !== out
      ? {
          node: aerial,
          where: 'aerial lead',
          what: best
            ? `${formatQuantity(best.emf, 'voltage', 2)} peak of signal in the aerial${at}; no direct voltage`
            : 'no direct voltage',
        }
      : undefined,
    live !== undefined
      ? {
          node: live,
          where: 'before the detector',
          what: best
            ? `radio frequency, about ${formatQuantity(best.detectorVoltage, 'voltage', 2)} peak at the detector${at}; a meter on it detunes the set`
            : 'radio frequency',
        }
      : undefined,
    out !== undefined
      ? {
          node: out,
          where: `after the detector, to the ${OUT_WORDS[set.load.kind]}`,
          what: best
            ? `direct ${formatQuantity(Math.abs(best.directVoltage), 'voltage', 2)} and audio ${formatQuantity(best.audioVoltage, 'voltage', 2)} peak${at}`
            : 'direct and audio voltage',
        }
      : undefined,
  ].filter((p) => p !== undefined);
  const boxes = [
    ...wires.flatMap((w) => boxesAlong(w.points, 2)),
    ...textBoxes(drawn).map((t) => t.box),
    ...diagram.symbols.map((s) => ({ x: s.centre[0] - 22, y: s.centre[1] - 22, w: 44, h: 44 })),
  ];
  const items: Item[] = [];
  const rows: string[][] = [];
  wanted.forEach((p, i) => {
    const letter = String.fromCharCode(0x61 + i);
    const places = wires
      .filter((w) => w.node === p.node)
      .flatMap((w) => w.points.slice(1).map((b, k) => [w.points[k], b] as const))
      .sort(([a, b], [c, d]) => Math.hypot(d[0] - c[0], d[1] - c[1]) - Math.hypot(b[0] - a[0], b[1] - a[1]))
      .flatMap(([a, b]) => [0.5, 0.3, 0.7].map((t): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]));
    const clear = places.filter((q) => diagram.dots.every((d) => Math.hypot(q[0] - d[0], q[1] - d[1]) > 10));
    if (clear.length > 0) places.splice(0, places.length, ...clear);
    if (places.length === 0) return;
    const found = placeLabels(
      [
        {
          item: { text: letter, size: 12, bold: true, rim: true },
          must: true,
          places: places.flatMap((q) => [
            { at: [q[0], q[1] - 10] as Point, anchor: 'middle' as const },
            { at: [q[0] + 9, q[1] + 4] as Point, anchor: 'start' as const },
            { at: [q[0], q[1] + 19] as Point, anchor: 'middle' as const },
          ]),
        },
      ],
      { x: 0, y: 0, w: diagram.width, h: diagram.height },
      boxes,
    ).items[0];
    const near = places.reduce((u, v) =>
      Math.hypot(v[0] - found.at[0], v[1] - found.at[1]) < Math.hypot(u[0] - found.at[0], u[1] - found.at[1]) ? v : u,
    );
    items.push(
      circle(near, 3.6, { stroke: 'ink', fill: 'paper', width: 1.2 }),
      text(found.at, letter, 12, { anchor: found.anchor, bold: true, rim: true }),
    );
    boxes.push(itemBox(found));
    rows.push([letter, p.where, p.what]);
  });
  return { items, rows };
}

export function boardSheet(set: SetDescription, { layout }: Built, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'board', title: 'Board, full size', set: set.name, paper, fullSize: true });
  flow.para(
    `The board from above, ${Math.ceil(layout.width - 1e-6)} × ${Math.ceil(layout.height - 1e-6)} mm. Prick the holes through the paper. Dashed bodies are parts whose size is not known: lay yours on before you drill. Dashed lines are the wires, by their numbers in the wiring list.`,
    { small: true },
  );
  flow.template(
    layoutItems(layout),
    { w: layout.width, h: layout.height },
    `Layout of the board: ${layout.placed.map((p) => `${p.part.tag} ${p.part.words}`).join(', ')}.`,
  );
  return flow.finish();
}

export function wiringSheet(set: SetDescription, { parts, layout }: Built, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'wiring', title: 'Wiring list', set: set.name, paper });
  flow.para(
    'One piece of wire after another, in this order: lay it, fix it at both ends, tug it, tick it. Run each as the board sheet draws it, straight, and round what stands in between; keep wires off each other, and bare every end until it shines. When all are ticked the circuit is complete, and nothing else is joined to anything.',
  );
  flow.table(
    [
      { title: 'Part', share: 0.9 },
      { title: 'What it is', share: 6 },
      { title: 'Its ends', share: 5 },
    ],
    parts.parts.map((p) => [p.tag, p.words, p.terminals.join(', ')]),
  );
  flow.table(
    [
      { title: '✓', share: 0.45 },
      { title: 'No.', share: 0.8, anchor: 'end' },
      { title: 'From → to', share: 6 },
      { title: 'Cut', share: 1.2, anchor: 'end' },
      { title: 'What for', share: 5 },
    ],
    layout.wiring.lines.map((l, i) => ['', `${i + 1}`, lineText(l), `${layout.lengths[i]} mm`, l.note]),
  );
  if (layout.wiring.free.length > 0) flow.para(`Left free, with no wire on it: ${layout.wiring.free.join(', ')}.`);
  const coils = parts.parts.filter((p) => p.kind === 'coil' || p.kind === 'loop');
  if (coils.length > 1) {
    flow.heading('How the coils stand');
    for (const [a, b] of parts.couplings)
      flow.para(
        `${a} and ${b} must reach each other: stand them as the board drawing has them, their axes in one line${tiltWords(set)}.`,
      );
    if (parts.couplings.length < (coils.length * (coils.length - 1)) / 2)
      flow.para('All other coils must not: keep their axes at right angles, and a hand’s breadth apart.');
  }
  if (set.detector.kind === 'valve')
    flow.para(
      `The heater is not on this list: its two pins go by a twisted pair straight to their own supply of ${formatQuantity(set.detector.heaterVoltage, 'voltage')}, fused, and to nothing else here${set.detector.wiring === 'single' ? '' : '; so do those of the second'}.`,
    );
  else if (set.detector.wiring === 'single')
    flow.para(
      `Either way round the detector works${set.load.kind === 'amplifier' ? '' : ' with phones'}; the list has it so that ${set.load.kind === 'amplifier' ? 'its load' : 'the terminal P1'} becomes positive.`,
      { small: true },
    );
  return flow.finish(`Wiring list of ${layout.wiring.lines.length} wires.`);
}

const tiltWords = (set: SetDescription): string => {
  const a = set.arrangement as { distance?: number; tilt?: number };
  if (a.distance === undefined) return '';
  return `, middles ${formatQuantity(a.distance, 'length')} apart${a.tilt ? `, the second turned by ${formatNumber(a.tilt, 3)}°` : ''}`;
};

export function cautionsSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'cautions', title: 'Cautions', set: set.name, paper });
  flow.para('Read these before you begin, and hang them where the set is used.', { bold: true });
  flow.list(
    reception.cautions.map(({ text }) => text),
    'box',
    4,
  );
  flow.heading('In the shop and at the bench');
  flow.list([
    'Wear glasses when wire is cut, stretched or cleaned: ends fly.',
    'Solder and iron: work in moving air, wash your hands before you eat, and put the iron where no cord can catch it.',
    `${set.detector.kind === 'valve' || set.load.kind === 'amplifier' ? 'Nothing here is joined to the mains without isolation.' : 'Nothing here runs from the mains.'} If anything you join to it does, phones and recorder go through a battery-powered stage or an isolating transformer that is tested for it.`,
    'Start listening with the volume down: a click or a near station can be far louder than the programme before.',
  ]);
  return flow.finish('Cautions for what this set contains.');
}

/** Where the power comes from. */
const drivenWords = (set: SetDescription): string =>
  set.load.kind === 'amplifier'
    ? 'Up to the amplifier nothing drives it but what the aerial catches.'
    : set.detector.kind === 'valve'
      ? 'Nothing drives the sound but what the aerial catches; the heater only frees the electrons.'
      : 'Nothing drives the set but what the aerial catches.';

export function handoutSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'handout', title: 'How this set works', set: set.name, paper, file: 'handout' });
  const best = bestOf(reception);
  if (!best) {
    flow.para('No station is listed for this place yet; add those you know of, and this page will have its figures.');
    return flow.finish();
  }
  flow.para(`${printable(best.name)} on ${kHz(best.frequency)} kHz, from the air to the ear. ${drivenWords(set)}`);
  flow.table(
    [
      { title: 'Where', share: 2.6 },
      { title: 'How much', share: 1.6, anchor: 'end' },
      { title: 'What happens there', share: 7.5 },
    ],
    best.path.map((s) => [s.title, s.text, s.sentence]),
    { size: 2.6 },
  );
  const spec = wavesOfSet(set, reception, best.index);
  if (spec) {
    const waves = createWaves(spec);
    const points: readonly PointId[] = ['programme', 'tuned', 'detector', 'phones'];
    const height = Math.max(70, Math.min(flow.room - 34, 130));
    const scale = 0.22;
    const scene = waveScene({
      width: flow.width / scale,
      height: height / scale,
      rows: points.map((point) => ({ waves, point })),
      view: { from: 0, span: 2e-3 },
      show: {},
      letters: 12,
      title: 'Waves of this set over two thousandths of a second',
    });
    flow.figure(scene, { scale });
  }
  flow.para(
    `Top to bottom: the programme, a tone standing for voice and music; the tuned circuit, where the carrier swings up and down hundreds of times within each wiggle of the tone, as much above as below, so that on average there is nothing to hear; after the detector, which lets one half through, the average follows the programme; in the ${OUT_WORDS[set.load.kind]} only that average is left.`,
    { small: true },
  );
  flow.heading('To try', 10);
  flow.list(
    [
      isLoop(set.aerial)
        ? `Turn the ${set.aerial.kind === 'frame' ? 'frame' : 'rod'} until ${printable(best.name)} is least. Which way does it lie?`
        : 'Take the earth off, then put it back. Which loses more: the earth, or half of the aerial?',
      `Tune past ${printable(best.name)} both ways. Over how much of the scale can it be heard? The set passes a band of about ${formatQuantity(best.bandwidth, 'frequency', 2)}.`,
      set.load.kind === 'amplifier'
        ? 'What does the amplifier add, and what was there before it?'
        : `Why does the ${OUT_WORDS[set.load.kind] === 'earpiece' ? 'earpiece' : 'pair of phones'} need no battery, and where does the power for the sound come from?`,
    ],
    'dot',
  );
  return flow.finish(`The path of ${printable(best.name)} through the set, with its waves and figures.`);
}

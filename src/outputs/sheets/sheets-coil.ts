import type { CoilModel } from '../../engine/parts/coil/model.ts';
import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { isLoop } from '../../engine/set/loops.ts';
import { coilModel } from '../../engine/set/models.ts';
import type { CoilDescription } from '../../engine/set/parts/coil.ts';
import { capital, formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { drawCoil, tapsOf } from '../drawings/coil/coil.ts';
import { close, overall, type Tap, type WoundDescription } from '../drawings/coil/drawn.ts';
import { spiderOutline } from '../drawings/coil/spider.ts';
import { circle, line, polyline, rect, text } from '../scene/build.ts';
import type { Item, Point } from '../scene/scene.ts';
import { dialText } from './dial-text.ts';
import { Flow } from './flow.ts';
import { BODY, type PaperName, type Sheet } from './page.ts';
import { loopSheet } from './sheets-loop.ts';
import { TAIL, TAP_LOOP, tally, wireToCut, wireWords } from './winding.ts';
import { count, cutLength, ohms, printable } from './words.ts';

/** One sheet for each coil, and one for a frame or rod that is a coil itself. */
export function coilSheets(set: SetDescription, reception: Reception, paper: PaperName): Sheet[] {
  const files = new Set<string>();
  const fileFor = (name: string): string => {
    const base = `coil-${
      printable(name)
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-|-$/g, '')
        .slice(0, 40) || 'x'
    }`;
    let file = base;
    for (let k = 2; files.has(file); k++) file = `${base}-${k}`;
    files.add(file);
    return file;
  };
  const sheets = set.coils.map((coil, i) => {
    const file = fileFor(coil.name);
    return coil.shape === 'measured'
      ? measuredSheet(set, coil, i, reception, paper, file)
      : woundSheet(set, coil, i, reception, paper, file);
  });
  if (isLoop(set.aerial)) sheets.push(loopSheet(set, reception, paper));
  return sheets;
}

function woundSheet(
  set: SetDescription,
  coil: WoundDescription,
  index: number,
  reception: Reception,
  paper: PaperName,
  file: string,
): Sheet {
  const model = coilModel(coil);
  const taps = tapsOf(set, index).filter((t) => t.turn > 0 && t.turn < model.turns);
  const flow = new Flow({
    id: 'coil',
    title: `Coil “${printable(coil.name)}”`,
    file,
    set: set.name,
    paper,
    fullSize: true,
  });
  const turns = `${formatNumber(model.turns, 4)} turns`;
  const facts: string[][] = [
    ['Former', formerWords(coil)],
    ['Wire', wireWords(coil.wire)],
    ['Turns', `${turns}, all wound the same way round`],
    ['Winding', windingWords(coil, model)],
    [
      'Wire to cut',
      `${cutLength(wireToCut(model, taps.length))}: ${formatQuantity(model.wireLength, 'length', 3)} on the coil, ${Math.round(TAIL * 1e3)} mm left free at each end${taps.length > 0 ? `, ${Math.round(TAP_LOOP * 1e3)} mm for each tap` : ''}, and a little over`,
    ],
  ];
  flow.table(
    [
      { title: 'What', share: 1.1 },
      { title: 'This coil', share: 6 },
    ],
    facts,
  );
  flow.figure(drawCoil(coil, { taps, width: Math.min(flow.width, 150), height: 78 }), { height: 80 });
  if (taps.length > 0) {
    flow.heading('Taps, counted from the start');
    flow.table(
      [
        { title: 'Tap', share: 2 },
        { title: 'After turn', share: 1.3, anchor: 'end' },
        { title: placeTitle(coil), share: 2.6, anchor: 'end' },
        { title: 'Wire from the start', share: 2.2, anchor: 'end' },
        { title: '✓', share: 0.5 },
      ],
      taps.map((t) => [
        capital(t.name),
        formatNumber(t.turn, 4),
        tapPlace(coil, t.turn),
        formatQuantity(model.wireLengthTo(t.turn), 'length', 3),
        '',
      ]),
    );
  }
  flow.heading('How to wind it');
  const slides = set.arrangement.kind === 'slider' && set.arrangement.coil === coil.name;
  flow.list([...stepsFor(coil, model, taps), ...(slides ? SLIDER_STEPS : [])], 'number');
  tally(flow, model.turns, taps);
  checks(flow, set, coil, index, model, taps, reception);
  template(flow, coil, model, taps);
  return flow.finish(`How to wind the coil ${printable(coil.name)}: ${turns}.`);
}

const mm = (metres: number): string => formatQuantity(metres, 'length', 3);

function formerWords(coil: WoundDescription): string {
  const stuff =
    coil.former === 'air' ? 'none left in (wound on something and drawn off, or on thin ribs)' : coil.former;
  switch (coil.shape) {
    case 'solenoid':
    case 'multilayer':
    case 'bank-wound':
      return `tube of ${stuff}, ${mm(coil.formerDiameter)} outside. Any tube within 1 mm will do; a wider one needs fewer turns. Dry card or wood is varnished before and after winding`;
    case 'spiral':
      return `flat card or board of ${stuff}, first turn ${mm(coil.innerDiameter)} across`;
    case 'spider':
      return `disc of ${stuff}, ${mm(coil.discThickness)} thick, with ${coil.slots} slots round a hub of ${mm(coil.innerDiameter)}: template below`;
    case 'basket':
      return `${coil.pegs} pegs of ${mm(coil.pegDiameter)} on a circle of ${mm(coil.pegCircle)}, drawn out after winding: template below`;
    case 'core':
      return `${coil.form} of ${formatQuantity(coil.perTurnSquared, 'inductance')} for one turn (its A_L)`;
  }
}

function windingWords(coil: WoundDescription, model: CoilModel): string {
  const length = mm(model.windingLength);
  switch (coil.shape) {
    case 'solenoid':
      return coil.pitch === undefined
        ? `one layer, each turn touching the last: ${length} long in all`
        : `one layer, ${mm(coil.pitch)} from turn to turn (wind a thread of ${mm(Math.max(0, coil.pitch - overall(coil) / 1e3))} along with the wire): ${length} long in all`;
    case 'multilayer':
      return `${coil.layers} layers of ${coil.turnsPerLayer} turns, to and fro, ${length} long between cheeks${coil.layerSpacing ? `, layers ${mm(coil.layerSpacing)} apart` : ''}; about ${mm(model.outerDiameter)} over all`;
    case 'bank-wound':
      return `${coil.layers} banks piled up turn by turn as you go: ${length} long, about ${mm(model.outerDiameter)} over all`;
    case 'spiral':
      return `outward in one plane, ${coil.pitch ? `${mm(coil.pitch)} from turn to turn` : 'each turn touching the last'}; about ${mm(model.outerDiameter)} over all`;
    case 'spider':
      return `in at one slot and out at the next${coil.over === 2 ? ' but one (two vanes at a time)' : ''}; about ${mm(model.outerDiameter)} over all`;
    case 'basket':
      return `inside ${count(coil.over, 'peg')}, outside ${coil.over}, and so on; about ${mm(model.windingLength)} high`;
    case 'core':
      return 'spread round the core, leaving a gap between the two ends';
  }
}

const placeTitle = (coil: WoundDescription): string =>
  coil.shape === 'solenoid' || coil.shape === 'bank-wound'
    ? 'From the first turn'
    : coil.shape === 'multilayer'
      ? 'Layer, turn in it'
      : coil.shape === 'basket'
        ? 'Height there'
        : coil.shape === 'core'
          ? 'Counted'
          : 'Diameter there';

function tapPlace(coil: WoundDescription, turn: number): string {
  const pitch = pitchOf(coil);
  switch (coil.shape) {
    case 'solenoid':
      return `${formatNumber(turn * pitch, 3)} mm`;
    case 'bank-wound':
      return `${formatNumber((turn * pitch) / coil.layers, 3)} mm`;
    case 'multilayer': {
      const layer = Math.min(coil.layers, Math.floor((turn - 1e-9) / coil.turnsPerLayer) + 1);
      return `layer ${layer}, turn ${formatNumber(turn - (layer - 1) * coil.turnsPerLayer, 4)}`;
    }
    case 'basket':
      return `${formatNumber(turn * overall(coil), 3)} mm`;
    case 'spiral':
    case 'spider':
      return `${formatNumber(coil.innerDiameter * 1e3 + 2 * turn * pitch, 3)} mm`;
    case 'core':
      return '—';
  }
}

/** Turn to turn, mm. */
function pitchOf(coil: WoundDescription): number {
  if ((coil.shape === 'solenoid' || coil.shape === 'spiral') && coil.pitch !== undefined) return coil.pitch * 1e3;
  return coil.shape === 'spider' ? overall(coil) : close(coil);
}

function stepsFor(coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): string[] {
  const last = formatNumber(model.turns, 4);
  const tap =
    taps.length > 0
      ? [
          `At ${taps.map((t) => `turn ${formatNumber(t.turn, 4)} (${t.name})`).join(', ')} make a tap: hold the last turn with a thumb, pull out a loop of about 40 mm, twist it close to the coil six times, and wind on the same way. Scrape and tin the loop when all is wound.`,
        ]
      : [];
  const bare =
    coil.wire.covering === 'bare'
      ? []
      : [
          `Scrape ${coil.wire.covering.includes('enamel') ? 'the enamel' : 'the covering'} off the last 10 mm of each end and tap, all round, until the metal shines; tin them.`,
        ];
  const tally = 'Tick a box of the tally for every turn; where you are called away, tape the wire down first.';
  switch (coil.shape) {
    case 'solenoid':
    case 'bank-wound':
    case 'multilayer': {
      const start = `Make two small holes 3 mm apart, about 8 mm from one end of the tube. Thread the wire in at one and out at the other, twice, leaving ${Math.round(TAIL * 1e3)} mm inside: that is the start, and it goes to the earthed side. Mark it “start”.`;
      const length = mm(model.windingLength);
      const how =
        coil.shape === 'solenoid'
          ? [
              'Fix the far end of the wire to a door handle, keep it taut, and walk towards it while you turn the tube. Push each turn against the last with a thumbnail; turns must not cross.',
            ]
          : coil.shape === 'bank-wound'
            ? [
                `Wind the first ${coil.layers} turns side by side; then, for each new turn of the bottom layer, lay one on top of it in every bank, so that the pile moves along the tube as you go.`,
              ]
            : [
                `Fit two cheeks of card, ${length} apart (template below). Wind ${coil.turnsPerLayer} turns from one to the other, wrap a strip of thin paper round, wind the next layer back, and so on for ${coil.layers} layers.`,
              ];
      return [
        start,
        ...how,
        tally,
        ...tap,
        `At turn ${last} make two more holes and fix the end as you did the start; mark it “end”. The winding should be ${length} long: if it is more than a tenth out, the wire or the spacing is not the one reckoned with.`,
        ...bare,
        'Brush thin varnish over it, or leave it dry and bare of wax: both are good. Thick wax and damp cost loudness.',
      ];
    }
    case 'spiral':
      return [
        'Stick double-sided tape on the card, draw the first turn’s circle, and lay the wire on it, start leading to the back through a hole.',
        `Lay turn against turn outward. ${tally}`,
        ...tap,
        `After turn ${last} lead the end to the back through a hole, and varnish.`,
        ...bare,
      ];
    case 'spider':
      return [
        'Glue the template to the disc. Cut each slot down to the hub circle; take off burrs that would cut the covering.',
        `Lead the start through a small hole by the hub, leaving ${Math.round(TAIL * 1e3)} mm. Wind in at one slot and out at the next${coil.over === 2 ? ' but one' : ''}: the wire is before one vane and behind the other. With ${coil.slots} slots each turn lies on the other side of the vanes from the one before.`,
        tally,
        ...tap,
        `After turn ${last} fix the end through a hole in the rim of a vane.`,
        ...bare,
      ];
    case 'basket':
      return [
        `Drill ${coil.pegs} holes in a board by the template and stand the pegs in them, a little loose.`,
        `Fix the start to the board. Wind inside ${count(coil.over, 'peg')}, outside the next ${coil.over}, and so on; press the turns down as they rise.`,
        tally,
        ...tap,
        `After turn ${last} tie the coil with waxed thread at every crossing, then draw the pegs and lift it off.`,
        ...bare,
      ];
    case 'core':
      return [
        'Tape sharp edges of the core. Pass half of the wire through and wind from the middle outward, first one way and then the other: each pass through the hole is one turn.',
        tally,
        ...tap,
        ...bare,
      ];
  }
}

/** A slider wants a bare track on every turn, and a spring that touches one or two of them at a time. */
const SLIDER_STEPS = [
  'When the varnish is dry, rule two lines 6 mm apart along the winding, opposite the mounting screws, and rub the covering off between them with fine glass-paper under a flat stick, until every turn shines. Brush out the dust: it must not join turns.',
  'Fix a square brass rod over the track, its ends on the former’s ends. On it slides a block with a springy brass strip, its tip rounded, that presses on the bare track: hard enough to touch, light enough not to shift a turn.',
];

function checks(
  flow: Flow,
  set: SetDescription,
  coil: WoundDescription,
  index: number,
  model: CoilModel,
  taps: readonly Tap[],
  reception: Reception,
): void {
  const figures = reception.parts.coils[index];
  const isTuned = 'coil' in set.arrangement && set.arrangement.coil === coil.name;
  flow.heading('What it should be, and how to check it');
  const q = figures?.qRange ?? model.qRangeAt(1e6);
  const rows: string[][] = [
    [
      'Inductance',
      `${formatQuantity(model.inductance, 'inductance')} (${formatQuantity(model.inductance * 0.97, 'inductance')} to ${formatQuantity(model.inductance * 1.03, 'inductance')} as wound by hand)`,
    ],
  ];
  if (figures)
    rows.push([
      `Q at ${formatNumber(figures.qAt / 1e3, 4)} kHz`,
      `about ${formatNumber(figures.q, 2)}; anything from ${formatNumber(q[0], 2)} to ${formatNumber(q[1], 2)} is in order`,
    ]);
  if (Number.isFinite(model.selfCapacitance))
    rows.push(['Its own capacitance', formatQuantity(model.selfCapacitance, 'capacitance', 2)]);
  if (Number.isFinite(model.dcResistance) && model.dcResistance > 0)
    rows.push([
      'Direct resistance, start to end',
      `${ohms(model.dcResistance)} by an ordinary meter; much more: a bad joint or wire; much less: turns short-circuited or too few`,
    ]);
  if (isTuned)
    rows.push([
      'Range in this set',
      `${formatNumber(Math.round(reception.dial.lowest / 1e3), 5)} to ${formatNumber(Math.round(reception.dial.highest / 1e3), 5)} kHz`,
    ]);
  flow.table(
    [
      { title: 'Figure', share: 2 },
      { title: 'Expected', share: 6 },
    ],
    rows,
  );
  const best = reception.best.map((i) => reception.stations[i]).find((s) => s?.dial);
  const list = [
    `Count the turns once more under a lens, ten at a time, and measure the winding: ${coil.shape === 'spider' || coil.shape === 'spiral' ? `about ${mm(model.outerDiameter)} over all` : mm(model.windingLength)}.`,
    `With a meter on ohms: start to end conducts${taps.length > 0 ? ', and so does every tap to either end' : ''}; no part of it conducts to the mounting screws.`,
  ];
  if (isTuned && best)
    list.push(
      `In the set, ${printable(best.name)} (${formatNumber(best.frequency / 1e3, 5)} kHz) should come in near ${dialText(set, best)} on the dial. ${set.arrangement.kind === 'slider' ? 'If it comes far from there, count the turns' : `If it comes at a lower reading (${openSide(set)}) the coil is too large: take off a turn; at a higher reading, too small`}. One turn moves a station by about ${formatNumber((0.85 * best.frequency) / model.turns / 1e3, 2)} kHz.`,
    );
  else
    list.push(
      'Compare it with a coil of known inductance: across one capacitor the two tune to frequencies as the root of the inductances, upside down.',
    );
  flow.list(list, 'box');
}

/** How the tuning stands at a low reading. */
const openSide = (set: SetDescription): string =>
  set.tuning.kind === 'foil'
    ? 'the sheet drawn further out'
    : set.tuning.kind === 'tubes'
      ? 'the tube drawn further out'
      : set.tuning.kind === 'book'
        ? 'the leaves further open'
        : 'the vanes further out';

/** What is cut or drilled for it, at full size. */
function template(flow: Flow, coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): void {
  if (coil.shape === 'core') return;
  flow.heading('Template, full size', 40);
  if (coil.shape === 'spider') {
    const { items, size } = spiderTemplate(coil, taps);
    flow.template(
      items,
      { w: size, h: size },
      `Spider former with ${coil.slots} slots, ${Math.round(size)} mm across.`,
    );
  } else if (coil.shape === 'basket') {
    const { items, size } = basketTemplate(coil);
    flow.template(items, { w: size, h: size }, `Circle of ${coil.pegs} pegs, ${mm(coil.pegCircle)} across.`);
  } else if (coil.shape === 'spiral') {
    const { items, size } = spiralTemplate(coil, model, taps);
    flow.template(items, { w: size, h: size }, 'First and last turn of the spiral.');
  } else {
    flow.para('Lay this strip along the tube and prick through the marks: the start, every tap, and the end.', {
      small: true,
    });
    const { items, w, h } = stripTemplate(coil, model, taps);
    flow.template(
      items,
      { w, h },
      `Strip with the places of the winding’s ends and taps, ${mm(model.windingLength)} from start to end.`,
    );
  }
}

const CUT = { stroke: 'ink', width: 0.3 } as const;
const CROSS = { stroke: 'ink', width: 0.15 } as const;

function cross([x, y]: Point, r = 4): Item[] {
  return [line([x - r, y], [x + r, y], CROSS), line([x, y - r], [x, y + r], CROSS)];
}

export function spiderTemplate(
  coil: Extract<CoilDescription, { shape: 'spider' }>,
  taps: readonly Tap[] = [],
): { items: Item[]; size: number } {
  const { outline, hub, rim } = spiderOutline(coil);
  const size = 2 * rim + 6;
  const c: Point = [size / 2, size / 2];
  const items: Item[] = [
    polyline(
      outline.map(([x, y]): Point => [c[0] + x, c[1] - y]),
      { ...CUT, closed: true, title: 'cut here' },
    ),
    circle(c, hub, { stroke: 'soft', width: 0.2, dash: [1.5, 1] }),
    circle(c, 2, CUT),
    ...cross(c),
    circle(c, hub + coil.turns * overall(coil), { stroke: 'soft', width: 0.2, dash: [1.5, 1] }),
    ...taps.map((t) => circle(c, hub + t.turn * overall(coil), { stroke: 'soft', width: 0.15, dash: [0.8, 0.8] })),
  ];
  if (hub > 16) items.push(text([c[0], c[1] + 7], `hub ${mm(coil.innerDiameter)}`, 2.3, { anchor: 'middle' }));
  for (let k = 0; k < coil.slots; k++) {
    // Between two slots, on the rim.
    const a = (2 * Math.PI * (k + 0.5)) / coil.slots;
    items.push(
      text([c[0] + (rim - 2.6) * Math.cos(a), c[1] - (rim - 2.6) * Math.sin(a)], `${k + 1}`, 2.3, {
        anchor: 'middle',
        sits: 'middle',
        role: 'soft',
      }),
    );
  }
  return { items, size };
}

export function basketTemplate(coil: Extract<CoilDescription, { shape: 'basket' }>): { items: Item[]; size: number } {
  const R = (coil.pegCircle * 1e3) / 2;
  const r = (coil.pegDiameter * 1e3) / 2;
  const size = 2 * R + 26;
  const c: Point = [size / 2, size / 2];
  const items: Item[] = [circle(c, R, { stroke: 'soft', width: 0.2, dash: [1.5, 1] }), circle(c, 2, CUT), ...cross(c)];
  for (let k = 0; k < coil.pegs; k++) {
    const a = (2 * Math.PI * k) / coil.pegs - Math.PI / 2;
    const p: Point = [c[0] + R * Math.cos(a), c[1] + R * Math.sin(a)];
    items.push(
      circle(p, r, { ...CUT, title: 'peg' }),
      ...cross(p, r + 1.5),
      text([c[0] + (R + r + 5) * Math.cos(a), c[1] + (R + r + 5) * Math.sin(a)], `${k + 1}`, BODY - 0.6, {
        anchor: 'middle',
        sits: 'middle',
      }),
    );
  }
  return { items, size };
}

function spiralTemplate(
  coil: Extract<CoilDescription, { shape: 'spiral' }>,
  model: CoilModel,
  taps: readonly Tap[],
): { items: Item[]; size: number } {
  const R = (model.outerDiameter * 1e3) / 2;
  const size = 2 * R + 12;
  const c: Point = [size / 2, size / 2];
  const inner = (coil.innerDiameter * 1e3) / 2;
  return {
    size,
    items: [
      circle(c, inner, CUT),
      circle(c, R, CUT),
      ...taps.map((t) => circle(c, inner + t.turn * pitchOf(coil), { stroke: 'soft', width: 0.2, dash: [1.5, 1] })),
      circle(c, 2, CUT),
      ...cross(c),
    ],
  };
}

export function stripTemplate(
  coil: WoundDescription,
  model: CoilModel,
  taps: readonly Tap[],
): { items: Item[]; w: number; h: number; x0: number } {
  const length = model.windingLength * 1e3;
  const spare = 12;
  const w = length + 2 * spare;
  const h = 22;
  const items: Item[] = [rect(0, 0, w, h, { ...CUT, title: 'cut here' })];
  const along = (turn: number): number => {
    if (coil.shape === 'multilayer') {
      const layer = Math.floor((turn - 1e-9) / coil.turnsPerLayer);
      const within = turn / coil.turnsPerLayer - layer;
      return spare + length * (layer % 2 === 0 ? within : 1 - within);
    }
    return spare + (length * turn) / model.turns;
  };
  const marks = [
    { x: spare, words: 'start', strong: true },
    ...taps.map((t) => ({ x: along(t.turn), words: `${formatNumber(t.turn, 4)}`, strong: false })),
    { x: spare + length, words: coil.shape === 'multilayer' ? 'cheek' : 'end', strong: true },
  ];
  let row = 0;
  let last = -100;
  for (const m of [...marks].sort((a, b) => a.x - b.x)) {
    items.push(
      line([m.x, 0], [m.x, 9], { stroke: 'ink', width: m.strong ? 0.3 : 0.2, cap: 'butt', title: m.words }),
      circle([m.x, 9.8], 0.8, { stroke: 'ink', width: 0.2 }),
    );
    row = m.x - last < 12 ? (row + 1) % 3 : 0;
    items.push(text([m.x, 14 + row * 3.4], m.words, 2.4, { anchor: 'middle', bold: m.strong }));
    last = m.x;
  }
  return { items, w, h, x0: spare };
}

function measuredSheet(
  set: SetDescription,
  coil: Extract<CoilDescription, { shape: 'measured' }>,
  index: number,
  reception: Reception,
  paper: PaperName,
  file: string,
): Sheet {
  const flow = new Flow({ id: 'coil', title: `Coil “${printable(coil.name)}”`, file, set: set.name, paper });
  flow.para('This coil is there already and known by measurement; there is nothing to wind.');
  const taps = tapsOf(set, index);
  flow.table(
    [
      { title: 'Figure', share: 2 },
      { title: 'As measured', share: 5 },
    ],
    [
      ['Inductance', formatQuantity(coil.inductance, 'inductance')],
      ['Q', `${formatNumber(coil.q, 3)} at ${formatNumber(coil.at / 1e3, 4)} kHz`],
      ['Its own capacitance', formatQuantity(coil.selfCapacitance, 'capacitance', 2)],
      ...(taps.length > 0
        ? [
            [
              'Taps',
              taps
                .map(
                  (t) =>
                    `${t.name} at ${formatNumber(t.turn, 4)} of ${formatNumber(coil.turns, 4)} turns from the earthed end`,
                )
                .join('; '),
            ],
          ]
        : []),
      [
        'Range in this set',
        `${formatNumber(Math.round(reception.dial.lowest / 1e3), 5)} to ${formatNumber(Math.round(reception.dial.highest / 1e3), 5)} kHz`,
      ],
    ],
  );
  flow.list(
    [
      'With a meter on ohms: its two ends conduct, and every tap to either end.',
      'Find which end is to be earthed: the one its taps are counted from. Mark it “start”.',
    ],
    'box',
  );
  return flow.finish();
}

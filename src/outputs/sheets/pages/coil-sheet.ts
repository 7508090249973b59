import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import { coilModel } from '../../../engine/kinds/models.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { capital, formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { CHEEK_THICKNESS, cheekDiameter, endsWhereItStarts, placeInPile } from '../../drawings/coil/cheek.ts';
import { drawCoil, tapsOf } from '../../drawings/coil/coil.ts';
import { type CoilOf, close, overall, SPARE, type Tap, type WoundDescription } from '../../drawings/coil/drawn.ts';
import { Flow } from '../paper/flow.ts';
import { type PaperName, type Sheet, TOP } from '../paper/page.ts';
import {
  basketTemplate,
  type CoilTemplate,
  cheekTemplates,
  HOLES_APART,
  HOLES_FROM_END,
  spiderTemplate,
  spiralTemplate,
  stripTemplate,
} from './coil-templates.ts';
import { dialText } from './dial-text.ts';
import { loopSheet } from './loop-sheet.ts';
import { gaugeWords, insteadOfCovered, TAIL, tally, tapWire, wireToCut, wireWords } from './winding.ts';
import { count, cutLength, kHz, mm, ohms, printable } from './words.ts';

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
    ...formerSizes(coil, model),
    ['Wire', `${wireWords(coil.wire)}${gaugeWords(coil.wire)}`],
    ...otherWire(coil),
    ['Turns', `${turns}, all wound the same way round`],
    ['Winding', windingWords(coil, model)],
    [
      'Wire to cut',
      `${cutLength(wireToCut(model, taps.length))}: ${formatQuantity(model.wireLength, 'length', 3)} on the coil, ${Math.round(TAIL * 1e3)} mm left free at each end${taps.length > 0 ? `, ${Math.round(tapWire(model) * 1e3)} mm for each tap` : ''}, and a little over`,
    ],
  ];
  flow.table(
    [
      { title: 'What', share: 1.1 },
      { title: 'This coil', share: 6 },
    ],
    facts,
  );
  // A pile's layers, cheeks and ends want more room than one layer does.
  const height = coil.shape === 'multilayer' ? 100 : 78;
  flow.figure(drawCoil(coil, { taps, width: Math.min(flow.width, 150), height }), { height: height + 2 });
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

function formerWords(coil: WoundDescription): string {
  const air = coil.shape !== 'core' && coil.former === 'air';
  const stuff = coil.shape === 'core' || air ? 'any dry insulator' : coil.former;
  const drawnOff = air ? ', which is drawn out when the turns hold together, or thin ribs in its place' : '';
  switch (coil.shape) {
    case 'solenoid':
    case 'multilayer':
    case 'bank-wound':
      return `tube of ${stuff}, ${mm(coil.formerDiameter)} outside${drawnOff}. Any tube within 1 mm will do; a wider one needs fewer turns${/card|wood/.test(stuff) ? '. Dry it, and varnish it before and after winding' : ''}`;
    case 'spiral':
      return `flat card or board of ${stuff}${drawnOff}, first turn ${mm(coil.innerDiameter)} across`;
    case 'spider':
      return `disc of ${stuff}, ${mm(coil.discThickness)} thick, with ${coil.slots} slots round a hub of ${mm(coil.innerDiameter)}: template below`;
    case 'basket':
      return `${coil.pegs} pegs of ${mm(coil.pegDiameter)} on a circle of ${mm(coil.pegCircle)}, drawn out after winding: template below`;
    case 'core':
      return `${coil.form} of ${formatQuantity(coil.perTurnSquared, 'inductance')} for one turn (its A_L)`;
  }
}

const isTube = (coil: WoundDescription): coil is CoilOf<'solenoid' | 'multilayer' | 'bank-wound'> =>
  coil.shape === 'solenoid' || coil.shape === 'multilayer' || coil.shape === 'bank-wound';

/** How long a tube is cut, m. */
const tubeLength = (model: CoilModel): number => model.windingLength + (2 * SPARE) / 1e3;

function formerSizes(coil: WoundDescription, model: CoilModel): string[][] {
  if (!isTube(coil)) return [];
  const rows = [
    [
      'Length of the tube',
      `${mm(tubeLength(model))}: ${mm(model.windingLength)} for the winding, ${SPARE} mm spare at either end`,
    ],
  ];
  if (coil.shape === 'multilayer')
    rows.push([
      'Cheeks',
      `2 rings of stiff card or thin plywood, ${CHEEK_THICKNESS} mm thick, ${mm(cheekDiameter(coil) / 1e3)} across, hole ${mm(coil.formerDiameter)}: templates below`,
    ]);
  return rows;
}

/** From turn to turn, and what of it lies between two of them, mm. */
const gapOf = (coil: WoundDescription): number => pitchOf(coil) - overall(coil);
/** Turns that touch, but for what hands leave. */
const touching = (coil: WoundDescription): boolean => gapOf(coil) < Math.max(0.05, 0.03 * overall(coil));

function otherWire(coil: WoundDescription): string[][] {
  if (coil.shape === 'core') return [];
  const words = insteadOfCovered(coil.wire, pitchOf(coil));
  return words
    ? [['Instead', `${words}${coil.shape === 'multilayer' ? ', and paper as thick between the layers' : ''}`]]
    : [];
}

function windingWords(coil: WoundDescription, model: CoilModel): string {
  const length = mm(model.windingLength);
  switch (coil.shape) {
    case 'solenoid':
      return touching(coil)
        ? `one layer, each turn touching the last: ${length} long in all`
        : `one layer, ${mm(pitchOf(coil) / 1e3)} from turn to turn, with a gap of ${mm(gapOf(coil) / 1e3)}: ${length} long in all`;
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
      const { layer, turnInLayer } = placeInPile(coil, turn);
      return `layer ${layer}, turn ${formatNumber(turnInLayer, 4)}`;
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

/** A tap as it is made where nothing is wound over it. */
const tapStep = (taps: readonly Tap[]): string[] =>
  taps.length > 0
    ? [
        `At ${taps.map((t) => `turn ${formatNumber(t.turn, 4)} (${t.name})`).join(', ')} make a tap: hold the last turn with a thumb, pull out a loop of about 40 mm, twist it close to the coil six times, and wind on the same way. Scrape and tin the loop when all is wound.`,
      ]
    : [];

function scrapeStep({ wire }: WoundDescription, taps: readonly Tap[]): string[] {
  if (wire.covering === 'bare' && (wire.strands ?? 1) === 1) return [];
  return [
    `Scrape ${wire.covering === 'bare' || wire.covering.includes('enamel') ? 'the enamel' : 'the covering'} off the last 10 mm of each end${taps.length > 0 ? ' and tap' : ''}, all round, until the metal shines; tin them.`,
  ];
}

const TALLY = 'Tick a box of the tally for every turn; where you are called away, tape the wire down first.';
const VARNISH =
  'Brush thin varnish over it, or leave it dry and bare of wax: both are good. Thick wax and damp cost loudness.';
const HOLES = `two small holes ${HOLES_APART} mm apart, ${HOLES_FROM_END} mm from`;
const tails = `${Math.round(TAIL * 1e3)} mm`;

/** What is wound along with the wire to keep turns apart. */
const threadWords = (coil: WoundDescription): string =>
  `Wind a thread or fishing line of ${mm(gapOf(coil) / 1e3)} along with the wire, each touching the last: it keeps the turns apart`;

function stepsFor(coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): string[] {
  const last = formatNumber(model.turns, 4);
  switch (coil.shape) {
    case 'solenoid':
    case 'bank-wound':
      return [
        `Cut the tube ${mm(tubeLength(model))} long. Make ${HOLES} one end, at the side and not where it is screwed down. Thread the wire in at one and out at the other, twice, leaving ${tails} inside: that is the start, and it goes to the earthed side. Mark it “start”. The winding begins ${SPARE} mm from the tube’s end.`,
        ...(coil.shape === 'solenoid'
          ? [
              `Fix the far end of the wire to a door handle, keep it taut, and walk towards it while you turn the tube. ${touching(coil) ? 'Push each turn against the last with a thumbnail' : threadWords(coil)}; turns must not cross.`,
            ]
          : [
              `Wind the first ${coil.layers} turns side by side; then, for each new turn of the bottom layer, lay one on top of it in every bank, so that the pile moves along the tube as you go.`,
            ]),
        TALLY,
        ...tapStep(taps),
        `At turn ${last} make two more holes, ${HOLES_FROM_END} mm from the tube’s other end, and fix the end as you did the start; mark it “end”. The winding should be ${mm(model.windingLength)} long: if it is more than a tenth out, the wire or the spacing is not the one reckoned with.`,
        ...scrapeStep(coil, taps),
        VARNISH,
      ];
    case 'multilayer':
      return pileSteps(coil, model, taps);
    case 'spiral':
      return [
        'Stick double-sided tape on the card, draw the first turn’s circle, and lay the wire on it, start leading to the back through a hole: the template has its place.',
        `Lay turn ${touching(coil) ? 'against turn ' : `by turn, ${mm(pitchOf(coil) / 1e3)} from one to the next, `}outward. ${TALLY}`,
        ...tapStep(taps),
        `After turn ${last} lead the end to the back through its hole, and varnish.`,
        ...scrapeStep(coil, taps),
      ];
    case 'spider':
      return [
        'Glue the template to the disc. Cut each slot down to the hub circle; take off burrs that would cut the covering. Make the two holes marked on it.',
        `Lead the start through the hole by the hub, leaving ${tails}. Wind in at one slot and out at the next${coil.over === 2 ? ' but one' : ''}: the wire is before one vane and behind the other. With ${coil.slots} slots each turn lies on the other side of the vanes from the one before.`,
        TALLY,
        ...tapStep(taps),
        `After turn ${last} fix the end through the hole in the rim.`,
        ...scrapeStep(coil, taps),
      ];
    case 'basket':
      return [
        `Drill ${coil.pegs} holes in a board by the template and stand the pegs in them, a little loose.`,
        `Fix the start to the board. Wind inside ${count(coil.over, 'peg')}, outside the next ${coil.over}, and so on; press the turns down as they rise.`,
        TALLY,
        ...tapStep(taps),
        `After turn ${last} tie the coil with waxed thread at every crossing, then draw the pegs and lift it off.`,
        ...scrapeStep(coil, taps),
      ];
    case 'core':
      return [
        'Tape sharp edges of the core. Pass half of the wire through and wind from the middle outward, first one way and then the other: each pass through the hole is one turn.',
        TALLY,
        ...tapStep(taps),
        ...scrapeStep(coil, taps),
      ];
  }
}

/** Layers between cheeks, with taps that later layers cover. */
function pileSteps(coil: CoilOf<'multilayer'>, model: CoilModel, taps: readonly Tap[]): string[] {
  const length = mm(model.windingLength);
  const back = endsWhereItStarts(coil);
  const paper = (coil.layerSpacing !== undefined ? coil.layerSpacing * 1e3 : close(coil)) - overall(coil);
  const between =
    coil.layers === 1
      ? ''
      : paper > 0.05
        ? ` Wrap paper round it, ${mm(paper / 1e3)} thick in all and as wide as the winding. Wind the next layer back over it, and so on for ${coil.layers} layers.`
        : ` Wind the next layer back straight over it, and so on for ${coil.layers} layers; a strip of the thinnest paper goes only where a layer does not lie even.`;
  const stands = (cheekDiameter(coil) - coil.formerDiameter * 1e3) / 2;
  return [
    `Cut the tube ${mm(tubeLength(model))} long and two cheeks by the templates below. Glue the cheeks on the tube, square to it, ${SPARE - CHEEK_THICKNESS} mm from either end, so that ${length} is left between them; let the glue dry.`,
    `Make ${HOLES} the tube’s end by the cheek marked “start”. Thread the wire in at one and out at the other, twice, leaving ${tails} inside: that is the start, and it goes to the earthed side. Mark it “start”, and lead the wire through that cheek’s hole close to the tube.`,
    `Wind ${coil.turnsPerLayer} turns from that cheek to the other${touching(coil) ? ', each touching the last' : ''}.${touching(coil) ? '' : ` ${threadWords(coil)}.`}${between}`,
    TALLY,
    ...taps.map((t) => {
      const { layer, toCheek, nearer, buried } = placeInPile(coil, t.turn);
      return `At turn ${formatNumber(t.turn, 4)} (${t.name}), in layer ${layer}, make a tap: pull out a loop of ${Math.ceil(40 + toCheek)} mm and twist it. Draw a thin insulating sleeve over it, or fold a strip of paper round it, lay it flat across the turns to ${nearer === 'start' ? 'the cheek at the start' : 'the other cheek'}, ${Math.max(1, Math.round(toCheek))} mm away, and lead it out by the notch marked with its number. Wind on the same way${buried ? ': the next layer goes over it' : ''}.`;
    }),
    `At turn ${formatNumber(model.turns, 4)} the wire is ${back ? 'back at the cheek it began by' : 'at the other cheek'}. Lead it through the hole near that cheek’s rim, and fix it in two more holes ${HOLES_FROM_END} mm from the tube’s end${back ? ', on the side of the tube away from the start’s' : ''}; mark it “end”.${back ? ' Start and end leave side by side: the start is the one close to the tube, the end the one by the rim.' : ''} The pile should be ${mm(model.outerDiameter)} across: if its depth is more than a tenth out, the wire is not the one reckoned with.`,
    ...scrapeStep(coil, taps),
    VARNISH,
    `The cheeks stand out ${formatNumber(stands, 2)} mm beyond the tube: screw it down on two blocks at least so thick.`,
  ];
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
      `about ${formatNumber(figures.q, 2)} (how little is lost: the higher, the sharper and louder); anything from ${formatNumber(q[0], 2)} to ${formatNumber(q[1], 2)} is in order`,
    ]);
  if (Number.isFinite(model.selfCapacitance))
    rows.push([
      'Its own capacitance',
      `${formatQuantity(model.selfCapacitance, 'capacitance', 2)}, from turn to turn; it adds to the tuning capacitor’s`,
    ]);
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
      `In the set, ${printable(best.name)} (${kHz(best.frequency)} kHz) should come in near ${dialText(set, best)} on the dial. ${set.arrangement.kind === 'slider' ? 'If it comes far from there, count the turns' : `If it comes at a lower reading (${openSide(set)}) the coil is too large: take off a turn; at a higher reading, too small`}. One turn moves a station by about ${formatNumber((0.85 * best.frequency) / model.turns / 1e3, 2)} kHz.`,
    );
  else list.push(comparison(model));
  flow.list(list, 'box');
}

/** In figures, how a coil is compared with a known one by what the two tune to. */
function comparison(model: CoilModel): string {
  const across = 200e-12;
  const tunesTo = (inductance: number): string => {
    const own = Number.isFinite(model.selfCapacitance) ? model.selfCapacitance : 0;
    return formatQuantity(1 / (2 * Math.PI * Math.sqrt(inductance * (across + own))), 'frequency');
  };
  return `Compare it with a coil of known inductance, with the same capacitor across each in turn: the one with more inductance tunes lower, and four times the inductance tunes to half the frequency. With ${formatQuantity(across, 'capacitance')} across it this coil should tune to ${tunesTo(model.inductance)}; at ${tunesTo(model.inductance * 1.1)} it has a tenth too much inductance, at ${tunesTo(model.inductance * 0.9)} a tenth too little.`;
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
  const put = (made: CoilTemplate, alt: string): void => {
    flow.heading('Template, full size', keptWith(flow, made.h));
    flow.template(made.items, made, alt);
  };
  switch (coil.shape) {
    case 'core':
      return;
    case 'spider': {
      const made = spiderTemplate(coil, taps);
      put(made, `Spider former with ${coil.slots} slots, ${Math.round(made.h)} mm across.`);
      return;
    }
    case 'basket':
      put(basketTemplate(coil), `Circle of ${coil.pegs} pegs, ${mm(coil.pegCircle)} across.`);
      return;
    case 'spiral':
      put(spiralTemplate(coil, model, taps), 'First and last turn of the spiral.');
      return;
    default:
      tubeTemplates(flow, coil, model, taps);
  }
}

/** Height that a heading keeps below it on its page, so that it does not part from its template where both fit a page. */
const keptWith = (flow: Flow, height: number): number => (height < flow.bottom - TOP - 16 ? height + 4 : 40);

function tubeTemplates(
  flow: Flow,
  coil: CoilOf<'solenoid' | 'multilayer' | 'bank-wound'>,
  model: CoilModel,
  taps: readonly Tap[],
): void {
  const strip = stripTemplate(coil, model, taps);
  const pile = coil.shape === 'multilayer';
  flow.heading(pile ? 'Templates, full size' : 'Template, full size', keptWith(flow, strip.h + 10));
  flow.para(stripWords(coil, taps), { small: true });
  flow.template(
    strip.items,
    strip,
    `Strip as long as the tube with the places of the winding’s ends${taps.length > 0 ? ' and taps' : ''}, ${mm(model.windingLength)} from start to end.`,
  );
  if (!pile) return;
  const across = mm(cheekDiameter(coil) / 1e3);
  for (const made of cheekTemplates(coil, taps)) {
    flow.need(keptWith(flow, made.h + 4));
    flow.para(`${made.words}: ${across} across, hole ${mm(coil.formerDiameter)}, ${CHEEK_THICKNESS} mm thick.`, {
      small: true,
      bold: true,
    });
    flow.template(made.items, made, `${made.words}, ${across} across.`);
  }
}

function stripWords(coil: CoilOf<'solenoid' | 'multilayer' | 'bank-wound'>, taps: readonly Tap[]): string {
  const lay =
    'Lay this strip along the tube, end to end with it, and prick through the small circles: they are the holes that hold the wire.';
  if (coil.shape === 'multilayer')
    return `${lay} The lines are where the inner faces of the cheeks stand.${endsWhereItStarts(coil) ? ' The two holes for the end are made at the same end of the tube, on its other side.' : ''}`;
  return `${lay} The lines only show where the winding begins${taps.length > 0 ? ', is tapped' : ''} and ends; ${taps.length > 0 ? 'taps are loops of the wire and need no holes' : 'there are no holes there'}.`;
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
      ['Q (how little is lost)', `${formatNumber(coil.q, 3)} at ${formatNumber(coil.at / 1e3, 4)} kHz`],
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

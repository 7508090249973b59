import { setCircuit } from '../../../engine/built/set-circuit.ts';
import type { LoopDescription } from '../../../engine/kinds/loops.ts';
import { overallDiameter } from '../../../engine/parts/wire/wire.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { drawAerial } from '../../drawings/aerial/aerial.ts';
import { frameParts } from '../../drawings/aerial/frame-parts.ts';
import { coilFromEnd } from '../../drawings/aerial/loop.ts';
import type { Tap } from '../../drawings/coil/drawn.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { dialText } from './dial-text.ts';
import { gaugeWords, TAIL, TAP_LOOP, tally, wireToCut, wireWords } from './winding.ts';
import { count, cutLength, kHz, mm, ohms, printable } from './words.ts';

/** A frame or rod, which is aerial and coil at once: how it is built, and what it should be. */
export function loopSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const { aerial } = set;
  const loop = setCircuit(set).loop!;
  const rod = aerial.kind === 'ferrite rod';
  const title = rod ? 'Ferrite rod' : 'Frame aerial';
  const flow = new Flow({ id: 'coil', title, file: rod ? 'coil-rod' : 'coil-frame', set: set.name, paper });
  const taps = loopTaps(set, loop.turns);
  const rows: string[][] =
    aerial.kind === 'frame' ? frameRows(aerial, taps) : aerial.kind === 'ferrite rod' ? rodRows(aerial) : [];
  rows.push([
    'Wire to cut',
    `${cutLength(loopWire(set))}: ${formatQuantity(loop.wireLength, 'length', 3)} wound, ${Math.round(TAIL * 1e3)} mm left free at each end${taps.length > 0 ? `, ${Math.round(TAP_LOOP * 1e3)} mm for each tap` : ''}, and a little over`,
  ]);
  flow.table(
    [
      { title: 'What', share: 1.2 },
      { title: 'This one', share: 5 },
    ],
    rows,
  );
  flow.figure(drawAerial(aerial, set.earth, { width: Math.min(flow.width, 150), height: 86 }), { height: 88 });
  flow.heading('How to wind it');
  flow.list(
    aerial.kind === 'frame' ? frameSteps(aerial, taps) : aerial.kind === 'ferrite rod' ? rodSteps(aerial, taps) : [],
    'number',
  );
  tally(flow, loop.turns, taps);
  flow.heading('What it should be, and how to check it');
  const best = reception.best.map((i) => reception.stations[i]).find((s) => s?.dial);
  flow.table(
    [
      { title: 'Figure', share: 2 },
      { title: 'Expected', share: 6 },
    ],
    [
      [
        'Inductance',
        `${formatQuantity(loop.inductance, 'inductance')} (${formatQuantity(loop.inductance * 0.95, 'inductance')} to ${formatQuantity(loop.inductance * 1.05, 'inductance')} as built by hand)`,
      ],
      [
        'Direct resistance, start to end',
        `${ohms(loop.dcResistance)} by an ordinary meter; much more: a bad joint or wire; much less: turns short-circuited or too few`,
      ],
      [
        'Range in this set',
        `${formatNumber(Math.round(reception.dial.lowest / 1e3), 5)} to ${formatNumber(Math.round(reception.dial.highest / 1e3), 5)} kHz`,
      ],
    ],
  );
  flow.list(
    [
      'Count the turns once more, and look that none crosses another.',
      `With a meter on ohms: start to end conducts${taps.length > 0 ? ', and so does the tap to either end' : ''}.`,
      ...(best
        ? [
            `In the set, ${printable(best.name)} (${kHz(best.frequency)} kHz) should come in near ${dialText(set, best)} on the dial. ${rod ? 'At a lower reading the coil is too large: slide it towards the end of the rod; at a higher one, towards the middle.' : 'At a lower reading the frame is too large: take off a turn or space the turns wider; at a higher one, wind them closer.'}`,
          ]
        : []),
    ],
    'box',
  );
  return flow.finish();
}

type Frame = Extract<LoopDescription, { kind: 'frame' }>;
type Rod = Extract<LoopDescription, { kind: 'ferrite rod' }>;

/** Of a comb or hoop: beyond its last turn at either end, and where it is screwed to a lath, mm. Common practice, no source. */
const SHOULDER = 8;
const SCREWED = 20;
/** Sections of laths, for frames that a table bears and for larger ones. Common practice, no source. */
const LATH = '20 × 10 mm';
const STOUT_LATH = '40 × 20 mm';
const section = ({ side }: Frame): string => (side > 1.2 ? STOUT_LATH : LATH);
const notchDepth = (frame: Frame): string => formatQuantity(Math.max(0.003, 1.5 * overall(frame.wire)), 'length', 2);
const overall = (wire: Frame['wire']): number =>
  overallDiameter({ diameter: wire.size, covering: wire.covering, metal: wire.metal, strands: wire.strands });

function frameRows(frame: Frame, taps: readonly Tap[]): string[][] {
  const { wires, depth, lath, reach, notch, crosses, mast, foot } = frameParts(frame);
  const square = frame.outline === 'square';
  const flat = frame.winding === 'spiral';
  const hoop = !square && !flat;
  const laths = 2 * crosses * (!square && flat ? 2 : 1);
  const across = square
    ? `square, ${mm(frame.side)} a side where the ${flat ? 'outermost ' : ''}wire lies, of dry wood; its laths lie along the diagonals`
    : `round, ${mm(frame.side)} across where the ${flat ? 'outermost ' : ''}wire lies, of dry wood`;
  const notches = `${count(wires, 'notch', 'notches')}${wires > 1 ? `, ${mm(notch)} from one to the next, ${mm(notch * (wires - 1))} from the first to the last` : ''}, ${notchDepth(frame)} deep`;
  const wood: string[][] = hoop
    ? [
        [
          'Hoop',
          `thin plywood or springy card bent to a ring ${mm(frame.side)} across outside, ${mm(depth + (2 * SHOULDER) / 1e3)} wide`,
        ],
        ['Laths', `${laths}, long enough to fit across inside the hoop, ${section(frame)}; they cross in the middle`],
      ]
    : [
        [
          'Laths',
          `${laths}, ${mm(lath)} long, ${section(frame)}${flat ? `; in each half of a lath ${notches}, the outermost ${mm(reach)} from the crossing` : ''}`,
        ],
        ...(flat
          ? []
          : [
              [
                'Combs',
                `4 strips of wood, ${section(frame)}, ${mm(depth + (2 * SHOULDER + SCREWED) / 1e3)} long; in one edge ${notches}`,
              ],
            ]),
      ];
  return [
    ['Frame', across],
    ...wood,
    [
      'Stand',
      `${crosses > 1 ? 'two masts' : 'a mast'} of wood, ${STOUT_LATH}, ${mm(mast)} from the foot to the crossing; a foot of board, ${mm(foot)} across`,
    ],
    [
      'Leads',
      `${count(2 + taps.length, 'flexible insulated wire')}, 0.5 to 1 m, ${taps.length > 0 ? 'for the start, the end and the tap' : 'for the start and the end'}, from the frame to the board; as many screws with two washers each`,
    ],
    [
      'Wire',
      `${wireWords(frame.wire)}${gaugeWords(frame.wire)}. Another covering does as well: the ${hoop ? 'marks' : 'notches'} set the spacing`,
    ],
    [
      'Turns',
      `${formatNumber(frame.turns, 4)}, ${mm(frame.pitch)} from turn to turn${wires > 1 ? `: ${mm(depth)} from the first to the last${flat ? ', inward along the middle of a side' : ''}` : ''}`,
    ],
  ];
}

function frameSteps(frame: Frame, taps: readonly Tap[]): string[] {
  const { wires, reach, crosses, depth } = frameParts(frame);
  const square = frame.outline === 'square';
  const flat = frame.winding === 'spiral';
  const cross = square
    ? 'Halve two laths into each other in the middle, at right angles, glue and screw them: they are the diagonals of the square, so that its sides stand level and upright.'
    : flat
      ? 'Screw four laths over one another in the middle, like the spokes of a wheel, evenly spread.'
      : 'Halve two laths into each other in the middle, at right angles; glue and screw their ends inside the hoop.';
  const combs =
    flat || !square
      ? flat
        ? 'Saw the notches into the edges that face you, and smooth them: a sharp edge cuts the covering.'
        : `Mark ${count(wires, 'line')} round the hoop for the turns, ${wires > 1 ? `${mm(frame.pitch)} apart` : 'in its middle'}; a drop of glue every hand’s breadth keeps the wire there.`
      : `Screw a comb across the end of each lath${crosses > 1 ? ' of one cross, and its other end to the other cross' : ', by one end, so that all four stand out to the front'}; the bottoms of the notches look outward, ${mm(reach)} from the crossing.`;
  const again = crosses > 1 ? ' Make a second cross like it.' : '';
  return [
    cross + again,
    combs,
    `Screw the mast${crosses > 1 ? 's to the outsides of the crossings' : ' to the back of the crossing'}, clear of the wire, and to the foot. Fix a strip of dry wood to ${crosses > 1 ? 'them' : 'it'} by the middle of the lowest side${flat ? '' : `, reaching under all turns${depth > 0 ? ` (${mm(depth)})` : ''}`}: it bears the screws for the leads.`,
    `Begin at that strip: clamp the start under a screw, leaving ${Math.round(TAIL * 1e3)} mm; it goes to the earth line. Wind all turns one way${flat ? ', from the outermost notch inward' : ''}, tight, a ${flat || square ? 'notch' : 'mark'} for each, and tick the tally.`,
    ...taps.map(
      (t) =>
        `After turn ${formatNumber(t.turn, 4)} bring out a twisted loop of 40 mm: the ${t.name} tap. Bare it and clamp it under a screw of the strip.`,
    ),
    `Clamp the end under a screw likewise. Scrape all that is clamped until the metal shines; mark the screws “start”${taps.length > 0 ? ', “tap”' : ''} and “end”.`,
    'From the screws lead the flexible wires to the board, hanging free, so that the frame can turn on its foot. Keep them apart; do not twist them together.',
    'Stand it upright and free to turn: it hears best in the line of its own plane, and nothing from the side.',
  ];
}

/** What the coil of a rod is wound on: the rod itself and paper, so thick that the wire lies where it was reckoned, mm. */
function sleeve(rod: Rod): { outside: number; wall: number } {
  const wire = overall(rod.wire) * 1e3;
  const outside = (rod.coilDiameter ?? rod.diameter + 0.001) * 1e3 - wire;
  return { outside, wall: (outside - rod.diameter * 1e3) / 2 };
}

/** Of a sleeve beyond its winding at either end, where room is, mm. */
const sleeveSpare = (rod: Rod): number => Math.min(10, (coilFromEnd(rod) - rod.winding / 2) * 1e3);

function rodRows(rod: Rod): string[][] {
  const { outside, wall } = sleeve(rod);
  const spacing = rod.winding / rod.turns;
  const gap = (spacing - overall(rod.wire)) * 1e3;
  const wide = rod.winding * 1e3 + 2 * sleeveSpare(rod);
  return [
    ['Rod', `ferrite, ${mm(rod.length)} long, ${mm(rod.diameter)} thick`],
    [
      'Sleeve',
      wall >= 0.05
        ? `paper, ${mm(wide / 1e3)} wide, rolled round the rod and glued until it is ${mm(outside / 1e3)} outside (${formatNumber(wall, 2)} mm of paper all round); it must slide`
        : `one turn of thin paper, ${mm(wide / 1e3)} wide; it must slide`,
    ],
    ['Wire', `${wireWords(rod.wire)}${gaugeWords(rod.wire)}`],
    [
      'Turns',
      `${formatNumber(rod.turns, 4)} over ${mm(rod.winding)}: ${mm(spacing)} from turn to turn, ${
        gap > 0.03
          ? `with a gap of ${formatNumber(gap, 2)} mm`
          : gap > -0.05
            ? 'each turn touching the last'
            : 'more than lie side by side: pile them evenly'
      }`,
    ],
    [
      'Place',
      `middle of the coil ${mm(coilFromEnd(rod))} from the ${rod.position === 0 ? 'ends of the rod, in its middle' : `nearer end of the rod, ${mm(Math.abs(rod.length / 2 - coilFromEnd(rod)))} from its middle`}`,
    ],
  ];
}

function rodSteps(rod: Rod, taps: readonly Tap[]): string[] {
  const gap = rod.winding / rod.turns - overall(rod.wire);
  const tails = Math.round(TAIL * 1e3);
  return [
    'Roll the sleeve round the rod over one loose turn of thin paper, glue its edge, and draw the loose paper out when it is dry: the sleeve slides then.',
    `Mark ${mm(rod.winding)} on it for the winding. Fix the start at one mark with a thin strip of tape or a drop of wax, leaving ${tails} mm; it goes to the earth line.`,
    `Wind all turns one way${gap > 3e-5 ? `, evenly spaced over the marked length${gap > 1e-4 ? ': a thread wound along with the wire and drawn off again helps' : ''}` : ''}, and tick the tally.`,
    ...taps.map((t) => `After turn ${formatNumber(t.turn, 4)} bring out a twisted loop of 40 mm: the ${t.name} tap.`),
    `Fix the end at the other mark with tape or wax, leaving ${tails} mm; mark it “end”. Scrape and tin both ends${taps.length > 0 ? ' and the tap' : ''}.`,
    'Hold the rod near both its ends in notches of two wooden blocks, with a rubber band or thread over each, or in plastic clips. No metal may close round it, neither clip, strap nor ring of wire: that is a shorted turn, which takes the signal.',
    `Slide the sleeve so that the middle of the coil is ${mm(coilFromEnd(rod))} from ${rod.position === 0 ? 'either end' : 'the nearer end'} of the rod. Then move it until the lowest station comes where the dial has it, and fix it with a drop of wax.`,
  ];
}

/** Wire to cut for a frame or rod, m: its turns, ends and tap, and three in a hundred for the hand; 0 where there is none. */
export function loopWire(set: SetDescription): number {
  const { loop } = setCircuit(set);
  return loop ? wireToCut(loop, loopTaps(set, loop.turns).length) : 0;
}

function loopTaps(set: SetDescription, turns: number): Tap[] {
  const tap = (set.arrangement as { detectorTap?: number }).detectorTap;
  return tap !== undefined && tap < turns ? [{ name: 'detector', turn: tap }] : [];
}

import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { bandSpan, kHz, mm } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { spanBeside } from '../../ranges.ts';
import { counted } from '../grammar.ts';
import { type TapName, tapNames, turnsText } from './coil.ts';

interface InSet {
  readonly station: string;
  readonly frequency: number;
  /** As the dial sheet prints it. */
  readonly reading: string;
}
interface Tapped {
  readonly name: TapName;
  readonly turn: number;
}

/** A frame or rod, which is aerial and coil at once. */
export const loopSheetWords = {
  titles: { frame: 'Frame aerial', 'ferrite rod': 'Ferrite rod' },
  columns: { what: 'What', aerial: 'This one', figure: 'Figure', expected: 'Expected' },
  rows: {
    frame: 'Frame',
    hoop: 'Hoop',
    laths: 'Laths',
    combs: 'Combs',
    stand: 'Stand',
    leads: 'Leads',
    rod: 'Rod',
    sleeve: 'Sleeve',
    place: 'Place',
    wire: 'Wire',
    turns: 'Turns',
    wireToCut: 'Wire to cut',
    inductance: 'Inductance',
    resistance: 'Direct-current resistance, start to end',
    range: 'Range in this set',
  },
  headings: { winding: 'How to wind it', checks: 'What to expect, and how to check it' },
  inductance: ({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }) =>
    `${formatQuantity(value, 'inductance')} ${spanBeside(value, [low, high], 'inductance')}, as built by hand`,
  range: bandSpan,
  count: 'Count the turns again, and check that none crosses another.',
  ohms: 'With a meter on ohms: start to end conducts.',
  ohmsTapped: 'With a meter on ohms: start to end conducts, and so does the tap to either end.',
  inSet: {
    frame: ({ station, frequency, reading }: InSet): string =>
      `In the set, ${printable(station)} (${kHz(frequency)} kHz) should come in near ${reading} on the dial. At a lower reading the frame is too large: take off a turn or space the turns wider. At a higher reading, wind them closer.`,
    'ferrite rod': ({ station, frequency, reading }: InSet): string =>
      `In the set, ${printable(station)} (${kHz(frequency)} kHz) should come in near ${reading} on the dial. At a lower reading the inductance is too large: slide the coil towards the end of the rod. At a higher reading, slide it towards the middle.`,
  },
};

interface Notches {
  readonly wires: number;
  /** From one to the next, and deep, m. */
  readonly notch: number;
  readonly depth: number;
}
const notches = ({ wires, notch, depth }: Notches): string =>
  wires > 1
    ? `${wires} notches, ${mm(notch)} from one to the next, ${mm(notch * (wires - 1))} from the first to the last, ${formatQuantity(depth, 'length', 2)} deep`
    : `1 notch, ${formatQuantity(depth, 'length', 2)} deep`;

/** Sections of laths. */
export type Lath = 'light' | 'stout';
const LATHS: Record<Lath, string> = { light: '20 × 10 mm', stout: '40 × 20 mm' };

interface Turns {
  readonly turns: number;
  readonly pitch: number;
  /** From the first to the last, m. */
  readonly depth: number;
}
interface Laths {
  readonly count: number;
  readonly length: number;
  readonly section: Lath;
}

/** What a frame is made of. */
export const frameText = {
  squareBox: (side: number): string =>
    `Square, ${mm(side)} a side where the wire lies, of dry wood; its laths lie along the diagonals.`,
  squareSpiral: (side: number): string =>
    `Square, ${mm(side)} a side where the outermost wire lies, of dry wood; its laths lie along the diagonals.`,
  roundBox: (side: number): string => `Round, ${mm(side)} across where the wire lies, of dry wood.`,
  roundSpiral: (side: number): string => `Round, ${mm(side)} across where the outermost wire lies, of dry wood.`,
  hoop: ({ side, width }: { readonly side: number; readonly width: number }): string =>
    `Thin plywood or springy card bent to a ring ${mm(side)} across outside, ${mm(width)} wide.`,
  hoopLaths: ({ count, section }: Pick<Laths, 'count' | 'section'>): string =>
    `${count}, long enough to fit across inside the hoop, ${LATHS[section]}; they cross in the middle.`,
  laths: ({ count, length, section }: Laths): string => `${count}, ${mm(length)} long, ${LATHS[section]}.`,
  notchedLaths: ({ count, length, section, reach, ...rest }: Laths & Notches & { readonly reach: number }): string =>
    `${count}, ${mm(length)} long, ${LATHS[section]}; in each half of a lath ${notches(rest)}, the outermost ${mm(reach)} from the crossing.`,
  combs: ({ length, section, ...rest }: Omit<Laths, 'count'> & Notches): string =>
    `4 strips of wood, ${LATHS[section]}, ${mm(length)} long; in one edge ${notches(rest)}.`,
  stand: ({ mast, foot }: { readonly mast: number; readonly foot: number }): string =>
    `A mast of wood, ${LATHS.stout}, ${mm(mast)} from the foot to the crossing; a foot of board, ${mm(foot)} across.`,
  standOfTwo: ({ mast, foot }: { readonly mast: number; readonly foot: number }): string =>
    `Two masts of wood, ${LATHS.stout}, ${mm(mast)} from the foot to the crossings; a foot of board, ${mm(foot)} across.`,
  leads:
    '2 flexible insulated wires, 0.5 to 1 m, for the start and the end, from the frame to the board; as many screws with two washers each.',
  leadsWithTap:
    '3 flexible insulated wires, 0.5 to 1 m, for the start, the end and the tap, from the frame to the board; as many screws with two washers each.',
  oneTurn: ({ turns, pitch }: Turns): string => `${turnsText(turns)}, ${mm(pitch)} from turn to turn.`,
  boxTurns: ({ turns, pitch, depth }: Turns): string =>
    `${turnsText(turns)}, ${mm(pitch)} from turn to turn: ${mm(depth)} from the first to the last.`,
  spiralTurns: ({ turns, pitch, depth }: Turns): string =>
    `${turnsText(turns)}, ${mm(pitch)} from turn to turn: ${mm(depth)} from the first to the last, inward along the middle of a side.`,
};

const HALVED =
  'Halve two laths into each other in the middle, at right angles, glue and screw them: they are the diagonals of the square, so its sides are level and upright.';
const HOOPED =
  'Halve two laths into each other in the middle, at right angles; glue and screw their ends inside the hoop.';

/** Short lines, one thing to do in each. */
type Lines = readonly string[];
const SECOND = 'Make a second cross like it.';
const GLUE = 'A drop of glue every 10 cm keeps the wire there.';
const NOTCHES = (reach: number): string => `The bottoms of the notches face outward, ${mm(reach)} from the crossing.`;
const MAST = 'Screw the mast to the back of the crossing, clear of the wire, and to the foot.';
const BEGIN = (tail: number): string =>
  `Begin at that strip: clamp the start under a screw, leaving ${mm(tail)}; it goes to the earth line.`;
const CLAMP = 'Clamp the end under a screw in the same way.';
const SCRAPE = 'Scrape all that is clamped until the metal shines.';

export const frameStepWords = {
  cross: {
    square: [HALVED],
    hoop: [HOOPED],
    spokes: ['Screw four laths over one another in the middle, like the spokes of a wheel, evenly spread.'],
  },
  twoCrosses: {
    square: [HALVED, SECOND],
    hoop: [HOOPED, SECOND],
  },
  sawNotches: [
    'Saw the notches into the edges that face you, and smooth them: a sharp edge cuts the covering of the wire.',
  ],
  markOne: ['Mark a line around the middle of the hoop for the turn.', GLUE],
  markHoop: ({ wires, pitch }: { readonly wires: number; readonly pitch: number }): Lines => [
    `Mark ${counted(wires, 'line', 'lines')} around the hoop for the turns, ${mm(pitch)} apart.`,
    GLUE,
  ],
  combs: (reach: number): Lines => [
    'Screw a comb across the end of each lath, by one end, so that all four stand out to the front.',
    NOTCHES(reach),
  ],
  combsOfTwo: (reach: number): Lines => [
    'Screw a comb across the end of each lath of one cross, and its other end to the other cross.',
    NOTCHES(reach),
  ],
  mast: {
    spiral: [
      MAST,
      'Fix a strip of dry wood to it by the middle of the lowest side: it carries the screws for the leads.',
    ],
    oneTurn: [
      MAST,
      'Fix a strip of dry wood to it by the middle of the lowest side, reaching under the turn: it carries the screws for the leads.',
    ],
    box: (depth: number): Lines => [
      MAST,
      `Fix a strip of dry wood to it by the middle of the lowest side, reaching under all turns (${mm(depth)}): it carries the screws for the leads.`,
    ],
    deepBox: (depth: number): Lines => [
      'Screw the masts to the outsides of the crossings, clear of the wire, and to the foot.',
      `Fix a strip of dry wood to them by the middle of the lowest side, reaching under all turns (${mm(depth)}): it carries the screws for the leads.`,
    ],
  },
  wind: {
    notches: (tail: number): Lines => [
      BEGIN(tail),
      'Wind all turns in one direction, tight, a notch for each, and tick the tally.',
    ],
    spiral: (tail: number): Lines => [
      BEGIN(tail),
      'Wind all turns in one direction, from the outermost notch inward, tight, a notch for each, and tick the tally.',
    ],
    once: (tail: number): Lines => [
      BEGIN(tail),
      'Lead the wire once around, tight and in one plane, back to the strip, and tick the tally.',
      'Keep its two ends 10 mm apart at the strip: where they touch, the aerial is short-circuited.',
    ],
    marks: (tail: number): Lines => [
      BEGIN(tail),
      'Wind all turns in one direction, tight, a mark for each, and tick the tally.',
    ],
  },
  tap: ({ turn, name }: Tapped): Lines => [
    `After turn ${turnsText(turn)} bring out a twisted loop of 40 mm: the ${tapNames[name].name} tap.`,
    'Bare it and clamp it under a screw of the strip.',
  ],
  end: [CLAMP, SCRAPE, 'Mark the screws “start” and “end”.'],
  endTapped: [CLAMP, SCRAPE, 'Mark the screws “start”, “tap” and “end”.'],
  leads: [
    'From the screws lead the flexible wires to the board, hanging free, so that the frame can turn on its foot.',
    'Keep them apart; do not twist them together.',
  ],
  stand: [
    'Stand it upright and free to turn: it receives best from the directions in its own plane, and not at all from the sides.',
  ],
};

interface Sleeve {
  readonly width: number;
  readonly outside: number;
  readonly wall: number;
}
interface RodTurns {
  readonly turns: number;
  readonly winding: number;
  readonly spacing: number;
}
interface RodPlace {
  /** Middle of the coil from the nearer end, and from the middle of the rod, m. */
  readonly fromEnd: number;
  readonly fromMiddle: number;
}

/** What the coil of a rod is made of. */
export const rodText = {
  rod: ({ length, diameter }: { readonly length: number; readonly diameter: number }): string =>
    `Ferrite, ${mm(length)} long, ${mm(diameter)} thick.`,
  sleeve: ({ width, outside, wall }: Sleeve): string =>
    `Paper, ${mm(width)} wide, rolled around the rod and glued until it is ${mm(outside)} outside (${formatNumber(wall * 1e3, 2)} mm of paper all round); it must slide.`,
  thinSleeve: ({ width }: Pick<Sleeve, 'width'>): string => `One turn of thin paper, ${mm(width)} wide; it must slide.`,
  spacedTurns: ({ turns, winding, spacing, gap }: RodTurns & { readonly gap: number }): string =>
    `${turnsText(turns)} over ${mm(winding)}: ${mm(spacing)} from turn to turn, with a gap of ${formatNumber(gap * 1e3, 2)} mm.`,
  closeTurns: ({ turns, winding, spacing }: RodTurns): string =>
    `${turnsText(turns)} over ${mm(winding)}: ${mm(spacing)} from turn to turn, each touching the last.`,
  piledTurns: ({ turns, winding, spacing }: RodTurns): string =>
    `${turnsText(turns)} over ${mm(winding)}: ${mm(spacing)} from turn to turn, which is more than lie side by side: pile them evenly.`,
  inMiddle: ({ fromEnd }: Pick<RodPlace, 'fromEnd'>): string =>
    `Middle of the coil ${mm(fromEnd)} from the ends of the rod, in its middle.`,
  offMiddle: ({ fromEnd, fromMiddle }: RodPlace): string =>
    `Middle of the coil ${mm(fromEnd)} from the nearer end of the rod, ${mm(fromMiddle)} from its middle.`,
};

const THEN = 'Then move it until the lowest station comes in where the dial has it, and fix it with a drop of wax.';

const FIX_END = (tail: number): string =>
  `Fix the end at the other mark with tape or wax, leaving ${mm(tail)}; mark it “end”.`;

/** How the coil of a rod is made. */
export const rodStepWords = {
  sleeve: [
    'Roll the sleeve around the rod over one loose turn of thin paper, and glue its edge.',
    'Draw the loose paper out when the glue is dry: the sleeve then slides.',
  ],
  start: ({ winding, tail }: { readonly winding: number; readonly tail: number }): readonly string[] => [
    `Mark ${mm(winding)} on it for the winding.`,
    `Fix the start at one mark with a thin strip of tape or a drop of wax, leaving ${mm(tail)}; it goes to the earth line.`,
  ],
  windClose: ['Wind all turns in one direction, and tick the tally.'],
  windSpaced: ['Wind all turns in one direction, evenly spaced over the marked length, and tick the tally.'],
  windWithThread: [
    'Wind all turns in one direction, evenly spaced over the marked length, and tick the tally.',
    'A thread wound along with the wire and drawn off again helps.',
  ],
  tap: ({ turn, name }: Tapped): string =>
    `After turn ${turnsText(turn)} bring out a twisted loop of 40 mm: the ${tapNames[name].name} tap.`,
  end: (tail: number): readonly string[] => [FIX_END(tail), 'Scrape both ends until the metal shines, and tin them.'],
  endTapped: (tail: number): readonly string[] => [
    FIX_END(tail),
    'Scrape both ends and the tap until the metal shines, and tin them.',
  ],
  hold: [
    'Hold the rod near both its ends in notches of two wooden blocks, with a rubber band or thread over each, or in plastic clips.',
    'No metal may close around it, neither clip, strap nor ring of wire: that is a shorted turn, which takes the signal.',
  ],
  slideToMiddle: (fromEnd: number): readonly string[] => [
    `Slide the sleeve so that the middle of the coil is ${mm(fromEnd)} from either end of the rod.`,
    THEN,
  ],
  slide: (fromEnd: number): readonly string[] => [
    `Slide the sleeve so that the middle of the coil is ${mm(fromEnd)} from the nearer end of the rod.`,
    THEN,
  ],
};

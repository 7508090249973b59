import { formatNumber } from '../../../../engine/units/format.ts';
import { mm } from '../../figures.ts';
import { counted, listOf } from '../grammar.ts';
import { type TapName, tapNames, turnsText } from './coil.ts';

/** The two small holes that hold an end of the wire. All lengths m. */
interface Holes {
  readonly apart: number;
  readonly fromEnd: number;
}
interface TubeStart extends Holes {
  readonly tube: number;
  /** Of the tube beyond the winding. */
  readonly spare: number;
  readonly tail: number;
}
interface Tapped {
  readonly name: TapName;
  readonly turn: number;
}
/** Scraped before tinning. */
export type Insulation = 'enamel' | 'covering';
const INSULATION: Record<Insulation, string> = { enamel: 'the enamel', covering: 'the covering' };

/** Short lines, one thing to do in each. */
type Lines = readonly string[];

const HANDLE =
  'Fix the far end of the wire to a door handle, keep it taut, and walk towards it while you turn the tube.';
const TALLY = 'Tick a box of the tally for every turn; if you are called away, tape the wire down first.';

/** Steps that several shapes share. */
export const windingSteps = {
  tally: TALLY,
  varnish: [
    'Brush thin varnish over the winding, or leave it dry and without wax: both are good.',
    'Keep thick wax and damp away: they make the set quieter.',
  ],
  scrape: (insulation: Insulation): string =>
    `Scrape ${INSULATION[insulation]} off the last 10 mm of each end, all round, until the metal shines; tin the ends.`,
  scrapeTapped: (insulation: Insulation): string =>
    `Scrape ${INSULATION[insulation]} off the last 10 mm of each end and tap, all round, until the metal shines; tin them.`,
  tap: (taps: readonly Tapped[]): Lines => [
    `At ${listOf(taps.map(({ turn, name }) => `turn ${turnsText(turn)} (${tapNames[name].name})`))} make a tap: hold the last turn with a thumb and pull out a loop of about 40 mm.`,
    'Twist the loop six times close to the coil.',
    'Wind on in the same direction.',
  ],
};

/** One layer, or banks, on a tube. */
export const tubeSteps = {
  start: ({ tube, apart, fromEnd, spare, tail }: TubeStart): Lines => [
    `Cut the tube ${mm(tube)} long.`,
    `Make two small holes ${mm(apart)} apart, ${mm(fromEnd)} from one end, at the side and not where the tube is screwed down.`,
    `Thread the wire in at one and out at the other, twice; leave ${mm(tail)} inside.`,
    'Mark this end “start”: it goes to the earthed side.',
    `Begin the winding ${mm(spare)} from the end of the tube.`,
  ],
  windClose: [HANDLE, 'Push each turn against the last with a thumbnail; turns must not cross.'],
  windSpaced: ({ gap }: { readonly gap: number }): Lines => [
    HANDLE,
    `Wind a thread or fishing line of ${mm(gap)} along with the wire, each touching the last, to keep the turns apart; turns must not cross.`,
  ],
  windBanks: ({ banks }: { readonly banks: number }): Lines => [
    `Wind the first ${banks} turns side by side.`,
    'For each new turn of the bottom layer lay one on top of it in every bank: the pile moves along the tube as you go.',
  ],
  end: ({ turns, fromEnd }: { readonly turns: number; readonly fromEnd: number }): Lines => [
    `At turn ${turnsText(turns)} make two more holes, ${mm(fromEnd)} from the other end of the tube.`,
    'Fix the end as you fixed the start; mark it “end”.',
  ],
};

interface Layer {
  readonly turns: number;
  /** Of thread between turns that do not touch, m. */
  readonly gap: number;
  readonly layers: number;
  /** Between layers, m. */
  readonly paper: number;
}
const WIND = {
  close: ({ turns }: Pick<Layer, 'turns'>): Lines => [
    `Wind ${counted(turns, 'turn', 'turns')} from that cheek to the other, each touching the last.`,
  ],
  spaced: ({ turns, gap }: Pick<Layer, 'turns' | 'gap'>): Lines => [
    `Wind ${counted(turns, 'turn', 'turns')} from that cheek to the other.`,
    `Wind a thread or fishing line of ${mm(gap)} along with the wire, each touching the last, to keep the turns apart.`,
  ],
};
const NEXT = {
  paper: ({ layers, paper }: Pick<Layer, 'layers' | 'paper'>): Lines => [
    `Wrap paper around it, ${mm(paper)} thick in all and as wide as the winding.`,
    `Wind the next layer back over it, and so on for ${layers} layers.`,
  ],
  bare: ({ layers }: Pick<Layer, 'layers'>): Lines => [
    `Wind the next layer back directly over it, and so on for ${layers} layers.`,
    'Use a strip of the thinnest paper only where a layer does not lie even.',
  ],
};

interface PileTap extends Tapped {
  readonly layer: number;
  /** To the nearer cheek, m. */
  readonly toCheek: number;
  readonly loop: number;
}
const SLEEVE = 'Draw a thin insulating sleeve over it, or fold a strip of paper around it.';
const lead = {
  start: (away: number): string =>
    `Lay it flat across the turns to the cheek at the start, ${mm(away)} away, and lead it out by the notch marked with its number.`,
  other: (away: number): string =>
    `Lay it flat across the turns to the other cheek, ${mm(away)} away, and lead it out by the notch marked with its number.`,
};
const pileTap = (t: PileTap & { readonly nearer: 'start' | 'other' }): Lines => [
  `At turn ${turnsText(t.turn)} (${tapNames[t.name].name}), in layer ${t.layer}, make a tap: pull out a loop of ${mm(t.loop)} and twist it.`,
  SLEEVE,
  lead[t.nearer](t.toCheek),
];

interface PileEnd {
  readonly turns: number;
  readonly fromEnd: number;
}
/** Layers between cheeks. */
export const pileSteps = {
  cheeks: ({
    tube,
    fromEnd,
    length,
  }: {
    readonly tube: number;
    readonly fromEnd: number;
    readonly length: number;
  }): Lines => [
    `Cut the tube ${mm(tube)} long and two cheeks by the templates below.`,
    `Glue the cheeks on the tube, square to it, ${mm(fromEnd)} from either end, so that ${mm(length)} is left between them.`,
    'Let the glue dry.',
  ],
  start: ({ apart, fromEnd, tail }: Holes & { readonly tail: number }): Lines => [
    `Make two small holes ${mm(apart)} apart, ${mm(fromEnd)} from the end of the tube by the cheek marked “start”.`,
    `Thread the wire in at one and out at the other, twice; leave ${mm(tail)} inside.`,
    'Mark this end “start”: it goes to the earthed side.',
    'Lead the wire through the hole in that cheek close to the tube.',
  ],
  closeLayer: (layer: Layer): Lines => WIND.close(layer),
  spacedLayer: (layer: Layer): Lines => WIND.spaced(layer),
  closeLayersWithPaper: (layer: Layer): Lines => [...WIND.close(layer), ...NEXT.paper(layer)],
  spacedLayersWithPaper: (layer: Layer): Lines => [...WIND.spaced(layer), ...NEXT.paper(layer)],
  closeLayers: (layer: Layer): Lines => [...WIND.close(layer), ...NEXT.bare(layer)],
  spacedLayers: (layer: Layer): Lines => [...WIND.spaced(layer), ...NEXT.bare(layer)],
  tap: (t: PileTap & { readonly nearer: 'start' | 'other' }): Lines => [
    ...pileTap(t),
    'Wind on in the same direction.',
  ],
  buriedTap: (t: PileTap & { readonly nearer: 'start' | 'other' }): Lines => [
    ...pileTap(t),
    'Wind on in the same direction: the next layer goes over it.',
  ],
  endAtStart: ({ turns, fromEnd }: PileEnd): Lines => [
    `At turn ${turnsText(turns)} the wire is back at the cheek it began by. Lead it through the hole near the rim of that cheek.`,
    `Fix it in two more holes ${mm(fromEnd)} from the end of the tube, on the opposite side of the tube from the start; mark it “end”.`,
    'Start and end leave side by side: the start is the one close to the tube, the end the one by the rim.',
  ],
  endAtOther: ({ turns, fromEnd }: PileEnd): Lines => [
    `At turn ${turnsText(turns)} the wire is at the other cheek. Lead it through the hole near the rim of that cheek.`,
    `Fix it in two more holes ${mm(fromEnd)} from the end of the tube; mark it “end”.`,
  ],
  mount: (stands: number): string =>
    `The cheeks stand out ${formatNumber(stands * 1e3, 2)} mm beyond the tube: screw it down on two blocks at least that thick.`,
};

export const spiralSteps = {
  start: [
    'Stick double-sided tape on the sheet and draw the circle of the first turn.',
    'Lay the wire on the circle, with the start leading to the back through a hole: the template shows where.',
  ],
  windClose: ['Lay each turn against the last, outward.', TALLY],
  windSpaced: (pitch: number): Lines => [`Lay turn by turn outward, ${mm(pitch)} from one to the next.`, TALLY],
  end: (turns: number): Lines => [
    `After turn ${turnsText(turns)} lead the end to the back through its hole.`,
    'Varnish.',
  ],
};

const OTHER_SIDE = (slots: number): string =>
  `With ${slots} slots each turn lies on the other side of the vanes from the one before.`;

export const spiderSteps = {
  cut: [
    'Glue the template to the disc. Cut each slot down to the hub circle.',
    'Remove burrs that would cut the covering.',
    'Make the two holes marked on it.',
  ],
  wind: ({ slots, tail, over }: { readonly slots: number; readonly tail: number; readonly over: number }): Lines => [
    `Lead the start through the hole by the hub, leaving ${mm(tail)}.`,
    over === 2
      ? 'Wind in at one slot and out at the next but one: the wire passes in front of two vanes and behind the next two.'
      : 'Wind in at one slot and out at the next: the wire passes in front of one vane and behind the next.',
    OTHER_SIDE(slots),
  ],
  end: (turns: number): Lines => [`After turn ${turnsText(turns)} fix the end through the hole in the rim.`],
};

export const basketSteps = {
  pegs: (pegs: number): Lines => [
    `Drill ${pegs} holes in a board by the template.`,
    'Stand the pegs in them, a little loose.',
  ],
  wind: (over: number): Lines => [
    'Fix the start to the board.',
    `Wind inside ${counted(over, 'peg', 'pegs')}, outside the next ${over}, and so on.`,
    'Press the turns down as they rise.',
  ],
  end: (turns: number): Lines => [
    `After turn ${turnsText(turns)} tie the coil with waxed thread at every crossing.`,
    'Draw the pegs and lift the coil off.',
  ],
};

export const coreSteps = {
  wind: [
    'Tape the sharp edges of the core.',
    'Pass half of the wire through, and wind from the middle outward, first one way and then the other.',
    'Count each pass through the hole as one turn.',
  ],
};

/** A slider needs a bare track on every turn, and a spring that touches one or two of them at a time. */
export const sliderSteps = [
  'When the varnish is dry, rule two lines 6 mm apart along the winding, opposite the mounting screws.',
  'Rub the covering off between the lines with fine glass-paper under a flat stick, until every turn shines.',
  'Brush out the dust: it must not join turns.',
  'Fix a square brass rod over the track, its ends on the ends of the former.',
  'On the rod slides a block with a springy brass strip, its tip rounded, that presses on the bare track: hard enough to touch, light enough not to shift a turn.',
];

interface Strip {
  readonly length: number;
}
/** What is cut, drilled or pricked at full size. */
export const coilTemplate = {
  cutHere: 'cut here',
  start: 'start',
  end: 'end',
  hubSize: (diameter: number): string => `hub ${mm(diameter)}`,
  peg: 'peg',
  holeForStart: 'hole for the start',
  holeForEnd: 'hole for the end',
  holeForWire: 'hole for the wire',
  cheek: 'cheek',
  cheekAtStart: 'cheek, start',
  holeForTube: 'hole for the tube',
  holeStart: 'hole: start',
  holeEnd: 'hole: end',
  notch: ({ name, turn }: Tapped): string => `notch: tap ${turnsText(turn)}, ${tapNames[name].name}`,
  notchFor: (turn: number): string => `notch for the tap at ${turnsText(turn)}`,
  cheekTitles: { start: 'Cheek at the start of the winding', other: 'The other cheek' },
  cheekSizes: {
    start: (s: { readonly across: number; readonly hole: number; readonly thickness: number }): string =>
      `Cheek at the start of the winding: ${mm(s.across)} across, hole ${mm(s.hole)}, ${mm(s.thickness)} thick.`,
    other: (s: { readonly across: number; readonly hole: number; readonly thickness: number }): string =>
      `The other cheek: ${mm(s.across)} across, hole ${mm(s.hole)}, ${mm(s.thickness)} thick.`,
  },
  alt: {
    spider: ({ slots, across }: { readonly slots: number; readonly across: number }): string =>
      `Spider former with ${slots} slots, ${mm(across)} across.`,
    basket: ({ pegs, circle }: { readonly pegs: number; readonly circle: number }): string =>
      `Circle of ${pegs} pegs, ${mm(circle)} across.`,
    spiral: 'First and last turn of the spiral.',
    strip: ({ length }: Strip): string =>
      `Strip as long as the tube with the places of the ends of the winding, ${mm(length)} from start to end.`,
    tappedStrip: ({ length }: Strip): string =>
      `Strip as long as the tube with the places of the ends of the winding and of the taps, ${mm(length)} from start to end.`,
    cheek: {
      start: (across: number): string => `Cheek at the start of the winding, ${mm(across)} across.`,
      other: (across: number): string => `The other cheek, ${mm(across)} across.`,
    },
  },
  strip: {
    plain:
      'Lay this strip along the tube, end to end with it, and prick through the small circles: they are the holes that hold the wire. The lines only show where the winding begins and ends; there are no holes there.',
    tapped:
      'Lay this strip along the tube, end to end with it, and prick through the small circles: they are the holes that hold the wire. The lines only show where the winding begins, is tapped and ends; taps are loops of the wire and need no holes.',
    pile: 'Lay this strip along the tube, end to end with it, and prick through the small circles: they are the holes that hold the wire. The lines show where the inner faces of the cheeks stand.',
    pileEndAtStart:
      'Lay this strip along the tube, end to end with it, and prick through the small circles: they are the holes that hold the wire. The lines show where the inner faces of the cheeks stand. Make the two holes for the end at the same end of the tube, on its other side.',
  },
};

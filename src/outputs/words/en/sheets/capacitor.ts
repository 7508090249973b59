import type { DielectricName } from '../../../../engine/parts/capacitor/dielectrics.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { mm } from '../../figures.ts';
import { spanBeside } from '../../ranges.ts';
import { dielectricNames } from '../materials.ts';

/** Which capacitor of the set. */
export type CapacitorPart = 'tuning' | 'aerial-tuning';

interface FromTo {
  readonly min: number;
  readonly max: number;
}
interface Range {
  readonly least: readonly [number, number];
  readonly most: readonly [number, number];
}
const pF = (capacitance: number): string => formatQuantity(capacitance, 'capacitance');

/** A sheet's size, up to the next whole millimetre; from m. */
const size = (a: number, b: number): string =>
  `${formatNumber(Math.ceil(a * 1e3 - 1e-9), 4)} × ${formatNumber(Math.ceil(b * 1e3 - 1e-9), 4)} mm`;
/** Up to the next whole millimetre. */
const about = (length: number): string => mm(Math.ceil(length * 1e3 - 1e-9) / 1e3);
const stuff = (dielectric: DielectricName): string => dielectricNames[dielectric].name;

export const capacitorSheetWords = {
  titles: { tuning: 'Tuning capacitor', 'aerial-tuning': 'Aerial tuning capacitor' },
  descriptions: {
    tuning: 'How to make the tuning capacitor, with templates at full size.',
    'aerial-tuning': 'How to make the aerial tuning capacitor, with templates at full size.',
  },
  columns: {
    figure: 'Figure',
    expected: 'Expected',
    part: 'Part',
    number: 'Number',
    size: 'Size and material',
  },
  rows: { capacitance: 'Capacitance', asMade: 'As made by hand', opening: 'Opening' },
  headings: { materials: 'What it is made of', steps: 'How to make it', templates: 'Templates, full size' },
  capacitance: ({ min, max }: FromTo): string => `${pF(min)} to ${pF(max)}, strays and trimmer included`,
  asMade: ({ least, most }: Range): string =>
    `minimum ${pF(least[0])} to ${pF(least[1])}, maximum ${pF(most[0])} to ${pF(most[1])}`,
  opening: (degrees: number): string => `up to ${formatQuantity(degrees, 'angle')}`,
};

/** Names of the parts. */
export const capacitorParts = {
  vanes: 'Vanes',
  spindleWashers: 'Washers, spindle',
  rodWashers: 'Washers, rods',
  airGap: 'Air gap',
  spindle: 'Spindle',
  rods: 'Rods',
  endPlates: 'End plates',
  leads: 'Leads',
  base: 'Base',
  foil: 'Foil',
  spacers: 'Spacers',
  cards: 'Cards',
  handle: 'Handle',
  guides: 'Guides',
  stop: 'Stop',
  pressingBoard: 'Pressing board',
  joints: 'Joints',
  glue: 'Glue',
  innerTube: 'Inner tube',
  outerTube: 'Outer tube',
  collars: 'Collars',
  stiffPaper: 'Stiff paper',
  cradle: 'Cradle',
  leaves: 'Leaves',
  hinge: 'Hinge',
  opener: 'Opener',
};

interface Sheet {
  readonly length: number;
  readonly width: number;
}
interface Covering extends Sheet {
  readonly thickness: number;
}

/** Size and material of each part. All lengths m. */
export const capacitorMaterial = {
  joints:
    'small brass screws with a nut and two washers each, or brass paper fasteners; aluminium foil cannot be soldered',
  leads: (moving: number): string =>
    `stranded insulated wire; that of the moving side flexible and ${about(moving)} long, so that it can follow`,
  glue: 'paper glue, thinly spread; cloth or paper tape',
  vanes: ({ moving, fixed }: { readonly moving: number; readonly fixed: number }): string =>
    `sheet aluminium or brass, 0.5 to 0.8 mm: ${moving} moving, ${fixed} fixed`,
  spindleWashers: (gap: number): string =>
    `6 mm hole, as thick as one vane and two gaps: ${mm(2 * gap)} and the thickness of the sheet`,
  rodWashers: (gap: number): string =>
    `3 mm hole, as thick as one vane and two gaps: ${mm(2 * gap)} and the thickness of the sheet`,
  airGap: (gap: number): string => `${mm(gap)} on either side of a moving vane`,
  vaneDielectric: 'sheets that fill the gap, cut by the fixed vane 2 mm larger all round, glued to the fixed vanes',
  spindle: 'brass rod threaded 6 mm, longer than the stack by both bearings and the knob; 4 nuts',
  rods: 'threaded 3 mm, longer than the stack by both end plates; 4 nuts each',
  endPlates:
    'dry insulating board, 4 to 6 mm, larger than the fixed vanes; a bush or a drilled strip of brass as bearing in each',
  vaneLeads: 'stranded wire: one clamped under the nut of a rod, a flexible one, 60 mm, for the spindle',
  base: ({ length, width }: Sheet): string =>
    `stiff card or thin wood, flat, at least ${size(length, width)}; the board of the set will do where it has room`,
  foil: ({ length, width }: Sheet): string =>
    `kitchen foil or thicker, smooth, ${mm(length)} by ${mm(width)} and a tab, by the template`,
  foilFromHinge: ({ length, width }: Sheet): string =>
    `kitchen foil or thicker, smooth, ${mm(length)} from the hinge by ${mm(width)}, and a tab`,
  foilByTemplates: 'kitchen foil or thicker, smooth, by the templates',
  spacers: ({ length, width, thickness }: Covering): string =>
    `strips ${mm(thickness)} thick, ${size(length, width)}: only air lies between the foils`,
  foilDielectric: ({ length, width, thickness, edge }: Covering & { readonly edge: number }): string =>
    `${size(length, width)}, ${mm(edge)} larger than the foil all round; ${mm(thickness)} thick in all: measure ten sheets pressed together, and lay as many as make it`,
  bookDielectric: ({ length, width, thickness }: Covering): string =>
    `${size(length, width)}; ${mm(thickness)} thick in all: measure ten sheets pressed together, and lay as many as make it`,
  cards: ({ length, width, moving }: Sheet & { readonly moving: number }): string =>
    `stiff card or thin board, flat, ${size(length, width)}: ${moving} to move, the rest fixed`,
  movingCard: ({ length, width }: Sheet): string =>
    `stiff card or thin board, flat, ${size(length, width)}: it carries the moving foil`,
  handle: 'a block of wood, to which the tab of the moving foil is screwed as well',
  guidesByPile: ({ length, width }: Sheet): string => `strips of card as thick as the pile, ${size(length, width)}`,
  guides: ({ length, width }: Sheet): string =>
    `strips of card a little thicker than the moving card, ${size(length, width)}`,
  stop: ({ length, width }: Sheet): string => `strip of card, ${size(length, width)}`,
  pressingBoard: ({ length, width }: Sheet): string =>
    `flat wood, ${size(length, width)}, with 2 rubber bands to go around it and the base, or a weight of 200 g on it`,
  innerTube: ({
    outside,
    length,
    hold,
  }: {
    readonly outside: number;
    readonly length: number;
    readonly hold: number;
  }) =>
    `card, wood or plastic, ${mm(outside)} outside with its foil, ${about(length)} long: ${mm(hold)} of it is to hold. A metal tube needs no foil`,
  outerTube: ({ inside, length }: { readonly inside: number; readonly length: number }): string =>
    `${mm(inside)} inside its foil, ${about(length)} long; of stiff paper, made on the inner one, or a metal tube`,
  collars: (thickness: number): string =>
    `of paper, 5 mm wide, wound ${mm(thickness)} thick: only air lies between the tubes`,
  tubeDielectric: ({ width, thickness }: { readonly width: number; readonly thickness: number }): string =>
    `a strip ${about(width)} wide, long enough to go around until it is ${mm(thickness)} thick in all, including what leaves it free to slide`,
  stiffPaper: (width: number): string =>
    `a strip ${about(width)} wide, to go around four times: it makes the outer tube`,
  cradle: 'blocks of dry wood with a notch, and a strip of card over each',
  leaves: ({ length, width }: Sheet): string => `stiff card or thin board, flat, ${size(length, width)}`,
  hinge: (length: number): string => `cloth tape, ${about(length)} long, inside and outside`,
  opener: 'a long screw with a nut let into the upper leaf, or a wedge of wood; a rubber band around the leaves',
};

/** Short lines, one thing to do in each. */
type Lines = readonly string[];

const HAND = 'Your hand is near it: where one side is earthed, it must be this one.';
const BARE_TAB = 'Bare 20 mm of stranded wire, lay it on the tab, and fold the tab over it twice.';
const SHARP = 'Cut sheets and vanes have sharp edges: file or fold them, and wear gloves while you cut metal.';

/** How each kind is made. All lengths m. */
export const vaneCapacitorSteps = {
  cut: [
    'Glue copies of the templates to the sheet; centre-punch and drill the holes first.',
    'Then cut and file. Clamp the sheet while you drill: a sheet that turns with the drill cuts hands.',
    'Flatten each vane between two boards; remove every burr.',
    SHARP,
  ],
  movingVanes: (moving: number): Lines => [
    'Thread moving vane, washer, moving vane … on the spindle.',
    `Clamp them with nuts: all ${moving} must lie in one line.`,
  ],
  movingVane: ['Clamp the moving vane on the spindle between two nuts.'],
  fixedVanes: (fixed: number): Lines => [
    `Build the ${fixed} fixed vanes on the three rods with their washers, between the end plates.`,
  ],
  fixedVane: ['Build the fixed vane on the three rods, between the end plates.'],
  align: [
    'Set the height of the spindle so that each moving vane runs midway between fixed ones.',
    'Turn it from fully open to fully meshed, and lock the bearings.',
  ],
  join: [
    'Join the moving vanes by the flexible wire: its bared end in a loop clamped under a nut of the spindle, with slack for the whole turn.',
    'That is the earthed side, where one side is earthed.',
    'Join the fixed vanes under a nut of a rod: the live side.',
  ],
};

interface Foil {
  readonly dielectric: DielectricName;
  /** What the dielectric reaches beyond the foil, and the foil from the left edge, m. */
  readonly edge: number;
  readonly joint: number;
}
const SPACERS = 'Glue a spacer along either long edge of it, clear of the foil: the card rides on them.';
const over = ({ dielectric, edge }: Foil): Lines => [
  `Lay the ${stuff(dielectric)} over it, ${mm(edge)} beyond the foil on every side.`,
  'Fix that along one long side only, without glue on the foil.',
];
const fixedFoil = ({ joint }: Foil): string =>
  `Glue the fixed foil to the left half of the base, ${mm(joint)} from its left edge, with its tab to the left.`;
const lowestFoil = ({ joint }: Foil): string =>
  `Glue the lowest fixed foil to the left half of the base, ${mm(joint)} from its left edge, with its tab to the left.`;
const pile = (between: string): Lines => [
  'Every further sheet is a card with foil on both faces, the topmost on its lower face only.',
  'Lead the tabs of moving ones up at the right, those of fixed ones at the left.',
  `Pile them in turn, moving, fixed, moving …, with ${between} over every one but the topmost.`,
  'Join the moving cards at their right ends and the fixed ones at their left ends by strips that keep their distance.',
];

export const foilCapacitorSteps = {
  cut: [
    'Cut the foil by the template with a sharp knife on glass, along a steel rule and away from your fingers.',
    'Smooth it with a spoon, without a crease.',
  ],
  fixed: {
    air: (foil: Foil): Lines => [fixedFoil(foil), SPACERS],
    airPile: (foil: Foil): Lines => [lowestFoil(foil), SPACERS],
    dielectric: (foil: Foil): Lines => [fixedFoil(foil), ...over(foil)],
    dielectricPile: (foil: Foil): Lines => [lowestFoil(foil), ...over(foil)],
  },
  moving: {
    single: [
      'Glue the moving foil under the card, its edge flush with the left edge of the card.',
      'Lead its tab up through a slit in the card.',
    ],
    airPile: pile('two spacers'),
    dielectricPile: ({ dielectric }: Pick<Foil, 'dielectric'>): Lines => pile(stuff(dielectric)),
  },
  handle: [
    'Glue the handle on the right end of the moving part, by the tab.',
    'Glue a guide to the base along either side of it, so that it slides straight and freely.',
  ],
  stop: [
    'Push the card fully in, so that the foils lie wholly over each other.',
    'Glue the stop against its left end.',
  ],
  pressAir: [
    'Hold it down on its spacers with the pressing board and its rubber bands or weight over the fixed half: the gap must stay even.',
    'It must still slide.',
  ],
  press: [
    'Press it down with the pressing board and its rubber bands or weight over the fixed half: air between the sheets lowers the capacitance.',
    'It must still slide.',
  ],
  join: [
    BARE_TAB,
    'Fixed side: clamp the fold between two washers with a screw through the base.',
    'Moving side: clamp its fold, with the flexible lead in it, by a short screw into the handle; nothing may stand out below the card.',
    'Lead it to the set in a loose loop that leaves the card free over its whole travel.',
    HAND,
  ],
};

const outerTube = (first: string): Lines => [
  first,
  'Then the outer foil once around, its tab towards the other end.',
  'Then the strip of stiff paper four times, glued to the foil and to itself.',
];

export const tubeCapacitorSteps = {
  innerAir: [
    'Glue the foil around the inner tube, from one end of it, its tab towards the end that you hold.',
    'Wind one collar of paper on that first end, over the edge of the foil; the other goes into the mouth of the outer tube.',
  ],
  inner: ({ dielectric, edge }: { readonly dielectric: DielectricName; readonly edge: number }): Lines => [
    'Glue the foil around the inner tube, from one end of it, its tab towards the end that you hold.',
    `Wrap the tube in its ${stuff(dielectric)}, over the foil and ${mm(edge)} beyond; glue the last edge down.`,
  ],
  outerAir: [
    ...outerTube('Wind paper around it loosely until it is as thick as the collars.'),
    'When it is dry draw the outer tube off and the loose paper out: the inner tube must slide without shake.',
  ],
  outer: [
    ...outerTube('Wind one loose turn of thin paper over it.'),
    'When it is dry draw the outer tube off and the loose paper out: the inner tube must slide without shake.',
  ],
  cradle: [
    'Strap the outer tube into its cradle on the board: it is the fixed side of the wiring list, the inner one the moving side.',
    'Push the inner one fully in, and mark it there.',
  ],
  join: [
    BARE_TAB,
    'Clamp the fold between two washers with a screw or paper fastener through the wall of the tube, at its far end, where it touches nothing of the other tube.',
    'Tubes of brass or copper may be soldered.',
    'The inner tube has the flexible lead, in a loose loop that leaves it free over its whole travel.',
    'Your hand is on it: where one side is earthed, it must be this one.',
  ],
};

export const bookCapacitorSteps = {
  foil: (hinge: number): Lines => [
    `Glue foil to the inner sides of both leaves by the template, ${mm(hinge)} from the hinge.`,
    'The tabs lie at the edge away from the hinge, one at either side.',
  ],
  spacers: ['Glue the spacers along the two sides of the lower leaf, clear of the foil.'],
  dielectric: ({ dielectric, edge }: { readonly dielectric: DielectricName; readonly edge: number }): Lines => [
    `Glue the ${stuff(dielectric)} over the foil of the lower leaf by its rim only, reaching ${mm(edge)} beyond the foil, and up to the hinge.`,
  ],
  hinge: [
    'Hinge the leaves with the cloth tape.',
    'Fix the lower one to the board: it is the fixed side of the wiring list, the upper one the moving side.',
  ],
  join: [
    BARE_TAB,
    'Clamp the fold between two washers with a screw or paper fastener through the leaf, where it touches no metal of the other leaf.',
    'Cut a notch in the other leaf there, so that they close.',
    'The upper leaf has the flexible lead, in a loose loop.',
    HAND,
  ],
  opener: [
    'Fit the screw or the wedge to open them against the rubber band.',
    'Nearly all of the tuning happens in the last few degrees.',
  ],
};

interface Ends {
  readonly value: number;
  readonly range: readonly [number, number];
}
const ends = ({ value, range }: Ends): string =>
  `${pF(value)} ${spanBeside(value, range, 'capacitance')}, as made by hand`;

/** What a finished capacitor should show by itself, before it is wired. SI. */
export const capacitorChecks = {
  heading: 'When it is finished, before it is wired',
  columns: { check: 'Check', expected: 'Expected', otherwise: 'If not' },
  resistance: {
    check:
      'Meter on its highest ohms range from one side to the other, slowly through the whole travel; keep your fingers off both leads.',
    expected: (overload: number): string =>
      `No reading anywhere: above ${formatQuantity(overload, 'resistance', 2)}, the leakage of dry insulation.`,
    otherwise: 'A low reading at one place: metal touches metal there. A steady high one: damp; dry it.',
  },
  joints: {
    check: 'Meter on ohms from each lead to its own metal, at the end furthest from the joint.',
    expected: 'Under 1 Ω, and steady while the lead is moved.',
    otherwise: 'The joint: clean the foil or metal and clamp it again.',
  },
  most: {
    vanes: 'With a capacitance meter, fully meshed.',
    slide: 'With a capacitance meter, pushed fully in.',
    leaves: 'With a capacitance meter, pressed shut.',
  },
  mostOtherwise: {
    vanes: 'Less: vanes left out, or too wide a gap. More: too narrow a gap.',
    slide: 'Less: air between the sheets; press harder. More: thinner dielectric than listed.',
    leaves: 'Less: air between the leaves; press harder. More: thinner dielectric than listed.',
  },
  middle: {
    vanes: 'Half meshed.',
    slide: 'Half pushed in.',
    leaves: 'Half open.',
  },
  least: {
    vanes: 'Fully open.',
    slide: 'Drawn fully out.',
    leaves: 'Open as far as it goes.',
  },
  leastOtherwise: 'More: leads side by side, or metal too near; the high end of the dial is lost.',
  capacitance: ends,
  about: (value: number): string => `about ${pF(value)}`,
  travel: ({ travel }: { readonly travel: number }): string => `${mm(travel)}, smooth, with no place where it sticks.`,
  travelCheck: 'Move it from end to end and measure the travel.',
  travelOtherwise: 'Guides or tubes too tight, or a lead that pulls.',
  noMeter:
    'Without a capacitance meter, leave out the rows of capacitance: the ends of the dial show the same, on the bring-up sheet.',
};

/** To a tenth of a millimetre. */
const exact = (length: number, width: number): string =>
  `${(length * 1e3).toFixed(1)} × ${(width * 1e3).toFixed(1)} mm`;
interface Cut extends Sheet {
  readonly count: number;
}

/** What is cut, at full size. */
export const capacitorTemplate = {
  sheet: 'sheet',
  hinge: 'hinge',
  tab: 'tab',
  movingVane: 'moving vane',
  fixedVane: 'fixed vane',
  leadingEdge: 'leading edge',
  spindleMiddle: 'middle of the spindle; the cut-out clears its washers',
  size: ({ length, width }: Sheet): string => exact(length, width),
  sizeAndTab: ({ length, width }: Sheet): string => `${exact(length, width)}, and a tab`,
  foil: ({ count, length, width }: Cut): string => `Foil, ${count} of these: ${exact(length, width)}, and a tab`,
  hingedFoil: ({ count, length, width }: Cut): string =>
    `Foil, ${count} of these, with the hinge along the dashed edge: ${exact(length, width)}, and a tab`,
  dielectric: ({ dielectric, count, length, width }: Cut & { readonly dielectric: DielectricName }): string =>
    `${dielectricNames[dielectric].title}, ${count} of these: ${exact(length, width)}`,
  hingedDielectric: ({ dielectric, count, length, width }: Cut & { readonly dielectric: DielectricName }): string =>
    `${dielectricNames[dielectric].title}, ${count} of these, with the hinge along the dashed edge: ${exact(length, width)}`,
  innerTube: ({ length, width }: Sheet): string =>
    `Foil of the inner tube, once around: ${exact(length, width)}, and a tab`,
  outerTube: ({ length, width }: Sheet): string =>
    `Foil of the outer tube, once around: ${exact(length, width)}, and a tab`,
  movingVanes: (count: number): string =>
    `Moving vane, ${count} of these. The round boss stays on it; drill 6 mm for the spindle.`,
  fixedVanes: (count: number): string => `Fixed vane, ${count} of these. Drill 3 mm for the rods.`,
};

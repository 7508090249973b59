import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import { capital, formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { mm } from './words.ts';

export type Tuning<K extends TuningDescription['kind']> = Extract<TuningDescription, { kind: K }>;
export type HomeMade = Tuning<'vanes' | 'foil' | 'tubes' | 'book'>;
export const homeMade = (t: TuningDescription): t is HomeMade => ['vanes', 'foil', 'tubes', 'book'].includes(t.kind);

/** Of foils, mm: the tab by which a foil is joined, what its dielectric reaches beyond it, and how far it stays from a hinge. */
export const TAB = 14;
export const EDGE = 5;
export const HINGE = 3;
/** Widths of the wooden and card parts about the foils, mm. Common practice, no source. */
const GUIDE = 12;
const JOINT = 25;
const HANDLE = 30;
const HAND = 80;
/** A lead that moves is so much longer than its travel, mm. */
const SLACK = 80;

export const movingOf = (pieces: number): number => Math.floor(pieces / 2);
const fixedOf = (pieces: number): number => pieces - movingOf(pieces);
/** Foils to cut: a sheet in the midst of others has foil on both its faces. */
export const foilsOf = (t: Tuning<'foil'>): number => 2 * (t.sheets - 1);
const sizes = (a: number, b: number): string =>
  `${formatNumber(Math.ceil(a), 4)} × ${formatNumber(Math.ceil(b), 4)} mm`;
const lengthOf = (millimetres: number): string => formatQuantity(Math.ceil(millimetres) / 1e3, 'length', 3);

const FOIL = 'kitchen foil or thicker, smooth';
const thickness = (t: Tuning<'foil' | 'book'>): string =>
  `${mm(t.thickness)} thick in all: measure ten sheets pressed together, and lay as many as make it`;
const screws = (n: number): string[] => [
  'Joints',
  `${n}`,
  'small brass screws with a nut and two washers each, or brass paper fasteners; foil of aluminium takes no solder',
];
const leads = (travel: number): string[] => [
  'Leads',
  '2',
  `stranded insulated wire; that of the moving side flexible and ${lengthOf(travel * 1e3 + SLACK)} long, so that it can follow`,
];
const GLUE = ['Glue', '', 'paper glue, thinly spread; cloth or paper tape'];

/** Everything that its steps speak of: part, number, size and stuff. */
export function capacitorMaterials(t: HomeMade): string[][] {
  switch (t.kind) {
    case 'vanes':
      return vaneMaterials(t);
    case 'foil':
      return foilMaterials(t);
    case 'tubes':
      return tubeMaterials(t);
    case 'book':
      return bookMaterials(t);
  }
}

export function capacitorSteps(t: HomeMade): string[] {
  switch (t.kind) {
    case 'vanes':
      return vaneSteps(t);
    case 'foil':
      return foilSteps(t);
    case 'tubes':
      return tubeSteps(t);
    case 'book':
      return bookSteps(t);
  }
}

function vaneMaterials(t: Tuning<'vanes'>): string[][] {
  const [moving, fixed] = [movingOf(t.vanes), fixedOf(t.vanes)];
  const washer = `as thick as one vane and two gaps: ${mm(2 * t.gap)} and the sheet’s own thickness`;
  return [
    ['Vanes', `${t.vanes}`, `sheet aluminium or brass, 0.5 to 0.8 mm: ${moving} moving, ${fixed} fixed`],
    ...(moving > 1 ? [['Washers, spindle', `${moving - 1}`, `6 mm hole, ${washer}`]] : []),
    ...(fixed > 1 ? [['Washers, rods', `${3 * (fixed - 1)}`, `3 mm hole, ${washer}`]] : []),
    ['Air gap', '', `${mm(t.gap)} on either side of a moving vane`],
    ...(t.dielectric === 'air'
      ? []
      : [
          [
            capital(t.dielectric),
            `${t.vanes - 1}`,
            `sheets that fill the gap, cut by the fixed vane 2 mm larger all round, glued to the fixed vanes`,
          ],
        ]),
    ['Spindle', '1', 'brass rod threaded 6 mm, longer than the stack by both bearings and the knob; 4 nuts'],
    ['Rods', '3', 'threaded 3 mm, longer than the stack by both end plates; 4 nuts each'],
    [
      'End plates',
      '2',
      'dry insulating board, 4 to 6 mm, larger than the fixed vanes; a bush or a drilled strip of brass as bearing in each',
    ],
    ['Leads', '2', 'stranded wire: one clamped under a rod’s nut, a flexible one, 60 mm, for the spindle'],
  ];
}

function vaneSteps(t: Tuning<'vanes'>): string[] {
  const moving = movingOf(t.vanes);
  return [
    'Glue copies of the templates to the sheet, centre-punch and drill the holes first, then cut and file. Flatten each vane between two boards; take off every burr.',
    moving > 1
      ? `Thread moving vane, washer, moving vane … on the spindle and clamp them with nuts: all ${moving} must lie in one line.`
      : 'Clamp the moving vane on the spindle between two nuts.',
    `Build the ${fixedOf(t.vanes)} fixed vanes on the three rods${fixedOf(t.vanes) > 1 ? ' with their washers' : ''}, between the end plates.`,
    'Set the spindle’s height so that each moving vane runs midway between fixed ones, turn it from wholly out to wholly in, and lock the bearings.',
    'Join the moving vanes by the flexible wire, its bared end in a loop clamped under a nut of the spindle, with slack for the whole turn: that is the earthed side, where one side is earthed. The fixed vanes are joined under a nut of a rod: the live side.',
  ];
}

function foilMaterials(t: Tuning<'foil'>): string[][] {
  const [l, w] = [t.length * 1e3, t.width * 1e3];
  const card = sizes(l + HANDLE, w + 2 * EDGE);
  const several = t.sheets > 2;
  return [
    [
      'Base',
      '1',
      `stiff card or thin wood, flat, at least ${sizes(2 * l + JOINT + 10, w + 2 * EDGE + 2 * GUIDE)}; the set’s board will do where it has the room`,
    ],
    ['Foil', `${foilsOf(t)}`, `${FOIL}, ${mm(t.length)} by ${mm(t.width)} and a tab, by the template`],
    t.dielectric === 'air'
      ? [
          'Spacers',
          `${2 * (t.sheets - 1)}`,
          `strips ${mm(t.thickness)} thick, ${sizes(2 * l, EDGE)}: only air lies between the foils`,
        ]
      : [
          capital(t.dielectric),
          `${t.sheets - 1}`,
          `${sizes(l + 2 * EDGE, w + 2 * EDGE)}, ${EDGE} mm larger than the foil all round; ${thickness(t)}`,
        ],
    [
      'Cards',
      `${t.sheets - 1}`,
      `stiff card or thin board, flat, ${card}${several ? `: ${movingOf(t.sheets)} to move, the rest fixed` : ': it bears the moving foil'}`,
    ],
    ['Handle', '1', 'a block of wood, which the moving foil’s tab is screwed to as well'],
    [
      'Guides',
      '2',
      `strips of card ${several ? 'as thick as the pile' : 'a little thicker than the moving card'}, ${sizes(2 * l, GUIDE)}`,
    ],
    ['Stop', '1', `strip of card, ${sizes(w + 2 * EDGE, EDGE)}`],
    [
      'Pressing board',
      '1',
      `flat wood, ${sizes(l, w)}, with 2 rubber bands to go round it and the base, or a weight of 200 g on it`,
    ],
    screws(2),
    leads(t.length),
    GLUE,
  ];
}

function foilSteps(t: Tuning<'foil'>): string[] {
  const several = t.sheets > 2;
  const air = t.dielectric === 'air';
  const over = air
    ? 'Glue a spacer along either long edge of it, clear of the foil: the card rides on them.'
    : `Lay the ${t.dielectric} over it, ${EDGE} mm beyond the foil on every side, and fix that along one long side only, without glue on the foil.`;
  return [
    'Cut the foil by the template with a sharp knife on glass; smooth it with a spoon, without a crease.',
    `Glue ${several ? 'the lowest fixed' : 'the fixed'} foil to the left half of the base, ${JOINT} mm from its left edge, with its tab to the left. ${over}`,
    several
      ? `Every further sheet is a card with foil on both faces, the topmost on its lower face only; the tabs of moving ones are led up at the right, those of fixed ones at the left. Pile them in turn, moving, fixed, moving …, ${air ? 'with two spacers' : `with ${t.dielectric}`} over every one but the topmost. Join the moving cards at their right ends and the fixed ones at their left ends by strips that keep their distance.`
      : 'Glue the moving foil under the card, its edge flush with the card’s left edge, its tab led up through a slit in the card.',
    'Glue the handle on the right end of the moving part, by the tab, and a guide to the base along either side of it, so that it slides straight and freely.',
    'Push it home, so that the foils lie wholly over each other, and glue the stop against its left end.',
    `${air ? 'Hold it down on its spacers' : 'Press it down'} with the pressing board and its rubber bands or weight over the fixed half: ${air ? 'the gap must stay even' : 'air between costs capacitance'}. It must still slide.`,
    `Join the fixed side: bare 20 mm of stranded wire, lay it on the tab, fold the tab over it twice, and clamp the fold between two washers with a screw through the base.`,
    'Join the moving side likewise, to the flexible lead, with a short screw into the handle, so that nothing stands out below the card; lead it to the set in a loose loop that leaves the card free over its whole travel. Your hand is near it: where one side is earthed, it is this one.',
  ];
}

function tubeMaterials(t: Tuning<'tubes'>): string[][] {
  const l = t.length * 1e3;
  const bore = t.innerDiameter + 2 * t.gap;
  return [
    [
      'Inner tube',
      '1',
      `card, wood or plastic, ${mm(t.innerDiameter)} outside with its foil, ${lengthOf(l + HAND)} long: ${HAND} mm of it is to hold. A metal tube needs no foil`,
    ],
    [
      'Outer tube',
      '1',
      `${mm(bore)} inside its foil, ${lengthOf(l + 20)} long; of stiff paper, made on the inner one, or a metal tube`,
    ],
    ['Foil', '2', `${FOIL}, by the templates`],
    t.dielectric === 'air'
      ? ['Collars', '2', `of paper, 5 mm wide, wound ${mm(t.gap)} thick: only air lies between the tubes`]
      : [
          capital(t.dielectric),
          '1',
          `a strip ${lengthOf(l + 2 * EDGE)} wide, long enough to go round until it is ${mm(t.gap)} thick in all, with what leaves it free to slide`,
        ],
    ['Stiff paper', '1', `a strip ${lengthOf(l + 20)} wide, to go four times round: it makes the outer tube`],
    ['Cradle', '2', 'blocks of dry wood with a notch, and a strip of card over each'],
    screws(2),
    leads(t.length),
    GLUE,
  ];
}

function tubeSteps(t: Tuning<'tubes'>): string[] {
  const air = t.dielectric === 'air';
  return [
    `Glue the foil round the inner tube, from one end of it, its tab towards the hand’s end. ${
      air
        ? 'Wind one collar of paper on that first end, over the edge of the foil; the other comes into the outer tube’s mouth.'
        : `Wrap the tube in its ${t.dielectric}, over the foil and ${EDGE} mm beyond; glue the last edge down.`
    }`,
    `${air ? 'Wind paper round it loosely until it is as thick as the collars, then the' : 'Wind one loose turn of thin paper over it, then the'} outer foil once round, its tab towards the other end, then the strip of stiff paper four times, glued to the foil and to itself. When it is dry draw the outer tube off and the loose paper out: the inner tube must slide without shake.`,
    'Strap the outer tube into its cradle on the board. Push the inner one home, and mark it there.',
    'Fold each tab twice over the bared end of its wire and clamp the fold between two washers with a screw or paper fastener through the tube’s wall, at its far end, where it touches nothing of the other tube. Tubes of brass or copper may be soldered.',
    'The inner tube has the flexible lead, in a loose loop that leaves it free over its whole travel. Your hand is on it: where one side is earthed, it is this one.',
  ];
}

function bookMaterials(t: Tuning<'book'>): string[][] {
  const [l, w] = [t.length * 1e3, t.width * 1e3];
  return [
    ['Leaves', '2', `stiff card or thin board, flat, ${sizes(l + HINGE + TAB, w + 2 * EDGE)}`],
    ['Foil', '2', `${FOIL}, ${mm(t.length)} from the hinge by ${mm(t.width)}, and a tab`],
    t.dielectric === 'air'
      ? ['Spacers', '2', `strips ${mm(t.thickness)} thick, ${sizes(l, EDGE)}: only air lies between the foils`]
      : [capital(t.dielectric), '1', `${sizes(l + HINGE + EDGE, w + 2 * EDGE)}; ${thickness(t)}`],
    ['Hinge', '1', `cloth tape, ${lengthOf(w + 2 * EDGE)} long, inside and outside`],
    [
      'Opener',
      '1',
      'a long screw with a nut let into the upper leaf, or a wedge of wood; a rubber band round the leaves',
    ],
    screws(2),
    leads(t.length),
    GLUE,
  ];
}

function bookSteps(t: Tuning<'book'>): string[] {
  return [
    `Glue foil to the inner sides of both leaves by the template, ${HINGE} mm from the hinge, the tabs at the edge away from it, one at either side.`,
    t.dielectric === 'air'
      ? 'Glue the spacers along the two sides of the lower leaf, clear of the foil.'
      : `Glue the ${t.dielectric} over the foil of the lower leaf by its rim only, reaching ${EDGE} mm beyond the foil, and up to the hinge.`,
    'Hinge the leaves with the cloth tape. Fix the lower one to the board.',
    'Fold each tab twice over 20 mm of bared stranded wire and clamp the fold between two washers with a screw or paper fastener through the leaf, where it touches no metal of the other leaf; cut a notch in the other leaf there, so that they close. The upper leaf has the flexible lead, in a loose loop; your hand is near it: where one side is earthed, it is this one.',
    'Fit the screw or the wedge to open them against the rubber band: nearly all of the tuning happens in the last few degrees.',
  ];
}

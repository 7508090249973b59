import type { SetDescription } from '../../engine/set/description.ts';
import { tuningModel } from '../../engine/set/models.ts';
import type { TuningDescription } from '../../engine/set/parts/tuning.ts';
import { formatQuantity } from '../../engine/units/format.ts';
import { circle, line, path, polar, polyline, rect, text } from '../scene/build.ts';
import type { Item, Point } from '../scene/scene.ts';
import { Flow } from './flow.ts';
import type { PaperName, Sheet } from './page.ts';

type Tuning<K extends TuningDescription['kind']> = Extract<TuningDescription, { kind: K }>;

const CUT = { stroke: 'ink', width: 0.3, title: 'cut here' } as const;
const mm = (metres: number): string => formatQuantity(metres, 'length', 3);

/** One sheet for every home-made variable capacitor of the set. */
export function capacitorSheets(set: SetDescription, paper: PaperName): Sheet[] {
  const a = set.arrangement;
  const byCoil = a.kind === 'slider' || a.kind === 'variometer';
  const sheets: Sheet[] = [];
  if (!byCoil && homeMade(set.tuning)) sheets.push(sheetFor(set, set.tuning, 'Tuning capacitor', 'capacitor', paper));
  if (a.kind === 'two circuits' && a.aerialTuning && homeMade(a.aerialTuning))
    sheets.push(sheetFor(set, a.aerialTuning, 'Aerial tuning capacitor', 'capacitor-aerial', paper));
  return sheets;
}

type HomeMade = Tuning<'vanes' | 'foil' | 'tubes' | 'book'>;
const homeMade = (t: TuningDescription): t is HomeMade => ['vanes', 'foil', 'tubes', 'book'].includes(t.kind);

function sheetFor(set: SetDescription, tuning: HomeMade, title: string, file: string, paper: PaperName): Sheet {
  const model = tuningModel(tuning);
  const flow = new Flow({ id: 'capacitor', title, file, set: set.name, paper, fullSize: true });
  flow.table(
    [
      { title: 'Figure', share: 2 },
      { title: 'Expected', share: 5 },
    ],
    [
      [
        'Capacitance',
        `${formatQuantity(model.min, 'capacitance')} to ${formatQuantity(model.max, 'capacitance')}, strays and trimmer included`,
      ],
      [
        'As made by hand',
        `least ${formatQuantity(model.minRange[0], 'capacitance')}–${formatQuantity(model.minRange[1], 'capacitance')}, most ${formatQuantity(model.maxRange[0], 'capacitance')}–${formatQuantity(model.maxRange[1], 'capacitance')}`,
      ],
      ...materials(tuning).map(([what, words]) => [what, words]),
    ],
  );
  flow.heading('How to make it');
  flow.list(steps(tuning), 'number');
  flow.list(
    [
      'With a meter on ohms, from one side to the other, through the whole travel: nothing must conduct. If it does at some place, metal touches metal there.',
    ],
    'box',
  );
  flow.heading('Templates, full size', 40);
  for (const t of templates(tuning)) {
    flow.para(t.words, { small: true, bold: true });
    flow.template(t.items, { w: t.w, h: t.h }, t.words);
  }
  for (const warning of model.warnings) flow.para(warning, { small: true });
  return flow.finish(`How to make the ${title.toLowerCase()}, with templates at full size.`);
}

const movingOf = (vanes: number): number => Math.floor(vanes / 2);

function materials(t: HomeMade): [string, string][] {
  switch (t.kind) {
    case 'vanes':
      return [
        [
          'Vanes',
          `${t.vanes} of sheet aluminium or brass, 0.5 to 0.8 mm: ${movingOf(t.vanes)} moving, ${t.vanes - movingOf(t.vanes)} fixed`,
        ],
        [
          'Spacing',
          `air gap ${mm(t.gap)} on either side of a moving vane: washers between vanes of one kind as thick as one vane and two gaps, ${mm(2 * t.gap)} and the sheet’s own thickness`,
        ],
        ['Between', t.dielectric],
      ];
    case 'foil':
      return [
        ['Sheets', `${t.sheets} of foil, ${mm(t.length)} by ${mm(t.width)} each, and a tab`],
        ['Between', `${t.dielectric}, ${mm(t.thickness)} thick, 5 mm larger all round`],
      ];
    case 'tubes':
      return [
        ['Inner tube', `${mm(t.innerDiameter)} outside, ${mm(t.length)} long and a hand’s breadth to hold`],
        ['Outer tube', `${mm(t.innerDiameter + 2 * t.gap)} inside, ${mm(t.length)} long`],
        ['Between', `${t.dielectric}, ${mm(t.gap)} in all`],
      ];
    case 'book':
      return [
        ['Leaves', `2 boards with foil of ${mm(t.length)} (from the hinge) by ${mm(t.width)}`],
        ['Between', `${t.dielectric}, ${mm(t.thickness)} thick, on one leaf`],
        ['Opening', `to ${formatQuantity(t.opening, 'angle')}`],
      ];
  }
}

function steps(t: HomeMade): string[] {
  switch (t.kind) {
    case 'vanes':
      return [
        'Glue copies of the templates to the sheet, centre-punch and drill the holes first, then cut and file. Flatten each vane between two boards; take off every burr.',
        `Thread moving vane, washer, moving vane … on the spindle and clamp them with nuts: all ${movingOf(t.vanes)} must lie in one line.`,
        `Build the ${t.vanes - movingOf(t.vanes)} fixed vanes on two or three rods with washers of the same thickness, on an insulating end plate.`,
        'Set the spindle’s height so that each moving vane runs midway between two fixed ones, turn it through the whole swing, and lock the bearings.',
        'Lead from the moving vanes by a pigtail or spring washer to the earthed side; the fixed vanes are the live side.',
      ];
    case 'foil':
      return [
        'Cut foil by the template with a sharp knife on glass; smooth it with a spoon, without a crease.',
        `Glue the fixed sheet to a board, its tab over the edge. Lay the ${t.dielectric} over it and fix that along one long side.`,
        'Glue the moving sheet under a stiff card with a handle, guided by two strips so that it slides straight.',
        'Press it down with a light board or a spring: air between costs capacitance. Stop it where it is pushed home, with the sheets wholly over each other.',
      ];
    case 'tubes':
      return [
        'Wrap the inner tube in its sheet until it slides in the outer one without shake; glue the last edge down.',
        'Fix the outer tube to the board. Mark the inner tube where it is pushed home.',
        'Solder or clip a lead to the outer tube, and a soft one to the inner: the inner goes to the earthed side, since your hand is on it.',
      ];
    case 'book':
      return [
        'Glue foil to the inner sides of both leaves by the template, 3 mm from the hinge; lead a tab over each edge.',
        `Glue the ${t.dielectric} over the foil of one leaf, reaching 5 mm beyond it all round.`,
        'Hinge the leaves with cloth tape. Fit a long screw or a wedge to open them: nearly all of the tuning happens in the last few degrees.',
      ];
  }
}

interface Template {
  readonly words: string;
  readonly items: Item[];
  readonly w: number;
  readonly h: number;
}

function drill(p: Point, diameter: number): Item[] {
  const r = diameter / 2;
  return [
    circle(p, r, { stroke: 'ink', width: 0.25 }),
    line([p[0] - r - 1.5, p[1]], [p[0] + r + 1.5, p[1]], { stroke: 'ink', width: 0.15 }),
    line([p[0], p[1] - r - 1.5], [p[0], p[1] + r + 1.5], { stroke: 'ink', width: 0.15 }),
  ];
}

/** Templates as they are to be cut; the areas are those that the capacitance was worked out with. */
export function templates(t: HomeMade): Template[] {
  switch (t.kind) {
    case 'vanes':
      return vaneTemplates(t);
    case 'foil':
      return [
        sheetTemplate(`Foil, ${t.sheets} of these`, t.length * 1e3, t.width * 1e3, true),
        sheetTemplate(
          `${t.dielectric}, ${Math.max(1, t.sheets - 1)} of these`,
          t.length * 1e3 + 10,
          t.width * 1e3 + 10,
          false,
        ),
      ];
    case 'tubes': {
      const around = Math.PI * t.innerDiameter * 1e3;
      return [
        sheetTemplate('Foil to make the inner tube of, once round', t.length * 1e3, around, true),
        sheetTemplate(
          'Foil to make the outer tube of, once round',
          t.length * 1e3,
          Math.PI * (t.innerDiameter + 2 * t.gap) * 1e3,
          true,
        ),
      ];
    }
    case 'book':
      return [
        sheetTemplate('Foil, 2 of these; the hinge along the dashed edge', t.length * 1e3, t.width * 1e3, true),
        sheetTemplate(`${t.dielectric}, 1 of these`, t.length * 1e3 + 10, t.width * 1e3 + 10, false),
      ];
  }
}

/** Length of the tab by which a foil is joined, mm. */
const TAB = 14;

function sheetTemplate(words: string, length: number, width: number, tab: boolean): Template {
  // The longer way along the page where one way fits and the other does not.
  const turned = length + (tab ? TAB : 0) > 175 && width <= 175;
  const [w, h] = turned ? [width, length] : [length, width];
  const items: Item[] = [rect(0, 0, w, h, { ...CUT, title: 'sheet' })];
  if (tab) {
    const b = Math.min(12, Math.max(4, (turned ? w : h) / 3));
    items.push(
      turned
        ? polyline(
            [
              [2, h],
              [2, h + TAB],
              [2 + b, h + TAB],
              [2 + b, h],
            ],
            { ...CUT, title: 'tab' },
          )
        : polyline(
            [
              [w, 2],
              [w + TAB, 2],
              [w + TAB, 2 + b],
              [w, 2 + b],
            ],
            { ...CUT, title: 'tab' },
          ),
    );
  }
  const label = `${length.toFixed(1)} × ${width.toFixed(1)} mm${tab ? ', and a tab' : ''}`;
  if (w > 40 && h > 6) items.push(text([w / 2, h / 2 + 1], label, 2.6, { anchor: 'middle', rim: true }));
  return { words: `${words}: ${label}`, items, w: w + (tab && !turned ? TAB : 0), h: h + (tab && turned ? TAB : 0) };
}

function vaneTemplates(t: Tuning<'vanes'>): Template[] {
  const outline = tuningModel(t).rotorOutline(180);
  const outer = Math.max(...outline.map((p) => p.radius)) * 1e3;
  const inner = t.innerRadius * 1e3;
  const w = 2 * outer + 16;
  const c: Point = [w / 2, outer + 4];
  const moving: Item[] = [
    polyline(
      outline.map((p): Point => polar(c, p.radius * 1e3, 180 + (p.angle * 180) / Math.PI)),
      { ...CUT, title: 'moving vane', closed: true },
    ),
    ...drill(c, 6),
    line(c, polar(c, outer + 3, 180), { stroke: 'ink', width: 0.15 }),
    text([c[0] - outer - 3, c[1] + 4.4], 'leading edge', 2.2, { anchor: 'start' }),
  ];
  const R = outer + Math.max(2, outer * 0.08);
  const lug = R + 7;
  const W = 2 * lug + 4;
  const k: Point = [W / 2, R + 3];
  const angle = Math.min(t.swing, 180);
  const a = (angle * Math.PI) / 180;
  const end: Point = [k[0] - R * Math.cos(a), k[1] - R * Math.sin(a)];
  const endInner: Point = [k[0] - inner * Math.cos(a), k[1] - inner * Math.sin(a)];
  const fixed: Item[] = [
    path(
      [
        ['M', k[0] - R, k[1]],
        ['A', R, false, true, end[0], end[1]],
        ['L', endInner[0], endInner[1]],
        ['A', inner, false, false, k[0] - inner, k[1]],
        ['Z'],
      ],
      { ...CUT, title: 'fixed vane' },
    ),
    ...[0.12, 0.5, 0.88].flatMap((s) => drill(polar(k, R - 4, 180 + angle * s), 3)),
    ...drill(k, 1),
    text([k[0], k[1] + 5], 'middle of the spindle; the cut-out clears its washers', 2.2, { anchor: 'middle' }),
  ];
  return [
    {
      words: `Moving vane, ${movingOf(t.vanes)} of these. The round boss stays on it; drill 6 mm for the spindle.`,
      items: moving,
      w,
      h: outer + Math.max(6, inner) + 8,
    },
    {
      words: `Fixed vane, ${t.vanes - movingOf(t.vanes)} of these. Drill 3 mm for the rods.`,
      items: fixed,
      w: W,
      h: R + 10,
    },
  ];
}

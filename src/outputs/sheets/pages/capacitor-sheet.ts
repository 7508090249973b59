import { tuningModel } from '../../../engine/kinds/models.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { capital, formatQuantity } from '../../../engine/units/format.ts';
import { circle, line, path, polar, polyline, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { warningSentences } from '../../words/index.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import {
  capacitorMaterials,
  capacitorSteps,
  EDGE,
  foilsOf,
  HINGE,
  type HomeMade,
  homeMade,
  movingOf,
  TAB,
  type Tuning,
} from './capacitor-making.ts';

const CUT = { stroke: 'ink', width: 0.3, title: 'cut here' } as const;

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
      ...(tuning.kind === 'book' ? [['Opening', `to ${formatQuantity(tuning.opening, 'angle')}`]] : []),
    ],
  );
  flow.heading('What it is made of');
  flow.table(
    [
      { title: 'Part', share: 2 },
      { title: 'Number', share: 0.9 },
      { title: 'Size and stuff', share: 6 },
    ],
    capacitorMaterials(tuning),
  );
  flow.heading('How to make it');
  flow.list(capacitorSteps(tuning), 'number');
  flow.list(
    [
      'With a meter on ohms, from one side to the other, through the whole travel: nothing must conduct. If it does at some place, metal touches metal there.',
    ],
    'box',
  );
  for (const warning of warningSentences(model.warnings)) flow.para(warning, { small: true });
  flow.heading('Templates, full size', 40);
  for (const t of templates(tuning)) {
    flow.para(t.words, { small: true, bold: true });
    flow.template(t.items, { w: t.w, h: t.h }, t.words);
  }
  return flow.finish(`How to make the ${title.toLowerCase()}, with templates at full size.`);
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
        sheetTemplate(`Foil, ${foilsOf(t)} of these`, t.length * 1e3, t.width * 1e3, true),
        ...(t.dielectric === 'air'
          ? []
          : [
              sheetTemplate(
                `${capital(t.dielectric)}, ${t.sheets - 1} of these`,
                t.length * 1e3 + 2 * EDGE,
                t.width * 1e3 + 2 * EDGE,
                false,
              ),
            ]),
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
        sheetTemplate('Foil, 2 of these; the hinge along the dashed edge', t.length * 1e3, t.width * 1e3, true, true),
        ...(t.dielectric === 'air'
          ? []
          : [
              sheetTemplate(
                `${capital(t.dielectric)}, 1 of these; the hinge along the dashed edge`,
                t.length * 1e3 + EDGE + HINGE,
                t.width * 1e3 + 2 * EDGE,
                false,
                true,
              ),
            ]),
      ];
  }
}

/** @param hinged along the edge away from the tab, which is drawn dashed */
function sheetTemplate(words: string, length: number, width: number, tab: boolean, hinged = false): Template {
  // The longer way along the page where one way fits and the other does not.
  const turned = length + (tab ? TAB : 0) > 175 && width <= 175;
  const [w, h] = turned ? [width, length] : [length, width];
  const items: Item[] = [rect(0, 0, w, h, { ...CUT, title: 'sheet' })];
  if (hinged)
    items.push(
      line(turned ? [0, 1.2] : [1.2, 0], turned ? [w, 1.2] : [1.2, h], {
        stroke: 'ink',
        width: 0.3,
        dash: [2, 1.2],
        title: 'hinge',
      }),
    );
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

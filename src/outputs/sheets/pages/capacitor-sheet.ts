import { tunedBy } from '../../../engine/kinds/arrangements/tuned-by.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import { tuningModel } from '../../../engine/kinds/models.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { circle, line, path, pointAtAngle, polyline, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import {
  type CapacitorPart,
  capacitorTemplate,
  capacitorSheetWords as texts,
  warningSentences,
} from '../../words/index.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { putCapacitorChecks } from './capacitor-checks.ts';
import {
  capacitorMaterials,
  capacitorSteps,
  EDGE,
  fixedOf,
  foilsOf,
  HINGE,
  type HomeMade,
  homeMade,
  movingOf,
  TAB,
  type Tuning,
} from './capacitor-making.ts';

/** One sheet for every home-made variable capacitor of the set. */
export function capacitorSheets(set: SetDescription, paper: PaperName): Sheet[] {
  const a = set.arrangement;
  const sheets: Sheet[] = [];
  if (tunedBy(a) === 'capacitor' && homeMade(set.tuning)) sheets.push(sheetFor(set, set.tuning, 'tuning', paper));
  if (a.kind === 'two circuits' && a.aerialTuning && homeMade(a.aerialTuning))
    sheets.push(sheetFor(set, a.aerialTuning, 'aerial-tuning', paper));
  return sheets;
}

/** Kept free above a template. */
const ABOVE = 6;

const FILES: Record<CapacitorPart, string> = { tuning: 'capacitor', 'aerial-tuning': 'capacitor-aerial' };

function sheetFor(set: SetDescription, tuning: HomeMade, part: CapacitorPart, paper: PaperName): Sheet {
  const model = tuningModel(tuning);
  const title = texts.titles[part];
  return fewestPages((layout) => {
    const flow = new Flow({ id: 'capacitor', title, file: FILES[part], set: set.name, paper, layout });
    putMatter(flow, tuning, model);
    return flow.finish(texts.descriptions[part]);
  });
}

function putMatter(flow: Flow, tuning: HomeMade, model: ReturnType<typeof tuningModel>): void {
  const { columns, rows, headings } = texts;
  flow.table(
    [
      { title: columns.figure, share: 2 },
      { title: columns.expected, share: 5 },
    ],
    [
      [rows.capacitance, texts.capacitance(model)],
      [rows.asMade, texts.asMade({ least: model.minRange, most: model.maxRange })],
      ...(tuning.kind === 'book' ? [[rows.opening, texts.opening(tuning.opening)]] : []),
    ],
  );
  flow.heading(headings.materials);
  flow.table(
    [
      { title: columns.part, share: 2 },
      { title: columns.number, share: 0.9 },
      { title: columns.size, share: 6 },
    ],
    capacitorMaterials(tuning),
  );
  const steps = capacitorSteps(tuning);
  flow.heading(headings.steps, flow.firstStepHeight(steps));
  flow.steps(steps);
  putCapacitorChecks(flow, tuning);
  for (const warning of warningSentences(model.warnings)) flow.para(warning, { small: true });
  const toCut = templates(tuning);
  flow.heading(headings.templates, flow.templateNeed(toCut[0].h, ABOVE));
  for (const t of toCut) {
    flow.need(flow.templateNeed(t.h, ABOVE));
    flow.para(t.words, { small: true, bold: true });
    flow.template(t.items, { w: t.w, h: t.h }, t.words);
  }
}

const CUT = { stroke: 'ink', width: 0.3 } as const;

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

const TEMPLATES: ByKind<HomeMade, Template[]> = {
  vanes: vaneTemplates,
  foil: (t) => {
    const foil = { length: t.length, width: t.width, count: foilsOf(t) };
    const { dielectric } = t;
    const covering = { dielectric, length: t.length + 2 * EDGE, width: t.width + 2 * EDGE, count: t.sheets - 1 };
    return [
      sheetTemplate(capacitorTemplate.foil(foil), foil, { tab: true }),
      ...(dielectric === 'air' ? [] : [sheetTemplate(capacitorTemplate.dielectric(covering), covering)]),
    ];
  },
  tubes: ({ length, innerDiameter, gap }) => {
    const inner = { length, width: Math.PI * innerDiameter };
    const outer = { length, width: Math.PI * (innerDiameter + 2 * gap) };
    return [
      sheetTemplate(capacitorTemplate.innerTube(inner), inner, { tab: true }),
      sheetTemplate(capacitorTemplate.outerTube(outer), outer, { tab: true }),
    ];
  },
  book: ({ length, width, dielectric }) => {
    const foil = { length, width, count: 2 };
    const covering = { dielectric, length: length + EDGE + HINGE, width: width + 2 * EDGE, count: 1 };
    return [
      sheetTemplate(capacitorTemplate.hingedFoil(foil), foil, { tab: true, hinged: true }),
      ...(dielectric === 'air'
        ? []
        : [sheetTemplate(capacitorTemplate.hingedDielectric(covering), covering, { hinged: true })]),
    ];
  },
};

/** Templates as they are to be cut; the areas are those that the capacitance was calculated with. */
export const templates = (t: HomeMade): Template[] => byKind(TEMPLATES, t);

/**
 * @param size m, the length along which the sheet moves first.
 * @param look hinged along the edge away from the tab, which is drawn dashed.
 */
function sheetTemplate(
  words: string,
  size: { readonly length: number; readonly width: number },
  look: { readonly tab?: boolean; readonly hinged?: boolean } = {},
): Template {
  const { tab = false, hinged = false } = look;
  const [length, width] = [size.length * 1e3, size.width * 1e3];
  const reach = tab ? TAB * 1e3 : 0;
  // The longer way along the page where one way fits and the other does not.
  const turned = length + reach > 175 && width <= 175;
  const [w, h] = turned ? [width, length] : [length, width];
  const items: Item[] = [rect(0, 0, w, h, { ...CUT, title: capacitorTemplate.sheet })];
  if (hinged)
    items.push(
      line(turned ? [0, 1.2] : [1.2, 0], turned ? [w, 1.2] : [1.2, h], {
        ...CUT,
        dash: [2, 1.2],
        title: capacitorTemplate.hinge,
      }),
    );
  if (tab) items.push(tabOf(w, h, turned));
  const label = tab ? capacitorTemplate.sizeAndTab(size) : capacitorTemplate.size(size);
  if (w > 40 && h > 6) items.push(text([w / 2, h / 2 + 1], label, 2.6, { anchor: 'middle', rim: true }));
  return { words, items, w: w + (turned ? 0 : reach), h: h + (turned ? reach : 0) };
}

/** The tab by which a foil is joined, on the short side away from the hinge. */
function tabOf(w: number, h: number, turned: boolean): Item {
  const b = Math.min(12, Math.max(4, (turned ? w : h) / 3));
  const out = TAB * 1e3;
  const points: Point[] = turned
    ? [
        [2, h],
        [2, h + out],
        [2 + b, h + out],
        [2 + b, h],
      ]
    : [
        [w, 2],
        [w + out, 2],
        [w + out, 2 + b],
        [w, 2 + b],
      ];
  return polyline(points, { ...CUT, title: capacitorTemplate.tab });
}

function vaneTemplates(t: Tuning<'vanes'>): Template[] {
  const outline = tuningModel(t).rotorOutline(180);
  const outer = Math.max(...outline.map((p) => p.radius)) * 1e3;
  const inner = t.innerRadius * 1e3;
  const w = 2 * outer + 16;
  const c: Point = [w / 2, outer + 4];
  const moving: Item[] = [
    polyline(
      outline.map((p): Point => pointAtAngle(c, p.radius * 1e3, 180 + (p.angle * 180) / Math.PI)),
      { ...CUT, title: capacitorTemplate.movingVane, closed: true },
    ),
    ...drill(c, 6),
    line(c, pointAtAngle(c, outer + 3, 180), { stroke: 'ink', width: 0.15 }),
    text([c[0] - outer - 3, c[1] + 4.4], capacitorTemplate.leadingEdge, 2.2, { anchor: 'start' }),
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
      { ...CUT, title: capacitorTemplate.fixedVane },
    ),
    ...[0.12, 0.5, 0.88].flatMap((s) => drill(pointAtAngle(k, R - 4, 180 + angle * s), 3)),
    ...drill(k, 1),
    text([k[0], k[1] + 5], capacitorTemplate.spindleMiddle, 2.2, { anchor: 'middle' }),
  ];
  return [
    {
      words: capacitorTemplate.movingVanes(movingOf(t.vanes)),
      items: moving,
      w,
      h: outer + Math.max(6, inner) + 8,
    },
    {
      words: capacitorTemplate.fixedVanes(fixedOf(t.vanes)),
      items: fixed,
      w: W,
      h: R + 10,
    },
  ];
}

import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import { circle, line, path, polyline, rect } from '../../scene/build.ts';
import type { Item, Point, Scene } from '../../scene/scene.ts';
import { textWidth } from '../../scene/text-width.ts';
import { capacitorPictureWords as texts } from '../../words/index.ts';
import { type Paper, paperFor } from '../paper.ts';
import { drawnWire, HIDDEN, label, lengthMark, moveArrow, stepScene, WIDTH, wirePath } from '../winding/strokes.ts';

type Tuning<K extends TuningDescription['kind']> = Extract<TuningDescription, { kind: K }>;

/** Sizes of what holds the sheets, m. */
export interface FoilBase {
  /** The fixed foil from the left edge of the base, and the dielectric beyond it. */
  readonly joint: number;
  readonly edge: number;
  readonly guide: number;
  readonly tab: number;
  readonly handle: number;
}

const OUTLINE = { stroke: 'ink', width: 0.35 } as const;
const FINE = { stroke: 'ink', width: 0.18 } as const;
const CARD = { ...OUTLINE, fill: 'card' } as const;
const METAL = { ...OUTLINE, fill: 'faint' } as const;
const DASHED = { ...OUTLINE, dash: HIDDEN, cap: 'butt' } as const;

/** A sheet of the thing between two corners, mm of the thing. */
function sheet({ at, mm }: Paper, x: number, y: number, w: number, h: number, look: object): Item {
  const [left, top] = at(x, y + h);
  return rect(left, top, mm(w), mm(h), look);
}

/** A thin line from a word to what it names. */
const leader = (from: Point, to: Point): Item => line(from, to, FINE);

/** A word on a sheet, where the sheet is wide enough for it. mm on paper. */
const onSheet = (at: Point, words: string, room: number): Item[] =>
  textWidth(words, 3) < room - 1 ? [label(at, words)] : [];

/** The lower half from above, as large as the scale says. */
function basePlan({ length, width, dielectric }: Tuning<'foil'>, sizes: FoilBase, below: number) {
  const [l, w] = [length * 1e3, width * 1e3];
  const [joint, edge, guide, tab] = [sizes.joint, sizes.edge, sizes.guide, sizes.tab].map((size) => size * 1e3);
  const base = { w: 2 * l + joint + 10, h: w + 2 * edge + 2 * guide };
  const foilAt: Point = [joint, guide + edge];
  const paper = paperFor(
    { x: 0, y: 0, ...base },
    { width: WIDTH, height: 52 },
    { left: 2, right: 2, top: 6, bottom: below },
  );
  const plate = sheet(paper, 0, 0, base.w, base.h, CARD);
  const foil = sheet(paper, ...foilAt, l, w, METAL);
  const foilTab = sheet(paper, joint - tab, foilAt[1] + w / 3, tab, w / 3, METAL);
  const cover =
    dielectric === 'air'
      ? [sheet(paper, joint, guide, 2 * l, edge, DASHED), sheet(paper, joint, guide + edge + w, 2 * l, edge, DASHED)]
      : [sheet(paper, joint - edge, guide, l + 2 * edge, w + 2 * edge, DASHED)];
  return { paper, base, foilAt, l, w, edge, guide, joint, items: [plate, foil, foilTab, ...cover] };
}

/** The fixed foil on its base, from above. */
export function foilOnBase(tuning: Tuning<'foil'>, sizes: FoilBase): Scene {
  const { paper, base, foilAt, l, w, joint, items } = basePlan(tuning, sizes, 12);
  const { at } = paper;
  const foot = at(0, 0)[1];
  const middle = at(foilAt[0] + l / 2, foilAt[1] + w / 2);
  const free = at(joint + 1.55 * l, base.h / 2);
  return stepScene(
    texts.titles.foilOnBase,
    paper.height,
    [
      ...items,
      ...onSheet([middle[0], middle[1] + 1], texts.fixedFoil, paper.mm(l)),
      ...onSheet([free[0], free[1] + 1], texts.base, paper.mm(0.9 * l)),
      label([at(joint, 0)[0], 4], tuning.dielectric === 'air' ? texts.dashedSpacers : texts.dashedDielectric, 'start'),
      ...lengthMark([at(0, 0)[0], foot + 4], [at(joint, 0)[0], foot + 4], texts.length(sizes.joint)),
      label([at(0, 0)[0], foot + 10], texts.tabLeft, 'start'),
    ],
    paper.drawnAt,
  );
}

/** The card pushed in over it, between its guides and against its stop. */
export function cardPushedIn(tuning: Tuning<'foil'>, sizes: FoilBase): Scene {
  const { paper, base, l, w, edge, guide, joint, items } = basePlan(tuning, sizes, 12);
  const { at } = paper;
  const handle = sizes.handle * 1e3;
  const foot = at(0, 0)[1];
  const right = at(joint + l + handle, 0)[0];
  return stepScene(
    texts.titles.cardPushedIn,
    paper.height,
    [
      items[0],
      sheet(paper, joint, 0, Math.min(2 * l, base.w - joint), guide, METAL),
      sheet(paper, joint, base.h - guide, Math.min(2 * l, base.w - joint), guide, METAL),
      sheet(paper, joint - edge, guide, edge, w + 2 * edge, METAL),
      sheet(paper, joint, guide, l + handle, w + 2 * edge, { ...OUTLINE, fill: 'paper' }),
      sheet(paper, joint + l, guide + edge, handle * 0.8, w, METAL),
      ...onSheet([at(joint + l / 2, 0)[0], at(0, base.h / 2)[1] + 1], texts.card, paper.mm(l)),
      label([at(joint - edge, 0)[0], 4], texts.stop),
      label([at(joint + 1.4 * l, 0)[0], 4], texts.guides),
      leader([at(joint + 1.4 * l, 0)[0], 4.6], at(joint + 1.4 * l, base.h - guide / 2)),
      ...moveArrow([right + 1, at(0, base.h / 2)[1]], [Math.min(right + 8, WIDTH - 2), at(0, base.h / 2)[1]]),
      label([at(joint + l, 0)[0], foot + 4], texts.handle),
      leader([at(joint + l + handle / 2, 0)[0], foot + 1], at(joint + l + handle / 2, guide + edge + w / 4)),
      label([at(0, 0)[0], foot + 10], texts.travel(tuning.length), 'start'),
    ],
    paper.drawnAt,
  );
}

/** A row of a section: what it is, and how it is drawn. */
interface Layer {
  readonly words: string;
  readonly from: number;
  readonly to: number;
  readonly high: number;
  readonly look: object;
}

/** Layers over one another, each named at the right. */
function layered(title: string, layers: readonly Layer[]): Scene {
  const step = 4.6;
  const height = layers.length * step + 3;
  return stepScene(
    title,
    height,
    layers.flatMap(({ words, from, to, high, look }, i): Item[] => {
      const y = 2 + i * step;
      return [
        rect(from, y + (3.2 - high) / 2, to - from, high, look),
        leader([to + 0.4, y + 1.6], [42.5, y + 1.6]),
        label([43.5, y + 2.7], words, 'start'),
      ];
    }),
  );
}

/** The order of sheets in section, foil by foil. @param sheets cards and base. */
export function foilLayers({ sheets, dielectric }: Tuning<'foil'>): Scene {
  const isAir = dielectric === 'air';
  const foil = { fill: 'ink' } as const;
  const moving = { from: 10, to: 40 };
  const fixed = { from: 4, to: 34 };
  const between: Layer = isAir
    ? { words: texts.air, from: 4, to: 34, high: 2, look: { ...FINE, dash: HIDDEN } }
    : { words: texts.dielectric, from: 3, to: 36, high: 1.2, look: { ...FINE, fill: 'card' } };
  const card = (words: string, place: typeof moving): Layer => ({ words, ...place, high: 2.6, look: CARD });
  const metal = (words: string, place: typeof moving): Layer => ({ words, ...place, high: 0.9, look: foil });
  const layers: Layer[] = [card(texts.base, { from: 2, to: 41 }), metal(texts.fixedFoil, fixed)];
  for (let i = 1; i < Math.min(sheets, 3); i++) {
    const isMoving = i % 2 === 1;
    const place = isMoving ? moving : fixed;
    const words = isMoving ? texts.movingFoil : texts.fixedFoil;
    layers.push(between, metal(words, place), card(texts.card, place));
    if (i < sheets - 1) layers.push(metal(words, place));
  }
  if (sheets > 3) layers.push({ words: texts.andSoOn, from: 4, to: 40, high: 0, look: { ...FINE, dash: HIDDEN } });
  return layered(texts.titles.foilLayers, layers.toReversed());
}

/** How a foil is joined to its wire: laid on the tab, folded in, clamped. */
export function tabClamped(): Scene {
  const y = 12;
  return stepScene(texts.titles.tabClamped, 28, [
    // The tab with the bare wire on it.
    rect(2, y - 5, 15, 10, METAL),
    drawnWire([17.5, y], [4, y]),
    rect(17.5, y - 0.9, 5, 1.8, CARD),
    label([10, 4.5], texts.onTab),
    ...moveArrow([24, y], [28, y]),
    // Folded over twice.
    rect(31, y - 1.8, 11, 3.6, METAL),
    line([31, y - 0.6], [42, y - 0.6], FINE),
    line([31, y + 0.6], [42, y + 0.6], FINE),
    rect(42, y - 0.9, 3.5, 1.8, CARD),
    label([36.5, 4.5], texts.folded),
    // Between washers, under a screw.
    rect(49, y + 3.4, 16, 3.4, CARD),
    rect(51, y + 2.2, 12, 1, METAL),
    rect(50, y - 0.2, 13, 2.2, METAL),
    rect(51, y - 1.4, 12, 1, METAL),
    rect(54.6, y - 4.4, 4.8, 2.8, METAL),
    rect(55.8, y + 6.8, 2.4, 4.4, METAL),
    rect(54, y + 7.4, 6, 2, METAL),
    label([57, 4.5], texts.clamped),
    label([33, 26.8], texts.twoWashers),
  ]);
}

/** Sizes of a tube capacitor's parts beyond its foil, m. */
export interface TubeSizes {
  readonly edge: number;
  readonly hand: number;
}

/** The inner tube with its foil, from the side. */
export function innerTubeWrapped(tuning: Tuning<'tubes'>, sizes: TubeSizes): Scene {
  const [l, d] = [tuning.length * 1e3, tuning.innerDiameter * 1e3];
  const [edge, hand] = [sizes.edge * 1e3, sizes.hand * 1e3];
  const paper = paperFor(
    { x: 0, y: 0, w: l + hand, h: d },
    { width: WIDTH, height: 44 },
    { left: 2, right: 2, top: 7, bottom: 12 },
  );
  const { at } = paper;
  const foot = at(0, 0)[1];
  const isAir = tuning.dielectric === 'air';
  return stepScene(
    texts.titles.innerTube,
    paper.height,
    [
      sheet(paper, 0, 0, l + hand, d, CARD),
      sheet(paper, 0, 0, l, d, METAL),
      sheet(paper, l, d * 0.35, Math.min(14, hand / 2), d * 0.3, METAL),
      isAir
        ? sheet(paper, 0, 0, 5, d, { ...OUTLINE, fill: 'paper' })
        : sheet(paper, 0, 0, l + edge, d, { ...DASHED, width: 0.5 }),
      label([at(l / 2, 0)[0], 4.5], isAir ? texts.collarAtEnd : texts.dashedDielectric),
      ...lengthMark([at(0, 0)[0], foot + 4], [at(l, 0)[0], foot + 4], texts.foilLength(tuning.length)),
      label([at(0, 0)[0], foot + 10], texts.tabToHand, 'start'),
    ],
    paper.drawnAt,
  );
}

/** What is wound over the inner tube, from the end. */
export function tubeLayers({ dielectric }: Tuning<'tubes'>): Scene {
  const centre: Point = [19, 19];
  const rings: readonly { readonly r: number; readonly look: object; readonly words: string }[] = [
    { r: 16.5, look: { stroke: 'ink', width: 0.9 }, words: texts.stiffPaper },
    { r: 14.2, look: { stroke: 'ink', width: 0.7 }, words: texts.outerFoil },
    { r: 12, look: { ...FINE, dash: HIDDEN }, words: texts.loosePaper },
    ...(dielectric === 'air' ? [] : [{ r: 10, look: { ...FINE }, words: texts.dielectric }]),
    { r: 8, look: { stroke: 'ink', width: 0.7 }, words: texts.innerFoil },
    { r: 6, look: OUTLINE, words: texts.innerTube },
  ];
  return stepScene(
    texts.titles.tubeLayers,
    38,
    rings.flatMap(({ r, look, words }, i): Item[] => {
      const y = 5.5 + i * 6;
      const angle = Math.asin(Math.max(-0.95, Math.min(0.95, (y - 1 - centre[1]) / 18)));
      return [
        circle(centre, r, look),
        leader([centre[0] + r * Math.cos(angle), centre[1] + r * Math.sin(angle)], [40.5, y - 1]),
        label([41.5, y], words, 'start'),
      ];
    }),
  );
}

/** The tubes on their board, the inner one drawn half out. */
export const tubesInCradle = (travel: number): Scene =>
  stepScene(texts.titles.cradle, 31, [
    rect(2, 20, 62, 2.4, CARD),
    ...[10, 26].map((x) => rect(x, 14, 5, 6, METAL)),
    rect(6, 7, 28, 8, CARD),
    rect(20, 8.4, 14, 5.2, { ...DASHED }),
    rect(34, 8.4, 20, 5.2, { ...OUTLINE, fill: 'paper' }),
    wirePath(['M', 52, 13.6], ['C', 52, 19, 44, 16, 44, 19.4]),
    ...moveArrow([55, 11], [64, 11]),
    label([20, 5.4], texts.outerTube),
    label([46, 6.6], texts.innerTube),
    label([50, 26], texts.looseLead),
    leader([46, 23.6], [44.6, 18]),
    label([2, 29.6], texts.travel(travel), 'start'),
  ]);

/** Sizes of a book's leaves beyond its foil, m. */
export interface LeafSizes {
  readonly hinge: number;
  readonly edge: number;
  readonly tab: number;
}

/** The two leaves opened flat, from the inside. */
export function leavesOpened(tuning: Tuning<'book'>, sizes: LeafSizes): Scene {
  const [l, w] = [tuning.length * 1e3, tuning.width * 1e3];
  const [hinge, edge, tab] = [sizes.hinge * 1e3, sizes.edge * 1e3, sizes.tab * 1e3];
  const leaf = { w: l + hinge + tab, h: w + 2 * edge };
  const paper = paperFor(
    { x: -leaf.w, y: 0, w: 2 * leaf.w, h: leaf.h },
    { width: WIDTH, height: 52 },
    { left: 2, right: 2, top: 7, bottom: 7 },
  );
  const { at } = paper;
  const foot = at(0, 0)[1];
  const strip = w / 4;
  const y = at(0, leaf.h / 2)[1] + 1;
  return stepScene(
    texts.titles.leaves,
    paper.height,
    [
      sheet(paper, -leaf.w, 0, leaf.w, leaf.h, CARD),
      sheet(paper, 0, 0, leaf.w, leaf.h, CARD),
      sheet(paper, -hinge - l, edge, l, w, METAL),
      sheet(paper, hinge, edge, l, w, METAL),
      // One tab at either side: they face each other's free corner when the book is shut.
      sheet(paper, -hinge - l - tab, edge, tab, strip, METAL),
      sheet(paper, hinge + l, edge + w - strip, tab, strip, METAL),
      tuning.dielectric === 'air'
        ? sheet(paper, hinge, 0, l, edge, DASHED)
        : sheet(paper, 0, 0, hinge + l + edge, leaf.h, DASHED),
      ...onSheet([at(-leaf.w / 2, 0)[0], y], texts.upperLeaf, paper.mm(l)),
      ...onSheet([at(leaf.w / 2, 0)[0], y], texts.lowerLeaf, paper.mm(l)),
      label([at(0, 0)[0], 4.5], texts.hinge),
      label([33, foot + 5], tuning.dielectric === 'air' ? texts.dashedSpacers : texts.dashedDielectric),
    ],
    paper.drawnAt,
  );
}

/** The book from the side, held open by its screw against a rubber band. */
export const bookFromSide = (): Scene =>
  stepScene(texts.titles.bookSide, 33, [
    rect(4, 26, 58, 2.4, CARD),
    rect(10, 23, 44, 2.4, CARD),
    polyline(
      [
        [10, 22.4],
        [52, 9],
        [52.8, 11.2],
        [10.6, 24.6],
      ],
      { ...CARD, closed: true },
    ),
    circle([10, 23.4], 1.4, { ...OUTLINE, fill: 'paper' }),
    path(
      [
        ['M', 25, 16.2],
        ['C', 22, 18, 22, 27, 25, 29],
        ['C', 28, 27, 28, 18, 25, 16.2],
      ],
      DASHED,
    ),
    drawnWire([46, 6], [46, 23]),
    rect(44, 4.6, 4, 1.6, METAL),
    label([50, 5], texts.opener, 'start'),
    label([6, 19], texts.hinge),
    label([24, 13], texts.rubberBand),
    ...moveArrow([58, 20], [58, 11]),
    label([33, 32.4], texts.turnToOpen),
  ]);

/** Vanes and washers in turn on the spindle and the rods, in section. */
export function vanesStacked(): Scene {
  const items: Item[] = [];
  const [spindle, rod] = [9, 24];
  for (let i = 0; i < 5; i++) {
    const x = 12 + i * 8;
    items.push(rect(x, spindle - 6, 1.2, 14, METAL));
    if (i < 4) items.push(rect(x + 1.2, spindle - 2.4, 6.8, 4.8, CARD));
    items.push(rect(x - 4, spindle + 3, 1.2, 16, { ...OUTLINE, fill: 'ink' }));
    if (i < 4) items.push(rect(x - 2.8, rod - 2, 6.8, 4, CARD));
  }
  return stepScene(texts.titles.vanes, 36, [
    rect(5, spindle - 1.2, 46, 2.4, OUTLINE),
    rect(4, rod - 0.8, 46, 1.6, OUTLINE),
    ...items,
    label([52, spindle + 1], texts.spindle, 'start'),
    label([52, rod + 1], texts.rod, 'start'),
    label([4, 34.8], texts.vanesBlack, 'start'),
  ]);
}

/** A moving vane midway between two fixed ones. @param gap on either side, m. */
export const vaneMidway = (gap: number): Scene =>
  stepScene(texts.titles.midway, 25, [
    rect(4, 4, 34, 1.6, { ...OUTLINE, fill: 'ink' }),
    rect(12, 10, 34, 1.6, METAL),
    rect(4, 16, 34, 1.6, { ...OUTLINE, fill: 'ink' }),
    ...lengthMark([42, 5.6], [42, 10], texts.length(gap)),
    ...lengthMark([42, 11.6], [42, 16], texts.length(gap)),
    label([4, 23.6], texts.equalGaps, 'start'),
  ]);

import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import {
  bookFromSide,
  cardPushedIn,
  foilLayers,
  foilOnBase,
  innerTubeWrapped,
  leavesOpened,
  tabClamped,
  tubeLayers,
  tubesInCradle,
  vaneMidway,
  vanesStacked,
} from '../../drawings/making/index.ts';
import {
  bookCapacitorSteps,
  dielectricNames,
  foilCapacitorSteps,
  capacitorMaterial as material,
  capacitorParts as parts,
  tubeCapacitorSteps,
  vaneCapacitorSteps,
} from '../../words/index.ts';
import type { StepGroup } from '../paper/flow.ts';

export type Tuning<K extends TuningDescription['kind']> = Extract<TuningDescription, { kind: K }>;
export type HomeMade = Tuning<'vanes' | 'foil' | 'tubes' | 'book'>;

const HOME_MADE: Record<TuningDescription['kind'], boolean> = {
  variable: false,
  vanes: true,
  measured: false,
  foil: true,
  tubes: true,
  book: true,
  fixed: false,
};
export const homeMade = (t: TuningDescription): t is HomeMade => HOME_MADE[t.kind];

/** Of foils, m: the tab by which a foil is joined, what its dielectric reaches beyond it, and how far it stays from a hinge. */
export const TAB = 0.014;
export const EDGE = 0.005;
export const HINGE = 0.003;
/** Widths of the wooden and card parts about the foils, m. Common practice, no source. */
const GUIDE = 0.012;
const JOINT = 0.025;
const HANDLE = 0.03;
const HAND = 0.08;
const FOIL_SIZES = { joint: JOINT, edge: EDGE, guide: GUIDE, tab: TAB, handle: HANDLE } as const;
/** What an outer tube is longer than its foil, m. */
const MOUTH = 0.02;
/** A lead that moves is so much longer than its travel, m. */
const SLACK = 0.08;

export const movingOf = (pieces: number): number => Math.floor(pieces / 2);
export const fixedOf = (pieces: number): number => pieces - movingOf(pieces);
/** Foils to cut: a sheet in the midst of others has foil on both its faces. */
export const foilsOf = (t: Tuning<'foil'>): number => 2 * (t.sheets - 1);

/** Part, number, size and material. */
type Row = readonly [part: string, number: number | '', material: string];

/** What holds and joins anything made of foil. */
const fastenings = (travel: number): Row[] => [
  [parts.joints, 2, material.joints],
  [parts.leads, 2, material.leads(travel + SLACK)],
  [parts.glue, '', material.glue],
];

const MATERIALS: ByKind<HomeMade, Row[]> = {
  vanes: vaneMaterials,
  foil: foilMaterials,
  tubes: tubeMaterials,
  book: bookMaterials,
};
type Steps = readonly StepGroup[];
const STEPS: ByKind<HomeMade, Steps> = { vanes: vaneSteps, foil: foilSteps, tubes: tubeSteps, book: bookSteps };

/** Everything that its steps speak of: part, number, size and material. */
export const capacitorMaterials = (t: HomeMade): string[][] =>
  byKind(MATERIALS, t).map(([part, number, size]) => [part, `${number}`, size]);

/** How it is made, step by step. */
export const capacitorSteps = (t: HomeMade): Steps => byKind(STEPS, t);

function vaneMaterials({ vanes, gap, dielectric }: Tuning<'vanes'>): Row[] {
  const [moving, fixed] = [movingOf(vanes), fixedOf(vanes)];
  const rows: Row[] = [[parts.vanes, vanes, material.vanes({ moving, fixed })]];
  if (moving > 1) rows.push([parts.spindleWashers, moving - 1, material.spindleWashers(gap)]);
  if (fixed > 1) rows.push([parts.rodWashers, 3 * (fixed - 1), material.rodWashers(gap)]);
  rows.push([parts.airGap, '', material.airGap(gap)]);
  if (dielectric !== 'air') rows.push([dielectricNames[dielectric].title, vanes - 1, material.vaneDielectric]);
  return [
    ...rows,
    [parts.spindle, 1, material.spindle],
    [parts.rods, 3, material.rods],
    [parts.endPlates, 2, material.endPlates],
    [parts.leads, 2, material.vaneLeads],
  ];
}

function vaneSteps({ vanes, gap }: Tuning<'vanes'>): Steps {
  const steps = vaneCapacitorSteps;
  const [moving, fixed] = [movingOf(vanes), fixedOf(vanes)];
  return [
    { lines: steps.cut },
    {
      lines: [
        ...(moving > 1 ? steps.movingVanes(moving) : steps.movingVane),
        ...(fixed > 1 ? steps.fixedVanes(fixed) : steps.fixedVane),
      ],
      picture: vanesStacked(),
    },
    { lines: steps.align, picture: vaneMidway(gap) },
    { lines: steps.join },
  ];
}

function foilMaterials(t: Tuning<'foil'>): Row[] {
  const { length, width, thickness, sheets, dielectric } = t;
  const isPile = sheets > 2;
  const card = { length: length + HANDLE, width: width + 2 * EDGE };
  const guide = { length: 2 * length, width: GUIDE };
  const base = { length: 2 * length + JOINT + 0.01, width: width + 2 * EDGE + 2 * GUIDE };
  const covering = { length: length + 2 * EDGE, width: width + 2 * EDGE, thickness, edge: EDGE };
  return [
    [parts.base, 1, material.base(base)],
    [parts.foil, foilsOf(t), material.foil({ length, width })],
    dielectric === 'air'
      ? [parts.spacers, 2 * (sheets - 1), material.spacers({ length: 2 * length, width: EDGE, thickness })]
      : [dielectricNames[dielectric].title, sheets - 1, material.foilDielectric(covering)],
    [
      parts.cards,
      sheets - 1,
      isPile ? material.cards({ ...card, moving: movingOf(sheets) }) : material.movingCard(card),
    ],
    [parts.handle, 1, material.handle],
    [parts.guides, 2, isPile ? material.guidesByPile(guide) : material.guides(guide)],
    [parts.stop, 1, material.stop({ length: width + 2 * EDGE, width: EDGE })],
    [parts.pressingBoard, 1, material.pressingBoard({ length, width })],
    ...fastenings(length),
  ];
}

function foilSteps(tuning: Tuning<'foil'>): Steps {
  const { sheets, dielectric } = tuning;
  const steps = foilCapacitorSteps;
  const foil = { dielectric, edge: EDGE, joint: JOINT };
  const isPile = sheets > 2;
  const isAir = dielectric === 'air';
  const fixed = isAir
    ? (isPile ? steps.fixed.airPile : steps.fixed.air)(foil)
    : (isPile ? steps.fixed.dielectricPile : steps.fixed.dielectric)(foil);
  const pile = isAir ? steps.moving.airPile : steps.moving.dielectricPile(foil);
  return [
    { lines: steps.cut },
    { lines: fixed, picture: foilOnBase(tuning, FOIL_SIZES) },
    { lines: isPile ? pile : steps.moving.single, picture: foilLayers(tuning) },
    {
      lines: [...steps.handle, ...steps.stop, ...(isAir ? steps.pressAir : steps.press)],
      picture: cardPushedIn(tuning, FOIL_SIZES),
    },
    { lines: steps.join, picture: tabClamped() },
  ];
}

function tubeMaterials({ length, innerDiameter, gap, dielectric }: Tuning<'tubes'>): Row[] {
  const long = length + MOUTH;
  return [
    [parts.innerTube, 1, material.innerTube({ outside: innerDiameter, length: length + HAND, hold: HAND })],
    [parts.outerTube, 1, material.outerTube({ inside: innerDiameter + 2 * gap, length: long })],
    [parts.foil, 2, material.foilByTemplates],
    dielectric === 'air'
      ? [parts.collars, 2, material.collars(gap)]
      : [dielectricNames[dielectric].title, 1, material.tubeDielectric({ width: length + 2 * EDGE, thickness: gap })],
    [parts.stiffPaper, 1, material.stiffPaper(long)],
    [parts.cradle, 2, material.cradle],
    ...fastenings(length),
  ];
}

function tubeSteps(tuning: Tuning<'tubes'>): Steps {
  const { dielectric, length } = tuning;
  const steps = tubeCapacitorSteps;
  const isAir = dielectric === 'air';
  return [
    {
      lines: isAir ? steps.innerAir : steps.inner({ dielectric, edge: EDGE }),
      picture: innerTubeWrapped(tuning, { edge: EDGE, hand: HAND }),
    },
    { lines: isAir ? steps.outerAir : steps.outer, picture: tubeLayers(tuning) },
    { lines: steps.cradle, picture: tubesInCradle(length) },
    { lines: steps.join, picture: tabClamped() },
  ];
}

function bookMaterials({ length, width, thickness, dielectric }: Tuning<'book'>): Row[] {
  const across = width + 2 * EDGE;
  return [
    [parts.leaves, 2, material.leaves({ length: length + HINGE + TAB, width: across })],
    [parts.foil, 2, material.foilFromHinge({ length, width })],
    dielectric === 'air'
      ? [parts.spacers, 2, material.spacers({ length, width: EDGE, thickness })]
      : [
          dielectricNames[dielectric].title,
          1,
          material.bookDielectric({ length: length + HINGE + EDGE, width: across, thickness }),
        ],
    [parts.hinge, 1, material.hinge(across)],
    [parts.opener, 1, material.opener],
    ...fastenings(length),
  ];
}

function bookSteps(tuning: Tuning<'book'>): Steps {
  const { dielectric } = tuning;
  const steps = bookCapacitorSteps;
  return [
    {
      lines: [
        ...steps.foil(HINGE),
        ...(dielectric === 'air' ? steps.spacers : steps.dielectric({ dielectric, edge: EDGE })),
        ...steps.hinge,
      ],
      picture: leavesOpened(tuning, { hinge: HINGE, edge: EDGE, tab: TAB }),
    },
    { lines: steps.join, picture: tabClamped() },
    { lines: steps.opener, picture: bookFromSide() },
  ];
}

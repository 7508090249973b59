import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { CHEEK_THICKNESS, cheekDiameter, endsWhereItStarts, placeInPile } from '../../drawings/coil/cheek.ts';
import { type CoilOf, close, overall, SPARE, type Tap, type WoundDescription } from '../../drawings/coil/drawn.ts';
import {
  banks,
  bareEnd,
  basketWeave,
  cheeksOn,
  pileTap as drawnPileTap,
  endHoles,
  layers,
  pileEnd,
  pileStart,
  ringWound,
  spiderWeave,
  spiralOutward,
  startHoles,
  tapMade,
  windingOn,
} from '../../drawings/winding/index.ts';
import {
  basketSteps,
  coreSteps,
  type Insulation,
  pileSteps,
  spiderSteps,
  spiralSteps,
  tubeSteps,
  windingSteps,
} from '../../words/index.ts';
import type { StepGroup } from '../paper/flow.ts';
import { gapOf, isTouching, pitchOf, tubeLength } from './coil-kinds.ts';
import { HOLES_APART, HOLES_FROM_END } from './coil-templates.ts';
import { TAIL } from './winding.ts';

/** Of the ends of the wire, m. */
const BARE = 0.01;
const HOLES = { apart: HOLES_APART / 1e3, fromEnd: HOLES_FROM_END / 1e3 } as const;

type Steps = readonly StepGroup[];
/** Steps that no picture would make clearer. */
const plain = (...lines: readonly string[]): StepGroup => ({ lines });
type Making = readonly [model: CoilModel, taps: readonly Tap[]];

/** A tap as it is made where nothing is wound over it. */
const tapSteps = (taps: readonly Tap[]): Steps =>
  taps.length > 0 ? [{ lines: windingSteps.tap(taps), picture: tapMade(taps.map(({ turn }) => turn)) }] : [];

/** What must be scraped off the ends; bare wire of one strand has nothing on it. */
function insulationOf({ wire }: WoundDescription): Insulation | undefined {
  if (wire.covering === 'bare') return (wire.strands ?? 1) > 1 ? 'enamel' : undefined;
  return ENAMELLED.has(wire.covering) ? 'enamel' : 'covering';
}
const ENAMELLED: ReadonlySet<WoundDescription['wire']['covering']> = new Set([
  'enamel',
  'enamel and cotton',
  'enamel and silk',
]);

function scrapeSteps(coil: WoundDescription, taps: readonly Tap[]): Steps {
  const insulation = insulationOf(coil);
  if (insulation === undefined) return [];
  const words = taps.length > 0 ? windingSteps.scrapeTapped(insulation) : windingSteps.scrape(insulation);
  return [{ lines: [words], picture: bareEnd(BARE) }];
}

/** On a tube, by how the turns are laid on it. */
function onTube(coil: CoilOf<'solenoid' | 'bank-wound'>, wind: StepGroup, [model, taps]: Making): Steps {
  return [
    {
      lines: tubeSteps.start({ ...HOLES, tube: tubeLength(model), spare: SPARE / 1e3, tail: TAIL }),
      picture: startHoles({ ...HOLES, begins: SPARE / 1e3 }),
    },
    { ...wind, lines: [...wind.lines, windingSteps.tally] },
    ...tapSteps(taps),
    { lines: tubeSteps.end({ turns: model.turns, fromEnd: HOLES.fromEnd }), picture: endHoles(HOLES) },
    ...scrapeSteps(coil, taps),
    plain(...windingSteps.varnish),
  ];
}

function inOneLayer(coil: CoilOf<'solenoid'>): StepGroup {
  if (isTouching(coil)) return { lines: tubeSteps.windClose, picture: windingOn() };
  const gap = gapOf(coil) / 1e3;
  return { lines: tubeSteps.windSpaced({ gap }), picture: windingOn(gap) };
}

const WINDING_STEPS: ByKind<WoundDescription, Steps, [...Making]> = {
  solenoid: (coil, ...making) => onTube(coil, inOneLayer(coil), making),
  'bank-wound': (coil, ...making) =>
    onTube(coil, { lines: tubeSteps.windBanks({ banks: coil.layers }), picture: banks(coil.layers) }, making),
  multilayer: pile,
  spiral: (coil, model, taps) => [
    plain(...spiralSteps.start),
    {
      lines: isTouching(coil) ? spiralSteps.windClose : spiralSteps.windSpaced(pitchOf(coil) / 1e3),
      picture: spiralOutward(isTouching(coil)),
    },
    ...tapSteps(taps),
    plain(...spiralSteps.end(model.turns)),
    ...scrapeSteps(coil, taps),
  ],
  spider: (coil, model, taps) => [
    plain(...spiderSteps.cut),
    {
      lines: [...spiderSteps.wind({ slots: coil.slots, over: coil.over, tail: TAIL }), windingSteps.tally],
      picture: spiderWeave(coil.over),
    },
    ...tapSteps(taps),
    plain(...spiderSteps.end(model.turns)),
    ...scrapeSteps(coil, taps),
  ],
  basket: (coil, model, taps) => [
    plain(...basketSteps.pegs(coil.pegs)),
    { lines: [...basketSteps.wind(coil.over), windingSteps.tally], picture: basketWeave(coil.over) },
    ...tapSteps(taps),
    plain(...basketSteps.end(model.turns)),
    ...scrapeSteps(coil, taps),
  ],
  core: (coil, _, taps) => [
    { lines: [...coreSteps.wind, windingSteps.tally], picture: coil.form === 'toroid' ? ringWound() : undefined },
    ...tapSteps(taps),
    ...scrapeSteps(coil, taps),
  ],
};

/** How a coil is wound, step by step. */
export const stepsFor = (coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): Steps =>
  byKind(WINDING_STEPS, coil, model, taps);

/** Paper thinner than this between layers, m, is no spacer. */
const NO_PAPER = 5e-5;
/** A loop of this length is twisted where a tap leaves, m. */
const LOOP = 0.04;

/** Layers between cheeks, with taps that later layers cover. */
function pile(coil: CoilOf<'multilayer'>, model: CoilModel, taps: readonly Tap[]): Steps {
  const across = cheekDiameter(coil) / 1e3;
  const end = { turns: model.turns, fromEnd: HOLES.fromEnd };
  const placed = { fromEnd: (SPARE - CHEEK_THICKNESS) / 1e3, length: model.windingLength };
  const same = endsWhereItStarts(coil);
  return [
    { lines: pileSteps.cheeks({ tube: tubeLength(model), ...placed }), picture: cheeksOn(placed) },
    { lines: pileSteps.start({ ...HOLES, tail: TAIL }), picture: pileStart(HOLES) },
    { lines: [...layerStep(coil), windingSteps.tally], picture: layers(coil.layers, paperOf(coil) > NO_PAPER) },
    ...taps.map((tap) => pileTap(coil, tap)),
    { lines: same ? pileSteps.endAtStart(end) : pileSteps.endAtOther(end), picture: pileEnd(same) },
    ...scrapeSteps(coil, taps),
    plain(...windingSteps.varnish, pileSteps.mount((across - coil.formerDiameter) / 2)),
  ];
}

/** Between layers, m. */
const paperOf = (coil: CoilOf<'multilayer'>): number => (coil.layerSpacing ?? close(coil) / 1e3) - overall(coil) / 1e3;

function layerStep(coil: CoilOf<'multilayer'>): readonly string[] {
  const layer = {
    turns: coil.turnsPerLayer,
    gap: gapOf(coil) / 1e3,
    layers: coil.layers,
    paper: paperOf(coil),
  };
  const isClose = isTouching(coil);
  if (coil.layers === 1) return isClose ? pileSteps.closeLayer(layer) : pileSteps.spacedLayer(layer);
  if (layer.paper > NO_PAPER)
    return isClose ? pileSteps.closeLayersWithPaper(layer) : pileSteps.spacedLayersWithPaper(layer);
  return isClose ? pileSteps.closeLayers(layer) : pileSteps.spacedLayers(layer);
}

function pileTap(coil: CoilOf<'multilayer'>, { name, turn }: Tap): StepGroup {
  const { layer, toCheek, nearer, buried } = placeInPile(coil, turn);
  const tap = {
    name,
    turn,
    layer,
    nearer,
    toCheek: Math.max(1, Math.round(toCheek)) / 1e3,
    loop: Math.ceil(LOOP * 1e3 + toCheek) / 1e3,
  };
  const lines = buried ? pileSteps.buriedTap(tap) : pileSteps.tap(tap);
  return { lines, picture: drawnPileTap([turn], nearer) };
}

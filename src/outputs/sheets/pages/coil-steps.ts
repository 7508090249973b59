import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { CHEEK_THICKNESS, cheekDiameter, endsWhereItStarts, placeInPile } from '../../drawings/coil/cheek.ts';
import { type CoilOf, close, overall, SPARE, type Tap, type WoundDescription } from '../../drawings/coil/drawn.ts';
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
import { gapOf, isTouching, pitchOf, tubeLength } from './coil-kinds.ts';
import { HOLES_APART, HOLES_FROM_END } from './coil-templates.ts';
import { TAIL } from './winding.ts';

const HOLES = { apart: HOLES_APART / 1e3, fromEnd: HOLES_FROM_END / 1e3 } as const;

type Steps = readonly string[];
type Making = readonly [model: CoilModel, taps: readonly Tap[]];

/** A tap as it is made where nothing is wound over it. */
const tapSteps = (taps: readonly Tap[]): Steps => (taps.length > 0 ? [windingSteps.tap(taps)] : []);

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
  return [taps.length > 0 ? windingSteps.scrapeTapped(insulation) : windingSteps.scrape(insulation)];
}

/** On a tube, by how the turns are laid on it. */
function onTube(coil: CoilOf<'solenoid' | 'bank-wound'>, wind: string, [model, taps]: Making): Steps {
  return [
    tubeSteps.start({ ...HOLES, tube: tubeLength(model), spare: SPARE / 1e3, tail: TAIL }),
    wind,
    windingSteps.tally,
    ...tapSteps(taps),
    tubeSteps.end({ turns: model.turns, fromEnd: HOLES.fromEnd, length: model.windingLength }),
    ...scrapeSteps(coil, taps),
    windingSteps.varnish,
  ];
}

const WINDING_STEPS: ByKind<WoundDescription, Steps, [...Making]> = {
  solenoid: (coil, ...making) =>
    onTube(coil, isTouching(coil) ? tubeSteps.windClose : tubeSteps.windSpaced({ gap: gapOf(coil) / 1e3 }), making),
  'bank-wound': (coil, ...making) => onTube(coil, tubeSteps.windBanks({ banks: coil.layers }), making),
  multilayer: pile,
  spiral: (coil, model, taps) => [
    spiralSteps.start,
    isTouching(coil) ? spiralSteps.windClose : spiralSteps.windSpaced(pitchOf(coil) / 1e3),
    ...tapSteps(taps),
    spiralSteps.end(model.turns),
    ...scrapeSteps(coil, taps),
  ],
  spider: (coil, model, taps) => [
    spiderSteps.cut,
    spiderSteps.wind({ slots: coil.slots, over: coil.over, tail: TAIL }),
    windingSteps.tally,
    ...tapSteps(taps),
    spiderSteps.end(model.turns),
    ...scrapeSteps(coil, taps),
  ],
  basket: (coil, model, taps) => [
    basketSteps.pegs(coil.pegs),
    basketSteps.wind(coil.over),
    windingSteps.tally,
    ...tapSteps(taps),
    basketSteps.end(model.turns),
    ...scrapeSteps(coil, taps),
  ],
  core: (coil, _, taps) => [coreSteps.wind, windingSteps.tally, ...tapSteps(taps), ...scrapeSteps(coil, taps)],
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
  const end = { turns: model.turns, fromEnd: HOLES.fromEnd, outer: model.outerDiameter };
  return [
    pileSteps.cheeks({
      tube: tubeLength(model),
      fromEnd: (SPARE - CHEEK_THICKNESS) / 1e3,
      length: model.windingLength,
    }),
    pileSteps.start({ ...HOLES, tail: TAIL }),
    layerStep(coil),
    windingSteps.tally,
    ...taps.map((tap) => pileTap(coil, tap)),
    endsWhereItStarts(coil) ? pileSteps.endAtStart(end) : pileSteps.endAtOther(end),
    ...scrapeSteps(coil, taps),
    windingSteps.varnish,
    pileSteps.mount((across - coil.formerDiameter) / 2),
  ];
}

function layerStep(coil: CoilOf<'multilayer'>): string {
  const spacing = coil.layerSpacing ?? close(coil) / 1e3;
  const layer = {
    turns: coil.turnsPerLayer,
    gap: gapOf(coil) / 1e3,
    layers: coil.layers,
    paper: spacing - overall(coil) / 1e3,
  };
  const isClose = isTouching(coil);
  if (coil.layers === 1) return isClose ? pileSteps.closeLayer(layer) : pileSteps.spacedLayer(layer);
  if (layer.paper > NO_PAPER)
    return isClose ? pileSteps.closeLayersWithPaper(layer) : pileSteps.spacedLayersWithPaper(layer);
  return isClose ? pileSteps.closeLayers(layer) : pileSteps.spacedLayers(layer);
}

function pileTap(coil: CoilOf<'multilayer'>, { name, turn }: Tap): string {
  const { layer, toCheek, nearer, buried } = placeInPile(coil, turn);
  const tap = {
    name,
    turn,
    layer,
    nearer,
    toCheek: Math.max(1, Math.round(toCheek)) / 1e3,
    loop: Math.ceil(LOOP * 1e3 + toCheek) / 1e3,
  };
  return buried ? pileSteps.buriedTap(tap) : pileSteps.tap(tap);
}

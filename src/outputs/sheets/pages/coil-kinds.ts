import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import { placeInPile } from '../../drawings/coil/cheek.ts';
import { type CoilOf, close, overall, SPARE, type WoundDescription } from '../../drawings/coil/drawn.ts';
import { coilSheetWords, formerText, windingText } from '../../words/index.ts';

type Tube = CoilOf<'solenoid' | 'multilayer' | 'bank-wound'>;
type FormerMaterial = Tube['former'];

/** Formers that take up water from the air. */
const ABSORBS_WATER: Record<FormerMaterial, boolean> = {
  air: false,
  card: true,
  'damp card': true,
  wood: true,
  phenolic: false,
  styrene: false,
  ebonite: false,
  glass: false,
  ceramic: false,
  PVC: false,
  plywood: true,
  'waxed card': false,
  hardboard: true,
  acrylic: false,
  ABS: false,
  PLA: false,
  polycarbonate: false,
  polyethylene: false,
  polypropylene: false,
  fibreglass: false,
};

const tubeFormer = ({ former, formerDiameter: diameter }: Tube): string => {
  if (former === 'air') return formerText.airTube({ diameter });
  return ABSORBS_WATER[former] ? formerText.dampTube({ former, diameter }) : formerText.tube({ former, diameter });
};

const FORMER: ByKind<WoundDescription, string> = {
  solenoid: tubeFormer,
  multilayer: tubeFormer,
  'bank-wound': tubeFormer,
  spiral: ({ former, innerDiameter: inner }) =>
    former === 'air' ? formerText.airFlat({ inner }) : formerText.flat({ former, inner }),
  spider: ({ former, discThickness, slots, innerDiameter }) =>
    formerText.spider({ former, thickness: discThickness, slots, hub: innerDiameter }),
  basket: ({ pegs, pegDiameter, pegCircle }) => formerText.basket({ pegs, peg: pegDiameter, circle: pegCircle }),
  core: formerText.core,
};

/** What a coil is wound on. */
export const formerOf = (coil: WoundDescription): string => byKind(FORMER, coil);

const PITCH: ByKind<WoundDescription, number> = {
  solenoid: (coil) => (coil.pitch === undefined ? close(coil) : coil.pitch * 1e3),
  spiral: (coil) => (coil.pitch === undefined ? close(coil) : coil.pitch * 1e3),
  spider: overall,
  multilayer: close,
  'bank-wound': close,
  basket: close,
  core: close,
};

/** Turn to turn, mm. */
export const pitchOf = (coil: WoundDescription): number => byKind(PITCH, coil);
/** From turn to turn, and what of it lies between two of them, mm. */
export const gapOf = (coil: WoundDescription): number => pitchOf(coil) - overall(coil);
/** Turns that touch, but for what hands leave. */
export const isTouching = (coil: WoundDescription): boolean => gapOf(coil) < Math.max(0.05, 0.03 * overall(coil));

/** How long a tube is cut, m. */
export const tubeLength = (model: CoilModel): number => model.windingLength + (2 * SPARE) / 1e3;

const WINDING: ByKind<WoundDescription, string, [CoilModel]> = {
  solenoid: (coil, { windingLength: length }) =>
    isTouching(coil)
      ? windingText.closeLayer({ length })
      : windingText.spacedLayer({ length, pitch: pitchOf(coil) / 1e3, gap: gapOf(coil) / 1e3 }),
  multilayer: ({ layers, turnsPerLayer, layerSpacing: apart }, { windingLength: length, outerDiameter: outer }) => {
    const pile = { layers, turnsPerLayer, length, outer };
    return apart ? windingText.spacedLayers({ ...pile, apart }) : windingText.layers(pile);
  },
  'bank-wound': ({ layers: banks }, { windingLength: length, outerDiameter: outer }) =>
    windingText.banks({ banks, length, outer }),
  spiral: ({ pitch }, { outerDiameter: outer }) =>
    pitch ? windingText.spacedSpiral({ pitch, outer }) : windingText.closeSpiral({ outer }),
  spider: ({ over }, { outerDiameter: outer }) => windingText.spider({ over, outer }),
  basket: ({ over }, { windingLength: height }) => windingText.basket({ over, height }),
  core: () => windingText.core,
};

/** How the turns lie. */
export const turnsLieText = (coil: WoundDescription, model: CoilModel): string => byKind(WINDING, coil, model);

interface TapPlace {
  /** Title of the column. */
  readonly title: string;
  /** Where a turn comes to lie. */
  readonly at: (turn: number) => string;
}

const millimetres = (x: number): string => `${formatNumber(x, 3)} mm`;
const acrossAt = (coil: CoilOf<'spiral' | 'spider'>): TapPlace => ({
  title: coilSheetWords.places.diameter,
  at: (turn) => millimetres(coil.innerDiameter * 1e3 + 2 * turn * pitchOf(coil)),
});

const TAP_PLACE: ByKind<WoundDescription, TapPlace> = {
  solenoid: (coil) => ({
    title: coilSheetWords.places.fromFirstTurn,
    at: (turn) => millimetres(turn * pitchOf(coil)),
  }),
  'bank-wound': (coil) => ({
    title: coilSheetWords.places.fromFirstTurn,
    at: (turn) => millimetres((turn * pitchOf(coil)) / coil.layers),
  }),
  multilayer: (coil) => ({
    title: coilSheetWords.places.layer,
    at: (at) => {
      const { layer, turnInLayer: turn } = placeInPile(coil, at);
      return coilSheetWords.places.inLayer({ layer, turn });
    },
  }),
  basket: (coil) => ({ title: coilSheetWords.places.height, at: (turn) => millimetres(turn * overall(coil)) }),
  spiral: acrossAt,
  spider: acrossAt,
  // Turns are spread over the core as they come: a tap is found by counting alone.
  core: () => ({ title: coilSheetWords.places.counted, at: () => '—' }),
};

/** Where the taps of a coil are found on it. */
export const tapPlaceOf = (coil: WoundDescription): TapPlace => byKind(TAP_PLACE, coil);

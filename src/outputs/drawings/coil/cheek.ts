import { coilModel } from '../../../engine/kinds/models.ts';
import type { CoilOf } from './drawn.ts';

/** Rings of card between which a pile of layers is wound; thickness, and how far they stand out beyond the last layer, mm. */
export const CHEEK_THICKNESS = 2;
const CHEEK_MARGIN = 4;

/** Across the ring, whole mm. */
export const cheekDiameter = (coil: CoilOf<'multilayer'>): number =>
  Math.ceil(coilModel(coil).outerDiameter * 1e3 + 2 * CHEEK_MARGIN);

/** After an even number of layers the wire is back at the cheek it began by. */
export const endsWhereItStarts = (coil: CoilOf<'multilayer'>): boolean => coil.layers % 2 === 0;

export interface PlaceInPile {
  /** From 1. */
  readonly layer: number;
  /** Turns of that layer wound by then. */
  readonly turnInLayer: number;
  /** Distance from the cheek at the start, and to the nearer cheek, mm. */
  readonly fromStart: number;
  readonly toCheek: number;
  readonly nearer: 'start' | 'other';
  /** Are further layers wound over it. */
  readonly buried: boolean;
}

/** How far along the pile a turn comes to lie, 0 at the cheek of the start, 1 at the other: every other layer runs back. */
export function alongPile(coil: CoilOf<'multilayer'>, turn: number): number {
  const layer = Math.floor((turn - 1e-9) / coil.turnsPerLayer) + 1;
  const share = turn / coil.turnsPerLayer - (layer - 1);
  return layer % 2 === 1 ? share : 1 - share;
}

/** Where in the pile a turn comes to lie. */
export function placeInPile(coil: CoilOf<'multilayer'>, turn: number): PlaceInPile {
  const layer = Math.min(coil.layers, Math.floor((turn - 1e-9) / coil.turnsPerLayer) + 1);
  const turnInLayer = turn - (layer - 1) * coil.turnsPerLayer;
  const length = coilModel(coil).windingLength * 1e3;
  const fromStart = length * alongPile(coil, turn);
  const nearer = fromStart <= length / 2 ? 'start' : 'other';
  return {
    layer,
    turnInLayer,
    fromStart,
    toCheek: Math.min(fromStart, length - fromStart),
    nearer,
    buried: layer < coil.layers,
  };
}

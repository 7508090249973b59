import { type ByKind, byKind } from '../by-kind.ts';
import type { ArrangementDescription } from './arrangement-schema.ts';

/** What the hand moves to tune: the set's capacitor, a slider along the coil, or one coil turning inside the other. */
export type TunedBy = 'capacitor' | 'slider' | 'rotor';

const TUNED_BY: ByKind<ArrangementDescription, TunedBy> = {
  direct: () => 'capacitor',
  'series capacitor': () => 'capacitor',
  tapped: () => 'capacitor',
  coupled: () => 'capacitor',
  'two circuits': () => 'capacitor',
  slider: () => 'slider',
  variometer: () => 'rotor',
  frame: () => 'capacitor',
  'ferrite rod': () => 'capacitor',
  // Where the list has no tuning the capacitor stands by itself and its scale is still its own.
  elements: () => 'capacitor',
};

export const tunedBy = (arrangement: ArrangementDescription): TunedBy => byKind(TUNED_BY, arrangement);

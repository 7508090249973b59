import type { KindOf, Of } from '../by-kind.ts';
import type { DetectorDescription } from './detector-schema.ts';

/** What only some detectors have: a cathode to heat, a crystal whose spots differ. */
const TRAITS = {
  galena: 'spots',
  mineral: 'none', // its spots are not told apart
  germanium: 'none',
  schottky: 'none',
  silicon: 'none',
  exponential: 'none',
  valve: 'heater',
  measured: 'none',
} as const satisfies Record<KindOf<DetectorDescription>, 'spots' | 'heater' | 'none'>;

type KindWith<Trait> = {
  [K in keyof typeof TRAITS]: (typeof TRAITS)[K] extends Trait ? K : never;
}[keyof typeof TRAITS];

/**
 * Whether a detector has a heater.
 * @param detector as described.
 * @returns true narrows it to a kind with heater voltages.
 */
export const hasHeater = (detector: DetectorDescription): detector is Of<DetectorDescription, KindWith<'heater'>> =>
  TRAITS[detector.kind] === 'heater';

/**
 * Whether a detector is a crystal to be probed for a good spot.
 * @param detector as described.
 * @returns true narrows it to a kind with a spot.
 */
export const hasSpots = (detector: DetectorDescription): detector is Of<DetectorDescription, KindWith<'spots'>> =>
  TRAITS[detector.kind] === 'spots';

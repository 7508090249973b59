import type { SCENE_POINTS } from '../../../../engine/set/scenes.ts';

/** Points of the signal’s path, as headings. */
export const pointTitles: Readonly<Record<(typeof SCENE_POINTS)[number], string>> = {
  programme: 'Programme',
  carrier: 'Carrier',
  modulated: 'Modulated carrier',
  tuned: 'On the tuned circuit',
  detector: 'After the detector, without a capacitor',
  phones: 'After the capacitor, as heard',
};

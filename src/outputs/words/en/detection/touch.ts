import type { Touch } from '../../../../engine/parts/detector/surface.ts';

const CONTACT: Readonly<Record<Touch['contact'], string>> = {
  loose: 'barely touching',
  crushed: 'pressed too hard',
  light: 'light touch',
};

/** The spot and how the whisker stands on it: "good spot, light touch". */
export const touchText = ({ spot, contact }: Pick<Touch, 'spot' | 'contact'>): string =>
  `${spot.quality} spot, ${CONTACT[contact]}`;

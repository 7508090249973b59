import type { AerialWarnings } from '../../../../engine/facts/aerial-warnings.ts';
import { plural } from '../grammar.ts';
import type { SentencesFor } from './sentences-for.ts';

export const aerialWarnings: SentencesFor<AerialWarnings> = {
  'aerial.rod-short': () =>
    'The ferrite rod is less than five times as long as it is thick: its figures are approximate.',
  'aerial.rod-coil-loose': () =>
    'The coil is much wider than the rod: its inductance depends on where the rod lies in it.',
  'aerial.rod-loss-typical': () =>
    'The loss of the rod is a typical value for a medium-wave ferrite; measure the Q if it matters.',
  'aerial.frame-deep': () => 'The winding is deeper than the frame is wide: describe it as a coil instead.',
  'aerial.frame-wire-long': () =>
    'The wire on the frame is longer than a tenth of a wavelength: the current is not the same all round, so inductance and effective height are approximate and the null is less deep.',
  'aerial.outside-measured-range': () =>
    'The aerial was not measured at this frequency; its impedance is extrapolated from the nearest measured point.',
  'aerial.touchstone-version': ({ version }) => `The file says version ${version}; it is read as 2.0.`,
  'aerial.touchstone-no-option-line': () =>
    'The file has no option line before its data: gigahertz, S-parameters, magnitude and angle, and 50 Ω are assumed, as the standard says.',
  'aerial.touchstone-open-points': ({ count }) =>
    `${count} ${plural(count, 'point is an open circuit, which has no impedance; it is', 'points are open circuits, which have no impedance; they are')} left out.`,
  'aerial.measured-negative-resistance': () =>
    'Some measured resistances are negative, which no aerial has; check the calibration of the instrument.',
  'aerial.half-wave': () =>
    'At this frequency the aerial is about half a wavelength long or more: its impedance and effective height are approximate.',
  'aerial.wire-near-ground': () =>
    'Part of the wire is within a few wire diameters of the ground, where real soil does not act as a perfect conductor.',
  'aerial.wire-thick': () =>
    'The aerial is less than a hundred times as long as it is thick; the thin-wire calculation is only a rough guide.',
  'aerial.low': () =>
    'No part of the aerial is higher than a person can reach; houses and bushes matter more than these figures.',
};

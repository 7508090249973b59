import type { Agreement } from './measurable.ts';
import type { PropertyId } from './properties.ts';

/** What may make a measured figure differ from the calculated one, besides the part's sizes. */
export type DifferenceCause =
  | 'wider-turns'
  | 'metal-near'
  | 'leads-in-series'
  | 'instrument-loads'
  | 'damp-former'
  | 'better-wire'
  | 'more-wiring'
  | 'less-wiring'
  | 'aerial-connected'
  | 'marking-off'
  | 'zero-of-meter'
  | 'longer-lead-in'
  | 'shorter-wire'
  | 'dry-soil'
  | 'wet-soil'
  | 'electrodes-near'
  | 'bad-joint'
  | 'other-spot'
  | 'warm-junction'
  | 'meter-resistance'
  | 'weak-magnets'
  | 'other-frequency';

/** Beyond so many standard errors a difference is no accident of the readings. */
const UNLIKELY = 2;

const CAUSES: Readonly<
  Record<PropertyId, { readonly above: readonly DifferenceCause[]; readonly below: readonly DifferenceCause[] }>
> = {
  'coil.inductance': {
    above: ['leads-in-series'],
    below: ['metal-near'],
  },
  'coil.q': { above: ['better-wire'], below: ['instrument-loads', 'damp-former', 'metal-near'] },
  'coil.selfCapacitance': { above: ['instrument-loads', 'more-wiring'], below: ['wider-turns'] },
  'tuning.minimum': { above: ['zero-of-meter', 'more-wiring'], below: ['zero-of-meter'] },
  'tuning.maximum': { above: ['marking-off', 'zero-of-meter'], below: ['marking-off'] },
  'tuning.stray': { above: ['more-wiring', 'aerial-connected'], below: ['less-wiring'] },
  'arrangement.coupling': { above: [], below: ['metal-near'] },
  'aerial.capacitance': { above: ['longer-lead-in'], below: ['shorter-wire'] },
  'aerial.resistance': { above: ['dry-soil', 'bad-joint'], below: ['wet-soil'] },
  'aerial.effectiveHeight': { above: [], below: ['bad-joint'] },
  'earth.resistance': { above: ['dry-soil', 'bad-joint'], below: ['wet-soil', 'electrodes-near'] },
  'detector.saturationCurrent': { above: ['other-spot', 'warm-junction'], below: ['other-spot'] },
  'detector.ideality': { above: ['other-spot', 'meter-resistance'], below: ['other-spot'] },
  'detector.seriesResistance': { above: ['other-spot', 'meter-resistance'], below: ['other-spot'] },
  'detector.leakage': { above: ['other-spot'], below: ['other-spot', 'meter-resistance'] },
  'load.resistance': { above: ['bad-joint'], below: ['marking-off'] },
  'load.impedance': { above: ['other-frequency'], below: ['other-frequency', 'instrument-loads'] },
  'load.capacitance': { above: ['more-wiring'], below: ['marking-off'] },
  'load.sensitivity': { above: [], below: ['weak-magnets'] },
  'station.fieldStrength': { above: [], below: [] },
};

/**
 * Likely causes of a difference between measured and calculated.
 * @param property what was measured
 * @param agreement how far apart the two are
 * @returns the likeliest first; none where errors explain it
 */
export function likelyCauses(property: PropertyId, { standardErrors }: Agreement): readonly DifferenceCause[] {
  if (!(Math.abs(standardErrors) >= UNLIKELY)) return [];
  return CAUSES[property][standardErrors > 0 ? 'above' : 'below'];
}

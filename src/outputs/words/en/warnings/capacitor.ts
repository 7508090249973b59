import type { CapacitorWarnings } from '../../../../engine/facts/capacitor-warnings.ts';
import type { DielectricName } from '../../../../engine/parts/capacitor/dielectrics.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { plural } from '../grammar.ts';
import { dielectricNames } from '../materials.ts';
import type { SentencesFor } from './sentences-for.ts';

const nameOf = (dielectric: string): string => dielectricNames[dielectric as DielectricName].name;

export const capacitorWarnings: SentencesFor<CapacitorWarnings> = {
  'capacitor.paper-damp': () =>
    'Plain paper absorbs moisture: its capacitance then rises and its loss may be many times that of dry paper. Bake it dry and wax it.',
  'capacitor.card-lossy': () =>
    'Card is lossy, and damp card spoils the Q of the tuned circuit: dry it well and varnish or wax it.',
  'capacitor.phenolic-lossy': () =>
    'Phenolic board is lossy at radio frequency: polythene or mica of the same thickness gives a higher Q.',
  'capacitor.air-film': ({ dielectric, film, share }) =>
    `Press the sheets together: an air film of ${formatQuantity(film, 'length', 1)} between metal and ${nameOf(dielectric)} would leave ${Math.round(100 * share)} % of the capacitance.`,
  'capacitor.fringe-estimated': () =>
    'The plates are small for their distance: the fringing field at their edges is only estimated.',
  'capacitor.residual': ({ capacitance }) =>
    `Fully open, about ${formatQuantity(capacitance, 'capacitance', 2)} remains between the edges; the hand and the board add to it.`,
  'capacitor.tube-ends-estimated': () =>
    'The gap is as wide as the inner tube: the fringing field at the ends is only estimated.',
  'capacitor.book-tunes-late': () =>
    'A book capacitor changes mostly in its last few degrees: fit a screw or a wedge to close it slowly.',
  'capacitor.measured-turns-back': ({ from, to }) =>
    `The measured capacitance is not monotonic between ${from}° and ${to}°: measure those two points again.`,
  'capacitor.measured-repeats': () => 'Two neighbouring measured points have the same capacitance.',
  'capacitor.measured-few': ({ count }) =>
    `Only ${count} measured ${plural(count, 'point', 'points')}: between them the scale is interpolated; five or more are better.`,
  'capacitor.minimum-typical': ({ capacitance }) =>
    `The capacitance with the plates fully open was not given: ${formatQuantity(capacitance, 'capacitance', 2)} is typical for this size, half or twice that is possible.`,
  'capacitor.gap-wide': () =>
    'The gap is wide for plates of this size: the fringing field adds more than the plate formula counts.',
  'capacitor.vane-narrow': ({ width }) =>
    `The leading edge of the plate would be only ${formatQuantity(width, 'length', 2)} wide: a higher minimum or another plate shape is easier to cut.`,
  'capacitor.lossy-dielectric': ({ dielectric }) =>
    `A capacitor of ${nameOf(dielectric)} in the tuned circuit lowers its Q; mica or polystyrene does not.`,
};

import type { CoilWarnings } from '../../../../engine/facts/coil-warnings.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from './sentences-for.ts';

const length = (metres: number): string => formatQuantity(metres, 'length', 3);

export const coilWarnings: SentencesFor<CoilWarnings> = {
  'coil.turns-overlap': ({ spacing, wire }) =>
    `Turns spaced ${length(spacing)} overlap: the bare wire is ${length(wire)} thick.`,
  'coil.turns-do-not-fit': ({ spacing, covered }) =>
    `Turns spaced ${length(spacing)} do not fit: the covered wire is ${length(covered)} thick.`,
  'coil.layers-do-not-fit': ({ spacing, covered }) =>
    `Layers spaced ${length(spacing)} do not fit: the covered wire is ${length(covered)} thick.`,
  'coil.windings-overlap': () => 'The windings overlap at this distance; their nearest turns are assumed to touch.',
  'coil.damp-former': () => 'Damp card is lossy: dry the former and varnish or wax it before winding.',
  'coil.former-loss-varies': ({ former }) =>
    `The dielectric loss of ${former} differs from sample to sample; the range of Q allows for it.`,
  'coil.close-wound-resistance': () =>
    'The turns are close-wound: their resistance at radio frequency is known to about 20 to 30 % only.',
};

import type { CoilWarnings } from '../../../../engine/facts/coil-warnings.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { optionName } from '../fields/options.ts';
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
  'coil.self-capacitance-range': ({ ratio, low, high }) =>
    `Length over diameter is ${formatNumber(ratio, 2)}; self-capacitance was measured from ${low} to ${high} only.`,
  'coil.core-inductance-varies': ({ core }) =>
    `The inductance of a coil on a ${core} follows A_L, which differs by 20 % and more from core to core: check it with a trial winding.`,
  'coil.core-turns-resistance': () =>
    'Neighbouring turns on a core add resistance that is not counted here; the Q of the core usually decides.',
  'coil.above-third-of-self-resonance': () =>
    'This frequency is above a third of the self-resonance: the coil no longer acts as an inductance with a small capacitance across it.',
  'coil.measured-taps': () => 'Taps on a measured coil are estimated as on a coil about as long as it is wide.',
  'coil.damp-former': () => 'Damp card is lossy: dry the former and varnish or wax it before winding.',
  'coil.former-loss-varies': ({ former }) =>
    `The dielectric loss of ${optionName('coil.former', former)} differs from sample to sample; the range of Q allows for it.`,
};

import { identitiesOf } from '../../../engine/built/identity.ts';
import type { AerialDescription } from '../../../engine/kinds/aerials/aerial-schema.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import type { EarthDescription } from '../../../engine/kinds/earths/earth-schema.ts';
import { coilModel, tuningModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { PartId } from '../../../engine/network/ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { shorten } from '../../scene/text-width.ts';
import { partName } from '../../words/index.ts';
import { turnsOf } from '../coil/coil.ts';
import { type About, LETTERS } from './diagram.ts';

/** What a symbol of a part is told. @param more where it is one element of the part, or a part without terminals. */
export function about(
  set: SetDescription,
  part: PartId,
  words: readonly string[],
  more: { readonly id?: string; readonly name?: string } = {},
): About {
  const identity = identitiesOf(set).get(part);
  if (!identity) throw new RangeError(`"${part}" is no part of this set`);
  return { id: part, part, at: identity.at.join('.'), name: partName(identity), words, ...more };
}

const m = (x: number): string => formatQuantity(x, 'length', 3);
export const turnsText = (n: number): string => formatNumber(n, n >= 100 ? 4 : 3);

/** Names come from people: no longer than a column allows. */
export const called = (name: string): string => shorten(name, LETTERS, 110);

export const coilLabel = (coil: CoilDescription): string[] => {
  const turns = coil.shape === 'measured' ? '' : `${turnsText(turnsOf(coil))} turns`;
  return [called(coil.name), formatQuantity(inductanceOf(coil), 'inductance'), turns].filter(Boolean);
};

function inductanceOf(coil: CoilDescription): number {
  try {
    return coilModel(coil).inductance;
  } catch {
    // A coil that cannot be wound is named by the checks of the description; here it only lacks its figure.
    return Number.NaN;
  }
}

export function tuningLabel(tuning: TuningDescription): string[] {
  try {
    const { min, max } = tuningModel(tuning);
    const [low, high] = [formatQuantity(min, 'capacitance'), formatQuantity(max, 'capacitance')];
    const short = low.split(' ')[1] === high.split(' ')[1] ? low.split(' ')[0] : low;
    return ['tuning', tuning.kind === 'fixed' ? high : `${short}–${high}`];
  } catch {
    return ['tuning'];
  }
}

export function aerialLabel(aerial: AerialDescription): string[] {
  switch (aerial.kind) {
    case 'inverted-L':
    case 'T':
    case 'horizontal':
    case 'sloping':
      return [aerial.kind, `${m(aerial.length)}, ${m(aerial.height)} up`];
    case 'vertical':
      return ['vertical', `${m(aerial.height)} up`];
    case 'measured':
      return ['aerial', formatQuantity(aerial.capacitance, 'capacitance')];
    case 'frame':
      return ['frame', `${m(aerial.side)} across`, `${turnsText(aerial.turns)} turns`];
    case 'ferrite rod':
      return ['ferrite rod', m(aerial.length), `${turnsText(aerial.turns)} turns`];
    default:
      return ['aerial', aerial.kind === 'bent' ? 'bent wire' : 'as measured'];
  }
}

export function earthLabel(earth: EarthDescription): string[] {
  switch (earth.kind) {
    case 'rod':
      return ['earth rod', m(earth.length)];
    case 'rods':
      return [`${earth.count} earth rods`, m(earth.length)];
    case 'plate':
      return ['earth plate', m(earth.side)];
    case 'measured':
      return ['earth', formatQuantity(earth.resistance, 'resistance')];
    default:
      return [earth.kind, m(earth.length)];
  }
}

export function detectorLabel(detector: DetectorDescription): string[] {
  switch (detector.kind) {
    case 'galena':
      return ['galena'];
    case 'mineral':
      return [detector.mineral];
    case 'schottky':
      return [detector.type];
    case 'valve':
      return ['valve', `heater ${formatQuantity(detector.heaterVoltage, 'voltage')}`];
    case 'exponential':
    case 'measured':
      return ['detector'];
    default:
      return [detector.kind];
  }
}

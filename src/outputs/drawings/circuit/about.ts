import { identitiesOf } from '../../../engine/built/identity.ts';
import type { AerialDescription } from '../../../engine/kinds/aerials/aerial-schema.ts';
import { byKind } from '../../../engine/kinds/by-kind.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import type { EarthDescription } from '../../../engine/kinds/earths/earth-schema.ts';
import { coilModel, tuningModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { PartId } from '../../../engine/network/ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { shorten } from '../../scene/text-width.ts';
import { partName, type SymbolLabel, symbolLabels } from '../../words/index.ts';
import { turnsOf } from '../coil/coil.ts';
import { type About, LETTERS } from './diagram.ts';

/** A symbol at which nothing is written. */
export const NO_LABEL: SymbolLabel = { lines: [], value: '' };
/** A symbol at which one figure is written. */
export const figureLabel = (value: string): SymbolLabel => ({ lines: [value], value, isFigure: true });
/** A symbol with a name that the builder gave, and one figure. */
export const namedFigure = (name: string, value: string): SymbolLabel => ({ lines: [called(name), value], value });

/** What a symbol of a part is told. @param more where it is one element of the part, or a part without terminals. */
export function about(
  set: SetDescription,
  part: PartId,
  { lines, value, isFigure }: SymbolLabel,
  more: { readonly id?: string; readonly name?: string } = {},
): About {
  const identity = identitiesOf(set).get(part);
  if (!identity) throw new RangeError(`"${part}" is no part of this set`);
  return {
    id: part,
    part,
    at: identity.at.join('.'),
    name: partName(identity),
    words: lines,
    value,
    isFigure,
    ...more,
  };
}

/** Names come from people: no longer than a column allows. */
export const called = (name: string): string => shorten(name, LETTERS, 110);

/** @param name default the coil's own. */
export function coilLabel(coil: CoilDescription, name = coil.name): SymbolLabel {
  const measured = { name: called(name), inductance: inductanceOf(coil) };
  return coil.shape === 'measured'
    ? symbolLabels.measuredCoil(measured)
    : symbolLabels.coil({ ...measured, turns: turnsOf(coil) });
}

function inductanceOf(coil: CoilDescription): number {
  try {
    return coilModel(coil).inductance;
  } catch {
    // A coil that cannot be wound is named by the checks of the description; here it only lacks its figure.
    return Number.NaN;
  }
}

/** Lowest and highest capacitance; none where it cannot be made. */
function rangeOf(tuning: TuningDescription): { readonly min: number; readonly max: number } | undefined {
  try {
    return tuningModel(tuning);
  } catch {
    return undefined;
  }
}

export function tuningLabel(tuning: TuningDescription): SymbolLabel {
  const range = rangeOf(tuning);
  if (!range) return symbolLabels.unknownTuning;
  return tuning.kind === 'fixed' ? symbolLabels.fixedTuning(range.max) : symbolLabels.tuning(range);
}

export function aerialTuningLabel(tuning: TuningDescription): SymbolLabel {
  const range = rangeOf(tuning);
  if (!range) return symbolLabels.unknownAerialTuning;
  return tuning.kind === 'fixed' ? symbolLabels.fixedAerialTuning(range.max) : symbolLabels.aerialTuning(range);
}

export const aerialLabel = (aerial: AerialDescription): SymbolLabel => byKind(symbolLabels.aerial, aerial);
export const earthLabel = (earth: EarthDescription): SymbolLabel => byKind(symbolLabels.earth, earth);
export const detectorLabel = (detector: DetectorDescription): SymbolLabel => byKind(symbolLabels.detector, detector);

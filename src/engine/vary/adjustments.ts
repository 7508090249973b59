import type { AdjustContext, Adjustment, Disturber, Path } from '../kinds/adjustment.ts';
import { aerialAdjustments } from '../kinds/aerials/aerial-adjust.ts';
import { arrangementAdjustments } from '../kinds/arrangements/arrangement-adjust.ts';
import { isUsedInPart } from '../kinds/arrangements/used-turns.ts';
import { coilAdjustments } from '../kinds/coils/coil-adjust.ts';
import type { CoilDescription } from '../kinds/coils/coil-schema.ts';
import { detectorAdjustments } from '../kinds/detectors/detector-adjust.ts';
import { earthAdjustments } from '../kinds/earths/earth-adjust.ts';
import { loadAdjustments } from '../kinds/loads/load-adjust.ts';
import { isLoop } from '../kinds/loops.ts';
import { loadModel } from '../kinds/models.ts';
import { tuningAdjustments } from '../kinds/tunings/tuning-adjust.ts';
import { magnitude } from '../numerics/complex.ts';
import { TEST_TONE } from '../reception/path/receive-station.ts';
import type { SetDescription } from '../set/description.ts';

/** All that can be changed about a set, and what of it works together, by id. */
export interface SetAdjustments {
  readonly all: readonly Adjustment[];
  readonly together: readonly (readonly string[])[];
  /** Pairs that help where the aerial's capacitance narrows the tuning range. */
  readonly forRange: readonly (readonly string[])[];
}

const turnsIn = (coil: CoilDescription): number =>
  coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns;

/** What a set's parts have to adjust. @param about a disturber to be kept out, the side of the dial a station lies on. */
export function adjustmentsOf(
  set: SetDescription,
  about: { readonly against?: Disturber; readonly beyond?: 'below' | 'above' } = {},
): SetAdjustments {
  const context = contextOf(set, about);
  const { adjustments, together, forRange } = arrangementAdjustments(set.arrangement, context);
  // A coil of which this band uses a part is wound for another band.
  const isPartly = isUsedInPart(set.arrangement);
  const coils = set.coils.flatMap((coil, i) =>
    context.tunedCoils.includes(coil.name)
      ? coilAdjustments(coil, context, ['coils', i]).filter((one) => !isPartly || !one.serves.includes('band'))
      : [],
  );
  const turns: string | undefined = [...adjustments, ...coils].find(({ serves }) => serves.includes('band'))?.id;
  const fitted = (groups: readonly (readonly string[])[]): string[][] =>
    groups
      .map((ids) => ids.map((id): string => (id === 'turns' ? (turns ?? id) : id)))
      .filter((ids) => ids.every((id) => adjustments.some((one) => one.id === id) || id === turns));
  return {
    all: [
      ...aerialAdjustments(set.aerial, context),
      ...earthAdjustments(set.earth, context),
      ...coils,
      ...tuningAdjustments(set.tuning, context),
      ...adjustments,
      ...detectorAdjustments(set.detector, context),
      ...loadAdjustments(set.load, context),
    ],
    together: fitted(together),
    forRange: fitted(forRange),
  };
}

function contextOf(
  set: SetDescription,
  about: { readonly against?: Disturber; readonly beyond?: 'below' | 'above' },
): AdjustContext {
  const { aerial, arrangement, detector } = set;
  const named = nameAt(arrangement, 'coil');
  const aerialCoil = nameAt(arrangement, 'aerialCoil');
  const tap = (key: 'aerialTap' | 'detectorTap' | 'fewest'): { path: Path; turns: number }[] => {
    const turns = (arrangement as Partial<Record<typeof key, unknown>>)[key];
    return typeof turns === 'number' ? [{ path: ['arrangement', key], turns }] : [];
  };
  return {
    ...about,
    turnsOf: (name) => {
      const coil = set.coils.find((one) => one.name === name);
      return coil && turnsIn(coil);
    },
    tapsOn: (coil) => [
      ...(coil === named ? [...tap('detectorTap'), ...tap('fewest')] : []),
      ...(coil !== undefined && coil === (aerialCoil ?? named) ? tap('aerialTap') : []),
    ],
    tunedCoils: named === undefined ? [] : [named],
    isLoop: isLoop(aerial),
    loopTurns: isLoop(aerial) ? aerial.turns : undefined,
    wiring: detector.wiring,
    environment: set.place.environment,
    loadImpedance: magnitude(loadModel(set.load).impedanceAt(TEST_TONE)),
  };
}

const nameAt = (arrangement: SetDescription['arrangement'], key: 'coil' | 'aerialCoil'): string | undefined => {
  const name = (arrangement as Partial<Record<typeof key, unknown>>)[key];
  return typeof name === 'string' ? name : undefined;
};

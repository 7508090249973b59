import { warning } from '../facts/warning.ts';
import type { AerialDescription } from '../kinds/aerials/aerial-schema.ts';
import { soilAgainstGround } from '../kinds/earths/soil-of-place.ts';
import { isLoop, type LoopDescription } from '../kinds/loops.ts';
import { earthTimes } from '../kinds/measured/parts-as-measured.ts';
import { detectorModel, earthModel, loadModel, tuningModel } from '../kinds/models.ts';
import type { VariableCapacitor } from '../parts/capacitor/model.ts';
import type { Detector } from '../parts/detector/detector.ts';
import type { EarthModel } from '../parts/earth/earth.ts';
import type { Load } from '../parts/load/model.ts';
import type { SetDescription } from '../set/description.ts';
import type { Hertz, Ohms, Ratio } from '../units/quantities.ts';
import { type AerialInCircuit, aerialInCircuit } from './aerial-elements.ts';
import { type CoilPart, coilsOf } from './coil-parts.ts';
import { type LoopAerial, loopOf } from './loop-parts.ts';
import { aerialAsMeasured, changedAerial, resistanceShare, surroundingsOf } from './surrounded-aerial.ts';

/** The parts of a set as made, not yet joined. */
export interface SetParts {
  readonly coils: readonly CoilPart[];
  readonly tuning: VariableCapacitor;
  readonly aerial?: AerialInCircuit;
  readonly loop?: LoopAerial;
  readonly earth: EarthModel;
  readonly detector: Detector;
  readonly load: Load;
  /** Factor on the coupling of the two coils that the arrangement has; default 1. */
  readonly coupling?: Ratio;
}

/** Above every broadcast on medium wave: where an aerial counts as short or not. */
const HIGHEST: Hertz = 1.7e6;

/** The highest frequency that a set has to do with. */
const highestFrequency = (set: SetDescription): Hertz =>
  Math.max(HIGHEST, ...set.place.stations.map((s) => s.frequency));

/** Middle of the stations' frequencies, as a ratio scale has it; of medium wave where there are none. */
export function workingFrequency(set: SetDescription): Hertz {
  const { stations } = set.place;
  if (stations.length === 0) return 9e5;
  return Math.exp(stations.reduce((sum, s) => sum + Math.log(s.frequency), 0) / stations.length);
}

/** How parts are made otherwise than from the description alone. */
export interface Making {
  /** Multiplies every coil's resistance; default 1. */
  readonly coilLoss?: Ratio;
  /** In place of the described one. */
  readonly detector?: Detector;
  /** A set made as described: parts that the same objects describe are taken from it. */
  readonly like?: SetParts & { readonly set: SetDescription };
}

/** Make the parts of a set. @throws RangeError for parts that cannot be built. */
export function partsOf(set: SetDescription, { coilLoss = 1, detector, like }: Making = {}): SetParts {
  const isSame = (...keys: readonly (keyof SetDescription)[]): boolean =>
    like !== undefined && keys.every((key) => set[key] === like.set[key]);
  const hasSameStations = like !== undefined && set.place.stations === like.set.place.stations;
  // A resistance measured of aerial and earth together is shared between them.
  const hasSameEarth =
    isSame('earth') &&
    hasSameStations &&
    set.place.ground === like!.set.place.ground &&
    (isSame('aerial') || (!measuresEarth(set.aerial) && !measuresEarth(like!.set.aerial)));
  const earth = hasSameEarth ? like!.earth : earthOf(set);
  return {
    earth,
    tuning: isSame('tuning') ? like!.tuning : tuningModel(set.tuning),
    detector: detector ?? (isSame('detector') ? like!.detector : detectorModel(set.detector)),
    load: isSame('load') ? like!.load : loadModel(set.load),
    coils: coilsOf(set, coilLoss, workingFrequency(set), (coil, i) =>
      hasSameStations && coilLoss === 1 && coil === like?.set.coils[i] ? like.coils[i] : undefined,
    ),
    ...aerialOf(
      set,
      earth,
      coilLoss,
      hasSameStations && coilLoss === 1 && isSame('aerial', 'earth') ? like : undefined,
    ),
  };
}

const measuresEarth = (aerial: AerialDescription): boolean =>
  !isLoop(aerial) && aerial.measured?.resistance !== undefined;

function earthOf(set: SetDescription): EarthModel {
  const { aerial } = set;
  const calculated = earthModel(set.earth, { frequency: workingFrequency(set) });
  const model =
    isLoop(aerial) || !measuresEarth(aerial) || set.earth.measured?.resistance
      ? calculated
      : earthTimes(
          calculated,
          resistanceShare(aerial, surroundedOver(set, aerial, calculated), resistanceOf(calculated)),
        );
  const apart = isLoop(set.aerial) ? undefined : soilAgainstGround(set.earth, set.place.ground);
  return apart ? { ...model, warnings: [...model.warnings, warning('earth.soil-and-ground', apart)] } : model;
}

const resistanceOf =
  (earth: EarthModel) =>
  (f: Hertz): Ohms =>
    earth.impedanceAt(f).re;

const surroundedOver = (
  set: SetDescription,
  aerial: Exclude<AerialDescription, LoopDescription>,
  earth: EarthModel,
): AerialInCircuit =>
  changedAerial(aerialInCircuit(aerial, earth, highestFrequency(set)), { ...surroundingsOf(aerial), capacitance: 1 });

/** A wire or measured aerial over an earth, among what is around it; what of it was measured wins. */
export const aerialOver = (
  set: SetDescription,
  aerial: Exclude<AerialDescription, LoopDescription>,
  earth: EarthModel,
): AerialInCircuit => aerialAsMeasured(aerial, surroundedOver(set, aerial, earth), resistanceOf(earth));

function aerialOf(
  set: SetDescription,
  earth: EarthModel,
  coilLoss: Ratio,
  same: SetParts | undefined,
): Pick<SetParts, 'aerial' | 'loop'> {
  if (same) return { aerial: same.aerial, loop: same.loop };
  const { aerial } = set;
  const around = surroundingsOf(aerial);
  if (!isLoop(aerial)) return { aerial: aerialOver(set, aerial, earth) };
  const loop = loopOf(aerial, coilLoss);
  // Measured among what is around it.
  const height = aerial.measured?.effectiveHeight ? 1 : around.effectiveHeight;
  return { loop: loop && { ...loop, effectiveHeightAt: (f) => height * loop.effectiveHeightAt(f) } };
}

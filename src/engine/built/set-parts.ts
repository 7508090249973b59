import { isLoop } from '../kinds/loops.ts';
import { detectorModel, earthModel, loadModel, tuningModel } from '../kinds/models.ts';
import type { VariableCapacitor } from '../parts/capacitor/model.ts';
import type { Detector } from '../parts/detector/detector.ts';
import type { EarthModel } from '../parts/earth/earth.ts';
import type { Load } from '../parts/load/model.ts';
import type { SetDescription } from '../set/description.ts';
import type { Hertz, Ratio } from '../units/quantities.ts';
import { type AerialInCircuit, aerialInCircuit } from './aerial-elements.ts';
import { type CoilPart, coilsOf } from './coil-parts.ts';
import { type LoopAerial, loopOf } from './loop-parts.ts';

/** The parts of a set as made, not yet joined. */
export interface SetParts {
  readonly coils: readonly CoilPart[];
  readonly tuning: VariableCapacitor;
  readonly aerial?: AerialInCircuit;
  readonly loop?: LoopAerial;
  readonly earth: EarthModel;
  readonly detector: Detector;
  readonly load: Load;
}

/** Above every broadcast on medium wave: where an aerial counts as short or not. */
const HIGHEST: Hertz = 1.7e6;

/** The highest frequency that a set has to do with. */
export const highestFrequency = (set: SetDescription): Hertz =>
  Math.max(HIGHEST, ...set.place.stations.map((s) => s.frequency));

/** Middle of the stations' frequencies, as a ratio scale has it; of medium wave where there are none. */
function middleOf(set: SetDescription): Hertz {
  const { stations } = set.place;
  if (stations.length === 0) return 9e5;
  return Math.exp(stations.reduce((sum, s) => sum + Math.log(s.frequency), 0) / stations.length);
}

/**
 * Make the parts of a set.
 * @param coilLoss multiplies every coil's resistance. @param detector in place of the described one.
 * @throws RangeError for parts that cannot be built.
 */
export function partsOf(set: SetDescription, coilLoss: Ratio = 1, detector?: Detector): SetParts {
  const earth = earthModel(set.earth);
  return {
    earth,
    tuning: tuningModel(set.tuning),
    detector: detector ?? detectorModel(set.detector),
    load: loadModel(set.load),
    coils: coilsOf(set, coilLoss, middleOf(set)),
    aerial: isLoop(set.aerial) ? undefined : aerialInCircuit(set.aerial, earth, highestFrequency(set)),
    loop: isLoop(set.aerial) ? loopOf(set.aerial, coilLoss) : undefined,
  };
}

import type { Assembly } from '../kinds/arrangements/assembly.ts';
import { arrange } from '../kinds/arrangements/index.ts';
import type { Kit } from '../kinds/arrangements/kit.ts';
import { isLoop } from '../kinds/loops.ts';
import { detectorModel, earthModel, loadModel, tuningModel } from '../kinds/models.ts';
import type { Port } from '../network/port.ts';
import type { VariableCapacitor } from '../parts/capacitor/model.ts';
import { type AveragedDetector, averaged } from '../parts/detector/averaged.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { pairAveraged } from '../parts/detector/pair.ts';
import type { EarthModel } from '../parts/earth/earth.ts';
import type { Load } from '../parts/load/model.ts';
import type { SetDescription } from '../set/description.ts';
import type { Hertz } from '../units/quantities.ts';
import { type AerialInCircuit, aerialInCircuit } from './aerial-elements.ts';
import { type CoilPart, coilsOf, mutualOf } from './coil-parts.ts';
import { loadElements } from './load-elements.ts';
import { type LoopAerial, loopOf } from './loop-parts.ts';

/** What-ifs that no description has a word for. */
export interface Whatif {
  /** Multiplies every coil's resistance. */
  readonly coilLoss?: number;
  /** In place of the described one: a cathode not yet warm, another spot of a crystal. */
  readonly detector?: Detector;
}

/** A set as parts made and joined: the one thing every view of it is computed from. */
export interface SetCircuit {
  readonly set: SetDescription;
  readonly assembly: Assembly;
  readonly coils: readonly CoilPart[];
  readonly tuning: VariableCapacitor;
  readonly aerial?: AerialInCircuit;
  readonly loop?: LoopAerial;
  /** Of the tuned circuit that the detector is on; of a list of elements, the first described. */
  readonly tuningCoil?: CoilPart | LoopAerial;
  readonly earth: EarthModel;
  readonly detector: Detector;
  /** The detector, or pair of them, as one averaged device at the assembly's ports. */
  readonly averaged: AveragedDetector;
  readonly bias: number;
  readonly load: Load;
  /** Across what makes the sound. */
  readonly transducer: Port;
}

/** Above every broadcast on medium wave: where an aerial counts as short or not. */
const HIGHEST: Hertz = 1.7e6;

/** Middle of the stations' frequencies, as a ratio scale has it; of medium wave where there are none. */
function middleOf(set: SetDescription): Hertz {
  const { stations } = set.place;
  if (stations.length === 0) return 9e5;
  return Math.exp(stations.reduce((sum, s) => sum + Math.log(s.frequency), 0) / stations.length);
}

/** Make the parts and join them. @throws RangeError for parts that cannot be built; `readValue` has named them already. */
export function setCircuit(set: SetDescription, whatif: Whatif = {}): SetCircuit {
  const earth = earthModel(set.earth);
  const tuning = tuningModel(set.tuning);
  const detector = whatif.detector ?? detectorModel(set.detector);
  const load = loadModel(set.load);
  const coils = coilsOf(set, whatif.coilLoss ?? 1, middleOf(set));
  const highest = Math.max(HIGHEST, ...set.place.stations.map((s) => s.frequency));
  const aerial = isLoop(set.aerial) ? undefined : aerialInCircuit(set.aerial, earth, highest);
  const loop = isLoop(set.aerial) ? loopOf(set.aerial, whatif.coilLoss ?? 1) : undefined;
  const bias = set.detector.bias ?? 0;
  const wiring = set.detector.wiring;
  const loaded = loadElements(set.load, load);
  const arrangement = set.arrangement;
  const coilNamed = (name: string): CoilPart => {
    const i = set.coils.findIndex((c) => c.name === name);
    if (i < 0) throw new RangeError(`no coil "${name}"`);
    return coils[i];
  };
  const kit: Kit = {
    aerial: aerial?.elements ?? [],
    load: loaded.elements,
    coil: coilNamed,
    mutual: (first, second, placing) => mutualOf(coilNamed(first), coilNamed(second), placing),
    loop,
    tuning,
    aerialTuning:
      arrangement.kind === 'two circuits' && arrangement.aerialTuning
        ? tuningModel(arrangement.aerialTuning)
        : undefined,
    wiring,
    bias: wiring === 'single' ? bias : 0,
    junctionCapacitance: detector.junctionCapacitance,
  };
  const assembly = arrange(arrangement, kit);
  return {
    set,
    assembly,
    coils,
    tuning,
    aerial,
    loop,
    tuningCoil:
      'coil' in arrangement && typeof arrangement.coil === 'string' ? coilNamed(arrangement.coil) : (loop ?? coils[0]),
    earth,
    detector,
    averaged: wiring === 'single' ? averaged(detector) : pairAveraged(averaged(detector), wiring),
    bias: kit.bias,
    load,
    transducer: loaded.transducer,
  };
}

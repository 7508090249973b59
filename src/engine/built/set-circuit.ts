import { warning } from '../facts/warning.ts';
import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { Assembly } from '../kinds/arrangements/assembly.ts';
import { arrange } from '../kinds/arrangements/index.ts';
import type { Kit } from '../kinds/arrangements/kit.ts';
import { type TrapAsMade, trapAsMade } from '../kinds/arrangements/traps.ts';
import { tuningModel } from '../kinds/models.ts';
import type { Port } from '../network/port.ts';
import { type AveragedDetector, averaged } from '../parts/detector/averaged.ts';
import { pairAveraged } from '../parts/detector/pair.ts';
import { switchedOutCoils } from '../set/band-switch.ts';
import type { SetDescription } from '../set/description.ts';
import { stationNamed } from '../set/want-problems.ts';
import { changedParts, type PartChanges } from './changed-parts.ts';
import { type CoilPart, mutualOf } from './coil-parts.ts';
import { loadElements } from './load-elements.ts';
import type { LoopAerial } from './loop-parts.ts';
import { type Making, partsOf, type SetParts } from './set-parts.ts';

/** A set as parts made and joined: the one thing every view of it is computed from. */
export interface SetCircuit extends SetParts {
  readonly set: SetDescription;
  readonly assembly: Assembly;
  /** Of the tuned circuit that the detector is on; of a list of elements, the first described. */
  readonly tuningCoil?: CoilPart | LoopAerial;
  /** In the order of the description. */
  readonly traps: readonly TrapAsMade[];
  /** The detector, or pair of them, as one averaged device at the assembly's ports. */
  readonly averaged: AveragedDetector;
  readonly bias: number;
  /** Across what makes the sound. */
  readonly transducer: Port;
}

type Mutual = ReturnType<typeof mutualOf>;

/** No coils link each other closer. */
const CLOSEST = 0.98;

/** The same with the coupling of the whole coils times a factor. */
function closer(mutual: Mutual, first: CoilPart, second: CoilPart, factor = 1): Mutual {
  if (factor === 1) return mutual;
  const k = Math.abs(mutual([0, first.turns], [0, second.turns])) / Math.sqrt(first.inductance * second.inductance);
  const by = Math.min(factor, Math.max(1, CLOSEST / k));
  return (a, b) => by * mutual(a, b);
}

/** As described, made once for each set that was read and kept no longer than it. */
const asDescribed = new WeakMap<SetDescription, SetCircuit>();

/**
 * Make the parts and join them.
 * @param set as described, SI units; what was read is not changed any more: the same object has the same circuit.
 * @param making how parts are made otherwise than described; default as described.
 * @returns the parts and how they are joined.
 * @throws RangeError for parts that cannot be built; `readValue` has named them already.
 */
export function setCircuit(set: SetDescription, making?: Making): SetCircuit {
  if (making) return joined(set, partsOf(set, making));
  let circuit = asDescribed.get(set);
  if (!circuit) asDescribed.set(set, (circuit = joined(set, partsOf(set, {}))));
  return circuit;
}

/** The same set with some of its parts otherwise than described; what does not change is shared. @throws RangeError where no such part can be. */
export const changedCircuit = (circuit: SetCircuit, changes: PartChanges): SetCircuit =>
  joined(circuit.set, changedParts(circuit.set, circuit, changes));

function joined(set: SetDescription, parts: SetParts): SetCircuit {
  const { earth, tuning, detector, load, coils, aerial, loop } = parts;
  const bias = set.detector.bias ?? 0;
  const wiring = set.detector.wiring;
  const loaded = loadElements(set.load, load);
  const arrangement = set.arrangement;
  const coilNamed = (name: string): CoilPart => {
    const i = set.coils.findIndex((c) => c.name === name);
    if (i < 0) throw new RangeError(`no coil "${name}"`);
    return coils[i];
  };
  const { stations } = set.place;
  const traps = aerialLead(arrangement).traps.map((trap) => {
    const station = trap.stops === undefined ? undefined : stationNamed(stations, trap.stops);
    return trapAsMade(
      trap,
      trap.coil === undefined ? undefined : coilNamed(trap.coil),
      station === undefined ? undefined : stations[station].frequency,
    );
  });
  const kit: Kit = {
    aerial: aerial?.elements ?? [],
    load: loaded.elements,
    coil: coilNamed,
    mutual: (first, second, placing) => {
      const [a, b] = [coilNamed(first), coilNamed(second)];
      const mutual = mutualOf(a, b, placing);
      return placing === arrangement ? closer(mutual, a, b, parts.coupling) : mutual;
    },
    loop,
    tuning,
    aerialTuning:
      arrangement.kind === 'two circuits' && arrangement.aerialTuning
        ? tuningModel(arrangement.aerialTuning)
        : undefined,
    traps,
    wiring,
    bias: wiring === 'single' ? bias : 0,
    junctionCapacitance: detector.junctionCapacitance,
  };
  const plain = arrange(arrangement, kit);
  const switchedOut = switchedOutCoils(set).map((coil) => warning('arrangement.coil-switched-out', { coil }));
  const assembly = switchedOut.length > 0 ? { ...plain, warnings: [...plain.warnings, ...switchedOut] } : plain;
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
    traps,
    detector,
    averaged: wiring === 'single' ? averaged(detector) : pairAveraged(averaged(detector), wiring),
    bias: kit.bias,
    load,
    transducer: loaded.transducer,
  };
}

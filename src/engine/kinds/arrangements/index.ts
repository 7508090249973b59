import { type ByKind, byKind } from '../by-kind.ts';
import type { ArrangementDescription } from './arrangement-schema.ts';
import type { Assembly } from './assembly.ts';
import { sliderTuned, variometerTuned } from './coil-tuned.ts';
import { coupledCircuits } from './coupled-circuits.ts';
import { elementList } from './element-list.ts';
import type { Kit } from './kit.ts';
import { loopAerial } from './loop-aerial.ts';
import { singleCircuit } from './single-circuit.ts';

/** The circuit of each kind of arrangement. A new one is an entry here and a function. */
const CIRCUITS: ByKind<ArrangementDescription, Assembly, [Kit]> = {
  direct: singleCircuit,
  'series capacitor': singleCircuit,
  tapped: singleCircuit,
  coupled: coupledCircuits,
  'two circuits': coupledCircuits,
  slider: sliderTuned,
  variometer: variometerTuned,
  frame: loopAerial,
  'ferrite rod': loopAerial,
  elements: elementList,
};

/** Any arrangement as a circuit of the set's parts. */
export const arrange = (arrangement: ArrangementDescription, kit: Kit): Assembly => byKind(CIRCUITS, arrangement, kit);

import type { ArrangementDescription } from './arrangement-schema.ts';
import type { Assembly } from './assembly.ts';
import { sliderTuned, variometerTuned } from './coil-tuned.ts';
import { coupledCircuits } from './coupled-circuits.ts';
import { elementList } from './element-list.ts';
import type { Kit } from './kit.ts';
import { loopAerial } from './loop-aerial.ts';
import { singleCircuit } from './single-circuit.ts';

/** Any arrangement: a function from the set's parts to its circuit. A new arrangement is a new case and a new function. */
export function arrange(arrangement: ArrangementDescription, kit: Kit): Assembly {
  switch (arrangement.kind) {
    case 'direct':
    case 'series capacitor':
    case 'tapped':
      return singleCircuit(arrangement, kit);
    case 'coupled':
    case 'two circuits':
      return coupledCircuits(arrangement, kit);
    case 'slider':
      return sliderTuned(arrangement, kit);
    case 'variometer':
      return variometerTuned(arrangement, kit);
    case 'frame':
    case 'ferrite rod':
      return loopAerial(arrangement, kit);
    case 'elements':
      return elementList(arrangement, kit);
  }
}

import type { SetCircuit } from '../built/set-circuit.ts';
import { asStated } from './coil-spreads.ts';
import type { SetInput } from './input.ts';

const MARKING = 'marking, minimum and strays as stated with the capacitor (docs/physics/capacitors.md)';

/** Ends of the scale of the tuning capacitor, strays among them: they decide where stations lie, not how loud they are. */
export function tuningSpreads({ assembly, tuning }: SetCircuit): SetInput[] {
  if (assembly.tuning.length === 0) return [];
  const { min, max, minRange, maxRange } = tuning;
  const greatest: SetInput = {
    id: 'capacitor maximum',
    settledBy: 'tuning capacitor',
    spread: asStated(max, maxRange, MARKING),
    moves: 'dial',
    changes: (tuningMaximum) => ({ tuningMaximum }),
  };
  if (!(max > min)) return [greatest];
  return [
    {
      id: 'capacitor minimum',
      settledBy: 'tuning capacitor',
      spread: asStated(min, minRange, MARKING),
      moves: 'dial',
      changes: (tuningMinimum) => ({ tuningMinimum }),
    },
    greatest,
  ];
}

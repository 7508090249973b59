import { loadModel } from '../../kinds/models.ts';
import { magnitude } from '../../numerics/complex.ts';
import type { SetDescription } from '../../set/description.ts';
import type { Hertz, Ohms } from '../../units/quantities.ts';
import { withoutMeasured } from '../measurable.ts';

/**
 * Impedance of the phones or earpiece by themselves as their figures have it, nothing measured.
 * @param set as read
 * @param frequencies Hz
 * @returns magnitude at each, Ω
 */
export function calculatedImpedance(
  set: SetDescription,
  frequencies: readonly Hertz[],
): readonly { readonly frequency: Hertz; readonly impedance: Ohms }[] {
  const { load } = withoutMeasured(set);
  const alone = loadModel('transformer' in load ? { ...load, transformer: undefined } : load);
  return frequencies.map((frequency) => ({ frequency, impedance: magnitude(alone.impedanceAt(frequency)) }));
}

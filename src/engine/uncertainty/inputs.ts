import { type PartChanges, together } from '../built/changed-parts.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { coilSpreads } from './coil-spreads.ts';
import { couplingSpreads } from './coupling-spreads.ts';
import { detectorSpreads } from './detector-spreads.ts';
import type { SetInput } from './input.ts';
import { loadSpreads } from './load-spreads.ts';
import { measuredTogether } from './measured-together.ts';
import { outdoorSpreads } from './outdoor-spreads.ts';
import { valueAtDeviate } from './spread.ts';
import { tuningSpreads } from './tuning-spreads.ts';

/** Everything about a set's parts that is not measured; what is measured is not in it, or only with a meter's error. */
export const setInputs = (circuit: SetCircuit): readonly SetInput[] =>
  measuredTogether(
    [
      ...outdoorSpreads(circuit.set),
      ...coilSpreads(circuit),
      ...couplingSpreads(circuit),
      ...tuningSpreads(circuit),
      ...detectorSpreads(circuit.set, circuit.detector),
      ...loadSpreads(circuit.set),
    ],
    circuit,
  );

/** The changes that a set of values makes, together. */
export function changesFor(inputs: readonly SetInput[], deviate: (input: SetInput) => number): PartChanges {
  const all = inputs.map((input) => {
    const value = valueAtDeviate(input.spread, deviate(input));
    return { changes: input.changes?.(value), level: input.adds ? value : 0 };
  });
  const sensitivity = all.reduce((sum, { level }) => sum + level, 0);
  return all.reduce<PartChanges>((sum, { changes }) => (changes ? together(sum, changes) : sum), { sensitivity });
}

import type { PartChanges } from '../built/changed-parts.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { wireOf } from '../kinds/coils/wire-of.ts';
import { isLoop } from '../kinds/loops.ts';
import type { MeasuredValue } from '../kinds/measured/measured-schema.ts';
import { USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import { strandingOf } from '../parts/wire/wire.ts';
import type { SetDescription } from '../set/description.ts';
import { detectorSpreads } from './detector-spreads.ts';
import type { SetInput } from './input.ts';
import { loadSpreads } from './load-spreads.ts';
import { shareSpread } from './measured-spread.ts';
import { outdoorSpreads } from './outdoor-spreads.ts';
import { between, COMMON_PRACTICE, timesOrOver, valueAtDeviate } from './spread.ts';

/** Coil loss against the calculated one: four built coils of known wire measured 0.75 to 1.0 of the calculated Q. */
const WOUND_COIL = `four built coils (reference/measured-in-practice.json); ${COMMON_PRACTICE}`;

function coilSpreads(set: SetDescription): SetInput[] {
  const loops = isLoop(set.aerial);
  if (set.coils.length === 0 && !loops) return [];
  const wires = set.coils.flatMap((c) => (c.shape === 'measured' ? [] : [wireOf(c.wire)]));
  const litz = wires.some(({ strands = 1 }) => strands > 1);
  const stranded = Math.max(1, ...wires.map((wire) => strandingOf(wire)?.spread ?? 1));
  const measured = !loops && set.coils.every((c) => c.shape === 'measured');
  const q = qMeasured(set);
  const spread = q
    ? shareSpread(q, USUAL_ERROR.q)
    : measured
      ? timesOrOver(1.1, 'Q as measured')
      : loops
        ? timesOrOver(1.6, COMMON_PRACTICE)
        : litz
          ? // Never better than its strands by themselves.
            between('factor', [0.85, 1, 1.5], 'three published coils of Litz wire')
          : timesOrOver(Math.exp(Math.hypot(Math.log(1.4), Math.log(stranded))), WOUND_COIL);
  return [{ id: 'coil loss', settledBy: 'coil', spread, changes: (coilLoss) => ({ coilLoss }) }];
}

/** The least sure measured Q, where that of every coil was measured. */
function qMeasured({ aerial, coils }: SetDescription): MeasuredValue | undefined {
  const all = isLoop(aerial) ? [aerial.measured?.q] : coils.map((c) => c.measured?.q);
  const known = all.filter((q) => q !== undefined);
  if (known.length < all.length) return undefined;
  return known.reduce((a, b) => ((b.error ?? USUAL_ERROR.q) > (a.error ?? USUAL_ERROR.q) ? b : a));
}

/** Everything about a set's parts that is not measured; what is measured is not in it, or only with a meter's error. */
export const setInputs = ({ set, detector }: SetCircuit): readonly SetInput[] => [
  ...outdoorSpreads(set),
  ...coilSpreads(set),
  ...detectorSpreads(set, detector),
  ...loadSpreads(set),
];

/** The changes that a set of values makes, together. */
export function changesFor(inputs: readonly SetInput[], deviate: (input: SetInput) => number): PartChanges {
  const all = inputs.map((input) => {
    const value = valueAtDeviate(input.spread, deviate(input));
    return { changes: input.changes?.(value), level: input.adds ? value : 0 };
  });
  const sensitivity = all.reduce((sum, { level }) => sum + level, 0);
  return Object.assign({ sensitivity }, ...all.map(({ changes }) => changes));
}

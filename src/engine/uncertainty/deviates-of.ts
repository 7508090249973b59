import { DRAWS, deviates } from './draws.ts';
import type { SetInput } from './input.ts';

/** Fits of curves show it: a spot that passes more current has the greater ideality too. Common practice, no source. */
export const ALIKE = 0.6;

/** The deviates of an input in every set drawn, given how those of the set's inputs hang together. */
export function deviatesOf(input: SetInput, inputs: readonly SetInput[]): Float64Array {
  const own = deviates(input.id);
  if (input.id !== 'ideality' || !inputs.some(({ id }) => id === 'saturation current')) return own;
  const current = deviates('saturation current');
  const rest = Math.sqrt(1 - ALIKE * ALIKE);
  return Float64Array.from({ length: DRAWS }, (_, k) => ALIKE * current[k] + rest * own[k]);
}

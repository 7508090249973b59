import type { SetDescription } from '../set/description.ts';
import { type SetCircuit, setCircuit } from './set-circuit.ts';
import type { Making } from './set-parts.ts';

/** A circuit, or why the parts cannot be built as described: a tap beyond the coil, a wire too thick for its former. */
export type Build =
  | { readonly ok: true; readonly circuit: SetCircuit }
  | { readonly ok: false; readonly reason: string };

/** Make the parts of a set and join them, with a refusal as a result. */
export function build(set: SetDescription, making?: Making): Build {
  try {
    return { ok: true, circuit: setCircuit(set, making) };
  } catch (refusal) {
    if (refusal instanceof RangeError) return { ok: false, reason: refusal.message };
    throw refusal;
  }
}

import type { Volts } from '../../units/quantities.ts';
import type { Bank } from './bank.ts';
import type { EnvelopeLaw, LawTable } from './device-law.ts';
import type { EnvelopeState } from './envelope-state.ts';
import { type EnvelopeNetwork, transfer } from './network.ts';

const MOST_ITERATIONS = 200;

/** The steady state that a bias cell, or a curve that conducts at no voltage, holds with no signal: put into state and modes. */
export function settleBias(
  network: EnvelopeNetwork,
  bias: Volts,
  law: EnvelopeLaw,
  state: EnvelopeState,
  audio: Bank,
): void {
  if (bias === 0 && law.off === 1) return;
  // Resistance the mean current meets: minus the audio response at rest.
  const R = Math.max(-transfer(network.audio, 0).current.re, 0);
  let u = 0;
  for (let i = 0; i < MOST_ITERATIONS; i++) {
    const w = Math.exp(u);
    const f = bias / law.slope - (R * law.current * (w - law.off)) / law.slope - u - withoutCarrier(law.table, u);
    const step = f / ((R * law.current * w) / law.slope + 1);
    u += step > 0 ? Math.log1p(step) : Math.max(step, -3);
    if (Math.abs(step) < 1e-10) break;
  }
  state.u = u;
  state.i0 = law.current * (Math.exp(u) - law.off);
  audio.rest(state.i0);
}

/** D of a table where there is no carrier, on straight lines. */
function withoutCarrier(table: LawTable | undefined, u: number): number {
  if (!table) return 0;
  const c = Math.min(Math.max((u - table.lowest) * table.perUnit, 0), table.rows - 1.000001);
  const j = c | 0;
  return table.values[6 * j] + (c - j) * (table.values[6 * j + 6] - table.values[6 * j]);
}

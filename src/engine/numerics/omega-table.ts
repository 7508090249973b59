import { wrightOmega } from './lambert.ts';

/** Range and spacing of `omegaTable`. */
export const OMEGA_LOWEST = -40;
export const OMEGA_HIGHEST = 60;
export const OMEGA_PER_UNIT = 128;

/**
 * ω and ω′/`OMEGA_PER_UNIT` in pairs at z = OMEGA_LOWEST + k/OMEGA_PER_UNIT, for cubic Hermite interpolation
 * with a relative error below 1e-11 (the fourth derivative is nowhere above ω).
 */
export function omegaTable(): Float64Array {
  shared ??= build();
  return shared;
}

/** ω(z) for `OMEGA_LOWEST` ≤ z < `OMEGA_HIGHEST`, by the table. @param table that of `omegaTable`, looked up by the caller once. */
export function lookUpOmega(z: number, table: Float64Array): number {
  const at = (z - OMEGA_LOWEST) * OMEGA_PER_UNIT;
  const j = at | 0;
  const t = at - j;
  const b = 2 * j;
  const low = table[b];
  const d0 = table[b + 1];
  const d1 = table[b + 3];
  const e = table[b + 2] - low;
  return low + t * (d0 + t * (3 * e - 2 * d0 - d1 + t * (d0 + d1 - 2 * e)));
}

let shared: Float64Array | undefined;

function build(): Float64Array {
  const count = (OMEGA_HIGHEST - OMEGA_LOWEST) * OMEGA_PER_UNIT + 2;
  const table = new Float64Array(2 * count);
  for (let k = 0; k < count; k++) {
    const w = wrightOmega(OMEGA_LOWEST + k / OMEGA_PER_UNIT);
    table[2 * k] = w;
    table[2 * k + 1] = w / (1 + w) / OMEGA_PER_UNIT;
  }
  return table;
}

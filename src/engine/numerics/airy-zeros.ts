/** Zeros of Ai and Ai' with the sign changed. Source: DLMF table 9.9.1. */
const AI = [
  2.338107410459767, 4.087949444130971, 5.520559828095551, 6.786708090071759, 7.944133587120853, 9.02265085334098,
  10.04017434155809, 11.00852430373326, 11.93601556323626, 12.828776752865757,
];
const AI_PRIME = [
  1.018792971647471, 3.248197582179837, 4.820099211178736, 6.163307355639487, 7.372177255047771, 8.488486734019723,
  9.53544905243355, 10.527660396957408, 11.47505663348024, 12.38478837184575,
];

/**
 * |a_s|: the size of the s-th (negative) zero of the Airy function Ai, s = 1, 2, 3…
 * Beyond the table the expansion DLMF 9.9.6 and 9.9.18; relative error below 1e-11.
 */
export function airyZero(s: number): number {
  if (s <= AI.length) return AI[s - 1];
  const m = (3 * Math.PI * (4 * s - 1)) / 8;
  const i2 = 1 / (m * m);
  return m ** (2 / 3) * (1 + i2 * (5 / 48 + i2 * (-5 / 36 + (i2 * 77125) / 82944)));
}

/** |a'_s|: the size of the s-th zero of Ai'. DLMF 9.9.8 and 9.9.19 beyond the table; relative error below 1e-11. */
export function airyPrimeZero(s: number): number {
  if (s <= AI_PRIME.length) return AI_PRIME[s - 1];
  const m = (3 * Math.PI * (4 * s - 3)) / 8;
  const i2 = 1 / (m * m);
  return m ** (2 / 3) * (1 + i2 * (-7 / 48 + i2 * (35 / 288 - (i2 * 181223) / 207360)));
}

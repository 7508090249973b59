import { ImpossibleValues } from '../../facts/impossible-values.ts';
import type { Farads, Metres } from '../../units/quantities.ts';

/**
 * H, pF per cm of coil diameter, by length over diameter.
 * Source: Medhurst, Wireless Engineer 24 (1947), table of H; 1.0 to 5.0 looked up, the rest from memory. Measured with one
 * end earthed on polystyrene rods, leads left out; stated good to about 5 %.
 */
const TABLE: readonly (readonly [number, number])[] = [
  [0.1, 0.96],
  [0.15, 0.79],
  [0.2, 0.7],
  [0.25, 0.64],
  [0.3, 0.6],
  [0.35, 0.57],
  [0.4, 0.54],
  [0.45, 0.52],
  [0.5, 0.5],
  [0.6, 0.48],
  [0.7, 0.47],
  [0.8, 0.46],
  [0.9, 0.46],
  [1, 0.46],
  [1.5, 0.47],
  [2, 0.5],
  [2.5, 0.56],
  [3, 0.61],
  [3.5, 0.67],
  [4, 0.72],
  [4.5, 0.77],
  [5, 0.81],
  [6, 0.92],
  [7, 1.01],
  [8, 1.12],
  [9, 1.22],
  [10, 1.32],
  [15, 1.86],
  [20, 2.36],
  [25, 2.9],
  [30, 3.4],
  [40, 4.6],
  [50, 5.8],
];

/** Length over diameter that the table covers. */
export const MEDHURST_RANGE: readonly [number, number] = [0.1, 50];

/**
 * Self-capacitance of a single-layer coil, one end earthed.
 * Outside the table: √(D/l) below, in proportion to the length above.
 * @param length turns × pitch, m. @param diameter wire centre to wire centre, m.
 */
export function medhurstCapacitance(length: Metres, diameter: Metres): Farads {
  const ratio = length / diameter;
  if (!(ratio > 0)) throw new ImpossibleValues({ code: 'coil.no-length' });
  const perCentimetre = 1e-12 / 0.01;
  return diameter * perCentimetre * tableAt(ratio);
}

function tableAt(ratio: number): number {
  const first = TABLE[0];
  const last = TABLE[TABLE.length - 1];
  if (ratio <= first[0]) return first[1] * Math.sqrt(first[0] / ratio);
  if (ratio >= last[0]) return (last[1] * ratio) / last[0];
  const k = TABLE.findIndex(([x]) => x >= ratio);
  const [low, high] = [TABLE[k - 1], TABLE[k]];
  const t = Math.log(ratio / low[0]) / Math.log(high[0] / low[0]);
  return low[1] * (high[1] / low[1]) ** t;
}

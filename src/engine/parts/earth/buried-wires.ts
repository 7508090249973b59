import { solveLinear } from '../../numerics/linear-solve.ts';
import { meanInverseDistance, mirrored, type Segment } from '../../numerics/segment-potential.ts';
import type { Metres } from '../../units/quantities.ts';

export interface BuriedWires {
  /** Arms from the middle, evenly round: 2 make one straight wire joined at its middle. */
  readonly arms: number;
  /** Of each arm. */
  readonly length: Metres;
  readonly depth: Metres;
  readonly wireDiameter: Metres;
}

const PIECES = 10;

/**
 * Resistance of buried wires for a soil of 1 Ω·m, by moments with the image of equal sign above ground.
 * @param leakage `equal potential` is the true state; `uniform` along the wire is Dwight's average-potential assumption,
 * which agrees with his formulas for 2 to 8 arms and lies 0.5 % (2 arms) to 10 % (8 arms) higher.
 * @returns 1/m: times the resistivity it is ohms.
 */
export function buriedWiresFactor(
  { arms, length, depth, wireDiameter }: BuriedWires,
  leakage: 'equal potential' | 'uniform' = 'equal potential',
): number {
  const cut = Array.from({ length: PIECES + 1 }, (_, k) => {
    const t = k / PIECES;
    return length * (0.2 * t + 0.4 * (1 - Math.cos(Math.PI * t)));
  });
  const piece = (k: number, angle: number): Segment => ({
    from: [cut[k] * Math.cos(angle), cut[k] * Math.sin(angle), -depth],
    to: [cut[k + 1] * Math.cos(angle), cut[k + 1] * Math.sin(angle), -depth],
  });
  // All arms are alike, so one arm's pieces are the only unknowns; arms at ±angle count alike.
  const matrix = new Float64Array(PIECES * PIECES);
  for (let arm = 0; arm <= arms / 2; arm++) {
    const copies = arm === 0 || 2 * arm === arms ? 1 : 2;
    for (let j = 0; j < PIECES; j++) {
      const other = piece(j, (2 * Math.PI * arm) / arms);
      const image = mirrored(other);
      for (let i = 0; i < PIECES; i++) {
        const own = piece(i, 0);
        const a = wireDiameter / 2;
        matrix[i * PIECES + j] += copies * (meanInverseDistance(own, other, a) + meanInverseDistance(own, image, a));
      }
    }
  }
  if (leakage === 'uniform') {
    let mean = 0;
    for (let i = 0; i < PIECES; i++)
      for (let j = 0; j < PIECES; j++) mean += matrix[i * PIECES + j] * (cut[i + 1] - cut[i]) * (cut[j + 1] - cut[j]);
    return mean / (4 * Math.PI * arms * length ** 2);
  }
  const leaks = solveLinear(matrix, new Float64Array(PIECES).fill(4 * Math.PI));
  return 1 / (arms * leaks.reduce((sum, i) => sum + i, 0));
}

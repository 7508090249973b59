import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { solveLinear } from '../../numerics/linear-solve.ts';
import { meanInverseDistance, type Segment } from '../../numerics/segment-potential.ts';
import type { Metres } from '../../units/quantities.ts';

/** Where rods stand, seen from above. */
export type RodPosition = readonly [Metres, Metres];

/**
 * Resistance of one driven rod for a soil of 1 Ω·m: (ln(4L/a) − 1)/2πL, a its radius.
 * H. B. Dwight, Calculation of resistances to ground, Electrical Engineering 55 (1936); average potential, so 0.7–1.6 %
 * above the exact value. @returns 1/m: times the resistivity it is ohms.
 */
export const rodFactor = (length: Metres, diameter: Metres): number =>
  (Math.log((8 * length) / diameter) - 1) / (2 * Math.PI * length);

/**
 * Rods joined at the top: each at Dwight's average potential, raised by the mean potential of every other, all equal.
 * @returns 1/m.
 */
export function rodsFactor(length: Metres, diameter: Metres, positions: readonly RodPosition[]): number {
  const n = positions.length;
  const matrix = new Float64Array(n * n);
  const rod: Segment = { from: [0, 0, 0], to: [0, 0, -length] };
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const s = Math.hypot(positions[i][0] - positions[j][0], positions[i][1] - positions[j][1]);
      if (i !== j && !(s > diameter))
        throw new ImpossibleValues({ code: 'earth.rods-together', first: Math.min(i, j), second: Math.max(i, j) });
      // The other rod with its image above ground is one wire of twice the length and twice the current.
      const both: Segment = { from: [s, 0, -length], to: [s, 0, length] };
      matrix[i * n + j] =
        i === j ? rodFactor(length, diameter) : (2 * meanInverseDistance(rod, both, diameter / 2)) / (4 * Math.PI);
    }
  }
  const currents = solveLinear(matrix, new Float64Array(n).fill(1));
  return 1 / currents.reduce((sum, i) => sum + i, 0);
}

/** Rods as neighbours: how many there are, and what two of them have in common, once for each distance between two. */
export interface RodGroup {
  readonly count: number;
  readonly apart: readonly {
    readonly distance: Metres;
    /** Pairs of rods this far apart. */
    readonly pairs: number;
    /** What the current of one raises the other by, for a soil of 1 Ω·m, 1/m. */
    readonly shared: number;
  }[];
}

/** One rod by itself. */
export const ONE_ROD: RodGroup = { count: 1, apart: [] };

/** @throws ImpossibleValues where two stand in one place. */
export function rodGroup(length: Metres, diameter: Metres, positions: readonly RodPosition[]): RodGroup {
  const pairsAt = new Map<string, number>();
  for (let i = 1; i < positions.length; i++)
    for (let j = 0; j < i; j++) {
      const distance = Math.hypot(positions[i][0] - positions[j][0], positions[i][1] - positions[j][1]);
      const key = distance.toPrecision(9);
      pairsAt.set(key, (pairsAt.get(key) ?? 0) + 1);
    }
  const own = rodFactor(length, diameter);
  const apart = [...pairsAt].map(([key, pairs]) => {
    const distance = Number(key);
    // From the resistance of the two joined.
    const both: RodPosition[] = [
      [0, 0],
      [distance, 0],
    ];
    return { distance, pairs, shared: 2 * rodsFactor(length, diameter, both) - own };
  });
  return { count: positions.length, apart };
}

/** Standing room for rods with neighbours `spacing` apart: in a row, round a ring, or in rows that make a square. */
export function rodPositions(count: number, spacing: Metres, layout: 'row' | 'ring' | 'square'): RodPosition[] {
  const columns = layout === 'square' ? Math.ceil(Math.sqrt(count)) : count;
  const radius = spacing / (2 * Math.sin(Math.PI / count));
  return Array.from({ length: count }, (_, i): RodPosition => {
    if (layout !== 'ring') return [(i % columns) * spacing, Math.floor(i / columns) * spacing];
    const angle = (2 * Math.PI * i) / count;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

import type { LawTable } from './device-law.ts';

/** What a table gives at a place: D = (mean voltage)/s − u + ln I0(x), the carrier's factor ρ, and their slopes. */
export interface LawAt {
  D: number;
  Dx: number;
  Du: number;
  rhoR: number;
  rhoI: number;
  rhoRx: number;
  rhoIx: number;
  rhoRu: number;
  rhoIu: number;
}

/** That of a bare junction whose circuit keeps no harmonics. */
export const plainLaw = (): LawAt => ({ D: 0, Dx: 0, Du: 0, rhoR: 1, rhoI: 0, rhoRx: 0, rhoIx: 0, rhoRu: 0, rhoIu: 0 });

/** A table at (at.x, at.u), into `into`; beyond its edges the value at the edge, without slope. */
export function lookUpLaw(table: LawTable, at: { readonly x: number; readonly u: number }, into: LawAt): void {
  const { values, rows, columns } = table;
  const { x, u } = at;
  const root = Math.sqrt(1 + x * x);
  const one = 1 / (root - 1 + table.bend);
  const perXi = (columns - 1) / table.last;
  let cx = (root - 1) * one * perXi;
  let slopeX = (table.bend * one * one * perXi * x) / root;
  if (!(cx < columns - 1.000001)) {
    cx = columns - 1.000001;
    slopeX = 0;
  }
  let cu = (u - table.lowest) * table.perUnit;
  let slopeU = table.perUnit;
  if (!(cu > 0)) {
    cu = 0;
    slopeU = 0;
  } else if (!(cu < rows - 1.000001)) {
    cu = rows - 1.000001;
    slopeU = 0;
  }
  const jx = cx | 0;
  const ju = cu | 0;
  const tx = cx - jx;
  const t = cu - ju;
  const s = 1 - t;
  // Cubic Hermite weights along U, of values and of slopes, and how they change.
  const a0 = s * s * (1 + 2 * t);
  const a1 = t * t * (3 - 2 * t);
  const b0 = t * s * s;
  const b1 = -t * t * s;
  const da = 6 * t * s;
  const db0 = s * (1 - 3 * t);
  const db1 = t * (3 * t - 2);
  const p = 6 * (jx * rows + ju);
  const q = p + 6 * rows;
  let y0 = a0 * values[p] + b0 * values[p + 1] + a1 * values[p + 6] + b1 * values[p + 7];
  let y1 = a0 * values[q] + b0 * values[q + 1] + a1 * values[q + 6] + b1 * values[q + 7];
  let z0 = da * (values[p + 6] - values[p]) + db0 * values[p + 1] + db1 * values[p + 7];
  let z1 = da * (values[q + 6] - values[q]) + db0 * values[q + 1] + db1 * values[q + 7];
  into.D = y0 + tx * (y1 - y0);
  into.Dx = (y1 - y0) * slopeX;
  into.Du = (z0 + tx * (z1 - z0)) * slopeU;
  y0 = a0 * values[p + 2] + b0 * values[p + 3] + a1 * values[p + 8] + b1 * values[p + 9];
  y1 = a0 * values[q + 2] + b0 * values[q + 3] + a1 * values[q + 8] + b1 * values[q + 9];
  z0 = da * (values[p + 8] - values[p + 2]) + db0 * values[p + 3] + db1 * values[p + 9];
  z1 = da * (values[q + 8] - values[q + 2]) + db0 * values[q + 3] + db1 * values[q + 9];
  into.rhoR = y0 + tx * (y1 - y0);
  into.rhoRx = (y1 - y0) * slopeX;
  into.rhoRu = (z0 + tx * (z1 - z0)) * slopeU;
  y0 = a0 * values[p + 4] + b0 * values[p + 5] + a1 * values[p + 10] + b1 * values[p + 11];
  y1 = a0 * values[q + 4] + b0 * values[q + 5] + a1 * values[q + 10] + b1 * values[q + 11];
  z0 = da * (values[p + 10] - values[p + 4]) + db0 * values[p + 5] + db1 * values[p + 11];
  z1 = da * (values[q + 10] - values[q + 4]) + db0 * values[q + 5] + db1 * values[q + 11];
  into.rhoI = y0 + tx * (y1 - y0);
  into.rhoIx = (y1 - y0) * slopeX;
  into.rhoIu = (z0 + tx * (z1 - z0)) * slopeU;
}

import { ownField, ringField } from './ring.ts';
import type { Winding } from './winding.ts';

/** Field of all other turns at each turn, for one ampere in every turn, A/m; and which turns were looked at. */
export interface Background {
  readonly turn: Int32Array;
  readonly axial: Float64Array;
  readonly radial: Float64Array;
}

const field = new Float64Array(2);

/** Field at turn j of one ampere in turn i, averaged over a weave. */
function fieldOf(w: Winding, i: number, j: number, out: Float64Array): void {
  const dz = w.z[j] - w.z[i];
  if (!w.weave) {
    ringField(w.radius[i], w.radius[j], dz, out);
    return;
  }
  const { outward, along, shift } = w.weave;
  const n = outward.length;
  const turn = ((j - i) * shift) % n;
  let axial = 0;
  let radial = 0;
  for (let q = 0; q < n; q++) {
    const p = (q + turn + n) % n;
    ringField(w.radius[i] + outward[q], w.radius[j] + outward[p], dz + along[p] - along[q], field);
    axial += field[0];
    radial += field[1];
  }
  out[0] = axial / n;
  out[1] = radial / n;
}

/** Turns at which the field of a large winding is looked at. */
const MOST_LOOKED_AT = 800;

export function backgroundField(w: Winding): Background {
  return w.radii.length === 1 ? ofSingleLayer(w) : ofAny(w);
}

function ofSingleLayer(w: Winding): Background {
  const n = w.radius.length;
  const axial = new Float64Array(n);
  const radial = new Float64Array(n);
  // Running sums by distance: a turn sees those below it and, with the radial field reversed, those above.
  const sumAxial = new Float64Array(n);
  const sumRadial = new Float64Array(n);
  const out = new Float64Array(2);
  for (let k = 1; k < n; k++) {
    fieldOf(w, 0, k, out);
    sumAxial[k] = sumAxial[k - 1] + out[0];
    sumRadial[k] = sumRadial[k - 1] + out[1];
  }
  const own = ownField(w.radius[0], w.wireRadius);
  for (let j = 0; j < n; j++) {
    axial[j] = sumAxial[j] + sumAxial[n - 1 - j] + own;
    radial[j] = sumRadial[j] - sumRadial[n - 1 - j];
  }
  return { turn: Int32Array.from(axial, (_, i) => i), axial, radial };
}

function ofAny(w: Winding): Background {
  const { layer, column, columns, radii } = w;
  const n = w.radius.length;
  const stride = Math.ceil(n / MOST_LOOKED_AT);
  const samples = Math.ceil(n / stride);
  const turn = Int32Array.from({ length: samples }, (_, k) => Math.min(n - 1, k * stride + (stride >> 1)));
  const axial = new Float64Array(samples);
  const radial = new Float64Array(samples);
  const size = radii.length * radii.length * columns;
  const tables =
    !w.weave && size <= 4e6 ? { axial: new Float64Array(size), radial: new Float64Array(size) } : undefined;
  const out = new Float64Array(2);
  for (let k = 0; k < samples; k++) {
    const j = turn[k];
    axial[k] = ownField(w.radius[j], w.wireRadius);
    for (let i = 0; i < n; i++) {
      if (i === j) continue;
      const steps = column[j] - column[i];
      if (!tables) {
        fieldOf(w, i, j, out);
        axial[k] += out[0];
        radial[k] += out[1];
        continue;
      }
      const key = (layer[i] * radii.length + layer[j]) * columns + Math.abs(steps);
      if (tables.axial[key] === 0) {
        ringField(radii[layer[i]], radii[layer[j]], Math.abs(steps) * w.zStep, out);
        tables.axial[key] = out[0];
        tables.radial[key] = out[1];
      }
      axial[k] += tables.axial[key];
      radial[k] += steps < 0 ? -tables.radial[key] : tables.radial[key];
    }
  }
  return { turn, axial, radial };
}

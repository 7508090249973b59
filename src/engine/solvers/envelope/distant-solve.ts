import { lookUpBessel } from '../../numerics/bessel-table.ts';
import type { Distant, EnvelopeState } from './envelope-state.ts';
import type { Junction } from './junction.ts';

/** x of a distant station up to which it is counted by the square law. */
const FAINT = 0.4;

/**
 * Takes up what stands open of each distant station at a tick, from `row` on. The faint ones, ln I0 = x²/4 − x⁴/64,
 * neither move the detector nor each other: they are solved by the last eᵘ, and their sum is left in the state.
 */
export function sortDistant(
  { c2 }: Junction,
  distant: Distant,
  openAt: Float64Array,
  row: number,
  state: EnvelopeState,
): void {
  const { count, open, x, kr, ki, strong } = distant;
  let strongCount = 0;
  let faint = 0;
  const half = 0.5 * c2 * state.w;
  for (let k = 0; k < count; k++) {
    const y = openAt[row + k];
    open[k] = y;
    if (y > FAINT) {
      strong[strongCount++] = k;
      continue;
    }
    const zr = 1 + half * kr[k];
    const zi = half * ki[k];
    const y2 = (y * y) / (zr * zr + zi * zi);
    x[k] = Math.sqrt(y2);
    faint += y2 * (0.25 - y2 / 64);
  }
  distant.strongCount = strongCount;
  state.faint = faint;
}

/** Arrow: each strong distant station's own equation, eliminated from the junction's. */
export function eliminateDistant(junction: Junction, distant: Distant, { w, faint }: EnvelopeState): void {
  const { c2, bessel, atDistant } = junction;
  const { open, x, kr, ki, strong, strongCount, left, slope } = distant;
  let sum = junction.sum + faint;
  let J22 = junction.slope;
  for (let each = 0; each < strongCount; each++) {
    const k = strong[each];
    const y = x[k];
    lookUpBessel(y, bessel, atDistant);
    const L = atDistant[0];
    const r = atDistant[1];
    const tiny = y < 0.03;
    const ry = tiny ? 0.5 - (y * y) / 16 : r / y;
    const by = tiny ? -y / 4 : (1 - ry - r * r - ry) / r;
    const g = c2 * w * ry;
    const yr = 1 + g * kr[k];
    const yi = g * ki[k];
    const my = Math.sqrt(yr * yr + yi * yi);
    const du = (yr * (yr - 1) + yi * yi) / my;
    const F = y * my - open[k];
    const j11 = my + y * du * by;
    const j12 = y * du;
    sum += L - (r * F) / j11;
    J22 -= (r * j12) / j11;
    left[k] = F / j11;
    slope[k] = j12 / j11;
  }
  junction.sum = sum;
  junction.slope = J22;
}

/** What the junction's step means for each of them; how far they move is added to its `change`. */
export function moveDistant(junction: Junction, { open, x, strong, strongCount, left, slope }: Distant): void {
  const { du, scale } = junction;
  let { change } = junction;
  for (let each = 0; each < strongCount; each++) {
    const k = strong[each];
    const step = -scale * (left[k] + slope[k] * (scale > 0 ? du / scale : du));
    const y = x[k];
    let next = y + step;
    const cap = 1.5 * open[k] + 1e-9;
    if (!(next > 0.1 * y)) next = 0.1 * y;
    if (next > cap) next = cap;
    change += Math.abs(next - y);
    x[k] = next;
  }
  junction.change = change;
}

/** Σ ln I0 of all of them, into the state. */
export function sumDistant(
  { bessel, atDistant }: Junction,
  { x, strong, strongCount }: Distant,
  state: EnvelopeState,
): void {
  let sum = state.faint;
  for (let each = 0; each < strongCount; each++) {
    lookUpBessel(x[strong[each]], bessel, atDistant);
    sum += atDistant[0];
  }
  state.distant = sum;
}

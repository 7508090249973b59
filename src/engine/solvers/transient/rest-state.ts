import type { StepRow } from './coefficients.ts';
import type { CoreState } from './core-state.ts';
import { solveLoadLine, solveLoadPlane } from './devices.ts';

/** Puts a state where the cells alone hold it, detectors conducting. @param detectorRows as they are, not reduced. */
export function restWithCells(state: CoreState, detectorRows: readonly StepRow[]): void {
  const { k, rows, curves, open, volt, current, before, zr, zi, work } = state;
  const D = rows.length;
  const rest = new Float64Array(D * D);
  rows.forEach((r, a) => {
    open[a] = r.bias;
    for (let b = 0; b < D; b++) {
      let s = detectorRows[a].detectors[b];
      for (let i = 0; i < k.count; i++) s += r.cr[i] * k.restGamma.re[i * D + b] - r.ci[i] * k.restGamma.im[i * D + b];
      rest[a * D + b] = Math.min(s, a === b ? 0 : Number.POSITIVE_INFINITY);
    }
  });
  if (D === 1) volt[0] = solveLoadLine(curves[0], open[0], rest[0], 0);
  else if (D > 1) solveLoadPlane(curves, open, rest, volt, work);
  for (let b = 0; b < D; b++) current[b] = curves[b].current(volt[b]);
  for (let i = 0; i < k.count; i++) {
    for (let b = 0; b < D; b++) {
      zr[i] += (k.restGamma.re[i * D + b] - k.gamma.re[i * D + b]) * current[b];
      zi[i] += (k.restGamma.im[i * D + b] - k.gamma.im[i * D + b]) * current[b];
    }
  }
  before.set(volt);
}

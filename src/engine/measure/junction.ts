import { type Warning, warning } from '../facts/warning.ts';
import { LIMITS } from '../fields/limits.ts';
import { wrightOmega } from '../numerics/lambert.ts';
import { linearLeastSquares } from '../numerics/qr.ts';
import type { Fitted } from './fitted.ts';
import { UnfitReadings } from './unfit.ts';

/** Temperature of a room where nobody read a thermometer, and its standard deviation; K. */
export const SUPPOSED_TEMPERATURE = { temperature: 293.15, deviation: 5 };

/** A reading of a detector: volts across the whole of it, and amperes through it. */
export interface JunctionPoint {
  readonly voltage: number;
  readonly current: number;
}

/** Voltage across the junction itself in units of n·Vt: closed form by Wright's omega, so that no voltage overflows. */
function junctionVoltage(V: number, lnIs: number, n: number, lnRs: number, Vt: number): number {
  const s = n * Vt;
  const lnDrop = lnRs + lnIs - Math.log(s); // Rs·Is in units of n·Vt
  const z = V / s + Math.exp(lnDrop);
  return z - wrightOmega(z + lnDrop);
}

/** ln of the current at V > 0 through a junction of ln Is, n and ln Rs: I = Is(exp((V − I·Rs)/(n·Vt)) − 1). */
export function logCurrent(V: number, lnIs: number, n: number, lnRs: number, Vt: number): number {
  const w = junctionVoltage(V, lnIs, n, lnRs, Vt);
  return lnIs + (w > 30 ? w : Math.log(Math.expm1(w)));
}

/** The same current at any V, A. */
export const junctionCurrent = (V: number, lnIs: number, n: number, lnRs: number, Vt: number): number =>
  Math.exp(lnIs) * Math.expm1(junctionVoltage(V, lnIs, n, lnRs, Vt));

/** V/I·dI/dV of that junction: how the error of a voltage enters ln I. */
export function logSlope(V: number, lnIs: number, n: number, lnRs: number, Vt: number): number {
  const w = junctionVoltage(V, lnIs, n, lnRs, Vt);
  const [current, conductance] = [Math.exp(lnIs) * Math.expm1(w), Math.exp(lnIs + w) / (n * Vt)];
  return (V * conductance) / ((1 + conductance * Math.exp(lnRs)) * current);
}

/** @throws UnfitReadings where no junction has so small or so large a saturation current */
export function requireJunction(lnIs: number): void {
  const { min, max } = LIMITS.saturationCurrent;
  if (!(lnIs >= Math.log(min) && lnIs <= Math.log(max))) throw new UnfitReadings({ code: 'detector.not-rising' });
}

/** What a series resistance is warned of that the readings do not show. */
export const seriesResistanceWarnings = ({ value, standardError }: Fitted): readonly Warning[] =>
  standardError < value ? [] : [warning('measure.series-resistance-unseen')];

/** A start for a fit of forward points: n and Rs follow linearly from each of a row of saturation currents; the best one. */
export function junctionStart(points: readonly JunctionPoint[], Vt: number): readonly [number, number, number] {
  let best: readonly [number, number, number] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let lnIs = Math.log(1e-16); lnIs < Math.log(1e-2); lnIs += 0.5) {
    const { x } = linearLeastSquares(
      points.flatMap(({ current }) => [Vt * Math.log1p(current / Math.exp(lnIs)), current]),
      points.map((p) => p.voltage),
      2,
    );
    const [n, Rs] = [x[0], Math.max(x[1], 1e-3)];
    if (!(n > 0)) continue;
    const lnRs = Math.log(Rs);
    const sum = points.reduce((s, p) => s + (Math.log(p.current) - logCurrent(p.voltage, lnIs, n, lnRs, Vt)) ** 2, 0);
    if (sum < least) {
      least = sum;
      best = [lnIs, n, lnRs];
    }
  }
  if (!best) throw new UnfitReadings({ code: 'detector.not-rising' });
  return best;
}

/** Names of the unknowns of a fitted junction, in their order: ln Is, n, ln Rs. */
export const JUNCTION_FIGURES = ['saturationCurrent', 'ideality', 'seriesResistance'] as const;

import type { Complex } from '../../numerics/complex.ts';
import { type AveragedDetector, averagedCurrents } from '../../parts/detector/averaged.ts';
import type { SteadyDetection } from '../../parts/detector/steady.ts';
import type { Ohms, Volts } from '../../units/quantities.ts';

/** How the detector answers small changes about a steady carrier. */
export interface WorkingPoint {
  /** What the audio load is driven through. */
  readonly outputResistance: Ohms;
  /** d ln(direct voltage) / d ln(field): 2 in square law, 1 when it follows the envelope straight, more below a knee. */
  readonly fieldExponent: number;
}

/**
 * Slopes of V + Rs·I1(V, −D) = E and D = R·I0(V, −D), differentiated. The source's reactance turns the phase but,
 * in tune, the size little, and is left out.
 * @param standing direct voltage with no signal: a bias or a hot cathode sends it without any station.
 */
export function workingPoint(
  averaged: AveragedDetector,
  steady: SteadyDetection,
  source: Complex,
  R: Ohms,
  E: number,
  standing: Volts = 0,
): WorkingPoint {
  const d = averagedCurrents();
  const V = steady.junctionVoltage;
  averaged.at(V, steady.deviceVoltage, d);
  const Rs = Math.max(source.re, 0);
  const byDirect = (Rs * d.fundamentalByDirect) / (1 + Rs * d.fundamentalByAmplitude);
  const G = Math.max(d.meanByDirect - d.meanByAmplitude * byDirect, 1e-15);
  const dV = 1 / (1 + Rs * d.fundamentalByAmplitude);
  const dD = (d.meanByAmplitude * dV) / (G + 1 / Math.max(R, 1e-3));
  const signal = steady.directVoltage - standing;
  const exponent = signal > 0 ? (dD * E) / signal : 2;
  return {
    outputResistance: 1 / G,
    fieldExponent: Number.isFinite(exponent) ? Math.min(12, Math.max(1, exponent)) : 2,
  };
}

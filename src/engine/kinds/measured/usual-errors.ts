import { normalQuantile } from '../../numerics/normal.ts';
import type { Hertz } from '../../units/quantities.ts';
import type { MeasuredValue } from './measured-schema.ts';

/** How many standard errors a 90 % range reaches to each side. */
const REACH = normalQuantile(0.95);

/** Where a figure at radio frequency was measured if nobody says where. */
export const USUAL_FREQUENCY: Hertz = 1e6;

/**
 * Standard error of a hand instrument where none was stated: a share of the value, except of small capacitances (F) and
 * of levels (dB). Common practice, no source.
 */
export const USUAL_ERROR = {
  inductance: 0.02,
  q: 0.06,
  coupling: 0.05,
  selfCapacitance: 1.5e-12,
  capacitance: 0.02,
  smallCapacitance: 1.5e-12,
  aerialResistance: 0.1,
  earthResistance: 0.08,
  effectiveHeight: 0.1,
  saturationCurrent: 0.15,
  ideality: 0.015,
  seriesResistance: 0.15,
  leakage: 0.15,
  audioImpedance: 0.05,
  directResistance: 0.02,
  sensitivity: 1,
  fieldStrength: 0.15,
} as const;

/**
 * Standard error of a measured value: as stated, or usual for what it is of.
 * @param measured as read
 * @param usual one of `USUAL_ERROR`
 * @returns a share, farads or decibels, as `usual` is
 */
export const standardErrorOf = ({ error }: MeasuredValue, usual: number): number => error ?? usual;

/**
 * 90 % range of a measured value whose error is a share of it.
 * @param measured as read
 * @param usual standard error where none was stated, a share
 * @returns the 5th percentile and the 95th, in the value's unit
 */
export function shareRange(measured: MeasuredValue, usual: number): readonly [number, number] {
  const factor = Math.exp(REACH * standardErrorOf(measured, usual));
  return [measured.value / factor, measured.value * factor];
}

/**
 * 90 % range of a measured value whose error is in its own unit; never below 0.
 * @param measured as read
 * @param usual standard error where none was stated, in the value's unit
 * @returns the 5th percentile and the 95th
 */
export function amountRange(measured: MeasuredValue, usual: number): readonly [number, number] {
  const amount = REACH * standardErrorOf(measured, usual);
  return [Math.max(0, measured.value - amount), measured.value + amount];
}

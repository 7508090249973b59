import { add, type Complex, divide, magnitude, phase, reciprocal, scale, subtract } from '../../numerics/complex.ts';
import type { Hertz, Ohms } from '../../units/quantities.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from '../fitted.ts';
import { TONE_DEGREES, type ToneReading } from './tone-readings.ts';

/** A transfer and the standard error of each part of it. */
export type CertainTransfer = Pick<ToneReading, 'transfer' | 'standardError'>;

/** The three states that settle an impedance: nothing, a known resistor, and what is measured at the input. */
export interface ThreeStates<T> {
  readonly open: T;
  readonly known: T;
  readonly device: T;
}

/**
 * Impedance by two-point calibration, Z = Rc·(m/mc)·(mo − mc)/(mo − m): gains, delay, the resistor in the lead and the
 * input's own impedance cancel.
 * @param states transfers
 * @param resistor the known one, Ω
 * @returns Z (Ω) and the standard error of its logarithm by those of the transfers; undefined where a transfer is as the
 *   open one, or nothing
 */
export function threeStateImpedance(
  { open, known, device }: ThreeStates<CertainTransfer>,
  resistor: Ohms,
): { readonly impedance: Complex; readonly standardError: number } | undefined {
  const [mo, mc, m] = [open.transfer, known.transfer, device.transfer];
  const [withKnown, withDevice] = [subtract(mo, mc), subtract(mo, m)];
  if (![withKnown, withDevice, m, mc].every((one) => magnitude(one) > 0)) return undefined;
  return {
    impedance: divide(divide(scale(m, resistor), mc), divide(withDevice, withKnown)),
    standardError: Math.hypot(
      device.standardError * magnitude(add(reciprocal(m), reciprocal(withDevice))),
      known.standardError * magnitude(add(reciprocal(mc), reciprocal(withKnown))),
      open.standardError * magnitude(subtract(reciprocal(withKnown), reciprocal(withDevice))),
    ),
  };
}

/** An impedance at one frequency. */
export interface ImpedanceAt {
  readonly frequency: Hertz;
  /** Ω. */
  readonly magnitude: Fitted;
  /** Degrees, above 0 for an inductive one. */
  readonly phase: Fitted;
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;
/** As far as the fewest that one of the three errors rests on. */
const reach = reachOf(TONE_DEGREES);
/** Beyond this standard error of its logarithm an impedance is not known at all. */
const UNKNOWN = 1;

/**
 * Impedance over frequency from the readings of three recordings.
 * @param options readings of the tones of one plan; a tone that is not in all three is left out
 * @param resistor the known one, Ω
 * @param resistorError its standard error, a share
 * @returns rising in frequency; frequencies at which nothing can be said are left out
 */
export function impedanceSweep(
  { open, known, device }: ThreeStates<readonly ToneReading[]>,
  resistor: Ohms,
  resistorError: number,
): readonly ImpedanceAt[] {
  const at = (readings: readonly ToneReading[], frequency: Hertz) =>
    readings.find((one) => one.frequency === frequency);
  return device.flatMap((reading): ImpedanceAt[] => {
    const { frequency } = reading;
    const [atOpen, atKnown] = [at(open, frequency), at(known, frequency)];
    const found = atOpen && atKnown && threeStateImpedance({ open: atOpen, known: atKnown, device: reading }, resistor);
    if (!found || !(found.standardError < UNKNOWN)) return [];
    const { impedance, standardError } = found;
    return [
      {
        frequency,
        magnitude: fittedLogarithm(Math.log(magnitude(impedance)), Math.hypot(standardError, resistorError), reach),
        phase: fitted(degrees(phase(impedance)), degrees(standardError), reach),
      },
    ];
  });
}

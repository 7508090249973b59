import { demandWithin } from '../../../facts/impossible-values.ts';
import { root } from '../../../numerics/roots.ts';
import type { Kelvins, Seconds, Volts } from '../../../units/quantities.ts';

/** A valve's heater and cathode as one warm body. Defaults are for a small indirectly heated diode, 6.3 V 0.3 A. */
export interface Heater {
  readonly ratedVoltage: Volts;
  /** Amperes at the rated voltage. */
  readonly ratedCurrent: number;
  /** Cathode temperature at the rated voltage. */
  readonly ratedTemperature: Kelvins;
  readonly roomTemperature: Kelvins;
  /** Share of the rated power that leaves by the leads and supports; the rest is radiated. */
  readonly conductedShare: number;
  /** Joules per kelvin of sleeve, coating and heater. */
  readonly heatCapacity: number;
}

/** Typical figures, from general knowledge of such valves: about ten seconds to warm up. */
export const SMALL_VALVE_HEATER: Heater = {
  ratedVoltage: 6.3,
  ratedCurrent: 0.3,
  ratedTemperature: 1020,
  roomTemperature: 300,
  conductedShare: 0.15,
  heatCapacity: 0.05,
};

/** The same small diode with a heater for another voltage: as much power. */
export const heaterFor = (ratedVoltage: Volts): Heater => ({
  ...SMALL_VALVE_HEATER,
  ratedVoltage,
  ratedCurrent: (SMALL_VALVE_HEATER.ratedVoltage * SMALL_VALVE_HEATER.ratedCurrent) / ratedVoltage,
});

// Tungsten's resistance goes about as T^1.2 from 300 to 1500 K.
const RESISTANCE_EXPONENT = 1.2;

/** Watts left over to heat the cathode: electrical power in, less radiation (T⁴) and conduction. */
function surplus(heater: Heater, voltage: Volts, T: Kelvins): number {
  const { ratedVoltage, ratedCurrent, ratedTemperature: T0, roomTemperature: Ta, conductedShare } = heater;
  const rated = ratedVoltage * ratedCurrent;
  const electrical = (voltage * voltage * ratedCurrent) / (ratedVoltage * (T / T0) ** RESISTANCE_EXPONENT);
  const radiated = ((1 - conductedShare) * rated * (T ** 4 - Ta ** 4)) / (T0 ** 4 - Ta ** 4);
  return electrical - radiated - (conductedShare * rated * (T - Ta)) / (T0 - Ta);
}

/**
 * Steady cathode temperature at a heater voltage (either sign; room temperature at 0).
 * @throws RangeError when the voltage is not finite or beyond 3 times the rated one.
 */
export function cathodeTemperature(voltage: Volts, heater: Heater = SMALL_VALVE_HEATER): Kelvins {
  const most = 3 * heater.ratedVoltage;
  demandWithin('detector.heater-voltage', voltage, { min: -most, max: most });
  if (voltage === 0) return heater.roomTemperature;
  return root((T) => surplus(heater, voltage, T), heater.roomTemperature, 4 * heater.ratedTemperature);
}

/**
 * Cathode temperature after some time at a heater voltage: the step of a clockless simulation.
 * C·dT/dt = V²/R(T) - radiation - conduction, by fourth-order Runge-Kutta in steps of 20 ms at most.
 * @param from temperature now. @param time at least 0 and at most 3600 s.
 */
export function heatCathode(
  from: Kelvins,
  voltage: Volts,
  time: Seconds,
  heater: Heater = SMALL_VALVE_HEATER,
): Kelvins {
  if (!(time >= 0 && time <= 3600)) throw new RangeError(`time must be from 0 to 3600 s, got ${time}`);
  if (!(from > 0 && from < 4000)) throw new RangeError(`temperature must be between 0 and 4000 K, got ${from}`);
  const steps = Math.ceil(time / 0.02);
  const h = time / steps;
  const rate = (T: number) => surplus(heater, voltage, T) / heater.heatCapacity;
  let T = from;
  for (let k = 0; k < steps; k++) {
    const a = rate(T);
    const b = rate(T + (h / 2) * a);
    const c = rate(T + (h / 2) * b);
    const d = rate(T + h * c);
    T += (h / 6) * (a + 2 * b + 2 * c + d);
  }
  return T;
}

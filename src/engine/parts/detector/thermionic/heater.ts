import { demandWithin } from '../../../facts/impossible-values.ts';
import { root } from '../../../numerics/roots.ts';
import type { Kelvins, Ratio, Seconds, Volts } from '../../../units/quantities.ts';

/** A valve's heater and its cathode. Defaults are for a small indirectly heated diode, 6.3 V 0.3 A. */
export interface Heater {
  readonly ratedVoltage: Volts;
  /** Amperes at the rated voltage. */
  readonly ratedCurrent: number;
  /** Cathode temperature at the rated voltage. */
  readonly ratedTemperature: Kelvins;
  readonly roomTemperature: Kelvins;
  /** Share of the cathode's power that leaves by the leads and supports; the rest is radiated. */
  readonly conductedShare: Ratio;
  /** Of sleeve and coating, J/K; of a directly heated cathode, of the filament. */
  readonly heatCapacity: number;
  /** The wire inside the sleeve, a body of its own. Of a directly heated cathode: none, the filament is the cathode. */
  readonly wire?: {
    /** At the rated voltage. */
    readonly ratedTemperature: Kelvins;
    /** Of the wire and its insulation, J/K. */
    readonly heatCapacity: number;
    /** Share of the electrical power lost at the wire's ends; the rest is radiated to the sleeve. */
    readonly endLoss: Ratio;
  };
}

/**
 * Typical figures, from general knowledge of such valves. The two heat capacities are those with which the standard
 * warm-up test (four times the rated voltage through three times the hot resistance, until 80 % of the rated voltage is
 * across the heater: RETMA/JEDEC, from memory) takes the 11 s that types of controlled warm-up time are marked with.
 */
export const SMALL_VALVE_HEATER: Heater = {
  ratedVoltage: 6.3,
  ratedCurrent: 0.3,
  ratedTemperature: 1020,
  roomTemperature: 300,
  conductedShare: 0.15,
  heatCapacity: 0.02,
  wire: { ratedTemperature: 1450, heatCapacity: 0.01, endLoss: 0.05 },
};

/** The same small diode with a heater for another voltage: as much power. */
export const heaterFor = (ratedVoltage: Volts): Heater => ({
  ...SMALL_VALVE_HEATER,
  ratedVoltage,
  ratedCurrent: (SMALL_VALVE_HEATER.ratedVoltage * SMALL_VALVE_HEATER.ratedCurrent) / ratedVoltage,
});

/** How warm heater and cathode are. */
export interface HeaterState {
  /** Of the wire inside; of a directly heated cathode, the cathode's own. */
  readonly wire: Kelvins;
  readonly cathode: Kelvins;
}

// Tungsten's resistance goes about as T^1.2 from 300 to 1500 K.
const RESISTANCE_EXPONENT = 1.2;

const usefulShare = ({ wire }: Heater): Ratio => 1 - (wire?.endLoss ?? 0);

/** Electrical watts into a wire at T. */
export function heaterPower(heater: Heater, voltage: Volts, T: Kelvins): number {
  const { ratedVoltage, ratedCurrent, ratedTemperature, wire } = heater;
  const T0 = wire?.ratedTemperature ?? ratedTemperature;
  return (voltage * voltage * ratedCurrent) / (ratedVoltage * (T / T0) ** RESISTANCE_EXPONENT);
}

/** Watts that a cathode loses by radiation (T⁴) and conduction. */
function heaterLoss(heater: Heater, T: Kelvins): number {
  const { ratedVoltage, ratedCurrent, ratedTemperature: T0, roomTemperature: Ta, conductedShare } = heater;
  const rated = usefulShare(heater) * ratedVoltage * ratedCurrent;
  const radiated = ((1 - conductedShare) * rated * (T ** 4 - Ta ** 4)) / (T0 ** 4 - Ta ** 4);
  return radiated + (conductedShare * rated * (T - Ta)) / (T0 - Ta);
}

/** Watts over T⁴ that pass from wire to sleeve; 0 where the two are one. */
function exchange(heater: Heater): number {
  const { ratedVoltage, ratedCurrent, ratedTemperature, wire } = heater;
  if (!wire) return 0;
  return (usefulShare(heater) * ratedVoltage * ratedCurrent) / (wire.ratedTemperature ** 4 - ratedTemperature ** 4);
}

/** Of a wire that keeps a cathode at T. */
const wireAt = (heater: Heater, T: Kelvins): Kelvins =>
  heater.wire ? (T ** 4 + heaterLoss(heater, T) / exchange(heater)) ** 0.25 : T;

/**
 * Heater and cathode warmed through at a voltage (either sign; room temperature at 0).
 * @throws RangeError when the voltage is not finite or beyond 3 times the rated one.
 */
export function heatedThrough(voltage: Volts, heater: Heater = SMALL_VALVE_HEATER): HeaterState {
  const most = 3 * heater.ratedVoltage;
  demandWithin('detector.heater-voltage', voltage, { min: -most, max: most });
  const { roomTemperature: Ta, ratedTemperature } = heater;
  if (voltage === 0) return { wire: Ta, cathode: Ta };
  const surplus = (T: Kelvins) =>
    usefulShare(heater) * heaterPower(heater, voltage, wireAt(heater, T)) - heaterLoss(heater, T);
  const cathode = root(surplus, Ta, 4 * ratedTemperature);
  return { wire: wireAt(heater, cathode), cathode };
}

/**
 * Steady cathode temperature at a heater voltage (either sign; room temperature at 0).
 * @throws RangeError when the voltage is not finite or beyond 3 times the rated one.
 */
export const cathodeTemperature = (voltage: Volts, heater: Heater = SMALL_VALVE_HEATER): Kelvins =>
  heatedThrough(voltage, heater).cathode;

/** Heater and cathode as cold as the room. */
export const cold = ({ roomTemperature }: Heater): HeaterState => ({ wire: roomTemperature, cathode: roomTemperature });

/**
 * Heater and cathode after some time at a heater voltage: the step of a clockless simulation, by fourth-order
 * Runge-Kutta in steps of 20 ms at most.
 *   C_w·dT_w/dt = (1 − end loss)·V²/R(T_w) − G·(T_w⁴ − T_c⁴)
 *   C_c·dT_c/dt = G·(T_w⁴ − T_c⁴) − radiation − conduction
 * A directly heated cathode is one body: C·dT/dt = V²/R(T) − radiation − conduction.
 * @param from temperatures now, each between 0 and 4000 K. @param time at least 0 and at most 3600 s.
 * @throws RangeError outside these ranges.
 */
export function heatCathode(
  from: HeaterState,
  voltage: Volts,
  time: Seconds,
  heater: Heater = SMALL_VALVE_HEATER,
): HeaterState {
  if (!(time >= 0 && time <= 3600)) throw new RangeError(`time must be from 0 to 3600 s, got ${time}`);
  for (const T of [from.wire, from.cathode])
    if (!(T > 0 && T < 4000)) throw new RangeError(`temperature must be between 0 and 4000 K, got ${T}`);
  const { wire, heatCapacity } = heater;
  const G = exchange(heater);
  const useful = usefulShare(heater);
  const rates = (w: Kelvins, c: Kelvins): readonly [wire: number, cathode: number] => {
    if (!wire) {
      const rate = (heaterPower(heater, voltage, c) - heaterLoss(heater, c)) / heatCapacity;
      return [rate, rate];
    }
    const passed = G * (w ** 4 - c ** 4);
    return [
      (useful * heaterPower(heater, voltage, w) - passed) / wire.heatCapacity,
      (passed - heaterLoss(heater, c)) / heatCapacity,
    ];
  };
  const steps = Math.ceil(time / 0.02);
  const h = time / steps;
  let [w, c] = [from.wire, from.cathode];
  for (let k = 0; k < steps; k++) {
    const [w1, c1] = rates(w, c);
    const [w2, c2] = rates(w + (h / 2) * w1, c + (h / 2) * c1);
    const [w3, c3] = rates(w + (h / 2) * w2, c + (h / 2) * c2);
    const [w4, c4] = rates(w + h * w3, c + h * c3);
    w += (h / 6) * (w1 + 2 * w2 + 2 * w3 + w4);
    c += (h / 6) * (c1 + 2 * c2 + 2 * c3 + c4);
  }
  return { wire: w, cathode: c };
}

import type { Warning } from '../../facts/warning.ts';
import type { Amperes, Farads, Kelvins, Ohms, Siemens, Volts } from '../../units/quantities.ts';

/** Current and conductance at one voltage; made once by the caller and filled in, so that nothing is allocated. */
export interface DevicePoint {
  current: Amperes;
  conductance: Siemens;
}

/** Parameters of an exponential junction with its resistance and leakage, as the closed formulas want them. */
export interface ExponentialLaw {
  /** Saturation current at the device's temperature. */
  readonly saturationCurrent: Amperes;
  /** Slope voltage n·kT/e. */
  readonly slopeVoltage: Volts;
  /** Ohms in series with the junction and its leakage. */
  readonly seriesResistance: Ohms;
  /** Leakage across the junction. */
  readonly leakage: Siemens;
}

/**
 * A one-way device as a curve: what flows from anode to cathode at a voltage held steady between its terminals.
 * The series resistance is inside the curve; the capacitance is not (put it in the circuit, across the device).
 */
export interface Detector {
  readonly kind: 'exponential' | 'thermionic' | 'measured';
  /** Current at a voltage; finite for every finite voltage, never falling as the voltage rises. */
  readonly current: (voltage: Volts) => Amperes;
  /** Slope of the current, at least 0. */
  readonly conductance: (voltage: Volts) => Siemens;
  /** Both at once, into `out`: what a solver's inner loop calls. */
  readonly evaluate: (voltage: Volts, out: DevicePoint) => void;
  /** Capacitance across the terminals near 0 V. */
  readonly junctionCapacitance: Farads;
  /** Already contained in the curve; kept for display. */
  readonly seriesResistance: Ohms;
  /** Of the junction or of the cathode. */
  readonly temperature: Kelvins;
  /** Volts per e-fold of current near the working point: n·kT/e, or kT/e of a cathode. */
  readonly slopeVoltage: Volts;
  /** Current below which the curve stops being exponential: Is of a junction. Scales the solvers' steps. */
  readonly currentScale: Amperes;
  /** Of a measured curve: how far apart its points about 0 V stand, and where they end. */
  readonly measured?: { readonly apart: Volts; readonly lowest: Volts; readonly highest: Volts };
  /** Reverse-voltage rating, if known. */
  readonly reverseLimit?: Volts;
  /** Present when the averages have a closed form or nearly so. */
  readonly law?: ExponentialLaw;
  readonly warnings: readonly Warning[];
}

/**
 * Zero-signal resistance of a device at a working voltage (default 0).
 * @param detector any device
 * @param at working voltage, V; default 0
 * @returns ohms; Infinity where nothing flows.
 */
export function slopeResistance(detector: Detector, at: Volts = 0): Ohms {
  const g = detector.conductance(at);
  return g > 0 ? 1 / g : Number.POSITIVE_INFINITY;
}

/**
 * How sharply the curve bends at a voltage: d²i/dv² over di/dv, per volt. This is what makes a faint carrier audible;
 * 1/(n·kT/e), about 30 per volt, is the most an ideal junction gives at room temperature.
 */
export function curvature(detector: Detector, at: Volts = 0): number {
  // Step small enough for the bend, large enough for tabulated curves.
  const h = detector.slopeVoltage / 20;
  const below = detector.conductance(at - h);
  const above = detector.conductance(at + h);
  const conductance = detector.conductance(at);
  return conductance > 0 ? (above - below) / (2 * h * conductance) : 0;
}

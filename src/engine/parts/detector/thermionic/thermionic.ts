import { demandWithin } from '../../../facts/impossible-values.ts';
import { type Warning, warning } from '../../../facts/warning.ts';
import { monotoneCurve } from '../../../numerics/monotone.ts';
import { boundary } from '../../../numerics/roots.ts';
import {
  type Amperes,
  ELEMENTARY_CHARGE,
  EPSILON_0,
  type Farads,
  type Kelvins,
  type Metres,
  type Siemens,
  temperatureVoltage,
  type Volts,
} from '../../../units/quantities.ts';
import type { Detector, DevicePoint } from '../detector.ts';
import { langmuirFunctions } from './langmuir.ts';

/** Electron mass, kg (CODATA 2018). */
const ELECTRON_MASS = 9.109_383_7015e-31;

/** The electrodes of a small diode. Typical figures, from general knowledge: emission varies threefold between samples. */
export interface Electrodes {
  /** Effective emission constant A, A/(m²·K²). */
  readonly emissionConstant: number;
  /** Effective work function φ of the coated cathode, eV. */
  readonly workFunction: number;
  /** Cathode area, m². */
  readonly area: number;
  readonly gap: Metres;
  /** Anode's work function less the cathode's, volts: how far the anode seems negative with nothing connected. */
  readonly contactPotential: Volts;
}

const SMALL_VALVE_ELECTRODES: Electrodes = {
  emissionConstant: 5000,
  workFunction: 1.1,
  area: 2.5e-5,
  gap: 2e-4,
  contactPotential: 0.9,
};

export interface ThermionicOptions {
  /** Of the cathode; from the heater voltage by `cathodeTemperature`. */
  readonly temperature: Kelvins;
  readonly electrodes?: Partial<Electrodes>;
  readonly capacitance?: Farads;
  /** Of the socket and glass, across the device; default 0. */
  readonly leakage?: Siemens;
}

/** Emission the cathode can give: S·A·T²·exp(-φ/(kT/e)). Source: Richardson-Dushman. */
export function emission(T: Kelvins, electrodes: Electrodes = SMALL_VALVE_ELECTRODES): Amperes {
  const { area, emissionConstant, workFunction } = electrodes;
  return area * emissionConstant * T * T * Math.exp(-workFunction / temperatureVoltage(T));
}

/**
 * Thermionic diode by Langmuir's exact planar solution: exponential while the anode holds electrons back
 * (i = Isat·exp(v'/(kT/e)), v' = v - contact potential), then space charge, then saturation at the emission. Where the
 * first two meet, the solution's curvature steps; over ±`JOIN` kT/e it is led across smoothly, within 0.1 % of it.
 * The solution is tabulated as ln i against v for one cathode temperature (about 0.1 ms); a call costs some 20 ns.
 * @throws RangeError when the temperature is outside 250–2500 K or an electrode figure is not above 0.
 */
export function thermionicDetector(options: ThermionicOptions): Detector {
  const { temperature: T, capacitance = 2e-12, leakage: G = 0 } = options;
  const electrodes = { ...SMALL_VALVE_ELECTRODES, ...options.electrodes };
  demandWithin('detector.cathode-temperature', T, { min: 250, max: 2500 });
  demandWithin('detector.leakage', G, { min: 0, max: 1 });
  const { area, gap, contactPotential, emissionConstant, workFunction } = electrodes;
  for (const [name, value] of Object.entries({ area, gap, emissionConstant, workFunction })) {
    if (!(value > 0)) throw new RangeError(`${name} must be above 0, got ${value}`);
  }
  const Vt = temperatureVoltage(T);
  const saturation = emission(T, electrodes);
  const { volts, logs } = spaceChargeTable(Vt, saturation, area, gap);
  const curve = monotoneCurve(volts, logs);
  const start = volts[0] + contactPotential;
  const end = volts[volts.length - 1] + contactPotential;
  const logSaturation = Math.log(saturation);
  const half = Math.min(JOIN * Vt, (end - start) / 4);

  const evaluate = (v: number, out: DevicePoint) => {
    const x = (v - start) / half;
    if (x > -1 && x < 1) {
      // The exact law's lag behind the exponential, taken at a distance eased from 0.
      const { distance, slope } = eased(x);
      const at = volts[0] + half * distance;
      const i = Math.exp(curve.at(at) + (v - contactPotential - at) / Vt);
      out.current = i + G * v;
      out.conductance = i * (curve.slopeAt(at) * slope + (1 - slope) / Vt) + G;
    } else if (v <= start) {
      const i = Math.exp(logSaturation + (v - contactPotential) / Vt);
      out.current = i + G * v;
      out.conductance = i / Vt + G;
    } else if (v >= end) {
      out.current = saturation + G * v;
      out.conductance = G;
    } else {
      const i = Math.exp(curve.at(v - contactPotential));
      out.current = i + G * v;
      out.conductance = i * curve.slopeAt(v - contactPotential) + G;
    }
  };
  const scratch: DevicePoint = { current: 0, conductance: 0 };
  const read = (v: number) => {
    evaluate(v, scratch);
    return scratch;
  };
  const warnings: Warning[] = [];
  if (saturation < 1e-6) {
    warnings.push(warning('detector.cathode-cold', { temperature: T, emission: saturation }));
  } else if (T > 1200) {
    warnings.push(warning('detector.cathode-hot', { temperature: T }));
  }
  return {
    kind: 'thermionic',
    current: (v) => read(v).current,
    conductance: (v) => read(v).conductance,
    evaluate,
    junctionCapacitance: capacitance,
    seriesResistance: 0,
    temperature: T,
    slopeVoltage: Vt,
    currentScale: Math.max(read(0).current, 1e-15),
    warnings,
  };
}

/** Half the width of the smooth passage from exponential to space charge, in kT/e. */
const JOIN = 0.18;

/** Distance into the space-charge part and its slope, of x from -1 to 1: 0 at -1, x at 1, both with slope and curvature. */
function eased(x: number): { readonly distance: number; readonly slope: number } {
  const t = (x + 1) / 2;
  return { distance: t ** 3 * (2 - t), slope: t * t * (3 - 2 * t) };
}

/** ln i at rising anode voltages (contact potential left out), from where the potential minimum leaves the anode. */
function spaceChargeTable(Vt: number, saturation: number, area: number, gap: number) {
  const { cathodeDistance, anodePotential } = langmuirFunctions();
  // Reduced distance from minimum to anode at depth η = ln(Isat/i) of the minimum below the cathode.
  const scale =
    gap * Math.sqrt(2 / (EPSILON_0 * Vt)) * ((Math.PI * ELECTRON_MASS) / (2 * ELEMENTARY_CHARGE * Vt)) ** 0.25;
  const toAnode = (eta: number) => scale * Math.sqrt((saturation / area) * Math.exp(-eta)) - cathodeDistance(eta);
  // The depth at which the minimum just reaches the anode. `toAnode` falls as the depth grows.
  const [deepest] = boundary((eta) => toAnode(eta) > 0, 0, 60, 0);
  const volts: number[] = [-deepest * Vt];
  const logs: number[] = [Math.log(saturation) - deepest];
  const STEPS = 300;
  for (let k = 1; k <= STEPS; k++) {
    // Dense at both ends: where the law turns from exponential, and where it saturates.
    const x = k / (STEPS + 1);
    const eta = deepest * (1 - x * x * (3 - 2 * x));
    const xi = toAnode(eta);
    if (!(xi > 0)) continue;
    const v = Vt * (anodePotential(xi) - eta);
    if (v > volts[volts.length - 1] + 1e-9 * Vt) {
      volts.push(v);
      logs.push(Math.log(saturation) - eta);
    }
  }
  const top = Math.max(volts[volts.length - 1] + 0.02 * Vt, Vt * anodePotential(Math.max(toAnode(0), 0)));
  volts.push(top);
  logs.push(Math.log(saturation));
  return { volts, logs };
}

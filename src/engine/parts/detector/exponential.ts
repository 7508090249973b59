import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { wrightOmega } from '../../numerics/lambert.ts';
import {
  type Amperes,
  type Farads,
  type Kelvins,
  type Ohms,
  type Siemens,
  temperatureVoltage,
  type Volts,
} from '../../units/quantities.ts';
import type { Detector, DevicePoint } from './detector.ts';

export interface ExponentialOptions {
  /** Saturation current Is, amperes, above 0, at `measuredAt` (default: at `temperature`, no correction). */
  readonly saturationCurrent: Amperes;
  /** Ideality n: 1.0–1.2 for a good junction, 1.3–2.5 for galena. Above 0. */
  readonly ideality: number;
  /** Ohms in series, at least 0; default 0. */
  readonly seriesResistance?: Ohms;
  /** Leakage across the junction, at least 0; default 0. */
  readonly leakage?: Siemens;
  /** Across the device near 0 V; default 0. */
  readonly junctionCapacitance?: Farads;
  /** Of the junction; default 300 K. */
  readonly temperature?: Kelvins;
  /** Temperature at which the saturation current was given. */
  readonly measuredAt?: Kelvins;
  /** Energy gap in electron volts for the correction: germanium 0.67, silicon 1.11, Schottky barrier 0.69. Default 0.67. */
  readonly energyGap?: number;
  readonly reverseLimit?: Volts;
}

// Beyond these the curve goes on as a straight line: far outside any receiver, and nothing overflows.
const MAX_EXPONENT = 250;
const MAX_EXPONENTIAL = Math.exp(MAX_EXPONENT);

/** exp, continued by its tangent above 250 so that it and its products stay finite. */
export const boundedExp = (z: number): number =>
  z < MAX_EXPONENT ? Math.exp(z) : MAX_EXPONENTIAL * (1 + z - MAX_EXPONENT);
const boundedExpm1 = (z: number): number => (z < 1 ? Math.expm1(z) : boundedExp(z) - 1);

/**
 * Saturation current at another temperature: Is·(T/T0)^(2/n)·exp(Eg/(n·k)·(1/T0 - 1/T)).
 * Source: the common circuit-simulation diode model (its XTI = 2 and EG, as the HSMS-28xx data sheets state them);
 * doubles in about 10 K for germanium with n = 1.1.
 */
export function saturationAt(
  saturationCurrent: Amperes,
  options: { from: Kelvins; to: Kelvins; ideality: number; energyGap: number },
): Amperes {
  const { from, to, ideality, energyGap } = options;
  const exponent = (energyGap / ideality) * (1 / temperatureVoltage(from) - 1 / temperatureVoltage(to));
  return saturationCurrent * (to / from) ** (2 / ideality) * Math.exp(exponent);
}

/**
 * Junction i = Is(exp(u/(n·kT/e)) - 1) + G·u with u = v - i·Rs, solved for the terminal voltage v in closed form
 * (Wright's omega; Banwell & Jayakumar, Electronics Letters 36 (2000) 291, extended by the leakage G).
 * @param options saturation current (A), ideality, series resistance (Ω), leakage (S), junction capacitance (F),
 * temperature (K)
 * @returns a device: its current (A) by voltage (V)
 * @throws RangeError when a value is outside its range.
 */
export function exponentialDetector(options: ExponentialOptions): Detector {
  const { ideality: n, seriesResistance: Rs = 0, leakage: G = 0, junctionCapacitance = 0 } = options;
  const { temperature = 300, reverseLimit } = options;
  const working = { min: 50, max: 2000 };
  demandWithin('detector.saturation-current', options.saturationCurrent, { above: 0, below: 1 });
  demandWithin('detector.ideality', n, { above: 0, max: 50 });
  demandWithin('detector.series-resistance', Rs, { min: 0, max: 1e9 });
  demandWithin('detector.leakage', G, { min: 0, max: 1 });
  demandWithin('detector.junction-capacitance', junctionCapacitance, { min: 0, below: 1e-6 });
  demandWithin('detector.temperature', temperature, working);
  const { measuredAt = temperature, energyGap = 0.67 } = options;
  demandWithin('detector.temperature', measuredAt, working);

  const Is = saturationAt(options.saturationCurrent, { from: measuredAt, to: temperature, ideality: n, energyGap });
  demandWithin('detector.working-saturation-current', Is, { above: 1e-300, below: 1 });
  const s = n * temperatureVoltage(temperature);
  const warnings: Warning[] = [];
  if (Math.abs(temperature - measuredAt) > 60) {
    warnings.push(warning('detector.saturation-current-extrapolated', { measuredAt, temperature }));
  }

  const k = 1 + Rs * G;
  const A = (Rs * Is) / (k * s);
  const logA = Math.log(A);
  // Junction voltage over s.
  const u = (v: number): number => {
    const B = (v + Rs * Is) / (k * s);
    return B - wrightOmega(B + logA);
  };
  const evaluate =
    Rs === 0
      ? (v: number, out: DevicePoint) => {
          const e = boundedExpm1(v / s);
          out.current = Is * e + G * v;
          out.conductance = (Is * (v < MAX_EXPONENT * s ? e + 1 : MAX_EXPONENTIAL)) / s + G;
        }
      : (v: number, out: DevicePoint) => {
          const x = u(v);
          const e = boundedExpm1(x);
          const g = (Is * (e + 1)) / s + G;
          out.current = Is * e + G * x * s;
          out.conductance = g / (1 + Rs * g);
        };
  const scratch: DevicePoint = { current: 0, conductance: 0 };
  return {
    kind: 'exponential',
    current:
      Rs === 0
        ? (v) => Is * boundedExpm1(v / s) + G * v
        : (v) => {
            const x = u(v);
            return Is * boundedExpm1(x) + G * x * s;
          },
    conductance: (v) => {
      evaluate(v, scratch);
      return scratch.conductance;
    },
    evaluate,
    junctionCapacitance,
    seriesResistance: Rs,
    temperature,
    slopeVoltage: s,
    currentScale: Is,
    reverseLimit,
    law: { saturationCurrent: Is, slopeVoltage: s, seriesResistance: Rs, leakage: G },
    warnings,
  };
}

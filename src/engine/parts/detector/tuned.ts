import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import {
  add,
  type Complex,
  complex,
  magnitude,
  multiply,
  reciprocal,
  scale,
  subtract,
} from '../../numerics/complex.ts';
import {
  type Decibels,
  type Farads,
  type Henries,
  type Hertz,
  type Ohms,
  powerDecibels,
  type Volts,
  type Watts,
} from '../../units/quantities.ts';
import { averaged } from './averaged.ts';
import type { Detector } from './detector.ts';
import { steadyDetector } from './steady.ts';
import { carrierWaveform } from './waveform.ts';

export interface TunedDetectorOptions {
  readonly detector: Detector;
  /** Tuned to `frequency` with the detector's own capacitance in place; `q` without the detector. */
  readonly tunedCircuit: { readonly inductance: Henries; readonly q: number; readonly frequency: Hertz };
  /** Share of the turns the detector sits on, 1 = top. */
  readonly tap: number;
  /** What the tuned circuit could hand to a matched load: all its loss counts as the source's resistance. */
  readonly availablePower: Watts;
  readonly load: { readonly resistance: Ohms; readonly capacitance: Farads };
  readonly bias?: Volts;
}

export interface TunedDetection {
  readonly directVoltage: Volts;
  /** Offered at the tap. */
  readonly inputResistance: Ohms;
  /** Taken from the tap by detector and load. */
  readonly inputPower: Watts;
  readonly outputPower: Watts;
  readonly efficiency: number;
  /** Peak volts of the carrier across the whole tuned circuit. */
  readonly tunedCircuitVoltage: Volts;
  /** Available power over direct output power. */
  readonly insertionLoss: Decibels;
  readonly loadedQ: number;
  /** Second harmonic of the carrier on the tuned circuit, over the carrier. */
  readonly carrierDistortion: number;
  readonly warnings: readonly Warning[];
}

/**
 * A detector on the tap of a tuned circuit driven at resonance: the plain average first, then the whole cycle with the
 * harmonics its pulses leave on the circuit and on the load capacitor.
 * @param options tuned circuit (H, Hz, Q) and share of its turns tapped, available power (W), load (Ω, F), bias (V)
 * @returns direct voltage (V), resistance offered at the tap (Ω), powers (W), loaded Q
 * @throws RangeError when a value is outside its range.
 */
export function tunedDetector(options: TunedDetectorOptions): TunedDetection {
  const { detector, tap, availablePower, load, bias = 0 } = options;
  const { inductance: L, q: Q, frequency } = options.tunedCircuit;
  demandWithin('tuned-circuit.inductance', L, { above: 0 });
  demandWithin('tuned-circuit.q', Q, { above: 0, below: 1e6 });
  demandWithin('tuned-circuit.frequency', frequency, { above: 0 });
  demandWithin('tuned-circuit.tap', tap, { above: 0, max: 1 });
  demandWithin('tuned-circuit.available-power', availablePower, { above: 0, below: 1e4 });
  demandWithin('tuned-circuit.load-resistance', load.resistance, { above: 0 });
  demandWithin('tuned-circuit.load-capacitance', load.capacitance, { min: 0 });

  const w = 2 * Math.PI * frequency;
  const Rp = Q * w * L;
  const Cj = detector.junctionCapacitance;
  // Tuned with the detector in place: its capacitance, through the tap, is part of the tuning.
  const own = load.capacitance > 0 ? (Cj * load.capacitance) / (Cj + load.capacitance) : 0;
  const C = 1 / (w * w * L) - tap * tap * own;
  const atTap = (n: number): Complex => scale(reciprocal(complex(1 / Rp, n * w * C - 1 / (n * w * L))), tap * tap);
  const acrossLoad = (n: number): Complex => reciprocal(complex(1 / load.resistance, n * w * load.capacitance));
  // The device's own capacitance shunts what it looks into.
  const impedanceAt = (n: number): Complex => {
    const z = add(atTap(n), acrossLoad(n));
    return Cj > 0 ? reciprocal(add(reciprocal(z), complex(0, n * w * Cj))) : z;
  };
  const emf = scale(atTap(1), Math.sqrt((8 * availablePower) / Rp) / tap);
  const series = add(atTap(1), acrossLoad(1));
  const open = magnitude(emf) * (magnitude(impedanceAt(1)) / magnitude(series));
  const steady = steadyDetector({
    averaged: averaged(detector),
    openCircuit: open,
    sourceImpedance: impedanceAt(1),
    dcResistance: load.resistance,
    bias,
  });
  const wave = carrierWaveform({
    detector,
    openCircuit: open,
    impedanceAt,
    dcResistance: load.resistance,
    bias,
    start: { carrier: scale(steady.ratio, open), direct: steady.deviceVoltage },
  });
  const warnings = [...steady.warnings];
  if (!wave.converged) {
    warnings.push(warning('detector.harmonics-unsolved'));
  }
  // The plain average's phasors, where the whole waveform is not to be had.
  const currents: readonly Complex[] = wave.converged
    ? wave.harmonics
    : [complex(steady.directCurrent), scale(steady.ratio, (open * steady.fundamentalCurrent) / steady.junctionVoltage)];

  // Phases counted from the open-circuit voltage at the device. Currents leaving the tap: device and its capacitance.
  const direct = currents[0].re;
  const turned = scale(multiply(impedanceAt(1), reciprocal(series)), magnitude(series) / magnitude(impedanceAt(1)));
  let power = 0;
  let carrier = complex(0);
  let second = 0;
  for (let n = 1; n < currents.length; n++) {
    const device = currents[n];
    const source = n === 1 ? complex(open) : complex(0);
    const voltage = subtract(source, multiply(impedanceAt(n), device));
    const current = add(device, multiply(voltage, complex(0, n * w * Cj)));
    // Referred to the emf's own phase at the carrier, where the source is.
    const drive = n === 1 ? multiply(complex(magnitude(emf)), reciprocal(turned)) : complex(0);
    const across = subtract(drive, multiply(atTap(n), current));
    power += (across.re * current.re + across.im * current.im) / 2;
    if (n === 1) carrier = across;
    if (n === 2) second = magnitude(across);
  }
  const V = magnitude(carrier);
  const inputResistance = (V * V) / (2 * power);
  const outputPower = direct * direct * load.resistance;
  return {
    directVoltage: direct * load.resistance,
    inputResistance,
    inputPower: power,
    outputPower,
    efficiency: outputPower / power,
    tunedCircuitVoltage: V / tap,
    insertionLoss: powerDecibels(availablePower / outputPower),
    loadedQ: 1 / (1 / Q + (w * L * tap * tap) / inputResistance),
    carrierDistortion: second / V,
    warnings,
  };
}

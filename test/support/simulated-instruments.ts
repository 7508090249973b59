import { fitAerialCapacitance } from '../../src/engine/measure/aerial-capacitance-fit.ts';
import { fitAerialResistance } from '../../src/engine/measure/aerial-resistance-fit.ts';
import { fitCapacitanceWidth } from '../../src/engine/measure/capacitance-width-fit.ts';
import { fitDoubleHump } from '../../src/engine/measure/double-hump-fit.ts';
import { fitEarthComparison, fitThreeElectrodes } from '../../src/engine/measure/earth-fit.ts';
import { fitEqualLevels } from '../../src/engine/measure/equal-levels-fit.ts';
import { fitField } from '../../src/engine/measure/field-fit.ts';
import { fitLeakage } from '../../src/engine/measure/leakage-fit.ts';
import { fitMutualInductance } from '../../src/engine/measure/mutual-inductance-fit.ts';
import { fitBridge, fitVoltmeter } from '../../src/engine/measure/one-meter-fit.ts';
import { fitAudibility, fitImpedance, fitResistance, fitSoundCard } from '../../src/engine/measure/phones-fit.ts';
import {
  add,
  type Complex,
  complex,
  divide,
  magnitude,
  multiply,
  phase,
  polar,
  scale,
} from '../../src/engine/numerics/complex.ts';
import { gaussian, uniform } from '../../src/engine/numerics/random.ts';
import { exponentialDetector } from '../../src/engine/parts/detector/exponential.ts';
import { rodFactor } from '../../src/engine/parts/earth/rods.ts';
import { temperatureVoltage } from '../../src/engine/units/quantities.ts';
import type { Outcome } from './simulated-benches.ts';

const TEMPERATURE = 295;
const angleOf = (z: Complex): number => (phase(z) * 180) / Math.PI;

/** Readings by instruments of known errors, one bench a call. */
export function simulatedInstruments(seed: number) {
  const random = uniform(seed);
  const normal = gaussian(random);
  const between = (a: number, b: number) => a + (b - a) * random();
  const decades = (a: number, b: number) => 10 ** between(Math.log10(a), Math.log10(b));
  const several = <T>(n: number, item: (i: number) => T) => Array.from({ length: n }, (_, i) => item(i));
  const off = (error: number) => Math.exp(error * normal());

  const junction = () => {
    const [Is, n, Rs] = [decades(2e-8, 3e-6), between(1.02, 1.8), decades(20, 300)];
    const device = exponentialDetector({
      saturationCurrent: Is,
      ideality: n,
      seriesResistance: Rs,
      temperature: TEMPERATURE,
    });
    const top = n * 0.0257 * Math.log(2e-3 / Is) + 2e-3 * Rs;
    return { Is, n, Rs, R0: (n * temperatureVoltage(TEMPERATURE)) / Is, device, top };
  };

  return {
    'equal-levels': (): Outcome => {
      const [f0, Q, ratio] = [decades(1.6e5, 1.6e6), decades(10, 300), between(1.35, 3)];
      const half = Math.sqrt(ratio ** 2 - 1) / (2 * Q);
      const [lower, upper] = [-half, half].map((h) => f0 * (h + Math.sqrt(1 + h * h)));
      const frequencyError = 0.02 * (upper - lower);
      const fit = fitEqualLevels({
        lower: lower + frequencyError * normal(),
        upper: upper + frequencyError * normal(),
        ratio: ratio * off(0.02),
        frequencyError,
      });
      return [
        ['resonance', fit.resonance, f0],
        ['q', fit.q, Q],
      ];
    },
    'capacitance-width': (): Outcome => {
      const [frequency, Q, C] = [decades(3e5, 1.5e6), decades(20, 300), between(80e-12, 400e-12)];
      const [ratio, stray] = [between(1.35, 3), between(10e-12, 40e-12)];
      const half = (Math.sqrt(ratio ** 2 - 1) * C) / Q;
      const settingError = 0.05 * half;
      const strayError = 0.03 * C;
      const fit = fitCapacitanceWidth({
        frequency,
        lower: C - half - stray + settingError * normal(),
        upper: C + half - stray + settingError * normal(),
        stray: stray + strayError * normal(),
        ratio: ratio * off(0.02),
        settingError,
        strayError,
      });
      return [
        ['q', fit.q, Q],
        ['parallelConductance', fit.parallelConductance, (2 * Math.PI * frequency * C) / Q],
      ];
    },
    'detector-leakage': (): Outcome => {
      const { Is, n, Rs, R0, device, top } = junction();
      const leakage = decades(2e5, 5e6);
      const voltages = [...several(11, (i) => 0.02 * (top / 0.02) ** (i / 10)), -0.05, -0.1, -0.2, -0.4, -0.7, -1];
      const fit = fitLeakage(
        voltages.map((voltage) => {
          const current = device.current(voltage) + voltage / leakage;
          return { voltage, current: current + Math.hypot(0.01 * current, 5e-9) * normal() };
        }),
        TEMPERATURE,
      );
      return [
        ['saturationCurrent', fit.saturationCurrent, Is],
        ['ideality', fit.ideality, n],
        ['seriesResistance', fit.seriesResistance, Rs],
        ['leakage', fit.leakage, leakage],
        ['zeroBiasResistance', fit.zeroBiasResistance, 1 / (1 / R0 + 1 / leakage)],
      ];
    },
    'detector-voltmeter': (): Outcome => {
      const { Is, n, Rs, R0, device } = junction();
      const [source, meter] = [1.5, 1e7];
      const trueSource = source * (1 + 0.01 * normal());
      const fit = fitVoltmeter(
        [1e6, 470e3, 220e3, 100e3, 47e3, 22e3, 10e3, 4700, 2200, 1000].map((resistor) => {
          const R = resistor * off(0.01);
          let [low, high] = [0, trueSource];
          for (let i = 0; i < 60; i++) {
            const V = (low + high) / 2;
            if (device.current(V) + V / meter > (trueSource - V) / R) high = V;
            else low = V;
          }
          return { resistor, voltage: low + Math.hypot(0.005 * low, 1e-4) * normal() };
        }),
        { source, temperature: TEMPERATURE, meterResistance: meter },
      );
      return [
        ['saturationCurrent', fit.saturationCurrent, Is],
        ['ideality', fit.ideality, n],
        ['seriesResistance', fit.seriesResistance, Rs],
        ['zeroBiasResistance', fit.zeroBiasResistance, R0],
      ];
    },
    'detector-bridge': (): Outcome => {
      const { Is, n, Rs, R0, device, top } = junction();
      const [a, b, c] = several(3, () => off(0.01));
      const otherLower = 1000;
      const fit = fitBridge(
        several(8, (i) => 0.02 * (top / 0.02) ** (i / 7)).map((voltage) => {
          const upper = 10 ** (Math.round(2 * Math.log10(voltage / device.current(voltage))) / 2);
          // The other arm is set until its middle is as the detector; the source is read.
          const V0 = voltage + device.current(voltage) * upper * a;
          const otherUpper = (otherLower * c * (V0 / (voltage * (1 + 0.005 * normal())) - 1)) / b;
          return { source: V0 * off(0.005), upper, otherUpper, otherLower };
        }),
        { temperature: TEMPERATURE },
      );
      return [
        ['saturationCurrent', fit.saturationCurrent, Is],
        ['ideality', fit.ideality, n],
        ['seriesResistance', fit.seriesResistance, Rs],
        ['zeroBiasResistance', fit.zeroBiasResistance, R0],
      ];
    },
    'mutual-inductance': (): Outcome => {
      const [L1, L2, k] = [decades(5e-5, 1e-3), decades(5e-5, 1e-3), between(0.05, 0.6)];
      const M = k * Math.sqrt(L1 * L2);
      const fit = fitMutualInductance({
        aiding: (L1 + L2 + 2 * M) * off(0.01),
        opposing: (L1 + L2 - 2 * M) * off(0.01),
        first: L1 * off(0.01),
        second: L2 * off(0.01),
      });
      return [
        ['mutualInductance', fit.mutualInductance, M],
        ['couplingCoefficient', fit.couplingCoefficient!, k],
      ];
    },
    'double-hump': (): Outcome => {
      const [f0, k, Q] = [decades(3e5, 1.5e6), decades(0.03, 0.2), between(60, 200)];
      const raw = Math.sqrt(k * k - 1 / (Q * Q));
      const [lower, upper] = [-raw, raw].map((share) => f0 * Math.sqrt(1 + share));
      const frequencyError = 0.02 * (upper - lower);
      const fit = fitDoubleHump({
        lower: lower + frequencyError * normal(),
        upper: upper + frequencyError * normal(),
        q: Q * off(0.05),
        frequencyError,
      });
      return [['couplingCoefficient', fit.couplingCoefficient, k]];
    },
    'aerial-substitution': (): Outcome => {
      const [C, natural] = [between(120e-12, 350e-12), 4e6 * Math.exp(0.5 * normal())];
      const error = 1.5e-12;
      const frequencies = [0.5e6, 0.8e6, 1.1e6, 1.5e6].filter((f) => f < 0.9 * natural);
      if (frequencies.length < 2) return [];
      const fit = fitAerialCapacitance(
        frequencies.map((frequency) => {
          const theta = (Math.PI * frequency) / (2 * natural);
          return { frequency, equivalent: (C * Math.tan(theta)) / theta + error * normal(), error };
        }),
      );
      return [
        ['capacitance', fit.capacitance, C],
        ['naturalFrequency', fit.naturalFrequency, natural],
      ];
    },
    'aerial-resistance': (): Outcome => {
      const R = decades(15, 150);
      const fit = fitAerialResistance(
        [0, 0, 22, 47, 100, 220].map((added) => ({ added, level: (3 / (R + added)) * off(0.02) })),
      );
      return [['circuitResistance', fit.circuitResistance, R]];
    },
    'earth-electrodes': (): Outcome => {
      const [length, diameter, apart] = [between(0.8, 2), 0.0127, between(3, 10)];
      const [soil, others] = [decades(20, 300), several(2, () => between(0.8, 2))];
      const own = soil * rodFactor(length, diameter);
      const shared = soil / (2 * Math.PI * apart);
      const pair = (a: number, b: number) => (a + b - 2 * shared) * off(0.03);
      const fit = fitThreeElectrodes({
        oneTwo: pair(own, own * others[0]),
        oneThree: pair(own, own * others[1]),
        twoThree: pair(own * others[0], own * others[1]),
        rods: { length, diameter, oneTwo: apart, oneThree: apart, twoThree: apart },
      });
      return [['resistance', fit.resistance, own]];
    },
    'earth-comparison': (): Outcome => {
      const [rest, earth, other] = [between(10, 40), between(20, 80), between(20, 80)];
      const whole = rest + earth;
      const fit = fitEarthComparison({
        level: (1 / whole) * off(0.02),
        otherLevel: (1 / (rest + other)) * off(0.02),
        circuitResistance: whole + 3 * normal(),
        circuitError: 3,
        otherResistance: other + 2 * normal(),
        otherError: 2,
      });
      return [
        ['difference', fit.difference, other - earth],
        ['resistance', fit.resistance!, earth],
      ];
    },
    'phones-resistance': (): Outcome => {
      const R = decades(60, 8000);
      const reading = R * (1 + 0.01 * normal()) + 0.3 + 0.1 * normal();
      return [['resistance', fitResistance({ reading, leads: 0.3 + 0.1 * normal() }), R]];
    },
    'phones-impedance': (): Outcome => {
      const [R, Z, angle] = [1e4, decades(2e3, 5e4), between(35, 80)];
      const z = polar(Z, (angle * Math.PI) / 180);
      const fit = fitImpedance({
        resistor: R,
        resistorVoltage: 1e-4 * R * off(0.01),
        voltage: 1e-4 * Z * off(0.01),
        wholeVoltage: 1e-4 * magnitude(add(z, complex(R))) * off(0.01),
        voltageError: 0.01,
      });
      return [['phase', fit.phase!, angle]];
    },
    'phones-sound-card': (): Outcome => {
      const [Rc, lead] = [1e4, 1e4];
      const input = divide(complex(1), complex(1 / 3e4, 2 * Math.PI * 1000 * 2e-10));
      const z = polar(decades(500, 6e4), (between(0, 75) * Math.PI) / 180);
      const gain = polar(between(0.5, 2), between(-3, 3));
      const beside = (a: Complex, b: Complex) => divide(multiply(a, b), add(a, b));
      const transfer = (load: Complex) => multiply(gain, divide(load, add(load, complex(lead))));
      const open = transfer(input);
      const noise = 1e-3;
      const read = (m: Complex) => {
        const noisy = add(m, scale(complex(normal(), normal()), noise * magnitude(open)));
        return { level: magnitude(noisy), phase: angleOf(noisy) };
      };
      const fit = fitSoundCard({
        open: read(open),
        known: read(transfer(beside(complex(Rc * off(0.01)), input))),
        phones: read(transfer(beside(z, input))),
        resistor: Rc,
      });
      return [
        ['impedance', fit.impedance, magnitude(z)],
        ['phase', fit.phase!, angleOf(z)],
      ];
    },
    audibility: (): Outcome => {
      const [Z, angle, level] = [decades(3e3, 3e4), between(20, 75), between(10, 40)];
      const source = 2e4;
      const shuntFor = (dB: number) => {
        const z = polar(Z, (angle * Math.PI) / 180);
        const q = divide(scale(z, source), add(z, complex(source)));
        let [low, high] = [1e-3, 1e9];
        for (let i = 0; i < 80; i++) {
          const S = Math.sqrt(low * high);
          if (20 * Math.log10(magnitude(add(complex(1), scale(q, 1 / S)))) > dB) low = S;
          else high = S;
        }
        return low;
      };
      const fit = fitAudibility({
        shunts: several(4, () => shuntFor(level + 2 * normal())),
        impedance: Z * off(0.1),
        impedanceError: 0.1,
        phase: angle + 10 * normal(),
        phaseError: 10,
        sourceResistance: source,
      });
      return [['levelAboveThreshold', fit.levelAboveThreshold, level]];
    },
    'field-strength': (): Outcome => {
      // From square law to linear: I + √(I·I0) as the emf.
      const emfOf = (I: number) => 5e-3 * (Math.sqrt(I / 1e-5) + I / 1e-5);
      const [I, height] = [decades(3e-7, 5e-5), between(2, 8)];
      const calibrated = off(0.05);
      const fit = fitField(
        several(25, (i) => 1e-7 * 10 ** (i / 6)).map((current) => ({ emf: emfOf(current) * calibrated, current })),
        {
          current: I + Math.hypot(0.02 * I, 2e-8) * normal(),
          effectiveHeight: height * off(0.12),
          heightError: 0.12,
        },
      );
      return [
        ['fieldStrength', fit.fieldStrength, emfOf(I) / height],
        ['emf', fit.emf, emfOf(I)],
      ];
    },
  } satisfies Readonly<Record<string, () => Outcome>>;
}

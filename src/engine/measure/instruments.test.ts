import { describe, expect, test } from 'vitest';
import { coverageOf } from '../../../test/support/simulated-benches.ts';
import { simulatedInstruments } from '../../../test/support/simulated-instruments.ts';
import { fitAerialCapacitance } from './aerial-capacitance-fit.ts';
import { fitAerialResistance } from './aerial-resistance-fit.ts';
import { fitCapacitanceWidth } from './capacitance-width-fit.ts';
import { fitDetector } from './detector-fit.ts';
import { fitDoubleHump } from './double-hump-fit.ts';
import { fitEarthComparison, fitThreeElectrodes } from './earth-fit.ts';
import { fitEqualLevels } from './equal-levels-fit.ts';
import { fitField } from './field-fit.ts';
import type { Fitted } from './fitted.ts';
import { junctionCurrent, logCurrent } from './junction.ts';
import { fitLeakage } from './leakage-fit.ts';
import { fitMutualInductance } from './mutual-inductance-fit.ts';
import { fitBridge, fitVoltmeter } from './one-meter-fit.ts';
import { fitAudibility, fitImpedance, fitResistance, fitSoundCard } from './phones-fit.ts';
import { UnfitReadings } from './unfit.ts';

const reasonOf = (fit: () => unknown) => {
  try {
    fit();
  } catch (refusal) {
    if (refusal instanceof UnfitReadings) return refusal.reason.code;
    throw refusal;
  }
  return undefined;
};
const near = (figure: Fitted | undefined, value: number, relative = 1e-6) => {
  expect(Math.abs((figure?.value ?? Number.NaN) / value - 1), `${figure?.value} != ${value}`).toBeLessThan(relative);
};

describe('90 % ranges by known errors of the instruments', () => {
  // 4,000 of each are in bench/coverage.ts; fits with many unknowns have fewer here.
  const FEW: Readonly<Record<string, number>> = {
    'detector-leakage': 80,
    'detector-voltmeter': 60,
    'detector-bridge': 60,
    'aerial-substitution': 300,
  };
  const benches = simulatedInstruments(12);
  for (const kind of Object.keys(benches) as (keyof typeof benches)[])
    test(`${kind}: hold the truth nine times in ten`, () => {
      const count = FEW[kind] ?? 600;
      const slack = 3.5 * Math.sqrt((0.9 * 0.1) / count);
      for (const [figure, share] of coverageOf(benches[kind], count)) {
        expect(share, figure).toBeGreaterThan(0.9 - slack);
        expect(share, figure).toBeLessThan(0.9 + slack);
      }
    });
});

describe('width', () => {
  test('from two −3 dB points: 455 kHz and 9 kHz apart, Q is f0/width to the last digit at every Q', () => {
    const { resonance, q } = fitEqualLevels({ lower: 450.5e3, upper: 459.5e3 });
    near(resonance, Math.sqrt(450.5e3 * 459.5e3), 1e-12);
    near(q, Math.sqrt(450.5e3 * 459.5e3) / 9e3, 1e-12);
    // A circuit of Q 1: 1/√2 at f0(√5 ∓ 1)/2.
    near(fitEqualLevels({ lower: (Math.sqrt(5) - 1) / 2, upper: (Math.sqrt(5) + 1) / 2 }).q, 1, 1e-12);
  });
  test('by capacitance: at half level the two settings are √3·2C/Q apart', () => {
    const [C, Q] = [250e-12, 125];
    const half = (Math.sqrt(3) * C) / Q;
    const fit = fitCapacitanceWidth({
      frequency: 1e6,
      lower: C - half - 2e-11,
      upper: C + half - 2e-11,
      stray: 2e-11,
      ratio: 2,
    });
    near(fit.q, Q, 1e-9);
    near(fit.parallelConductance, (2 * Math.PI * 1e6 * C) / Q, 1e-9);
  });
  test('refuses settings and ratios that are none', () => {
    expect(reasonOf(() => fitEqualLevels({ lower: 2, upper: 1 }))).toBe('upper-not-above-lower');
    expect(reasonOf(() => fitEqualLevels({ lower: 1, upper: 2, ratio: 1 }))).toBe('ratio-not-above-one');
    expect(fitEqualLevels({ lower: 99, upper: 101, ratio: 1.1 }).warnings.map((w) => w.code)).toEqual([
      'measure.level-ratio-small',
    ]);
  });
});

describe('detector', () => {
  const [lnIs, n, lnRs, T] = [Math.log(4e-7), 1.15, Math.log(60), 295];
  const Vt = (1.380649e-23 * T) / 1.602176634e-19;
  const forward = [0.02, 0.04, 0.08, 0.13, 0.18, 0.24, 0.32];
  const reverse = [-0.05, -0.2, -0.5, -1];

  test('the current solves I = Is(exp((V − I·Rs)/nVt) − 1) at any voltage', () => {
    for (const V of [-2, -0.1, 0.001, 0.2, 1, 20]) {
      const I = junctionCurrent(V, lnIs, n, lnRs, Vt);
      const w = (V - I * 60) / (n * Vt);
      expect(Math.abs(I / (4e-7 * Math.expm1(w)) - 1), `${V} V`).toBeLessThan(1e-9);
      if (V > 0) expect(Math.log(I)).toBeCloseTo(logCurrent(V, lnIs, n, lnRs, Vt), 10);
    }
  });
  test('leakage is told from a larger saturation current by points below 0 V, and not without them', () => {
    const leaky = (voltage: number) => ({
      voltage,
      current: junctionCurrent(voltage, lnIs, n, lnRs, Vt) + voltage / 5e5,
    });
    const fit = fitLeakage([...forward, ...reverse].map(leaky), T);
    near(fit.leakage, 5e5, 1e-4);
    near(fit.saturationCurrent, 4e-7, 1e-4);
    near(fit.zeroBiasResistance, 1 / (4e-7 / (n * Vt) + 1 / 5e5), 1e-4);
    expect(fitDetector(forward.map(leaky), T).saturationCurrent.value).toBeGreaterThan(4.2e-7);
    expect(reasonOf(() => fitLeakage(forward.map(leaky), T))).toBe('detector.both-ways');
    expect(reasonOf(() => fitLeakage([...forward.map(leaky), { voltage: -1, current: 1e-6 }, leaky(-0.5)], T))).toBe(
      'detector.current-against-voltage',
    );
  });
  test('one voltmeter through resistors, and a bridge, give the junction that they were worked out from', () => {
    const readings = forward.map((voltage) => {
      const current = junctionCurrent(voltage, lnIs, n, lnRs, Vt);
      return { voltage, resistor: (1.5 - voltage) / (current + voltage / 1e7) };
    });
    const byVoltmeter = fitVoltmeter(readings, { source: 1.5, temperature: T });
    const bridge = forward.map((voltage) => {
      const current = junctionCurrent(voltage, lnIs, n, lnRs, Vt);
      const [upper, otherLower] = [voltage / current, 1000];
      return { source: 2 * voltage, upper, otherUpper: 1000, otherLower };
    });
    for (const fit of [byVoltmeter, fitBridge(bridge, { temperature: T })]) {
      near(fit.saturationCurrent, 4e-7, 1e-4);
      near(fit.ideality, n, 1e-4);
      near(fit.zeroBiasResistance, (n * Vt) / 4e-7, 1e-4);
    }
    expect(
      reasonOf(() => fitVoltmeter([...readings, { resistor: 1e9, voltage: 1.4 }], { source: 1.5, temperature: T })),
    ).toBe('detector.no-current');
  });
});

describe('coils together', () => {
  test('aiding and opposing: M is a quarter of the difference, k over the geometric mean', () => {
    const fit = fitMutualInductance({ aiding: 460e-6, opposing: 260e-6, first: 160e-6, second: 200e-6 });
    near(fit.mutualInductance, 50e-6, 1e-9);
    near(fit.couplingCoefficient, 50 / Math.sqrt(160 * 200), 1e-9);
    near(fitMutualInductance({ aiding: 460e-6, opposing: 260e-6 }).mutualInductance, 50e-6, 1e-12);
    expect(reasonOf(() => fitMutualInductance({ aiding: 1e-4, opposing: 2e-4 }))).toBe('aiding-not-above-opposing');
  });
  test('double hump: the peaks of two equal circuits by their own curve', () => {
    const [f0, k, Q] = [1e6, 0.05, 100];
    // Secondary current of two equal series circuits: 1/|(1/Q + jx)² + k²·(f/f0)²| with x = f/f0 − f0/f.
    const current = (f: number) => {
      const [u, x] = [f / f0, f / f0 - f0 / f];
      return u / Math.hypot(1 / (Q * Q) - x * x + k * k * u * u, (2 * x) / Q);
    };
    const peak = (from: number, to: number) => {
      let best = from;
      for (let f = from; f < to; f += 5) if (current(f) > current(best)) best = f;
      return best;
    };
    const fit = fitDoubleHump({ lower: peak(9.5e5, 1e6), upper: peak(1e6, 1.06e6), q: Q });
    near(fit.couplingCoefficient, k, 5e-3);
  });
});

describe('aerial and earth', () => {
  test('capacitance and natural frequency as of a line open at its end, behind a capacitor too', () => {
    const [C, natural] = [220e-12, 2.6e6];
    const free = (f: number) => (C * Math.tan((Math.PI * f) / (2 * natural))) / ((Math.PI * f) / (2 * natural));
    const behind = (c: number, series: number) => (c * series) / (c + series);
    const fit = fitAerialCapacitance([
      { frequency: 0.4e6, equivalent: free(0.4e6), error: 1e-14 },
      { frequency: 1e6, equivalent: behind(free(1e6), 100e-12), series: 100e-12, error: 1e-14 },
      { frequency: 1.5e6, equivalent: behind(free(1.5e6), 50e-12), series: 50e-12, error: 1e-14 },
    ]);
    near(fit.capacitance, C, 1e-4);
    near(fit.naturalFrequency, natural, 1e-3);
    expect(
      fitAerialCapacitance([{ frequency: 0.3e6, equivalent: 2e-10, error: 2e-12 }]).warnings.map((w) => w.code),
    ).toEqual(['measure.natural-frequency-unseen']);
    expect(reasonOf(() => fitAerialCapacitance([{ frequency: 1e6, equivalent: -1e-12, error: 1e-12 }]))).toBe(
      'aerial.adds-nothing',
    );
  });
  test('half level: the resistance added is the resistance there', () => {
    const fit = fitAerialResistance(
      [
        { added: 0, level: 2 },
        { added: 36, level: 1 },
        { added: 108, level: 0.5 },
      ],
      { value: 6, error: 1 },
    );
    near(fit.circuitResistance, 36, 1e-9);
    near(fit.resistance, 30, 1e-9);
    expect(reasonOf(() => fitAerialResistance([0, 10, 20].map((added) => ({ added, level: 1 + added }))))).toBe(
      'aerial.level-not-falling',
    );
  });
  test('three electrodes: rods that share soil read low by as much as is put right', () => {
    near(fitThreeElectrodes({ oneTwo: 100, oneThree: 130, twoThree: 150 }).resistance, 40, 1e-12);
    // 1 m rods of 12.7 mm in a triangle of 2, 5 and 10 m: low by 9, 3.7 and 1.8 %.
    for (const [side, low] of [
      [2, 0.09],
      [5, 0.037],
      [10, 0.018],
    ]) {
      const rods = { length: 1, diameter: 0.0127, oneTwo: side, oneThree: side, twoThree: side };
      const given = { oneTwo: 80, oneThree: 80, twoThree: 80 };
      const ratio =
        fitThreeElectrodes(given).resistance.value / fitThreeElectrodes({ ...given, rods }).resistance.value;
      expect(1 - ratio).toBeCloseTo(low, 2);
    }
    // A rod of 1.2 m in 1500 Ω·m: 1130 Ω by Dwight, a third of it at 1 MHz.
    const codes = (one: number) =>
      fitThreeElectrodes({ oneTwo: one + 90, oneThree: one + 90, twoThree: 180 }).warnings.map(({ code }) => code);
    expect(codes(1130)).toContain('measure.earth-of-dry-soil');
    expect(codes(60)).not.toContain('measure.earth-of-dry-soil');
    expect(reasonOf(() => fitThreeElectrodes({ oneTwo: 50, oneThree: 50, twoThree: 120 }))).toBe(
      'earth.not-above-zero',
    );
  });
  test('by comparing: half the level is twice the resistance', () => {
    const fit = fitEarthComparison({
      level: 2,
      otherLevel: 1,
      circuitResistance: 60,
      circuitError: 1,
      otherResistance: 90,
    });
    near(fit.difference, 60, 1e-12);
    near(fit.resistance, 30, 1e-12);
  });
});

describe('phones and field', () => {
  test('resistance less that of the leads', () => {
    near(fitResistance({ reading: 2000.4, leads: 0.4 }), 2000, 1e-12);
    expect(reasonOf(() => fitResistance({ reading: 0.4, leads: 0.5 }))).toBe('resistance-of-leads');
  });
  test('by comparison: 3, 4 and 5 V are a right angle', () => {
    const fit = fitImpedance({ resistor: 1e4, resistorVoltage: 3, voltage: 4, wholeVoltage: 5 });
    near(fit.impedance, 13333.333333, 1e-9);
    near(fit.phase, 90, 1e-12);
    expect(reasonOf(() => fitImpedance({ resistor: 1, resistorVoltage: 1, voltage: 1, wholeVoltage: 3 }))).toBe(
      'no-triangle',
    );
  });
  test('by sound card: gain, lead and input impedance cancel', () => {
    // Real figures: gain 0.7, lead 10 kΩ, input 30 kΩ; a known 10 kΩ and 5 kΩ of phones.
    const level = (Z: number) => {
      const load = 1 / (1 / Z + 1 / 3e4);
      return { level: (0.7 * load) / (load + 1e4), phase: 25 };
    };
    const fit = fitSoundCard({ open: level(1e12), known: level(1e4), phones: level(5e3), resistor: 1e4 });
    near(fit.impedance, 5000, 1e-6);
    expect(fit.phase?.value).toBeCloseTo(0, 6);
  });
  test('audibility: |Z|/S = 2 at 60° is 8.5 dB, at 0° 9.5 dB', () => {
    const of = (phase: number) =>
      fitAudibility({ shunts: [1000, 1000], impedance: 2000, impedanceError: 0.1, phase, phaseError: 5 });
    expect(of(60).levelAboveThreshold.value).toBeCloseTo(20 * Math.log10(Math.sqrt(7)), 10);
    expect(of(0).audibilityFactor.value).toBeCloseTo(3, 10);
  });
  test('field: a square law halves the error of the current, and nothing is read beyond the calibration', () => {
    const calibration = [1, 2, 4, 8].map((v) => ({ emf: v * 1e-3, current: v * v * 1e-6 }));
    const reading = {
      effectiveHeight: 4,
      heightError: 1e-9,
      calibrationError: 1e-9,
      currentError: 0.02,
      currentFloor: 1e-15,
    };
    const fit = fitField(calibration, { ...reading, current: 9e-6 });
    near(fit.emf, 3e-3, 1e-9);
    near(fit.fieldStrength, 0.75e-3, 1e-9);
    expect(fit.emf.standardError / fit.emf.value).toBeCloseTo(0.01, 6);
    expect(reasonOf(() => fitField(calibration, { ...reading, current: 1e-3 }))).toBe('field.outside-calibration');
  });
});

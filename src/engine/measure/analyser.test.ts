import { describe, expect, test } from 'vitest';
import { coverageOf } from '../../../test/support/simulated-benches.ts';
import {
  cableOf,
  coilOf,
  earpieceOf,
  frequencies,
  onePort,
  seriesOf,
  simulatedSweeps,
  twoPort,
} from '../../../test/support/simulated-sweeps.ts';
import { add, complex, divide, multiply, ONE, polar } from '../numerics/complex.ts';
import { readNetwork } from '../parts/aerial/touchstone.ts';
import { fitAnalyser } from './analyser-fit.ts';
import { fitPeak } from './peak-fit.ts';
import { type Standards, sweepOf } from './sweep.ts';
import { UnfitReadings } from './unfit.ts';

const networkOf = (text: string) => {
  const read = readNetwork(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
};
const reflection = (text: string, standards?: Standards) => sweepOf(networkOf(text), 'reflection', standards);
const reasonOf = (fit: () => unknown) => {
  try {
    fit();
  } catch (refusal) {
    if (refusal instanceof UnfitReadings) return refusal.reason;
    throw refusal;
  }
  return undefined;
};
const MEDIUM_WAVE = frequencies(150e3, 1.6e6, 61);
const sweeps = simulatedSweeps(8);
const { normal } = sweeps;
const QUIET = { noise: 1e-4, normal };

describe('element values from a sweep', () => {
  const coil = coilOf(220e-6, 7e-12, 25);

  test('coil in reflection, in series and as shunt: the same inductance, self-capacitance and Q', () => {
    for (const sweep of [
      reflection(onePort(coil, MEDIUM_WAVE, QUIET)),
      sweepOf(networkOf(twoPort(coil, 'series', MEDIUM_WAVE, 1e-4, normal)), 'series'),
      sweepOf(networkOf(twoPort(coil, 'shunt', MEDIUM_WAVE, 1e-4, normal)), 'shunt'),
    ]) {
      const { figures, warnings, scatter } = fitAnalyser('coil', sweep, { frequency: 1e6, calibration: 2e-4 });
      expect(warnings).toEqual([]);
      expect(scatter).toBeGreaterThan(0.7);
      expect(scatter).toBeLessThan(1.4);
      for (const [name, truth] of [
        ['inductance', 220e-6],
        ['selfCapacitance', 7e-12],
        ['dissipation', 25 / (2 * Math.PI * 1e6 * 220e-6)],
      ] as const) {
        const { value, standardError } = figures[name];
        expect(
          Math.abs(value - truth) / standardError,
          `${sweep.fixture} ${name}: ${value} ± ${standardError}`,
        ).toBeLessThan(3);
        expect(standardError / value, name).toBeLessThan(0.1);
      }
    }
  });

  test('capacitor, aerial and crystal earpiece', () => {
    const capacitor = fitAnalyser('capacitor', reflection(onePort(seriesOf(470e-12, 15e-9, 0.5), MEDIUM_WAVE, QUIET)));
    expect(capacitor.figures.capacitance.value).toBeCloseTo(470e-12, 11);
    const aerial = fitAnalyser('aerial', reflection(onePort(seriesOf(220e-12, 14e-6, 45), MEDIUM_WAVE, QUIET)));
    expect(Math.abs(aerial.figures.capacitance.value / 220e-12 - 1)).toBeLessThan(0.02);
    expect(Math.abs(aerial.figures.inductance.value / 14e-6 - 1)).toBeLessThan(0.1);
    expect(Math.abs(aerial.figures.resistance.value - 45)).toBeLessThan(3 * aerial.figures.resistance.standardError);
    const text = onePort(earpieceOf(12e-9, 3e5, 0.15, 12), frequencies(1e5, 1e6, 121), QUIET);
    const earpiece = fitAnalyser('crystal earpiece', reflection(text));
    expect(Math.abs(earpiece.figures.capacitance.value / 12e-9 - 1)).toBeLessThan(0.02);
    expect(Math.abs(earpiece.figures.resonance.value / 3e5 - 1)).toBeLessThan(0.01);
    expect(Math.abs(earpiece.figures.q.value / 12 - 1)).toBeLessThan(0.1);
  });

  test('Q above what the calibration shows is a lower bound, said so', () => {
    const { figures, warnings } = fitAnalyser(
      'coil',
      reflection(onePort(coilOf(220e-6, 7e-12, 2), MEDIUM_WAVE, QUIET)),
      {
        frequency: 1e6,
      },
    );
    expect(warnings.map((w) => w.code)).toContain('measure.q-lower-bound');
    expect(figures.q.range[1]).toBe(Number.POSITIVE_INFINITY);
    expect(figures.q.range[0]).toBeGreaterThan(50);
    expect(figures.q.range[0]).toBeLessThan((2 * Math.PI * 1e6 * 220e-6) / 2);
  });

  test('each impedance has the error of its reflection: least near 50 Ω', () => {
    const { sweep } = fitAnalyser('aerial', reflection(onePort(seriesOf(220e-12, 14e-6, 45), MEDIUM_WAVE, QUIET)));
    for (const { frequency, resistance, reactance, standardError } of sweep) {
      const x = 2 * Math.PI * frequency * 14e-6 - 1 / (2 * Math.PI * frequency * 220e-12);
      expect(Math.abs(reactance - x)).toBeLessThan(4 * standardError);
      const byHand = (((resistance + 50) ** 2 + reactance ** 2) / 100) * Math.hypot(0.003, 1e-4);
      expect(Math.abs(standardError / byHand - 1)).toBeLessThan(1e-3);
    }
  });
});

describe('refusals', () => {
  test('a cable, and a loop coupled to a tuned circuit, are no plain coil', () => {
    const cable = onePort(cableOf(60), frequencies(150e3, 5e6, 101), QUIET);
    expect(reasonOf(() => fitAnalyser('coil', reflection(cable)))).toMatchObject({ code: 'analyser.not-this-part' });
    // 10 µH with a circuit tuned to 900 kHz coupled by k = 0.1: Z + (ωM)²/Z2.
    const coupled = (f: number) => {
      const w = 2 * Math.PI * f;
      const second = complex(15, w * 2e-4 - ((2 * Math.PI * 9e5) ** 2 * 2e-4) / w);
      return add(complex(1, w * 1e-5), divide(complex(w * w * 0.01 * 1e-5 * 2e-4), second));
    };
    expect(reasonOf(() => fitAnalyser('coil', reflection(onePort(coupled, MEDIUM_WAVE, QUIET))))).toMatchObject({
      code: 'analyser.not-this-part',
      part: 'coil',
    });
  });

  test('a passive part that reflects more than 1 shows an analyser that was not calibrated', () => {
    const errors = [complex(0), complex(0.12), complex(0)] as const;
    const aerial = onePort(seriesOf(220e-12, 60e-6, 20), MEDIUM_WAVE, { ...QUIET, errors });
    const { figures, warnings } = fitAnalyser('aerial', reflection(aerial));
    expect(Object.keys(figures)).toEqual(['resonance']);
    const f0 = 1 / (2 * Math.PI * Math.sqrt(220e-12 * 60e-6));
    expect(Math.abs(figures.resonance.value / f0 - 1)).toBeLessThan(0.03);
    expect(warnings.map((w) => w.code)).toEqual(['measure.analyser-not-calibrated']);
    const coil = onePort(coilOf(220e-6, 7e-12, 5), MEDIUM_WAVE, { ...QUIET, errors });
    expect(reasonOf(() => fitAnalyser('coil', reflection(coil)))).toMatchObject({ code: 'analyser.not-calibrated' });
    // A lead turns the phase until the reactance goes through 0, where nothing is in resonance.
    const lead = (text: string) =>
      text.replace(/^(\d\S*) (\S+) (\S+)$/gm, (_line, f: string, re: string, im: string) => {
        const turned = multiply(complex(Number(re), Number(im)), polar(1, -2 * Math.PI * Number(f) * 5e-9));
        return `${f} ${turned.re} ${turned.im}`;
      });
    expect(reasonOf(() => fitAnalyser('coil', reflection(lead(coil))))).toMatchObject({
      code: 'analyser.not-calibrated',
    });
    const ledTo = fitAnalyser('aerial', reflection(lead(aerial))).figures.resonance;
    expect(Math.abs(ledTo.value / f0 - 1)).toBeLessThan(0.03);
  });

  test('one port for a fixture of two, a file of three points', () => {
    const text = onePort(coilOf(1e-4, 7e-12, 5), MEDIUM_WAVE);
    expect(reasonOf(() => sweepOf(networkOf(text), 'series'))).toEqual({ code: 'analyser.two-ports' });
    expect(reasonOf(() => reflection(onePort(coilOf(1e-4, 7e-12, 5), [1e5, 2e5, 3e5])))).toMatchObject({ given: 3 });
  });

  test('S11 that does not bear out S21 is warned of', () => {
    const far = (f: number) => add(coilOf(2e-4, 7e-12, 9)(f), complex(30));
    const network = networkOf(twoPort(coilOf(2e-4, 7e-12, 9), 'series', MEDIUM_WAVE, 1e-4, normal));
    const other = networkOf(twoPort(far, 'series', MEDIUM_WAVE, 1e-4, normal));
    const mixed = {
      ...network,
      points: network.points.map((p, i) => ({ ...p, s: [other.points[i].s[0], ...p.s.slice(1)] })),
    };
    expect(sweepOf(mixed, 'series').disagreement).toBeGreaterThan(3 * sweepOf(network, 'series').disagreement);
  });
});

test('open, short and load take any linear fixture off', () => {
  // A lead of 12 Ω and 1 µH, then 40 pF across the part.
  const behind = (z: (f: number) => ReturnType<typeof complex>) => (f: number) => {
    const w = 2 * Math.PI * f;
    const part = z(f);
    return add(complex(12, w * 1e-6), divide(part, add(ONE, multiply(complex(0, w * 40e-12), part))));
  };
  const file = (z: (f: number) => ReturnType<typeof complex>, at: readonly number[]) =>
    onePort(behind(z), at, { noise: 1e-6, normal });
  const wide = frequencies(100e3, 2e6, 801);
  const standards: Standards = {
    open: networkOf(file(() => complex(1e12), wide)),
    short: networkOf(file(() => complex(0), wide)),
    load: networkOf(file(() => complex(50), wide)),
    loadResistance: 50,
  };
  const part = seriesOf(300e-12, 2e-6, 30);
  for (const { frequency, s } of reflection(file(part, MEDIUM_WAVE), standards).points) {
    const z = part(frequency);
    const expected = divide(add(z, complex(-50)), add(z, complex(50)));
    expect(Math.hypot(s.re - expected.re, s.im - expected.im), `${frequency}`).toBeLessThan(1e-3);
  }
  const beyond = file(part, frequencies(90e3, 1e6, 21));
  expect(reasonOf(() => reflection(beyond, standards))).toMatchObject({ code: 'analyser.standards-do-not-reach' });
});

// 4,000 coils with each calibration and 4,000 peaks are in bench/coverage.ts.
describe('90 % ranges hold the truth nine times in ten', () => {
  test('coil in reflection with directivity, tracking and source match of 0.3 %', () => {
    const shares = coverageOf(() => {
      const { L, C, q, text } = sweeps.coil();
      const { figures } = fitAnalyser('coil', reflection(text), { frequency: 1e6 });
      return [
        ['inductance', figures.inductance, L],
        ['selfCapacitance', figures.selfCapacitance, C],
        ['dissipation', figures.dissipation, 1 / q],
      ];
    }, 20);
    for (const [name, share] of shares) expect(share, name).toBeGreaterThan(0.65);
  });
  test.each([
    [0.001, 0],
    [0.01, 10],
  ])(
    'Q with a calibration error of %s: a range, or a lower bound where that is all that it can be',
    (calibration, least) => {
      const benches = simulatedSweeps(31);
      let bounds = 0;
      const shares = coverageOf(() => {
        const { q, text } = benches.coil(calibration);
        const { figures, warnings } = fitAnalyser('coil', reflection(text), { frequency: 1e6, calibration });
        const isBound = !Number.isFinite(figures.q.range[1]);
        expect(warnings.some(({ code }) => code === 'measure.q-lower-bound')).toBe(isBound);
        if (isBound) bounds++;
        return [
          ['dissipation', figures.dissipation, 1 / q],
          [isBound ? 'lower bound' : 'range', figures.q, q],
        ];
      }, 24);
      // At 24 benches the share scatters by 6 points (one standard deviation).
      for (const [name, share] of shares) expect(share, name).toBeGreaterThan(0.7);
      expect(bounds).toBeGreaterThanOrEqual(least);
    },
  );
  test('peak between weak couplings', () => {
    const shares = coverageOf(() => {
      const { f0, q, text } = sweeps.peak();
      const fit = fitPeak(networkOf(text));
      return [
        ['resonance', fit.resonance, f0],
        ['q', fit.q, q],
      ];
    }, 80);
    for (const [name, share] of shares) {
      expect(share, name).toBeGreaterThan(0.78);
      expect(share, name).toBeLessThan(0.99);
    }
  });
});

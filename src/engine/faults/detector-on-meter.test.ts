import { describe, expect, test } from 'vitest';
import type { DetectorDescription } from '../kinds/detectors/detector-schema.ts';
import { detectorModel } from '../kinds/models.ts';
import { detectorOnMeter, heaterOnMeter } from './detector-on-meter.ts';

const common = { temperature: 300, wiring: 'single' } as const;
const GALENA = { kind: 'galena', spot: 'fair', ...common } as DetectorDescription;
const GERMANIUM = { kind: 'germanium', make: 'point contact', ...common } as DetectorDescription;
const SILICON = { kind: 'silicon', ...common } as DetectorDescription;

describe('a detector by itself on a meter', () => {
  test.each([GALENA, GERMANIUM, SILICON])('$kind: samples read to either side of the typical one', (detector) => {
    const { forward, reverse, drop } = detectorOnMeter(detector);
    for (const { value, range } of [forward, reverse, drop!]) {
      expect(range[0]).toBeLessThanOrEqual(value);
      expect(range[1]).toBeGreaterThanOrEqual(value);
    }
    expect(forward.value).toBeLessThan(reverse.value);
    expect(forward.range[0]).toBeLessThan(forward.range[1]);
  });

  test('on the diode range a millivoltmeter’s reading carries 1 mA', () => {
    const { drop } = detectorOnMeter(GERMANIUM);
    expect(detectorModel(GERMANIUM).current(drop!.value)).toBeCloseTo(1e-3, 5);
    expect(drop!.value).toBeLessThan(detectorOnMeter(SILICON).drop!.value);
  });

  test('of a device known by its own figures nothing is spread', () => {
    const { forward } = detectorOnMeter({
      kind: 'exponential',
      saturationCurrent: 1e-6,
      ideality: 1.2,
      ...common,
    } as DetectorDescription);
    expect(forward.range).toEqual([forward.value, forward.value]);
  });
});

test('a heater reads a few ohms cold, and takes its rated current at its rated voltage', () => {
  const { cold, current } = heaterOnMeter(6.3, 6.3);
  expect(current).toBeCloseTo(0.3, 2);
  expect(cold).toBeLessThan((6.3 / 0.3) * 0.25);
  expect(cold).toBeGreaterThan(1);
  expect(heaterOnMeter(5, 6.3).current).toBeLessThan(current);
  // As much power from twice the voltage: four times the resistance.
  expect(heaterOnMeter(12.6, 12.6).cold).toBeCloseTo(4 * cold, 6);
});

test('a device by points that let a current through at 0 V has readings all the same', () => {
  const points = [
    { voltage: -2, current: 0.001 },
    { voltage: -0.8, current: 0.007 },
    { voltage: -0.7, current: 0.008 },
  ];
  const { forward, reverse, drop } = detectorOnMeter({
    kind: 'measured',
    points,
    ...common,
  } as unknown as DetectorDescription);
  expect(forward.value).not.toBeNaN();
  expect(reverse.value).not.toBeNaN();
  expect(drop!.value).toBe(0);
});

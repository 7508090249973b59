import { expect, test } from 'vitest';
import { fitPlotOf } from './fit-plot.ts';
import { junctionCurrent } from './junction.ts';
import { readMeasurements } from './readings.ts';
import { positionOn, shapeOfLaw } from './scale-of-capacitor.ts';

const resonanceOf = (L: number, C: number) => 1 / (2 * Math.PI * Math.sqrt(L * C));
const several = <T>(n: number, item: (i: number) => T): T[] => Array.from({ length: n }, (_, i) => item(i));
const Vt = (1.380649e-23 * 293.15) / 1.602176634e-19;

const squareLaw = { minimum: 15e-12, maximum: 500e-12, shape: shapeOfLaw('square-law', 15e-12, 500e-12) };

/** Exact readings of one part, so that what is fitted through them leaves nothing. */
const EXACT = {
  resonance: {
    points: [47e-12, 100e-12, 220e-12, 470e-12].map((capacitance) => ({
      capacitance,
      frequency: resonanceOf(200e-6, capacitance + 12e-12),
    })),
  },
  dial: {
    capacitor: { law: 'semicircular', minimum: '15 pF', maximum: '500 pF' },
    readings: [0.1, 0.3, 0.5, 0.7, 0.9].map((position) => ({
      position,
      frequency: resonanceOf(200e-6, 15e-12 + 485e-12 * position + 30e-12),
    })),
  },
  width: {
    points: several(9, (i) => {
      const frequency = 900e3 + 3e3 * (i - 4);
      return { frequency, level: 0.7 / Math.hypot(1, 120 * (frequency / 901e3 - 901e3 / frequency)) };
    }),
  },
  decay: {
    sampleRate: '20 MHz',
    samples: several(900, (i) => 0.1 + Math.exp((-Math.PI * i) / (20 * 80)) * Math.cos((2 * Math.PI * i) / 20 + 0.4)),
  },
  detector: {
    temperature: '20 °C',
    points: [0.05, 0.1, 0.15, 0.2, 0.25].map((voltage) => ({
      voltage,
      current: junctionCurrent(voltage, Math.log(1e-7), 1.3, Math.log(40), Vt),
    })),
  },
  'aerial-substitution': {
    capacitor: { law: 'square-law', minimum: 15e-12, maximum: 500e-12 },
    points: [500e3, 600e3, 700e3, 800e3].map((frequency) => {
      const theta = (Math.PI * frequency) / (2 * 4e6);
      const aerial = (150e-12 * Math.tan(theta)) / theta;
      const at = (across: number) => positionOn(frequency, { ...squareLaw, L: 250e-6, stray: 20e-12 + across });
      return { frequency, without: at(0), with: at((aerial * 80e-12) / (aerial + 80e-12)), series: 80e-12 };
    }),
  },
  'aerial-resistance': { points: [0, 22, 47, 100].map((added) => ({ added, level: 5 / (61 + added) })) },
} as const;

test.each(Object.entries(EXACT))('%s: the curve goes through exact readings, and nothing is left', (kind, readings) => {
  const read = readMeasurements([{ kind, ...readings }]);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const [{ values, fit }] = read.measurements;
  const { points, curve, residuals } = fitPlotOf(kind as keyof typeof EXACT, values, fit!)!;
  expect(points.length).toBeGreaterThanOrEqual(4);
  expect(curve.length).toBeGreaterThan(100);
  const largest = Math.max(...points.map((p) => Math.abs(p.y)));
  for (const residual of residuals) expect(Math.abs(residual)).toBeLessThan(1e-4 * largest);
  const [low, high] = [Math.min(...curve.map((p) => p.x)), Math.max(...curve.map((p) => p.x))];
  for (const { x } of points) {
    expect(x).toBeGreaterThanOrEqual(low);
    expect(x).toBeLessThanOrEqual(high);
  }
});

test('a curve whose temperature nobody read is drawn at that of a room', () => {
  const { temperature: _, ...detector } = EXACT.detector;
  const plots = [EXACT.detector, detector].map((readings) => {
    const read = readMeasurements([{ kind: 'detector', ...readings }]);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return fitPlotOf('detector', read.measurements[0].values, read.measurements[0].fit!);
  });
  expect(plots[1]).toEqual(plots[0]);
});

test('a misread position is marked, and what is left of it is as large as its mistake', () => {
  const readings = EXACT.dial.readings.map((one, i) => (i === 2 ? { ...one, position: one.position + 0.2 } : one));
  const read = readMeasurements([
    {
      kind: 'dial',
      ...EXACT.dial,
      readings: [...readings, { position: 0.6, frequency: resonanceOf(200e-6, 336e-12) }],
    },
  ]);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const [{ values, fit }] = read.measurements;
  const { points, residuals } = fitPlotOf('dial', values, fit!)!;
  expect(points.map((p) => p.isSuspect === true)).toEqual([false, false, true, false, false, false]);
  expect(residuals[2]).toBeCloseTo(0.2, 2);
});

const plotted = (reading: Readonly<Record<string, unknown>> & { readonly kind: Parameters<typeof fitPlotOf>[0] }) => {
  const read = readMeasurements([reading]);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const [{ values, fit }] = read.measurements;
  return { fit: fit!, plot: fitPlotOf(reading.kind, values, fit!)! };
};

test('each trial of audibility lies about the mean, with the error of one', () => {
  const shunts = [180, 240, 205];
  const { plot, fit } = plotted({
    kind: 'audibility',
    impedance: '10 kΩ',
    phase: '50°',
    trials: shunts.map((shunt) => ({ shunt })),
  });
  // Far below the phones' impedance the shunt alone counts: twice of it is 6 dB.
  expect(plot.points[0].y - plot.points[1].y).toBeCloseTo(20 * Math.log10(240 / 180), 1);
  expect(plot.residuals.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 9);
  const scatter = Math.sqrt(plot.residuals.reduce((sum, one) => sum + one ** 2, 0) / 2);
  for (const { reach } of plot.points) expect(reach).toBeCloseTo(1.645 * scatter, 3);
  expect(plot.band).toEqual(fit.figures.levelAboveThreshold.range);
  const one = plotted({ kind: 'audibility', impedance: '10 kΩ', phase: '50°', trials: [{ shunt: 200 }] });
  expect(one.plot.points).toHaveLength(1);
  expect(one.plot.curve[0].x).toBeLessThan(one.plot.curve[1].x);
});

test('a calibration runs through its points, and the station lies on it', () => {
  const calibration = [1, 2, 5, 10].map((i) => ({ emf: i * 1e-3, current: 1e-7 * i ** 1.6 }));
  const { plot, fit } = plotted({
    kind: 'field-strength',
    calibration,
    current: 1e-7 * 3 ** 1.6,
    effectiveHeight: '2 m',
    heightError: '10 %',
  });
  expect(plot.readOff?.x).toBeCloseTo(3e-3, 9);
  expect(plot.readOff?.reach).toBeGreaterThan(1.6 * fit.figures.emf.standardError);
  for (const { x, y } of plot.curve) expect(y / (1e-7 * (x / 1e-3) ** 1.6)).toBeCloseTo(1, 9);
  expect(plot.residuals).toEqual([]);
});

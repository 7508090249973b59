import { expect, test } from 'vitest';
import { powerSpectrum } from './power-spectrum.ts';
import { gaussian, uniform } from './random.ts';

test('a tone has half the square of its amplitude, about its own frequency', () => {
  const [size, bin] = [1024, 57.3];
  const samples = Float64Array.from(
    { length: 8 * size },
    (_, i) => 0.5 + 0.3 * Math.sin((2 * Math.PI * bin * i) / size),
  );
  const power = powerSpectrum(samples, size);
  const about = power.slice(54, 62).reduce((sum, p) => sum + p, 0);
  expect(about).toBeCloseTo(0.3 ** 2 / 2, 4);
  expect(power.reduce((sum, p) => sum + p, 0)).toBeCloseTo(0.3 ** 2 / 2, 4);
  expect(power.indexOf(Math.max(...power))).toBe(57);
});

test('of one window it is the square of the transform by its definition', () => {
  const normal = gaussian(uniform(3));
  const n = 32;
  const samples = Float64Array.from({ length: n }, () => normal());
  const mean = samples.reduce((sum, x) => sum + x, 0) / n;
  const window = samples.map((_, i) => Math.sin((Math.PI * i) / n) ** 2);
  const whole = n * window.reduce((sum, w) => sum + w * w, 0);
  const power = powerSpectrum(samples, n);
  for (let k = 0; k <= n / 2; k++) {
    let [re, im] = [0, 0];
    samples.forEach((x, i) => {
      re += window[i] * (x - mean) * Math.cos((2 * Math.PI * k * i) / n);
      im += window[i] * (x - mean) * Math.sin((2 * Math.PI * k * i) / n);
    });
    expect(power[k]).toBeCloseTo(((k === 0 || k === n / 2 ? 1 : 2) * (re * re + im * im)) / whole, 9);
  }
});

test('refuses a window that is no power of 2, and fewer samples than one window', () => {
  expect(() => powerSpectrum(new Float64Array(100), 48)).toThrow(RangeError);
  expect(() => powerSpectrum(new Float64Array(100), 128)).toThrow(RangeError);
});

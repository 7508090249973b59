import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { receive } from '../../engine/reception/path/receive.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { readText } from '../../engine/set/read.ts';
import { renderListening } from './render.ts';

const read = readText(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
if (!read.ok) throw new Error('the example cannot be read');
const { set } = read;
const load = set.load as Extract<SetDescription['load'], { kind: 'phones' }>;
const withPhones = (sensitivity: number): SetDescription => ({ ...set, load: { ...load, sensitivity } });
const level = (samples: Float32Array): number =>
  10 * Math.log10(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);

// By the definition of sensitivity, the sound pressure level for the same power.
it('phones 10 dB more sensitive are heard 10 dB louder at equal settings, and as loud where each set is amplified alone', () => {
  const [weak, strong] = [withPhones(100), withPhones(110)];
  // So quiet that the limiter leaves the peaks of both alone.
  const amplifiedFrom = receive(strong).stations[0].soundPressureLevel! + 20;
  const heard = (one: SetDescription, from?: number): number =>
    level(renderListening(one, { station: 0, amplifiedFrom: from, seconds: 0.5, fadeIn: 0.01 }));
  expect(heard(strong, amplifiedFrom) - heard(weak, amplifiedFrom)).toBeCloseTo(10, 1);
  expect(heard(strong) - heard(weak)).toBeCloseTo(0, 1);
});

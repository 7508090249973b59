import { describe, expect, it } from 'vitest';
import { disturbances } from './separation.ts';

const wanted = { name: 'Saltmarsh Radio', frequency: 1e6, voltage: 1, modulation: 0.3 };
/** One other so far off that no whistle is heard. */
const beside = (voltage: number) =>
  disturbances(wanted, [{ index: 1, name: 'Quayside', frequency: 1.1e6, voltage, modulation: 0.3 }], {
    slopeVoltage: 0.03,
    loadTime: 1e-4,
  })[0];

/** The audio ratio, dB, just below and just above which the word changes to another. */
function changeFrom(word: string): readonly [number, number] {
  const order = ['masks', 'interferes', 'behind', 'none'];
  let [weak, strong] = [0.0101, 10];
  while (strong / weak > 1 + 1e-9) {
    const middle = Math.sqrt(weak * strong);
    if (order.indexOf(beside(middle).effect) >= order.indexOf(word)) weak = middle;
    else strong = middle;
  }
  return [beside(strong).audioRatio, beside(weak).audioRatio];
}

describe('what another station does to the wanted one', () => {
  it.each([
    ['interferes', 3],
    ['behind', 15],
    ['none', 30],
  ])('%s from %s dB of audio ratio', (word, ratio) => {
    const [below, above] = changeFrom(word);
    expect(below).toBeCloseTo(ratio, 5);
    expect(above).toBeCloseTo(ratio, 5);
  });

  it('is masked below that, by one as strong too', () => {
    expect(beside(1).effect).toBe('masks');
    expect(beside(1).audioRatio).toBeCloseTo(0, 9);
  });

  it('nobody hears one 40 dB weaker', () => {
    expect(beside(0.00999)).toBeUndefined();
    expect(beside(0.01001)).toBeDefined();
  });
});

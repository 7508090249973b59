import { describe, expect, it } from 'vitest';
import { gaussian, uniform } from './random.ts';

const COUNT = 200_000;
const take = (next: () => number, count = COUNT) => Float64Array.from({ length: count }, next);
const mean = (values: Float64Array, of: (value: number) => number = (value) => value) =>
  values.reduce((sum, value) => sum + of(value), 0) / values.length;

describe('uniform numbers', () => {
  it('are the same for the same seed, and others for the next', () => {
    expect(take(uniform(7), 5)).toEqual(take(uniform(7), 5));
    expect(take(uniform(7), 5)).not.toEqual(take(uniform(8), 5));
  });

  // Five standard errors.
  it('lie from 0 to below 1, with mean 1/2, variance 1/12 and nothing carried from one to the next', () => {
    const values = take(uniform(1));
    expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
    expect(Math.abs(mean(values) - 0.5)).toBeLessThan(5 / Math.sqrt(12 * COUNT));
    expect(Math.abs(mean(values, (u) => (u - 0.5) ** 2) - 1 / 12)).toBeLessThan(5 / Math.sqrt(180 * COUNT));
    let product = 0;
    for (let i = 1; i < COUNT; i++) product += (values[i - 1] - 0.5) * (values[i] - 0.5);
    expect(Math.abs(product / COUNT)).toBeLessThan(5 / 12 / Math.sqrt(COUNT));
  });

  it('begin anywhere, whatever the seed: first numbers of neighbouring seeds are uniform too', () => {
    const firsts = Float64Array.from({ length: 20_000 }, (_, seed) => uniform(seed)());
    const shares = Array.from({ length: 10 }, (_, k) => firsts.filter((u) => Math.floor(u * 10) === k).length / 20_000);
    for (const share of shares) expect(Math.abs(share - 0.1)).toBeLessThan(5 * Math.sqrt(0.09 / 20_000));
  });
});

it('normal numbers have mean 0, variance 1 and a fourth moment of 3', () => {
  const values = take(gaussian(uniform(3)));
  expect(Math.abs(mean(values))).toBeLessThan(5 / Math.sqrt(COUNT));
  expect(Math.abs(mean(values, (x) => x * x) - 1)).toBeLessThan(5 * Math.sqrt(2 / COUNT));
  expect(Math.abs(mean(values, (x) => x ** 4) - 3)).toBeLessThan(5 * Math.sqrt(96 / COUNT));
});

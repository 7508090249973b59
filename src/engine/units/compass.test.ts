import { expect, it } from 'vitest';
import { bearingOfPoint } from './compass.ts';

it.each([
  ['N', 0],
  ['north-north-east', 22.5],
  ['Southwesterly', 225],
  ['N by E', 11.25],
  ['north by west', 348.75],
  ['NE by N', 33.75],
  ['ne by e', 56.25],
  ['W by N', 281.25],
  ['south-west by south', 213.75],
  ['N 45° E', 45],
  ['S 20 W', 200],
  ['s 30.5 deg e', 149.5],
  ['N 10° W', 350],
])('reads %s', (text, bearing) => {
  expect(bearingOfPoint(text)).toBe(bearing);
});

it.each([
  'sudwest',
  'N by S',
  'N by N',
  'NNE by E',
  'NE by W',
  'N by E by N',
  'N 95° E',
  'N 51.2',
  'by',
  '',
  'x'.repeat(50),
])('knows no point “%s”', (text) => {
  expect(bearingOfPoint(text)).toBeUndefined();
});

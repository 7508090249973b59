import { expect, it } from 'vitest';
import { SPOT_SHARES } from '../../../engine/parts/detector/surface.ts';
import type { CrystalSpot } from '../../../engine/reception/detection/crystal-survey.ts';
import { crystalSpots } from './crystal-spots.ts';
import { crystalWords } from './page/detector.ts';

const spot = (quality: CrystalSpot['quality'], share: number, soundPressureLevel: number): CrystalSpot => ({
  quality,
  share,
  soundPressureLevel,
  gain: 0,
});
const ALL = [
  spot('dead', 0.628, 10),
  spot('poor', 0.202, 40),
  spot('fair', 0.126, 50),
  spot('good', 0.04, 52.24),
  spot('very good', 0.004, 53),
];

it('says in decibels what a good spot is worth, and how many there are', () => {
  expect(crystalSpots(ALL, 'Saltmarsh Radio')).toBe(
    'On this crystal Saltmarsh Radio is, through a good spot, 2.2 dB louder than through a fair one and 12 dB louder than through a poor one; a very good one adds 0.8 dB. Crystals differ: elsewhere a good, fair or poor spot means the median of its kind. Of 100 grains of this crystal about 63 are dead, 20 are poor, 12 are fair, 4 are good and 1 is very good.',
  );
});

it('says only how many there are of a crystal with no good spot', () => {
  expect(crystalSpots([spot('dead', 1, 10)], 'Saltmarsh Radio')).toBe(
    'Of 100 grains of this crystal about 100 are dead.',
  );
});

it('a difference of less than half a decibel is none', () => {
  const level = [spot('fair', 0.5, 50), spot('good', 0.5, 50.4)];
  expect(crystalSpots(level, 'Quayside')).toContain('no louder than through a fair one.');
});

it('before a crystal is surveyed the same is said of any: the shares it is made from', () => {
  expect(crystalWords.usual()).toBe(
    'Of 100 grains about 62 are dead, 20 are poor, 12 are fair, 5 are good and 1 is very good.',
  );
  expect(SPOT_SHARES.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
});

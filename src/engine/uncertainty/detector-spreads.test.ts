import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { usualDescription } from '../kinds/detectors/usual-of.ts';
import { detectorModel } from '../kinds/models.ts';
import { DETECTOR_KINDS } from '../parts/detector/library.ts';
import { readText } from '../set/read.ts';
import { detectorSpreads } from './detector-spreads.ts';

const read = readText(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
if (!read.ok) throw new Error('the example does not read');
const { set } = read;

// One statement of how far samples stray: what the words say of a kind is what is drawn.
test.each(DETECTOR_KINDS)('$id is drawn as its kind says, about its typical figures', ({ id, typical, spread }) => {
  const [low, high] = spread.seriesResistance;
  expect(low).toBeLessThan(typical.seriesResistance);
  expect(high).toBeGreaterThan(typical.seriesResistance);
  expect(spread.saturationCurrent).toBeGreaterThan(1);
  expect(typical.ideality - spread.ideality).toBeGreaterThanOrEqual(1);
  const description = usualDescription(id)!;
  const inputs = detectorSpreads({ ...set, detector: description }, detectorModel(description));
  const of = (name: string) => inputs.find((input) => input.id === name)!.spread;
  expect(of('series resistance').low * typical.seriesResistance).toBeCloseTo(low, 9);
  expect(of('series resistance').high * typical.seriesResistance).toBeCloseTo(high, 9);
  expect(of('series resistance').middle).toBe(1);
  expect(of('saturation current').high).toBeCloseTo(spread.saturationCurrent, 9);
  expect(of('ideality').high).toBeCloseTo(spread.ideality, 9);
});

test('a figure the builder gives is only as unsure as his meter', () => {
  const description = { ...usualDescription('germanium')!, seriesResistance: 60 };
  const inputs = detectorSpreads({ ...set, detector: description }, detectorModel(description));
  const series = inputs.find(({ id }) => id === 'series resistance')!.spread;
  expect(series.high / series.low).toBeLessThan(2);
});

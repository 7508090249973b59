import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { DetectorDescription } from '../kinds/detectors/detector-schema.ts';
import { detectorId } from '../kinds/models.ts';
import { readValue } from '../set/read.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { compareDetectorsOn } from './compare.ts';

const read = readValue(
  JSON.parse(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8')),
);
if (!read.ok) throw new Error('the example does not read');
const set = read.set;

const labelOf = ({ description }: { readonly description: DetectorDescription }): string => detectorId(description);

it('agrees with the whole reception for the detector the set has, and orders by loudness', () => {
  const rows = compareDetectorsOn(set, 2, undefined, false);
  const fair = rows.find((r) => labelOf(r).includes('fair'))!;
  expect(fair.difference).toBeCloseTo(0, 6);
  const path = receiveRanged(set).stations[2];
  expect(fair.soundPressureLevel).toBeCloseTo(path.soundPressureLevel!, 6);
  expect(fair.loadedQ).toBeCloseTo(path.loadedQ, 6);
  expect(fair.directVoltage).toBeCloseTo(path.directVoltage, 9);
  expect(fair.carrierVoltage).toBeCloseTo(path.detectorVoltage, 9);
  expect(fair.distortion).toBeCloseTo(path.distortion, 9);
  expect(fair.inputResistance / path.detectorInputResistance).toBeCloseTo(1, 9);
  expect(rows.map((r) => r.soundPressureLevel)).toEqual(
    [...rows.map((r) => r.soundPressureLevel)].sort((a, b) => b - a),
  );
  // Common practice, no source: silicon is deaf on a crystal set, germanium as good as a good spot.
  expect(labelOf(rows[rows.length - 1])).toMatch(/silicon/);
  const level = (name: RegExp) => rows.find((r) => name.test(labelOf(r)))!.soundPressureLevel;
  expect(Math.abs(level(/^germanium/) - level(/galena-good/))).toBeLessThan(3);
});

it('finds a better tap where there is one, by trying it', () => {
  const [silicon] = compareDetectorsOn(set, 2, [{ kind: 'silicon', temperature: 300, wiring: 'single' }]);
  expect(silicon.bestTap!.turns).toBeGreaterThan(18);
  expect(silicon.bestTap!.gain).toBeGreaterThan(3);
});

it('draws, loads and matches each: swing, loading, law and best load', () => {
  const rows = compareDetectorsOn(set, 2, undefined, false);
  for (const r of rows) {
    expect(r.curve.length, labelOf(r)).toBeGreaterThan(60);
    for (let k = 1; k < r.curve.length; k++) expect(r.curve[k].current).toBeGreaterThanOrEqual(r.curve[k - 1].current);
    expect(r.operating.amplitude).toBe(r.carrierVoltage);
    expect(r.loading).toBeGreaterThanOrEqual(0);
    expect(r.bestLoad.gain, labelOf(r)).toBeGreaterThanOrEqual(-0.2);
    // Above where square law ends the output grows slower than the 1.5th power, below it faster.
    if (r.carrierVoltage < 0.9 * r.squareLawEnds) expect(r.carrierExponent, labelOf(r)).toBeGreaterThan(1.5);
    if (r.carrierVoltage > 1.1 * r.squareLawEnds) expect(r.carrierExponent, labelOf(r)).toBeLessThan(1.5);
    // No crystal or diode into phones waits for volts upon volts.
    expect(r.squareLawEnds, labelOf(r)).toBeLessThan(3);
    if (r.law === 'square') expect(Math.abs(r.carrierExponent - 2), labelOf(r)).toBeLessThan(0.3);
  }
  const loading = (name: RegExp) => rows.find((r) => name.test(labelOf(r)))!.loading;
  expect(loading(/silicon/)).toBeLessThan(loading(/^germanium/));
});

it('draws every curve over all that any detector is swept over, biased ones and strong stations too', () => {
  const { stations } = set.place;
  const near = [{ ...stations[2], fieldStrength: 20 }];
  for (const s of [set, { ...set, place: { ...set.place, stations: near } }] as (typeof set)[]) {
    const candidates = [
      { kind: 'mineral', mineral: 'carborundum', bias: 9, temperature: 300, wiring: 'single' },
      { kind: 'germanium', make: 'point contact', temperature: 300, wiring: 'single' },
    ] as const;
    const rows = compareDetectorsOn(s, s.place.stations.length - 1, candidates, false);
    for (const { curve } of rows)
      for (const row of rows) {
        const { operating } = row;
        const label = labelOf(row);
        expect(curve[0].voltage, label).toBeLessThanOrEqual(operating.voltage - operating.amplitude);
        expect(curve.at(-1)!.voltage, label).toBeGreaterThanOrEqual(operating.voltage + operating.amplitude);
      }
  }
});

it('has the set’s own among them whatever it is', () => {
  const detector = {
    kind: 'exponential',
    saturationCurrent: 2e-6,
    ideality: 1.4,
    temperature: 300,
    wiring: 'single',
  } as unknown as typeof set.detector;
  const rows = compareDetectorsOn({ ...set, detector }, 2, undefined, false);
  const own = rows.find((r) => r.isOwn)!;
  expect(own.difference).toBeCloseTo(0, 6);
  expect(compareDetectorsOn(set, 2, undefined, false).some((r) => r.isOwn)).toBe(false);
});

it('refuses a station that is not there', () => {
  expect(() => compareDetectorsOn(set, 99)).toThrow(RangeError);
});

import { describe, expect, it } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { plainDraws } from '../../../test/support/plain-draws.ts';
import { setCircuit } from '../built/set-circuit.ts';
import { gaussian, uniform } from '../numerics/random.ts';
import type { SetDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { valueAtPath } from '../set/write.ts';
import { hasRanges, type RangedStation } from '../uncertainty/ranged-reception.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { uncertaintyOf } from '../uncertainty/uncertainty.ts';
import { loudnessShares } from './loudness-shares.ts';
import { measurableFigures } from './measurable.ts';
import { readMeasurements } from './readings.ts';
import { predictedForReadings, withReadings } from './use-readings.ts';

function readOf(description: unknown) {
  const read = readValue(description);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
}
const predict = (set: SetDescription, stations: readonly number[]) => receiveRanged(set, { stations }).stations;
function taken(description: unknown, readings: readonly unknown[]) {
  const { set, written } = readOf(description);
  const put = withReadings(set, written, readings, predictedForReadings(set, written, readings, predict));
  if (!put.ok) throw new Error(JSON.stringify(put.problems));
  return put;
}
const { set } = readOf(demo);
const ranged = receiveRanged(set).stations.filter(
  (one): one is RangedStation => hasRanges(one) && one.margin !== undefined,
);
const [station, other] = ranged;
const sensitivity = measurableFigures(set).find(({ property }) => property === 'load.sensitivity')!.calculated.value;

/** A reading of a level above the threshold, dB: three trials, phones of 10 kΩ without phase. */
const heard = (name: string, level: number) => ({
  kind: 'audibility',
  station: name,
  impedance: '10 kΩ',
  impedanceError: '1 %',
  phase: '0°',
  phaseError: '1°',
  trials: [-1, 0, 1].map((off) => ({ shunt: 1e4 / (10 ** ((level + off) / 20) - 1) })),
});
const width = ([low, high]: readonly [number, number]): number => high - low;

describe('a station shunted until it is just heard', () => {
  const level = station.margin! + 8;
  const reading = heard(station.name, level);
  const put = taken(demo, [reading]);

  it('corrects field and phones together: the prediction moves to the reading, and its range narrows', () => {
    expect(put.used.map(({ path }) => path.join('.'))).toEqual([
      'load.measured.sensitivity',
      `place.stations.${station.index}.measured.fieldStrength`,
    ]);
    const [after] = receiveRanged(readOf(put.written).set, { stations: [station.index] }).stations.filter(
      (one): one is RangedStation => one.index === station.index && hasRanges(one),
    );
    expect(Math.abs(after.margin! - level)).toBeLessThan(3);
    // Hearing, aerial and detector keep their own doubt.
    expect(width(after.ranges.margin!)).toBeLessThan(0.9 * width(station.ranges.margin!));
    expect(after.ranges.margin![0]).toBeLessThan(level);
    expect(after.ranges.margin![1]).toBeGreaterThan(level);
  });

  it('gives the same again, and leaves no trace when it is taken out', () => {
    expect(taken(put.written, [reading]).written).toEqual(put.written);
    expect(taken(put.written, []).written).toEqual(demo);
  });

  it('a field that is measured too leaves the phones more of the difference', () => {
    const field = {
      kind: 'value',
      of: 'station.fieldStrength',
      station: station.name,
      value: station.fieldStrength,
      error: '5 %',
    };
    const alone = put.used[0];
    const both = taken(demo, [reading, field]);
    const [phones, known] = both.used;
    expect(phones.path).toEqual(alone.path);
    expect(phones.value).toBeGreaterThan(alone.value + 0.5);
    expect(phones.error).toBeLessThan(alone.error);
    expect(known.value / station.fieldStrength).toBeCloseTo(1, 1);
    expect(known.error).toBeLessThan(0.05);
    // Whichever comes first.
    const turned = taken(demo, [field, reading]);
    expect(turned.used.map(({ value }) => value)).toEqual(both.used.map(({ value }) => expect.closeTo(value, 12)));
    // And the phones' reading can go without the field's.
    expect(taken(both.written, [field]).written).toEqual(taken(demo, [field]).written);
  });

  it('says nothing where nothing is predicted', () => {
    const read = readMeasurements([reading], set);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(loudnessShares(set, read.measurements, [])).toEqual({ shares: [], correlations: [] });
  });
});

it('one station by hand: each takes its variance times the level’s share of it, over the variance of the difference', () => {
  const known: RangedStation = {
    ...station,
    margin: 30,
    fieldStrength: 1e-3,
    ranges: {
      margin: [30 - 1.6448536 * 13, 30 + 1.6448536 * 13],
      fieldStrength: [1e-3 / 10 ** ((1.6448536 * 6) / 20), 1e-3 * 10 ** ((1.6448536 * 6) / 20)],
    },
    // The level goes with the square of a weak field: twice its decibels.
    budget: [
      { what: 'field strength', effect: [-1.6448536 * 12, 1.6448536 * 12], gain: 1 },
      { what: 'phones', effect: [-1.6448536 * 4, 1.6448536 * 4], gain: 1 },
    ],
  };
  const read = readMeasurements([heard(station.name, 40)], set);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { range } = read.measurements[0].fit!.figures.levelAboveThreshold;
  const above = read.measurements[0].fit!.figures.levelAboveThreshold.value - 30;
  const all = 13 ** 2 + ((range[1] - range[0]) / (2 * 1.6448536)) ** 2;
  const {
    shares: [phones, field],
    correlations,
  } = loudnessShares(set, read.measurements, [known]);
  const usual = sensitivity;
  expect(phones.value).toBeCloseTo(usual + (16 * above) / all, 3);
  expect(phones.error).toBeCloseTo(Math.sqrt(16 - 256 / all), 4);
  expect(20 * Math.log10(field.value / 1e-3)).toBeCloseTo((72 * above) / all, 4);
  expect(field.error * (20 / Math.LN10)).toBeCloseTo(Math.sqrt(36 - 72 ** 2 / all), 4);
  // The covariance that is left of two independent ones: less what both have of the level, over its variance.
  expect(correlations).toHaveLength(1);
  expect(correlations[0].correlation).toBeCloseTo(
    (-16 * 72) / all / Math.sqrt((16 - 256 / all) * (36 - 72 ** 2 / all)),
    6,
  );
});

it('over simulated places and phones the ranges of two stations hold nine times in ten', () => {
  const normal = gaussian(uniform(20261201));
  const deviation = (one: RangedStation, what: string): number => {
    const effect = one.budget.find((item) => item.what === what)?.effect ?? [0, 0];
    return (effect[1] - effect[0]) / (2 * 1.645);
  };
  const fieldDeviation = ({ ranges: { fieldStrength } }: RangedStation): number =>
    (20 * Math.log10(fieldStrength![1] / fieldStrength![0])) / (2 * 1.645);
  const both = [station, other];
  const count = 600;
  const held = { phones: 0, field: 0 };
  for (let i = 0; i < count; i++) {
    const [phones, rest] = [deviation(station, 'phones') * normal(), normal()];
    const fields = both.map((each) => fieldDeviation(each) * normal());
    const levels = both.map((each, k) => {
      const byField = deviation(each, 'field strength');
      const whole = (each.ranges.margin![1] - each.ranges.margin![0]) / (2 * 1.645);
      const modulation = deviation(each, 'modulation');
      const left = Math.sqrt(
        Math.max(0, whole ** 2 - byField ** 2 - deviation(station, 'phones') ** 2 - modulation ** 2),
      );
      return each.margin! + phones + left * rest + (byField / fieldDeviation(each)) * fields[k] + modulation * normal();
    });
    // Readings of levels below nothing are not made.
    if (levels.some((level) => level < 3)) {
      held.phones += 0.9;
      held.field += 0.9;
      continue;
    }
    const { shares } = loudnessShares(set, one(both.map((each, k) => heard(each.name, levels[k]))), both);
    const middle = sensitivity;
    if (Math.abs(shares[0].value - (middle + phones)) < 1.645 * shares[0].error) held.phones++;
    const at = shares.find(({ path }) => path[2] === station.index)!;
    const off = 20 * Math.log10(at.value / station.fieldStrength) - fields[0];
    if (Math.abs(off) < 1.645 * at.error * 8.686) held.field++;
  }
  expect(held.phones / count).toBeGreaterThan(0.86);
  expect(held.phones / count).toBeLessThan(0.94);
  expect(held.field / count).toBeGreaterThan(0.86);
  expect(held.field / count).toBeLessThan(0.94);
});

function one(readings: readonly object[]) {
  const read = readMeasurements(readings, set);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.measurements;
}

it('a description keeps what loudness put in with its method', () => {
  const { written } = taken(demo, [heard(station.name, station.margin! - 5)]);
  expect(valueAtPath(written, ['load', 'measured', 'sensitivity', 'method'])).toBe('audibility');
});

it('correlations of phones and two fields are those of simulated sets that sound as was read', () => {
  const [phones, rest] = [4, 5];
  const ranges = (deviation: number, about: number): [number, number] => [
    about - 1.6448536 * deviation,
    about + 1.6448536 * deviation,
  ];
  const byField = [6, 8];
  const known = [station, other].map((each, k): RangedStation => {
    const [low, high] = ranges(byField[k] / 2, 0).map((dB) => each.fieldStrength * 10 ** (dB / 20));
    return {
      ...each,
      margin: 30,
      ranges: { margin: ranges(Math.hypot(byField[k], phones, rest), 30), fieldStrength: [low, high] },
      budget: [
        { what: 'field strength', effect: ranges(byField[k], 0), gain: 1 },
        { what: 'phones', effect: ranges(phones, 0), gain: 1 },
      ],
    };
  });
  const readings = one([heard(station.name, 34), heard(other.name, 27)]);
  const { correlations } = loudnessShares(set, readings, known);
  const of = readings.map(({ fit }) => fit!.figures.levelAboveThreshold);
  const normal = gaussian(uniform(5));
  const moments = new Float64Array(10);
  for (let i = 0; i < 400_000; i++) {
    const [p, r, f, g] = [phones * normal(), rest * normal(), normal(), normal()];
    const fields = [f, g].map((one, k) => byField[k] * one);
    const off = of.map(({ value, range: [low, high] }, k) => {
      return (30 + p + r + fields[k] - value) / ((high - low) / (2 * 1.6448536));
    });
    const weight = Math.exp(-(off[0] ** 2 + off[1] ** 2) / 2);
    const terms = [1, p, f, g, p * p, f * f, g * g, p * f, p * g, f * g];
    for (const [k, term] of terms.entries()) moments[k] += weight * term;
  }
  const [w, p, f, g, pp, ff, gg, pf, pg, fg] = moments;
  const between = (xy: number, [x, xx]: readonly number[], [y, yy]: readonly number[]): number =>
    (xy / w - (x * y) / w ** 2) / Math.sqrt((xx / w - (x / w) ** 2) * (yy / w - (y / w) ** 2));
  const simulated = [between(pf, [p, pp], [f, ff]), between(pg, [p, pp], [g, gg]), between(fg, [f, ff], [g, gg])];
  expect(correlations.map(({ first, second }) => [first, second].map((path) => path[2]))).toEqual([
    ['sensitivity', station.index],
    ['sensitivity', other.index],
    [station.index, other.index],
  ]);
  correlations.forEach(({ correlation }, k) => {
    expect(correlation).toBeCloseTo(simulated[k], 1);
  });
});

it('a description keeps how phones and field go together, and its range is that of sets drawn one by one', () => {
  const put = taken(demo, [heard(station.name, station.margin! + 4)]);
  const { set: heardSet, written } = readOf(put.written);
  expect(written.correlations).toEqual([
    {
      first: 'load.sensitivity',
      second: `place.stations[${station.index}].fieldStrength`,
      correlation: expect.any(Number),
    },
  ]);
  expect(written.correlations![0].correlation).toBeLessThan(-0.1);
  const { correlations: _, ...apart } = written;
  const alone = { ...apart, place: { ...apart.place, stations: [apart.place.stations[station.index]] } };
  const levels = (description: unknown, index: number) => {
    const [one] = uncertaintyOf(setCircuit(readOf(description).set), { stations: [index] });
    return one!.figures.soundPressureLevel.range;
  };
  const together = levels(written, station.index);
  expect(width(together)).toBeLessThan(0.98 * width(levels(alone, 0)));
  const draws = plainDraws(setCircuit(heardSet), 500, 11)
    .map((one) => one[station.index]?.figures.soundPressureLevel ?? Number.NaN)
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  const plain = width([draws[Math.floor(0.05 * draws.length)], draws[Math.floor(0.95 * draws.length)]]);
  // Of 500 sets a range is known to about 5 %.
  expect(width(together) / plain).toBeGreaterThan(0.85);
  expect(width(together) / plain).toBeLessThan(1.15);
});

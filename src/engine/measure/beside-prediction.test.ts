import { describe, expect, it } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import twoCircuits from '../../../examples/two-tuned-circuits.json' with { type: 'json' };
import { setCircuit } from '../built/set-circuit.ts';
import { readValue } from '../set/read.ts';
import { valueAtPath } from '../set/write.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { calculatedCoupling } from './measurable.ts';
import { readMeasurements } from './readings.ts';
import { suspectPlaces } from './suspect-station.ts';
import { resultsOf, usedValues } from './taken-results.ts';
import { withReadings } from './use-readings.ts';

function readOf(description: unknown) {
  const read = readValue(description);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
}
function taken(description: unknown, readings: readonly unknown[], stations: Parameters<typeof withReadings>[3] = []) {
  const read = readOf(description);
  const result = withReadings(read.set, read.written, readings, stations);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
}
const figureOf = ({ result }: ReturnType<typeof taken>, name: string) =>
  result.results[0].figures.find((one) => one.name === name)!;
const codesOf = ({ result }: ReturnType<typeof taken>) => result.results[0].warnings.map(({ code }) => code);
const henries = (value: number) => `${value * 1e6} µH`;

describe('two coupled coils', () => {
  const calculated = calculatedCoupling(setCircuit(readOf(twoCircuits).set))!;
  const M = 1.2 * calculated.mutualInductance.value;
  const [L1, L2] = calculated.inductances.map(({ value }) => value);
  const series = { kind: 'mutual-inductance', aiding: henries(L1 + L2 + 2 * M), opposing: henries(L1 + L2 - 2 * M) };
  const error = '0.2 %';

  it('mutual inductance stands beside the calculated one, with agreement', () => {
    const {
      measured,
      calculated: beside,
      agreement,
    } = figureOf(taken(twoCircuits, [{ ...series, error }]), 'mutualInductance');
    expect(measured.value / M).toBeCloseTo(1, 6);
    expect(beside!.value).toBe(calculated.mutualInductance.value);
    expect(agreement!.difference).toBeCloseTo(0.2, 6);
    expect(agreement!.standardErrors).toBeGreaterThan(0);
  });

  it('its coupling is used: by both coils measured alone, or by their calculated inductances', () => {
    const alone = { ...series, first: henries(L1), second: henries(L2), error };
    for (const reading of [alone, { ...series, error }]) {
      const { written, used } = taken(twoCircuits, [reading]);
      expect(used.map(({ property }) => property)).toContain('arrangement.coupling');
      expect(valueAtPath(written, ['arrangement', 'measured', 'coupling', 'method'])).toBe('mutual-inductance');
      // The circuit has it; the place of the coils stays as described.
      const k = calculatedCoupling(setCircuit(readOf(written).set))!.coupling.value;
      expect(k / (1.2 * calculated.coupling.value)).toBeCloseTo(1, 1);
      expect(valueAtPath(written, ['arrangement', 'distance'])).toBe(
        valueAtPath(twoCircuits, ['arrangement', 'distance']),
      );
    }
  });

  it('the coupling of a double hump is used, and taken out again without a trace', () => {
    const k = 1.3 * calculated.coupling.value;
    const hump = { kind: 'double-hump', lower: 900e3 / Math.sqrt(1 + k), upper: 900e3 / Math.sqrt(1 - k), q: 1e5 };
    const put = taken(twoCircuits, [hump]);
    const { measured, agreement } = figureOf(put, 'couplingCoefficient');
    expect(measured.value / k).toBeCloseTo(1, 3);
    expect(agreement!.difference).toBeCloseTo(0.3, 2);
    expect(valueAtPath(put.written, ['arrangement', 'measured', 'coupling'])).toBeDefined();
    expect(taken(put.written, []).written).toEqual(twoCircuits);
  });

  it('a set that couples no coils says that nothing is set beside it', () => {
    expect(codesOf(taken(demo, [{ ...series, error }]))).toContain('measure.no-coupled-coils');
    expect(codesOf(taken(twoCircuits, [{ ...series, error }]))).not.toContain('measure.no-coupled-coils');
  });
});

describe('a station as heard, beside what is predicted of it', () => {
  const { set } = readOf(demo);
  const { stations } = receiveRanged(set, { stations: [0] });
  const [station] = stations;
  const audibility = {
    kind: 'audibility',
    station: station.name,
    impedance: '10 kΩ',
    phase: '50°',
    trials: [{ shunt: '900 Ω' }, { shunt: '1.1 kΩ' }, { shunt: '1 kΩ' }],
  };

  it('level above the threshold: difference in dB and in standard errors', () => {
    const put = taken(demo, [audibility], stations);
    const { calculated, measured, agreement } = figureOf(put, 'levelAboveThreshold');
    expect(calculated!.value).toBe(station.margin);
    expect(agreement!.difference).toBeCloseTo(measured.value - station.margin!, 9);
    expect(codesOf(put)).toEqual(['measure.loudness-shared']);
  });

  it('field strength stands beside the predicted one and is used', () => {
    const emf = station.fieldStrength * 5;
    const reading = {
      kind: 'field-strength',
      station: station.name,
      calibration: [0.5, 1, 2].map((by) => ({ emf: 2 * by * emf, current: by * 1e-5 })),
      current: 1e-5,
      effectiveHeight: '5 m',
      heightError: '5 %',
    };
    const put = taken(demo, [reading], stations);
    const { calculated, agreement } = figureOf(put, 'fieldStrength');
    expect(calculated!.value).toBe(station.fieldStrength);
    expect(agreement!.difference).toBeCloseTo(1, 6);
    expect(put.used.map(({ property }) => property)).toEqual(['station.fieldStrength']);
  });

  it('without a station named, or with one that is not of the set, it says that nothing is set beside', () => {
    const { station: _, ...nameless } = audibility;
    for (const reading of [nameless, { ...audibility, station: 'Elsewhere' }])
      expect(codesOf(taken(demo, [reading], stations))).toContain('measure.no-prediction');
  });
});

describe('a Q is for one frequency', () => {
  const width = (f0: number, q: number) => ({
    kind: 'width',
    coil: 'main',
    points: [-4, -2, 0, 2, 4].map((i) => {
      const frequency = f0 * (1 + i / (4 * q));
      return { frequency, level: 1 / Math.hypot(1, q * (frequency / f0 - f0 / frequency)) + (i === 2 ? 1e-3 : 0) };
    }),
  });

  it('the calculated one beside it is for the same, and so is what goes into the description', () => {
    const { set } = readOf(demo);
    const calculatedAt = (f0: number) => {
      const read = readMeasurements([width(f0, 150)], set);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const result = resultsOf(set, read.measurements);
      const q = result.results[0].figures.find(({ name }) => name === 'q')!;
      expect(q.at! / f0).toBeCloseTo(1, 4);
      const used = usedValues(result).find(({ property }) => property === 'coil.q')!;
      expect(used.at! / f0).toBeCloseTo(1, 4);
      // Five points at 0.1 % outweigh what the sizes say.
      expect(used.value / q.measured.value).toBeCloseTo(1, 2);
      return q.calculated!.value;
    };
    const model = setCircuit(set).coils[0].model;
    for (const f0 of [600e3, 1400e3]) expect(calculatedAt(f0) / model.qAt(f0)).toBeCloseTo(1, 3);
    expect(Math.abs(model.qAt(600e3) / model.qAt(1400e3) - 1)).toBeGreaterThan(0.02);
  });
});

it('a misread station is named with the one that stands there', () => {
  const { set } = readOf(demo);
  const frequencies = [603e3, 693e3, 909e3, 1053e3, 1251e3, 1458e3];
  const reading = {
    kind: 'dial',
    coil: 'main',
    readings: frequencies.map((frequency) => ({ frequency, position: (1.6e11 / frequency ** 2) * 1.45 - 0.07 })),
  };
  // 1251 kHz was taken for 909 kHz.
  reading.readings[2] = { ...reading.readings[2], position: reading.readings[4].position };
  const read = readMeasurements([reading], set);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const [suspect, ...others] = suspectPlaces(read.measurements[0], set.place.stations);
  expect(others).toEqual([]);
  expect(suspect).toMatchObject({ index: 2, read: 909e3 });
  expect(suspect.frequency! / 1251e3).toBeCloseTo(1, 1);
  expect(suspect.station).toBe(set.place.stations.find(({ frequency }) => frequency === 1251e3)!.name);
});

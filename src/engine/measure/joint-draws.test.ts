import { describe, expect, it } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { setCircuit } from '../built/set-circuit.ts';
import { gaussian, uniform } from '../numerics/random.ts';
import type { SetDescription, WrittenDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { deviatesOf } from '../uncertainty/deviates-of.ts';
import { dialDraws } from '../uncertainty/dial-draws.ts';
import { DRAWS, rangedOf } from '../uncertainty/draws.ts';
import { setInputs } from '../uncertainty/inputs.ts';
import { valueAtDeviate } from '../uncertainty/spread.ts';
import { POINTER } from './dial-fit.ts';
import { jointFigures } from './joint.ts';
import type { PropertyId } from './properties.ts';
import { positionOn } from './scale-of-capacitor.ts';
import { withReadings } from './use-readings.ts';

function read(written: unknown): { readonly set: SetDescription; readonly written: WrittenDescription } {
  const result = readValue(written);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
}
const described = read(demo);

/** The description with readings in it. */
function measured(readings: readonly unknown[]): WrittenDescription {
  const taken = withReadings(described.set, described.written, readings);
  if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  return taken.written;
}
const withoutCorrelations = ({ correlations: _, ...rest }: WrittenDescription): unknown => rest;

/** A dial as it may really be: each figure drawn from what its sizes say of it. */
function truthFrom(normal: () => number): (property: PropertyId) => number {
  const drawn = new Map(
    jointFigures(described.set, []).figures.map(({ property, before: { value, standardError } }) => [
      property,
      value * Math.exp((standardError / value) * normal()),
    ]),
  );
  return (property) => drawn.get(property)!;
}
const placeOn = (truth: (property: PropertyId) => number, frequency: number): number =>
  positionOn(frequency, {
    L: truth('coil.inductance'),
    stray: truth('tuning.stray') + truth('coil.selfCapacitance'),
    minimum: truth('tuning.minimum'),
    maximum: truth('tuning.maximum'),
  });
const READ = [603e3, 720e3, 909e3, 1100e3, 1458e3];
const dialReadings = (truth: (property: PropertyId) => number, noise: () => number) => ({
  kind: 'dial',
  coil: 'main',
  capacitor: { law: 'semicircular', minimum: '15 pF', maximum: '500 pF' },
  readings: READ.map((frequency) => ({ frequency, position: placeOn(truth, frequency) + POINTER.deviation * noise() })),
});

/** Where a frequency is on the dial of each set drawn. */
function placesDrawn(set: SetDescription, frequency: number): Float64Array {
  const circuit = setCircuit(set);
  const inputs = setInputs(circuit);
  const factors = (id: string): Float64Array => {
    const input = inputs.find((one) => one.id === id)!;
    return deviatesOf(input).map((u) => valueAtDeviate(input.spread, u));
  };
  const [L, own, low, high] = ['coil 1 inductance', 'self-capacitance', 'capacitor minimum', 'capacitor maximum'].map(
    factors,
  );
  return Float64Array.from({ length: DRAWS }, (_, k) =>
    positionOn(frequency, {
      L: circuit.coils[0].inductance * L[k],
      stray: circuit.coils[0].selfCapacitance * own[k],
      minimum: circuit.tuning.min * low[k],
      maximum: circuit.tuning.max * high[k],
    }),
  );
}

describe('figures from one fit are drawn together', () => {
  const normal = gaussian(uniform(11));
  const written = measured([dialReadings(truthFrom(normal), normal)]);

  it('the description keeps how their errors go together, and reads it again', () => {
    const pair = written.correlations!.find(
      ({ first, second }) => first === 'coils[0].inductance' && second === 'tuning.maximum',
    )!;
    expect(pair.correlation).toBeLessThan(-0.5);
    expect(read(written).set.correlations).toEqual(written.correlations);
    expect(read(written).written.correlations).toEqual(written.correlations);
  });

  it('what is drawn has these correlations, and each figure the spread of its own error', () => {
    const { set } = read(written);
    const inputs = setInputs(setCircuit(set));
    const [L, high] = ['coil 1 inductance', 'capacitor maximum'].map((id) => inputs.find((one) => one.id === id)!);
    const [a, b] = [deviatesOf(L), deviatesOf(high)];
    const r = a.reduce((sum, u, k) => sum + u * b[k], 0) / DRAWS;
    const stated = written.correlations!.find(
      ({ first, second }) => first === 'coils[0].inductance' && second === 'tuning.maximum',
    )!.correlation;
    // The end of the scale has the strays in it, which are uncertain too.
    expect(r).toBeLessThan(0.8 * stated);
    for (const deviates of [a, b]) expect(deviates.reduce((sum, u) => sum + u * u, 0) / DRAWS).toBeCloseTo(1, 1);
  });

  it('the places of stations on the dial are surer than with each error by itself', () => {
    const widths = [written, withoutCorrelations(written)].map((one) => {
      const { frequency } = dialDraws(setCircuit(read(one).set));
      return frequency.slice(1, -1).map((draws) => {
        const [low, high] = rangedOf(draws).range;
        return high - low;
      });
    });
    for (const [i, width] of widths[0].entries()) expect(width).toBeLessThan(0.75 * widths[1][i]);
  });

  it('the range of a place on the dial holds the true one nine times in ten', () => {
    const next = gaussian(uniform(20260));
    let [held, total] = [0, 0];
    for (let bench = 0; bench < 400; bench++) {
      const truth = truthFrom(next);
      const { set } = read(measured([dialReadings(truth, next)]));
      for (const frequency of [650e3, 1000e3, 1350e3]) {
        const place = placeOn(truth, frequency);
        const [low, high] = rangedOf(placesDrawn(set, frequency)).range;
        total++;
        if (place >= low && place <= high) held++;
      }
    }
    expect(held / total).toBeGreaterThan(0.88);
    expect(held / total).toBeLessThan(0.92);
  });

  it('readings taken out again take their correlations with them', () => {
    const { set, written: kept } = read(written);
    const without = withReadings(set, kept, []);
    expect(without.ok && without.written.correlations).toBeUndefined();
  });
});

it('saturation current and ideality of one curve are drawn as their fit leaves them', () => {
  const [Is, n, Vt] = [2e-6, 1.3, 0.02585];
  const normal = gaussian(uniform(4));
  const points = [1, 3, 10, 30, 100, 300].map((microamperes) => {
    const current = microamperes * 1e-6;
    return { voltage: n * Vt * Math.log1p(current / Is) + 300 * current, current: current * Math.exp(0.02 * normal()) };
  });
  const written = measured([{ kind: 'detector', temperature: '300 K', points }]);
  const pair = written.correlations!.find(
    ({ first, second }) => first === 'detector.saturationCurrent' && second === 'detector.ideality',
  )!;
  expect(pair.correlation).toBeGreaterThan(0.5);
  const inputs = setInputs(setCircuit(read(written).set));
  const [current, ideality] = ['saturation current', 'ideality'].map((id) =>
    deviatesOf(inputs.find((one) => one.id === id)!),
  );
  const r = current.reduce((sum, u, k) => sum + u * ideality[k], 0) / DRAWS;
  expect(r).toBeCloseTo(pair.correlation, 1);
});

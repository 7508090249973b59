import { expect, test } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import example from '../../../examples/readings/medium-wave-galena.json' with { type: 'json' };
import { readValue } from '../set/read.ts';
import { valueAtPath } from '../set/write.ts';
import { withoutMeasuredValue, withReadings } from './use-readings.ts';

function readingsIn(description: unknown, readings: readonly unknown[]) {
  const read = readValue(description);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const taken = withReadings(read.set, read.written, readings);
  if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  return taken;
}
const { measurements } = example;

test('readings taken out again leave no trace, nor do those of one measurement among several', () => {
  const all = readingsIn(demo, measurements).written;
  expect(all.readings).toEqual(measurements);
  expect(readingsIn(all, []).written).toEqual(demo);
  const some = measurements.slice(1);
  expect(readingsIn(all, some).written).toEqual(readingsIn(demo, some).written);
});

test('the same readings again change nothing', () => {
  const once = readingsIn(demo, measurements).written;
  expect(readingsIn(once, measurements).written).toEqual(once);
});

test('what was measured in another way stays when readings are taken out', () => {
  const measured = { value: '61 Ω', error: '8 %', method: 'borrowed bridge' };
  const described = { ...demo, earth: { ...demo.earth, measured: { resistance: measured } } };
  const taken = readingsIn(described, [measurements[0]]);
  expect(readingsIn(taken.written, []).written).toEqual(described);
});

test('how measured values go together stays as a person wrote it, while both stay a person’s own', () => {
  const junction = { saturationCurrent: { value: '2.4 µA' }, ideality: { value: 1.32 } };
  const own = { first: 'detector.saturationCurrent', second: 'detector.ideality', correlation: 0.6 };
  const described = {
    ...demo,
    detector: { ...demo.detector, measured: junction },
    correlations: [own],
  };
  const dial = measurements.find(({ kind }) => kind === 'dial');
  const put = readingsIn(described, [dial]).written;
  expect(put.correlations!.length).toBeGreaterThan(1);
  expect(put.correlations).toContainEqual(own);
  expect(readingsIn(put, [dial]).written).toEqual(put);
  expect(readingsIn(put, []).written).toEqual(described);
  const ofIdeality = { kind: 'value', of: 'detector.ideality', value: 1.4, error: '5 %' };
  expect(readingsIn(described, [ofIdeality]).written.correlations).toBeUndefined();
});

test('a reading that is refused is named, and nothing is changed', () => {
  const read = readValue(demo);
  if (!read.ok) throw new Error('the example reads');
  const taken = withReadings(read.set, read.written, [measurements[0], { kind: 'value', of: 'earth.resistance' }]);
  expect(taken).toMatchObject({ ok: false, problems: [{ path: 'measurements[1].value' }] });
});

test('a measured value that was taken out stays out when other readings come or go, until a new reading gives it', () => {
  const path = ['earth', 'measured', 'resistance'];
  const ofEarth = (value: string) => ({ kind: 'value', of: 'earth.resistance', value, error: '5 %' });
  const ofAerial = { kind: 'value', of: 'aerial.capacitance', value: '180 pF', error: '3 %' };
  const earth = (written: unknown) => valueAtPath(written, path);
  const first = readingsIn(demo, [ofEarth('56.5 Ω')]).written;
  expect(earth(first)).toBeDefined();
  const without = withoutMeasuredValue(first, path);
  const more = readingsIn(without, [ofEarth('56.5 Ω'), ofAerial]);
  expect(earth(more.written)).toBeUndefined();
  expect(more.used.map(({ property }) => property)).toEqual(['aerial.capacitance']);
  expect(earth(readingsIn(more.written, [ofEarth('56.5 Ω')]).written)).toBeUndefined();
  const again = [ofEarth('56.5 Ω'), ofAerial, ofEarth('56.5 Ω')];
  expect(earth(readingsIn(more.written, again).written)).toBeDefined();
  expect(earth(readingsIn(more.written, [ofEarth('56.5 Ω'), ofAerial]).written)).toBeDefined();
});

test('the whole sweep of an analyser stays with the set, and says the same when the description is read again', () => {
  const [L, C, reference] = [220e-6, 4e-12, 50];
  const frequencies = Array.from({ length: 61 }, (_, i) => 2e5 * 8 ** (i / 60));
  const rows = frequencies.map((f) => {
    const w = 2 * Math.PI * f;
    const [re, im] = [2 + 8 * (f / 1e6), (w * L) / (1 - w * w * L * C)];
    const below = (re + reference) ** 2 + im ** 2;
    const gamma = [((re - reference) * (re + reference) + im ** 2) / below, (2 * reference * im) / below];
    return [f, ...gamma.map((part) => part.toFixed(7))].join(' ');
  });
  const reading = {
    kind: 'analyser-coil',
    coil: 'main',
    date: '2026-11-30',
    file: `# Hz S RI R 50\n${rows.join('\n')}\n`,
  };
  const { written, result } = readingsIn(demo, [reading]);
  expect(written.readings).toEqual([reading]);
  const again = readValue(written);
  if (!again.ok) throw new Error(JSON.stringify(again.problems));
  const second = withReadings(again.set, again.written, again.written.readings!);
  if (!second.ok) throw new Error(JSON.stringify(second.problems));
  const sweeps = [result, second.result].map(({ results }) => results[0].measurement.fit!.sweep!);
  expect(sweeps[0]).toHaveLength(frequencies.length);
  expect(sweeps[1]).toEqual(sweeps[0]);
  expect(valueAtPath(written, ['coils', 0, 'measured', 'inductance', 'method'])).toBe('analyser-coil');
  expect(valueAtPath(written, ['coils', 0, 'measured', 'inductance', 'date'])).toBe('2026-11-30');
});

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

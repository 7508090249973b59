import { expect, it } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { setCircuit } from '../built/set-circuit.ts';
import { workingFrequency } from '../built/set-parts.ts';
import { readValue } from '../set/read.ts';
import { deviatesOf } from './deviates-of.ts';
import { DRAWS, deviates } from './draws.ts';
import { setInputs } from './inputs.ts';
import { valueAtDeviate } from './spread.ts';

/** Ends of what is not known of a set like the example, by the input's name. */
function endsOf(change: { wire?: object; earth?: object }, id: string): readonly number[] | undefined {
  const { wire, earth = demo.earth } = change;
  const coils = wire ? demo.coils.map((coil) => ({ ...coil, wire })) : demo.coils;
  const read = readValue({ ...demo, coils, earth });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const input = setInputs(setCircuit(read.set)).find((x) => x.id === id);
  return input && [-1.645, 0, 1.645].map((u) => valueAtDeviate(input.spread, u));
}

it('a coil of Litz loses at least what its strands do by themselves on such a former, and half as much again at most', () => {
  const litz = { size: '0.07 mm', strands: 30, covering: 'double silk' };
  const [low, usual, high] = endsOf({ wire: litz }, 'coil 1 loss')!;
  expect(usual).toBeCloseTo(1, 9);
  const read = readValue({ ...demo, coils: demo.coils.map((coil) => ({ ...coil, wire: litz })) });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { model } = setCircuit(read.set).coils[0];
  const f = workingFrequency(read.set);
  const [wire, dielectric] = [model.wireResistanceAt(f), model.dielectricResistanceAt(f)];
  expect(low).toBeGreaterThanOrEqual((0.85 * wire) / (wire + dielectric));
  expect(low).toBeLessThan(0.9);
  expect(high).toBeGreaterThan(1.4);
  expect(high).toBeLessThan(1.7);
});

it('every coil of a set has its own ranges, those that are stated with it', () => {
  const set = {
    ...demo,
    coils: [
      { ...demo.coils[0], name: 'close', wire: { size: '0.4 mm', covering: 'enamel' } },
      { ...demo.coils[0], name: 'spaced', wire: { size: '0.4 mm', covering: 'enamel' }, pitch: '0.9 mm' },
      { shape: 'measured', name: 'bought', inductance: '200 µH', q: 150, at: '800 kHz' },
    ],
    arrangement: { ...demo.arrangement, coil: 'close' },
  };
  const read = readValue(set);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const circuit = setCircuit(read.set);
  const inputs = setInputs(circuit);
  const f = workingFrequency(read.set);
  const widths = circuit.coils.map(({ model }, i) => {
    const spreadOf = (figure: 'loss' | 'inductance') =>
      inputs.find(({ id }) => id === `coil ${i + 1} ${figure}`)!.spread;
    const [low, high] = model.qRangeAt(f);
    expect(1 / spreadOf('loss').low).toBeCloseTo(high / model.qAt(f), 9);
    expect(1 / spreadOf('loss').high).toBeCloseTo(low / model.qAt(f), 9);
    expect(spreadOf('inductance').high).toBeCloseTo(model.inductanceRange[1] / model.inductance, 9);
    return spreadOf('loss').high / spreadOf('loss').low;
  });
  // Where the spacing of the turns is given less is open, and a coil measured is surest.
  expect(widths[0]).toBeGreaterThan(widths[1]);
  expect(widths[1]).toBeGreaterThan(widths[2]);
});

it('one soil, one draw: where the ground carries waves badly the earth in it is worse too', () => {
  const soilOf = (earth: object) => {
    const read = readValue({ ...demo, earth });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return setInputs(setCircuit(read.set)).find(({ id }) => id === 'soil')!;
  };
  const grounds = deviates('ground');
  const soils = deviatesOf(soilOf({ kind: 'rod', length: '1.2 m' }));
  const correlation = soils.reduce((sum, u, k) => sum + u * grounds[k], 0) / DRAWS;
  // Half of ln 1.8 or ln 3 in ln 5, the other way.
  const half = Math.log(demo.place.ground === 'average' ? 3 : 1.8) / 2;
  expect(correlation).toBeCloseTo(-half / Math.log(5), 1);
  expect(correlation).toBeLessThan(-0.1);
  // The spread itself stays.
  expect(soils.reduce((sum, u) => sum + u * u, 0) / DRAWS).toBeCloseTo(1, 1);
  // Measured at the spot it is the season's.
  expect(
    soilOf({ kind: 'rod', length: '1.2 m', soil: 'as its resistivity', soilResistivity: '80 Ω·m' }).follows,
  ).toBeUndefined();
});

it('the loss of zip cord is less sure than that of solid wire', () => {
  const width = (covering: string) => {
    const [low, , high] = endsOf({ wire: { size: '0.6 mm', covering } }, 'coil 1 loss')!;
    return high / low;
  };
  expect(width('zip cord')).toBeGreaterThan(width('stranded PVC'));
  expect(width('stranded PVC')).toBeGreaterThan(width('PVC'));
});

it('a water pipe is a typical value, known to ×/÷ 3; a measured earth has no such spread', () => {
  const [low, usual, high] = endsOf({ earth: { kind: 'water pipe' } }, 'contact with the soil')!;
  expect(usual / low).toBeCloseTo(3, 1);
  expect(high / usual).toBeCloseTo(3, 1);
  expect(endsOf({ earth: { kind: 'measured', resistance: '20 Ω' } }, 'contact with the soil')).toBeUndefined();
});

it('soil that follows the ground of the place is known to ×/÷ 5', () => {
  const [low, usual, high] = endsOf({ earth: { kind: 'rod', length: '1.2 m' } }, 'soil')!;
  expect(usual / low).toBeCloseTo(5, 1);
  expect(high / usual).toBeCloseTo(5, 1);
});

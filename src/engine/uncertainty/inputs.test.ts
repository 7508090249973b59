import { expect, it } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { setCircuit } from '../built/set-circuit.ts';
import { readValue } from '../set/read.ts';
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

it('a coil of Litz loses at least what its strands do by themselves: 0.85 of the usual', () => {
  const [low, usual, high] = endsOf({ wire: { size: '0.07 mm', strands: 30, covering: 'double silk' } }, 'coil loss')!;
  expect(usual).toBeCloseTo(1, 9);
  expect(low).toBeCloseTo(0.85, 2);
  expect(high).toBeCloseTo(1.5, 2);
});

it('the loss of zip cord is less sure than that of solid wire', () => {
  const width = (covering: string) => {
    const [low, , high] = endsOf({ wire: { size: '0.6 mm', covering } }, 'coil loss')!;
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

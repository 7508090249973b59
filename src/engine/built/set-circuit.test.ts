import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readValue } from '../set/read.ts';
import { setCircuit } from './set-circuit.ts';

const demo = () => {
  const read = readValue(JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8')));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};

test('the circuit of a set that was read is made once; another set, or parts made otherwise, have their own', () => {
  const set = demo();
  const circuit = setCircuit(set);
  expect(setCircuit(set)).toBe(circuit);
  const shorter = { ...set, coils: [{ ...set.coils[0], turns: 40 }] as unknown as typeof set.coils };
  expect(setCircuit(shorter).coils[0].inductance).not.toBe(circuit.coils[0].inductance);
  const another = { ...circuit.detector };
  expect(setCircuit(set, { detector: another }).detector).toBe(another);
  expect(setCircuit(set).detector).toBe(circuit.detector);
});

test('what cannot be built is refused each time', () => {
  const set = demo();
  const broken = { ...set, arrangement: { ...set.arrangement, coil: 'none of these' } } as typeof set;
  for (let i = 0; i < 2; i++) expect(() => setCircuit(broken)).toThrow(RangeError);
});

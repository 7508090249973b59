import { expect, it } from 'vitest';
import { BASE, SETS } from '../../../test/support/every-arrangement.ts';
import { readValue } from '../set/read.ts';
import { type BuiltSet, builtSet, type TerminalIs } from './built-set.ts';

const built = (more: object): BuiltSet => {
  const read = readValue({ ...BASE, ...more });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return builtSet(read.set);
};
const jointOf = ({ parts }: BuiltSet, role: string, is: TerminalIs): string | undefined =>
  [...parts.values()].find((part) => part.role === role)?.terminals.find((t) => t.is === is)?.joint;

it.each(Object.keys(SETS))('%s: current leaves a detector by its cathode, towards the load', (name) => {
  const set = built(SETS[name]);
  expect(jointOf(set, 'detector', 'cathode')).toBe('out');
  expect(jointOf(set, 'detector', 'anode')).not.toBe('out');
});

it('a full-wave pair has both cathodes at the load', () => {
  const set = built(SETS['full-wave']);
  expect(jointOf(set, 'second-detector', 'cathode')).toBe('out');
});

it('a doubler stacks its detectors: earth, anode, cathode, anode, cathode, load', () => {
  const set = built(SETS['tapped-doubler']);
  expect(jointOf(set, 'second-detector', 'anode')).toBe('earth');
  expect(jointOf(set, 'second-detector', 'cathode')).toBe(jointOf(set, 'detector', 'anode'));
});

it('a bias cell has its plus at the anode: it helps conduction', () => {
  for (const name of ['variometer', 'valve-transformer'])
    expect(jointOf(built(SETS[name]), 'bias-cell', 'plus'), name).toBe(jointOf(built(SETS[name]), 'detector', 'anode'));
});

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readText } from '../../set/read.ts';
import { nodeWaves } from '../../waves/node-waves.ts';
import { leadVoltage } from './lead-voltage.ts';
import { receive } from './receive.ts';

const example = (name: string) => {
  const read = readText(readFileSync(`examples/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  return read.set;
};

it.each([
  ['medium-wave-galena', 0.05],
  ['spider-coil-earpiece', 0.05],
  // The waveforms have this aerial right to 1 % only, as they warn, and two circuits magnify that.
  ['two-tuned-circuits', 0.15],
] as const)('%s: the aerial lead carries what the waves have there', (name, within) => {
  const set = example(name);
  const { stations, best } = receive(set);
  const waves = nodeWaves(set, { station: best[0], places: ['aerial'], neighbours: false, depth: 0 });
  const said = leadVoltage(set, stations[best[0]])!;
  expect(Math.abs(said / waves.waves[0].reading.carrier - 1)).toBeLessThan(within);
});

it('a frame has no aerial terminal', () => {
  const set = example('frame-aerial');
  expect(leadVoltage(set, receive(set).stations[0])).toBeUndefined();
});

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { setCircuit } from '../../built/set-circuit.ts';
import type { SetDescription } from '../../set/description.ts';
import { readValue } from '../../set/read.ts';
import { nodeWaves } from '../../waves/node-waves.ts';
import { receiver, receiveStation } from '../path/receive-station.ts';
import { audioLimits } from './audio-limits.ts';

const example = (name: string, load: Record<string, unknown> = {}): SetDescription => {
  const written = JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), 'utf8'));
  const read = readValue({ ...written, load: { ...written.load, ...load } });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};
const limitsOf = (set: SetDescription, station = 0) => {
  const ready = receiver(setCircuit(set));
  return audioLimits(ready, receiveStation(ready, set.place.stations[station]));
};

// Truth: the same set cycle by cycle.
it('the sidebands of the note it names are 3 dB down on the tuned circuit', () => {
  for (const [name, station] of [
    ['two-tuned-circuits', 0],
    ['spider-coil-earpiece', 0],
  ] as const) {
    const set = example(name);
    const note = limitsOf(set, station).throughTunedCircuit!;
    const depthAt = (tone: number) =>
      nodeWaves(set, { station, places: ['top'], neighbours: false, tone, depth: 0.2, duration: 5e-3 }).waves[0].reading
        .depth;
    const fall = 20 * Math.log10(depthAt(note) / depthAt(400));
    expect(fall, name).toBeLessThan(-2);
    expect(fall, name).toBeGreaterThan(-4);
  }
});

it('modulation deeper than it names is cut off in its troughs, shallower is not', () => {
  // A volume control after a coupling capacitor: the classic case. Common practice, no source.
  const set = example('medium-wave-germanium-amplifier', { inputResistance: '47 kΩ', loadResistor: '100 kΩ' });
  const { clipsFrom, directLoad, audioLoad } = limitsOf(set);
  expect(audioLoad / directLoad).toBeLessThan(0.4);
  expect(clipsFrom).toBeGreaterThan(0.3);
  expect(clipsFrom).toBeLessThan(0.95);
  const distortion = (depth: number) =>
    nodeWaves(set, { station: 0, places: ['out'], neighbours: false, depth, duration: 4e-3 }).waves[0].reading
      .secondHarmonic / depth;
  expect(distortion(Math.min(1, clipsFrom! + 0.25))).toBeGreaterThan(1.3 * distortion(clipsFrom! - 0.2));
});

it('more capacitance takes off more high notes, and follows less of them', () => {
  const [small, large] = ['100 pF', '2 nF'].map((bypass) =>
    limitsOf(example('medium-wave-germanium-amplifier', { bypass })),
  );
  expect(large.throughLoad).toBeLessThan(small.throughLoad ?? 20e3);
  expect(large.followsTo).toBeLessThan(small.followsTo ?? 20e3);
  expect(large.loadCapacitance).toBeGreaterThan(small.loadCapacitance);
});

it('the phones of a crystal set clip nothing: their load for audio is the greater', () => {
  const limits = limitsOf(example('medium-wave-galena'));
  expect(limits.audioLoad).toBeGreaterThan(limits.directLoad);
  expect(limits.clipsFrom).toBeUndefined();
});

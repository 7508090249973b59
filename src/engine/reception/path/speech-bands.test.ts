import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { setCircuit } from '../../built/set-circuit.ts';
import { magnitude } from '../../numerics/complex.ts';
import { readText } from '../../set/read.ts';
import { decibels } from '../../units/quantities.ts';
import { intelligibilityAmong } from '../hearing/index.ts';
import { receiver, receiveStation, TEST_TONE, toneSource, toneThrough } from './receive-station.ts';
import { speechBands } from './speech-bands.ts';

const EXAMPLES = new URL('../../../../examples/', import.meta.url);
const sets = readdirSync(EXAMPLES)
  .filter((file) => file.endsWith('.json'))
  .flatMap((file) => {
    const read = readText(readFileSync(new URL(file, EXAMPLES), 'utf8'));
    return read.ok ? [[file, read.set] as const] : [];
  });

// Tone by tone through the detector is the outside here. By the loaded Q alone bands were up to 5 dB wrong, and words
// were promised whose treble was gone.
test.each(sets)('%s: speech is judged with the treble that tones have behind the detector', (_, set) => {
  const ready = receiver(setCircuit(set));
  for (const station of set.place.stations) {
    const s = receiveStation(ready, { ...station, programme: 'speech' });
    if (!s.within || !(s.heard.spl > 0)) continue;
    const through = (tone: number) =>
      decibels(
        toneThrough(ready, toneSource(ready, s, tone), { tone, depth: 0.2, steady: s.steady }).audioCurrent *
          magnitude(ready.transducerAt(tone)) *
          10 ** (ready.soundPressureOfVoltAt(tone) / 20),
      );
    const reference = through(TEST_TONE);
    const bands = speechBands(ready, s);
    const at1k = bands.find((b) => b.frequency === 1000)!;
    const sent = s.heard.bands.map(
      (b) => b.level - decibels(s.audioResponseAt(b.frequency)) - ready.soundPressureOfVoltAt(b.frequency),
    );
    const exact = s.heard.bands.map((b, i) => {
      if (b.frequency < 300 || b.frequency > 6000) return bands[i];
      const level =
        sent[i] +
        through(b.frequency) -
        reference +
        decibels(s.audioResponseAt(TEST_TONE)) +
        ready.soundPressureOfVoltAt(TEST_TONE);
      if (Number.isFinite(level))
        expect(Math.abs(bands[i].level - level), `${station.name}, ${b.frequency} Hz`).toBeLessThan(1);
      return { ...b, level };
    });
    expect(at1k.level).toBeCloseTo(s.heard.bands.find((b) => b.frequency === 1000)!.level, 9);
    expect(Math.abs(intelligibilityAmong(bands, []) - intelligibilityAmong(exact, []))).toBeLessThan(0.02);
  }
});

// Narrower and narrower on long wave: the words that are understood grow fewer, whatever the level.
test('notes above 1.2 kHz gone: not every word is promised', () => {
  const [, set] = sets.find(([file]) => file === 'long-wave-foil.json')!;
  const ready = receiver(setCircuit(set));
  const s = receiveStation(ready, { ...set.place.stations[0], programme: 'speech' });
  const gone = speechBands(ready, s).map((b) => (b.frequency > 1200 ? { ...b, level: Number.NEGATIVE_INFINITY } : b));
  expect(intelligibilityAmong(gone, [])).toBeLessThan(0.4);
});

import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { setCircuit } from '../../src/engine/built/set-circuit.ts';
import { audioLimits } from '../../src/engine/reception/detection/audio-limits.ts';
import { receiver, receiveStation } from '../../src/engine/reception/path/receive-station.ts';
import { readText } from '../../src/engine/set/read.ts';
import type { Suggestion } from '../../src/engine/vary/suggest.ts';
import { suggestionEffects } from '../../src/outputs/words/en/vary/suggestions.ts';
import { audioLimitSentences, stageSentence } from '../../src/outputs/words/index.ts';

const sets = readdirSync(inRoot('examples'))
  .filter((file) => file.endsWith('.json'))
  .flatMap((file) => {
    const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
    return read.ok ? [[file, read.set] as const] : [];
  });

describe('sentences that once contradicted their figures', () => {
  test.each(sets)('%s: distortion with nothing clipped is named with its cause', (_, set) => {
    const ready = receiver(setCircuit(set));
    for (const station of set.place.stations) {
      const s = receiveStation(ready, station);
      const { distortion } = s;
      if (!(s.steady.junctionVoltage > 0)) continue;
      const audio = audioLimits(ready, s);
      const words = audioLimitSentences(audio).join(' ');
      expect(audio.distortion).toBe(distortion);
      if (audio.clipsFrom === undefined && distortion > 0.05)
        expect(words).toMatch(/The distortion of [\d.]+ % comes from/);
      else expect(words).not.toMatch(/The distortion of/);
    }
  });

  test('resonance raises a voltage only where it becomes higher', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (gain) => {
        const words = stageSentence({ facts: { stage: 'tuned circuit', gain, loadedQ: 10, bandwidth: 20e3 } });
        expect(/raises/.test(words)).toBe(gain >= 1);
        expect(/lower than the emf/.test(words)).toBe(gain < 1);
      }),
    );
  });

  test('a change of bandwidth is called what it is to the programme', () => {
    const outlook = (bandwidth: number) => ({ level: 40, clearance: 20, heard: 'comfortable', bandwidth }) as const;
    const besides = (before: number, after: number) =>
      suggestionEffects({
        wish: 'loudness',
        before: outlook(before),
        after: outlook(after),
        lost: [],
        gained: [],
        names: { lost: [], gained: [] },
      } as unknown as Suggestion);
    fc.assert(
      fc.property(
        fc.double({ min: 2e3, max: 40e3, noNaN: true }),
        fc.double({ min: 1.3, max: 4, noNaN: true }),
        (narrow, by) => {
          expect(/less treble loss/.test(besides(narrow, narrow * by)!)).toBe(narrow < 9e3);
          expect(/more treble loss/.test(besides(narrow * by, narrow)!)).toBe(narrow < 9e3);
        },
      ),
    );
  });

  test('no sentence states the self-capacitance of a built coil to 5 %', () => {
    const words = (folder: string): string[] =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((file) => /\.ts$/.test(file) && !/\.test\.ts$/.test(file))
        .flatMap((file) => readFileSync(`${folder}/${file}`, 'utf8').split('\n'));
    const lines = words(inRoot('src/outputs/words/en'));
    expect(lines.length).toBeGreaterThan(1000);
    expect(
      lines.filter((line) => /self-capacitance|own capacitance/i.test(line) && /\b5 ?%|0\.05\b/.test(line)),
    ).toEqual([]);
  });
});

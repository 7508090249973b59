import { describe, expect, test } from 'vitest';
import { RECORDING_RATE } from '../model/kept-recording.ts';
import type { WaveProgramme } from '../model/wave-programme.ts';
import { createWaves } from '../model/waves.ts';
import { wholePath } from '../story/story.ts';
import { playheadAt } from './scene-sound.ts';

const wavesWith = (programme: WaveProgramme) =>
  createWaves({
    carrier: 1e6,
    depth: 0.5,
    programme,
    atAerial: 0.05,
    atTuned: 2,
    atDetector: 1,
    loadedQ: 40,
    neighbours: [],
    detector: 'perfect',
    detectorId: 'perfect',
    load: { resistance: 20e3, capacitance: 1e-9 },
  });
const tone = wavesWith({ kind: 'tones', tones: [{ frequency: 400, share: 1 }] });

describe('the mark of what is heard in a film', () => {
  const scene = { ...wholePath(), from: 0, span: 1 };

  test('goes through the view again with each second of a tone, where the wave is the same', () => {
    expect(playheadAt(tone, scene, scene, 0.25, 5)).toBe(0.25);
    const later = playheadAt(tone, scene, scene, 3.25, 5)!;
    expect(later).toBe(0.25);
    expect(tone.meanAt('phones', later)).toBeCloseTo(tone.meanAt('phones', 3.25), 6);
  });

  test('goes on through a recording from the moment the view begins with', () => {
    const samples = Float32Array.from({ length: 5 * RECORDING_RATE }, (_, i) => Math.sin(i));
    const words = wavesWith({ kind: 'recording', name: '', samples, rate: RECORDING_RATE });
    const part = { ...scene, from: 1.5 };
    expect(playheadAt(words, part, part, 2, 5)).toBe(3.5);
  });
});

import { expect, it } from 'vitest';
import { detectorMerit } from '../../../../engine/parts/detector/detector-merits.ts';
import { exponentialDetector } from '../../../../engine/parts/detector/exponential.ts';
import { DETECTOR_KINDS } from '../../../../engine/parts/detector/library.ts';
import { detectorFacts } from '../../../../engine/reception/detection/detector-facts.ts';
import { USUAL_DETECTORS } from '../../../../engine/vary/compare.ts';
import { audioLimitSentences } from './audio-limits.ts';
import { detectorMeritSentence } from './compared.ts';
import { detectorFactSentences } from './facts.ts';

it('every usual detector has its typical values and a source that says how sure it is', () => {
  for (const detector of USUAL_DETECTORS) {
    const sentences = detectorFactSentences(detectorFacts(detector));
    expect(sentences.join(' ')).toMatch(/Source: .*(looked up|memory)/);
    expect(sentences.join(' ')).not.toMatch(/NaN|undefined/);
  }
});

it('every kind of the library is described', () => {
  for (const kind of DETECTOR_KINDS) {
    const [about, values] = detectorFactSentences({ of: 'library', ...kind });
    expect(about, kind.id).not.toMatch(/^Typical values/);
    expect(values, kind.id).toMatch(/^Typical values/);
  }
});

const LIMITS = {
  halfBandwidth: 5e3,
  directLoad: 5e4,
  audioLoad: 2e4,
  depth: 0.5,
  loadCapacitance: 1e-9,
  distortion: 0.01,
};

it('blames the bandwidth of the tuned circuit for its treble loss only where that is so narrow', () => {
  const sentence = (halfBandwidth: number) =>
    audioLimitSentences({ ...LIMITS, halfBandwidth, throughTunedCircuit: 1400 })[0];
  expect(sentence(1500)).not.toMatch(/not the cause/);
  expect(sentence(30e3)).toMatch(/above 1\.4 kHz .*bandwidth is not the cause: the capacitance across the load/);
});

it('names negative-peak and diagonal clipping with their figures', () => {
  const sentences = audioLimitSentences({ ...LIMITS, clipsFrom: 0.45, followsTo: 3000, throughTunedCircuit: 4000 });
  expect(sentences).toHaveLength(4);
  expect(sentences.join(' ')).toMatch(/above 4 kHz \(speech is clear, music dull\)/);
  expect(sentences.join(' ')).toMatch(/negative-peak clipping on this station at depths above about 45 %/);
  expect(sentences.join(' ')).toMatch(/At 50 % depth .* up to 3 kHz; .*diagonal clipping/);
  expect(audioLimitSentences(LIMITS).join(' ')).toMatch(/no negative-peak clipping at any depth/);
  expect(audioLimitSentences({ ...LIMITS, distortion: 0.32 }).join(' ')).toMatch(
    /no negative-peak clipping at any depth of modulation\. The distortion of 32 % comes from/,
  );
});

it('says the detection loss and the match', () => {
  const merit = detectorMerit(exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1 }));
  expect(detectorMeritSentence(merit)).toMatch(/1 nW.*dB.*57 kΩ/);
});

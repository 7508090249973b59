import { describe, expect, it } from 'vitest';
import type { Disturbance } from '../../../../engine/reception/path/types.ts';
import { besideWords, interferenceSentence } from './interference.ts';

const beside = (effect: Disturbance['effect'], audioRatio: number, more: Partial<Disturbance> = {}): Disturbance => ({
  index: 1,
  by: 'Ash',
  frequency: 612e3,
  carrierRatio: audioRatio,
  audioRatio,
  separation: audioRatio,
  effect,
  ...more,
});

describe('what another station does', () => {
  it('in a sentence: how much weaker or stronger, and the whistle where it tells', () => {
    expect(interferenceSentence(beside('interferes', 8.2))).toBe('Ash (612 kHz) interferes, only 8 dB weaker.');
    expect(interferenceSentence(beside('masks', -4))).toBe('Ash (612 kHz) masks it, 4 dB stronger.');
    expect(interferenceSentence(beside('masks', 2))).toBe('Ash (612 kHz) is almost as loud, 2 dB weaker.');
    expect(interferenceSentence(beside('interferes', 25, { separation: 10, whistle: 9000 }))).toBe(
      'The carriers of Ash (612 kHz) and this station beat: a whistle of 9.0 kHz interferes.',
    );
  });
  it('in a few words: nothing for a station that is not heard or out of range', () => {
    const disturbance = beside('masks', -4);
    expect(besideWords({ verdict: 'masked', heard: 'quiet', disturbance })).toBe('by Ash; quiet without it');
    for (const verdict of ['not heard', 'out of range'] as const)
      expect(besideWords({ verdict, heard: 'not heard', disturbance })).toBe('');
  });
});

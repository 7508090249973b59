// Sources: reference/hearing.json, each entry with its standard and how it was come by.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/hearing.json' with { type: 'json' };
import { hearingSentence } from '../../../outputs/words/en/reception/stations.ts';
import { intelligibilityWords } from '../../../outputs/words/en/reception/verdicts.ts';
import { type Heard, heard, roomNoise, THIRD_OCTAVES } from './index.ts';
import { intelligibilityAmong } from './intelligibility.ts';
import { programmeShares } from './programme.ts';
import { type RoomName, soundLevelA } from './room.ts';
import { aWeighting, powerSum } from './third-octaves.ts';
import { hearingThreshold } from './threshold.ts';

type Rows = Record<string, number>[];
const entry = (id: string) => reference.entries.find((e) => e.id === id)! as never as Record<string, never>;
const rows = (id: string) => entry(id).values as Rows;
const ROOMS: RoomName[] = ['night', 'quiet room', 'living room', 'out of doors', 'workshop'];

describe('threshold of hearing', () => {
  it('free field, both ears: ISO 226:2003 Table 1 (ISO 389-7), exact', () => {
    for (const { f_Hz, Tf_dB } of rows('iso226_threshold')) expect(hearingThreshold(f_Hz)).toBeCloseTo(Tf_dB, 9);
  });
  it('under phones, one ear: ANSI S3.6 / ISO 389-1, exact; never better than in the free field', () => {
    for (const { frequency, level } of rows('supra_aural_threshold')) {
      expect(hearingThreshold(frequency, 'phones', 1)).toBeCloseTo(level, 9);
      expect(hearingThreshold(frequency, 'phones')).toBeGreaterThan(hearingThreshold(frequency));
    }
  });
  it('two ears hear better than one by what is remembered', () => {
    const [low, high] = (entry('from_memory').values as Record<string, [number, number]>).two_ears_better_than_one_dB;
    const gain = hearingThreshold(1000, 'free field', 1) - hearingThreshold(1000);
    expect(gain).toBeGreaterThanOrEqual(low);
    expect(gain).toBeLessThanOrEqual(high);
    expect(() => hearingThreshold(Number.NaN)).toThrow(RangeError);
  });
});

describe('spectra', () => {
  it('weighting A: IEC 61672-1 Table 3 within 0.1 dB', () => {
    for (const { frequency, level } of rows('a_weighting'))
      expect(Math.abs(aWeighting(frequency) - level)).toBeLessThan(0.1);
  });
  it('speech: ANSI S3.5-1997 Table 3, which adds up to its 62.35 dB', () => {
    const shares = programmeShares('speech');
    const overall = entry('speech_spectrum').overall as number;
    const bands: number[] = [];
    for (const { frequency, spectrumLevel } of rows('speech_spectrum')) {
      const level = spectrumLevel + 10 * Math.log10(frequency * (2 ** (1 / 6) - 2 ** (-1 / 6)));
      bands.push(level);
      // The two bands below the standard's range take 0.4 dB of the total.
      expect(shares[THIRD_OCTAVES.indexOf(frequency)] - (level - overall)).toBeCloseTo(-0.36, 1);
    }
    expect(powerSum(bands)).toBeCloseTo(overall, 2);
  });
  it('music: IEC 60268-1 Table II', () => {
    const shares = programmeShares('music');
    for (const { frequency, level } of rows('programme_spectrum').filter((r) => THIRD_OCTAVES.includes(r.frequency)))
      expect(shares[THIRD_OCTAVES.indexOf(frequency)] - shares[THIRD_OCTAVES.indexOf(400)]).toBeCloseTo(level, 9);
  });
  it('every programme’s bands make the whole', () => {
    for (const p of ['speech', 'music', 'mixed', 'tone'] as const)
      expect(powerSum(programmeShares(p))).toBeCloseTo(0, 9);
  });
  it('rooms: a third of an octave is 4.8 dB under the noise criterion curve; noisier by name, quieter under phones', () => {
    const curves = entry('room_noise_curves').values as Record<string, number[]>;
    const i = THIRD_OCTAVES.indexOf(1000);
    expect(roomNoise('quiet room')[i]).toBeCloseTo(curves['20'][4] - 4.77, 2);
    expect(roomNoise('workshop')[i]).toBeCloseTo(curves['50'][4] - 4.77, 2);
    const levels = ROOMS.map((r) => soundLevelA(roomNoise(r)));
    expect([...levels].sort((a, b) => a - b)).toEqual(levels);
    for (const r of ROOMS) expect(soundLevelA(roomNoise(r, 'phones'))).toBeLessThan(soundLevelA(roomNoise(r)));
    expect(soundLevelA(roomNoise({ soundLevel: 47 }))).toBeCloseTo(47, 9);
  });
});

const ORDER = ['not heard', 'faint', 'quiet', 'comfortable', 'loud'];
const flat = (level: number, rest: Partial<Parameters<typeof heard>[0]> = {}): Heard =>
  heard({ soundPressureLevelAt: () => level, bandwidth: 8000, ...rest });

describe('how it is heard', () => {
  it('speech at 20 dB SPL in an earphone is half understood (ANSI S3.6), and is lost 7 to 10 dB lower (from memory)', () => {
    const silence = { room: { soundLevel: -40 }, ears: 1 } as const;
    const recognised = flat(entry('supra_aural_threshold').speech as number, silence);
    const [low, high] = (entry('from_memory').values as Record<string, [number, number]>)
      .speech_detected_below_recognition_dB;
    expect(recognised.margin).toBeGreaterThan(low - 1);
    expect(recognised.margin).toBeLessThan(high + 1);
    expect(recognised.loudness).toBe('faint');
    expect(intelligibilityWords(recognised.intelligibility!)).toMatch(/some words/);
  });
  it('ordinary talk, 62.35 dB SPL (ANSI S3.5), is comfortable in a quiet room and every word is understood', () => {
    for (const listening of ['phones', 'loudspeaker'] as const) {
      const talk = flat(62.35, { listening });
      expect(talk.loudness).toBe('comfortable');
      expect(talk.intelligibility).toBeGreaterThan(0.95);
      expect(talk.spl).toBeCloseTo(62.35, 6);
    }
  });
  it('a dB more is a dB more, and never less heard', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.constantFrom(...ROOMS),
        fc.constantFrom('speech', 'music', 'mixed', 'tone'),
        (level, more, room, programme) => {
          const a = flat(level, { room, programme });
          const b = flat(level + more, { room, programme });
          expect(b.margin - a.margin).toBeCloseTo(more, 9);
          expect(b.spl - a.spl).toBeCloseTo(more, 9);
          expect(ORDER.indexOf(b.loudness)).toBeGreaterThanOrEqual(ORDER.indexOf(a.loudness));
          expect(a.loudness === 'not heard').toBe(a.margin < 0);
          expect(a.margin).toBeLessThanOrEqual(a.marginInSilence);
        },
      ),
    );
  });
  it('a noisier room never helps, and silence tells what masked it', () => {
    const margins = ROOMS.map((room) => flat(35, { room }).margin);
    expect([...margins].sort((a, b) => b - a)).toEqual(margins);
    const masked = flat(30, { room: 'workshop' });
    expect(masked.loudness).toBe('not heard');
    expect(masked.marginInSilence).toBeGreaterThan(0);
    expect(hearingSentence({ ...masked, level: masked.spl, levelA: masked.splA })).toMatch(
      /^Not heard: \d+ dB below the hearing threshold in a workshop, above it in silence\.$/,
    );
  });
  it('a tone is heard when it reaches the threshold', () => {
    const at = hearingThreshold(1000, 'phones');
    const silence = { room: { soundLevel: -40 }, programme: 'tone' } as const;
    expect(flat(at + 0.01, silence).loudness).toBe('faint');
    expect(flat(at - 0.01, silence).loudness).toBe('not heard');
  });
  it('nothing is not heard (common practice, no source: with a carrier alone nothing is heard), nonsense is refused', () => {
    const none = flat(Number.NEGATIVE_INFINITY);
    expect(none.loudness).toBe('not heard');
    expect(hearingSentence({ ...none, level: none.spl, levelA: none.splA })).toMatch(/no sound/);
    expect(() => flat(Number.NaN)).toThrow(RangeError);
  });
  it('warns of what harms the ears', () => {
    expect(flat(95).warnings).toEqual([{ code: 'reception.harmful-level' }]);
    expect(flat(60).warnings).toEqual([]);
  });
  it('other programmes in the phones take from what is understood: as strong as the wanted one, half of it and more', () => {
    const { bands, intelligibility } = flat(62.35);
    expect(intelligibilityAmong(bands, [])).toBe(intelligibility);
    const beside = [12, 9, 3, 0, -10].map((ratio) => intelligibilityAmong(bands, [ratio]));
    for (const [k, index] of beside.entries()) expect(index).toBeLessThan(k === 0 ? intelligibility! : beside[k - 1]);
    // Speech as strong as the noise is at the middle of the 30 dB that count: half of each band.
    expect(beside[3]).toBeCloseTo(0.5, 2);
    expect(intelligibilityAmong(bands, [3, 3])).toBeCloseTo(intelligibilityAmong(bands, [3 - 10 * Math.log10(2)]), 9);
  });
  it('what the set cuts off is lost', () => {
    const dull = heard({ soundPressureLevelAt: (f) => (f < 700 ? 50 : Number.NEGATIVE_INFINITY) });
    const whole = heard({ soundPressureLevelAt: () => 50 });
    expect(dull.intelligibility!).toBeLessThan(0.4 * whole.intelligibility!);
    expect(dull.spl).toBeLessThan(whole.spl);
  });
});

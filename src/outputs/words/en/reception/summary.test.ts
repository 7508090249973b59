import { describe, expect, it } from 'vitest';
import type { Disturbance, Reception, Verdict } from '../../../../engine/reception/path/types.ts';
import { receptionHeadline, receptionSummary } from './summary.ts';

type Station = Parameters<typeof receptionSummary>[0]['stations'][number];
const station = (name: string, verdict: Verdict, beside?: [string, Disturbance['effect']]): Station => ({
  name,
  frequency: 603e3,
  verdict,
  disturbance: beside && {
    index: 1,
    by: beside[0],
    effect: beside[1],
    frequency: 612e3,
    carrierRatio: 0,
    audioRatio: 0,
    separation: 0,
  },
  outOfRange: verdict === 'out of range' ? { side: 'above', end: 949e3 } : undefined,
});
const summed = (stations: Station[], time?: Reception['time']): string =>
  receptionSummary({ stations, best: stations.map((_, i) => i), time });

describe('what is said first', () => {
  it('of no station, and of none that can be heard', () => {
    expect(summed([])).toMatch(/^No stations are listed/);
    expect(summed([station('Elm', 'not heard')])).toMatch(/^Nothing would be heard/);
    expect(summed([station('Elm', 'not heard')], 'night')).toMatch(/^By night nothing would be heard/);
  });
  it('of one', () => {
    expect(summed([station('Elm', 'loud')])).toBe('You would hear one station, Elm on 603 kHz: loud.');
    expect(summed([station('Elm', 'loud', ['Ash', 'behind'])])).toBe(
      'You would hear one station, Elm on 603 kHz: loud. Ash is heard behind it.',
    );
  });
  it('of two', () => {
    expect(summed([station('Elm', 'comfortable'), station('Ash', 'faint')])).toBe(
      'You would hear two stations, best of all Elm on 603 kHz: comfortable. Ash is faint.',
    );
    expect(summed([station('Elm', 'comfortable'), station('Ash', 'masked', ['Elm', 'masks'])])).toBe(
      'You would hear one station, Elm on 603 kHz: comfortable. Masked by other stations: one.',
    );
  });
  it('of many by night, some lost', () => {
    const many = [
      station('Elm', 'loud', ['Ash', 'interferes']),
      station('Ash', 'loud'),
      station('Oak', 'comfortable'),
      station('Fir', 'comfortable'),
      station('Yew', 'masked', ['Elm', 'masks']),
      station('Box', 'not heard'),
      station('Bay', 'not heard', ['Elm', 'masks']),
    ];
    expect(summed(many, 'night')).toBe(
      'By night you would hear four stations, best of all Elm on 603 kHz: loud. Ash interferes with it. Ash is loud. Oak and Fir are comfortable. Masked by other stations: one. Too weak to be heard: two.',
    );
    expect(summed(many, new Date('2026-01-01T21:05:00Z'))).toMatch(
      /^At 21:05 UTC you would hear four stations, best of all Elm/,
    );
  });
  it('of stations out of range: neither heard nor masked', () => {
    const beyond = station('Ash', 'out of range', ['Elm', 'masks']);
    expect(summed([station('Elm', 'loud'), beyond, beyond])).toBe(
      'You would hear one station, Elm on 603 kHz: loud. Out of range of the dial: two.',
    );
    expect(summed([beyond, station('Elm', 'masked', ['Ash', 'masks'])])).toBe(
      'Nothing would be heard on this set here; see what would help most. Masked by other stations: one. Out of range of the dial: one.',
    );
    expect(summed([beyond, beyond])).toMatch(
      /Out of range of the dial: two\. Ash is above the high end of the dial, 949 kHz: fewer turns/,
    );
  });
});

describe('the headline', () => {
  const headline = (stations: Station[], time?: Reception['time']): string =>
    receptionHeadline({ stations, best: stations.map((_, i) => i), time });
  const masked = station('Yew', 'masked', ['Elm', 'masks']);
  it('counts what is heard of all and names the best only', () => {
    const many = [station('Elm', 'loud'), station('Ash', 'faint'), masked];
    expect(headline(many)).toBe('Two of three stations heard; best Elm, 603 kHz: loud.');
    expect(receptionHeadline({ stations: many, best: [0, 1, 2] }, 'long wave')).toMatch(
      /^Two of three stations heard on long wave; best Elm/,
    );
    expect(headline(many, 'night')).toBe('By night two of three stations heard; best Elm, 603 kHz: loud.');
    expect(headline(many, new Date('2026-01-01T21:05:00Z'))).toMatch(/^At 21:05 UTC two of three stations heard; best/);
    expect(headline([station('Elm', 'loud')])).toBe('One of one station heard; best Elm, 603 kHz: loud.');
  });
  it('says so where nothing is heard, or nothing is known', () => {
    expect(headline([masked])).toMatch(/^Nothing would be heard/);
    expect(headline([])).toMatch(/^No stations are listed/);
  });
});

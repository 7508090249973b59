import { describe, expect, it } from 'vitest';
import { besideWords, type Summed, summaryOf, verdictOf } from './summary.ts';
import type { Disturbance, HeardWord } from './types.ts';

const station = (name: string, heard: HeardWord, beside?: [string, Disturbance['word']]): Summed => ({
  name,
  frequency: 603e3,
  heard,
  disturbance: beside && {
    by: beside[0],
    word: beside[1],
    frequency: 612e3,
    carrierRatio: 0,
    audioRatio: 0,
    separation: 0,
    sentence: '',
  },
});
const summed = (stations: Summed[], time?: 'day' | 'night' | Date): string =>
  summaryOf(
    stations,
    stations.map((_, i) => i),
    time,
  );

describe('what is said first', () => {
  it('of no station, and of none that can be heard', () => {
    expect(summed([])).toMatch(/^No stations are listed/);
    expect(summed([station('Elm', 'not heard')])).toMatch(/^Nothing would be heard/);
    expect(summed([station('Elm', 'not heard')], 'night')).toMatch(/^By night nothing would be heard/);
  });
  it('of one', () => {
    expect(summed([station('Elm', 'loud')])).toBe('You would hear one station, Elm on 603 kHz: loud.');
    expect(summed([station('Elm', 'loud', ['Ash', 'a murmur behind'])])).toBe(
      'You would hear one station, Elm on 603 kHz: loud, with Ash murmuring behind it.',
    );
  });
  it('of two', () => {
    expect(summed([station('Elm', 'comfortable'), station('Ash', 'faint')])).toBe(
      'You would hear two stations, best of all Elm on 603 kHz: comfortable. Ash is faint.',
    );
    expect(summed([station('Elm', 'comfortable'), station('Ash', 'loud', ['Elm', 'swamped'])])).toBe(
      'You would hear one station, Elm on 603 kHz: comfortable. One more is drowned by others.',
    );
  });
  it('of two alike and a third', () => {
    expect(summed([station('Elm', 'quiet'), station('Ash', 'quiet'), station('Oak', 'faint')])).toBe(
      'You would hear three stations, best of all Elm on 603 kHz: quiet. Ash is quiet too; Oak is faint.',
    );
  });
  it('of many by night, some lost', () => {
    const many = [
      station('Elm', 'loud', ['Ash', 'troublesome']),
      station('Ash', 'loud'),
      station('Oak', 'comfortable'),
      station('Fir', 'comfortable'),
      station('Yew', 'quiet', ['Elm', 'swamped']),
      station('Box', 'not heard'),
      station('Bay', 'not heard', ['Elm', 'swamped']),
    ];
    expect(summed(many, 'night')).toBe(
      'By night you would hear four stations, best of all Elm on 603 kHz: loud, though Ash talks through it. Ash is loud too; Oak and Fir are comfortable. One more is drowned by others and two more cannot be heard.',
    );
    expect(summed(many, new Date('2026-01-01T21:05:00Z'))).toMatch(
      /^At 21:05 UTC you would hear four stations, best of all Elm/,
    );
  });
  it('of stations beyond the dial: neither heard nor drowned', () => {
    const beyond = (name: string, heard: HeardWord, beside?: [string, Disturbance['word']]): Summed => ({
      ...station(name, heard, beside),
      outOfReach: 'above the high end of the scale, 949 kHz: fewer turns or smaller strays are needed',
    });
    expect(
      summed([station('Elm', 'loud'), beyond('Ash', 'comfortable'), beyond('Oak', 'quiet', ['Elm', 'swamped'])]),
    ).toBe('You would hear one station, Elm on 603 kHz: loud. Two more are out of reach of the dial.');
    expect(summed([beyond('Ash', 'loud'), station('Elm', 'quiet', ['Ash', 'swamped'])])).toBe(
      'Nothing would be heard on this set here as it stands: one is drowned by others and one is out of reach of the dial; see what would help most.',
    );
    expect(summed([beyond('Ash', 'loud'), beyond('Oak', 'quiet')])).toMatch(
      /: both stations are out of reach of the dial, Ash above the high end of the scale, 949 kHz: fewer turns/,
    );
    expect(verdictOf(beyond('Ash', 'loud'))).toBe('out of reach');
    expect(besideWords(beyond('Oak', 'quiet', ['Elm', 'swamped']))).toBe('');
  });
  it('one verdict for one station', () => {
    expect(verdictOf(station('Elm', 'quiet', ['Ash', 'swamped']))).toBe('drowned');
    expect(verdictOf(station('Elm', 'not heard', ['Ash', 'swamped']))).toBe('not heard');
    expect(verdictOf(station('Elm', 'quiet', ['Ash', 'troublesome']))).toBe('quiet');
  });
});

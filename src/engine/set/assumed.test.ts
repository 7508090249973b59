import { describe, expect, test } from 'vitest';
import { assumedIn, confirmed, isAssumed, stillAssumed } from './assumed.ts';
import { withValueAt } from './write.ts';

const station = (name: string, power: string) => ({ name, frequency: '603 kHz', power, distance: '40 km' });
const written = {
  aerial: { kind: 'inverted-L', height: '8 m', length: '20 m' },
  place: { stations: [station('A', '1 kW'), station('B', '2 kW'), station('C', '3 kW')] },
  assumed: ['aerial.height', 'aerial.length', 'place.stations[0]', 'place.stations[2].power'],
};

describe('what is assumed', () => {
  test('a value that is changed is assumed no more; the others are', () => {
    const after = withValueAt(written, ['aerial', 'height'], '6 m');
    expect(assumedIn(stillAssumed(written, after))).toEqual(written.assumed.slice(1));
  });

  test('a change of anything inside a place is a change of it', () => {
    const after = withValueAt(written, ['place', 'stations', 0, 'name'], 'D');
    expect(assumedIn(stillAssumed(written, after))).not.toContain('place.stations[0]');
  });

  test('places move along with their rows, and go with them', () => {
    const { stations } = written.place;
    const left = { ...written, place: { stations: stations.slice(1) } };
    expect(assumedIn(stillAssumed(written, left))).toEqual([
      'aerial.height',
      'aerial.length',
      'place.stations[1].power',
    ]);
    const more = { ...written, place: { stations: [station('Z', '9 kW'), ...stations] } };
    expect(assumedIn(stillAssumed(written, more))).toEqual([
      'aerial.height',
      'aerial.length',
      'place.stations[1]',
      'place.stations[3].power',
    ]);
  });

  test('a row of a list that was not there is no row that moved', () => {
    const odd = { ...written, assumed: ['aerial.height', 'readings[0]', 'place.stations[9].power'] };
    expect(assumedIn(stillAssumed(odd, { ...odd, readings: [{}] }))).toEqual(['aerial.height']);
  });

  test('what the change itself calls assumed stays, and a change of nothing keeps the very same', () => {
    const after = { ...written, earth: { kind: 'rod' }, assumed: [...written.assumed, 'earth.kind'] };
    expect(assumedIn(stillAssumed(written, after))).toEqual(after.assumed);
    expect(stillAssumed(written, written)).toBe(written);
  });

  test('the last one leaves no list', () => {
    const one = { aerial: { height: '8 m' }, assumed: ['aerial.height'] };
    expect(stillAssumed(one, withValueAt(one, ['aerial', 'height'], '5 m'))).not.toHaveProperty('assumed');
    expect(confirmed(written)).not.toHaveProperty('assumed');
    expect(assumedIn(confirmed(written, ['aerial.height']))).toEqual(written.assumed.slice(1));
  });

  test('a place within an assumed one is assumed', () => {
    expect(isAssumed(written, ['place', 'stations', 0, 'power'])).toBe(true);
    expect(isAssumed(written, ['place', 'stations', 2, 'distance'])).toBe(false);
    expect(isAssumed(written, ['aerial'])).toBe(false);
    expect(isAssumed({ assumed: 'all' }, ['aerial'])).toBe(false);
  });
});

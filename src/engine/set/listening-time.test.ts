import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { receive } from '../reception/path/receive.ts';
import { listeningTime } from './listening-time.ts';
import { readValue } from './read.ts';

const written = JSON.parse(readFileSync(inRoot('examples/coast-by-night.json'), 'utf8'));
const withListening = (listening: unknown) => readValue({ ...written, place: { ...written.place, listening } });
const setWith = (listening: unknown) => {
  const read = withListening(listening);
  if (!read.ok) throw new Error('it does not read');
  return read.set;
};

describe('the time of day a description says', () => {
  it.each([
    [undefined, 'day'],
    ['day', 'day'],
    ['night', 'night'],
    [{ month: 1, hour: 0 }, new Date('2026-01-15T00:00Z')],
    [{ month: 12, hour: 21.5 }, new Date('2026-12-15T21:30Z')],
  ])('%j', (listening, time) => expect(listeningTime(setWith(listening).place)).toEqual(time));

  it.each(['dusk', {}, { month: 0, hour: 20 }, { month: 1.5, hour: 20 }, { month: 12, hour: 24.1 }, 21, null])(
    '%j is refused',
    (listening) => expect(withListening(listening).ok).toBe(false),
  );

  it('is the time a reception has unless it is asked for another', () => {
    const levels = (listening: unknown, time?: 'day' | 'night' | Date) =>
      receive(setWith(listening), { time }).stations.map((s) => s.fieldStrength);
    expect(levels('night')).toEqual(levels(undefined, 'night'));
    expect(levels('night')).not.toEqual(levels(undefined));
    expect(levels('night', 'day')).toEqual(levels(undefined));
    const evening = { month: 12, hour: 21 };
    expect(levels(evening)).toEqual(levels(undefined, new Date('2026-12-15T21:00Z')));
    expect(levels(evening)).not.toEqual(levels(undefined));
    expect(receive(setWith('night')).time).toBe('night');
    expect(receive(setWith(evening)).time).toEqual(new Date('2026-12-15T21:00Z'));
  });
});

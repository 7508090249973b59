import fc from 'fast-check';
import { expect, it } from 'vitest';
import { nightHours, sunState } from '../place/sun.ts';
import { listeningCalendar } from './listening-calendar.ts';
import { readLog } from './read-log.ts';

const placed = (csv: string) => readLog(csv).entries.map((entry) => ({ entry, light: 'day' as const }));

it('puts the same date of every year on one day, whatever zone its clock had', () => {
  const { entries } = listeningCalendar(
    placed(
      'time,station,heard\n2023-03-01T00:30+02:00,A,quiet\n2024-02-28T22:30Z,A,faint\n2024-03-01T12:15Z,A,not heard\n',
    ),
    undefined,
  );
  expect(entries).toEqual([
    { day: 58, hour: 22.5, heard: 'quiet' },
    { day: 58, hour: 22.5, heard: 'faint' },
    { day: 60, hour: 12.25, heard: 'not heard' },
  ]);
});

it('has the sun down within the hours of darkness, and up outside of them', () => {
  const place = fc.record({
    latitude: fc.double({ min: -75, max: 75, noNaN: true }),
    longitude: fc.double({ min: -180, max: 180, noNaN: true }),
  });
  fc.assert(
    fc.property(
      place,
      fc.integer({ min: 0, max: 365 }),
      fc.double({ min: 0, max: 24, noNaN: true }),
      (at, day, hour) => {
        const midnight = Date.UTC(2024, 0, 1 + day);
        const hours = nightHours(new Date(midnight + 9e6), at);
        const { altitude } = sunState(new Date(midnight + hour * 3.6e6), at);
        // Refraction is part of the altitude and not of the times: up to half a degree between the two near the horizon.
        if (Math.abs(altitude + 0.833) < 0.7) return;
        expect(hours.some(([from, to]) => from <= hour && hour <= to)).toBe(altitude < -0.833);
      },
    ),
  );
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathNight, subsolarPoint, sunState } from './sun.ts';

const london = { latitude: 51.5, longitude: -0.13 };
const minutes = (date: Date | null, hours: number, minute: number) =>
  Math.abs((date?.getUTCHours() ?? Number.NaN) * 60 + (date?.getUTCMinutes() ?? 0) - hours * 60 - minute);

describe('sun', () => {
  // Almanac times for 51.5° N 0.1° W, from memory: 20:21 and 03:43 UTC at midsummer, 15:53 and 08:04 at midwinter.
  it('sets and rises when the almanac says', () => {
    const summer = sunState(new Date('2025-06-21T22:00Z'), london);
    expect(minutes(summer.sunset, 20, 21)).toBeLessThan(3);
    expect(summer.state).toBe('night');
    const winter = sunState(new Date('2025-12-21T12:00Z'), london);
    expect(winter.state).toBe('day');
    expect(minutes(sunState(new Date('2025-12-21T16:10Z'), london).sunset, 15, 53)).toBeLessThan(3);
    expect(minutes(sunState(new Date('2025-12-21T07:50Z'), london).sunrise, 8, 4)).toBeLessThan(3);
    expect(sunState(new Date('2025-12-21T16:10Z'), london).state).toBe('dusk');
    expect(sunState(new Date('2025-12-21T07:50Z'), london).state).toBe('dawn');
  });

  it('neither sets nor rises near the poles', () => {
    const north = { latitude: 80, longitude: 20 };
    expect(sunState(new Date('2025-06-21T00:00Z'), north)).toMatchObject({ state: 'day', sunset: null, sunrise: null });
    expect(sunState(new Date('2025-12-21T12:00Z'), north)).toMatchObject({ state: 'night', sunset: null });
    expect(sunState(new Date('2025-12-21T12:00Z'), { latitude: -90, longitude: 0 }).state).toBe('day');
    expect(pathNight(new Date('2025-12-21T12:00Z'), north, { latitude: 81, longitude: 20 }).loss).toBe(0);
  });

  it('goes through day, dusk, night, dawn once a day in middle latitudes', () => {
    const place = fc.record({
      latitude: fc.double({ min: -50, max: 50, noNaN: true }),
      longitude: fc.double({ min: -180, max: 180, noNaN: true }),
    });
    const start = fc.integer({ min: 0, max: 364 });
    fc.assert(
      fc.property(place, start, (position, day) => {
        const states: string[] = [];
        for (let hour = 0; hour < 24; hour += 0.5) {
          const { state } = sunState(new Date(Date.UTC(2025, 0, 1 + day, 0, hour * 60)), position);
          if (states.at(-1) !== state) states.push(state);
        }
        if (states.length > 1 && states[0] === states.at(-1)) states.pop();
        const order = ['day', 'dusk', 'night', 'dawn'];
        const from = order.indexOf(states[0]);
        expect(states).toEqual([0, 1, 2, 3].map((n) => order[(from + n) % 4]));
      }),
      { numRuns: 25 },
    );
  });

  it("gives a path no sky wave by day and the hour's loss at dusk", () => {
    const there = { latitude: 52, longitude: 10 };
    expect(pathNight(new Date('2025-06-21T12:00Z'), london, there).loss).toBeNull();
    expect(pathNight(new Date('2025-12-21T23:00Z'), london, there).loss).toBe(0);
    const dusk = pathNight(new Date('2025-12-21T16:00Z'), london, there);
    expect(dusk.loss).toBeGreaterThan(2);
    expect(dusk.loss).toBeLessThan(15);
    // A path of 5000 km westward: night at its eastern end is not enough.
    expect(pathNight(new Date('2025-12-21T18:30Z'), london, { latitude: 45, longitude: -70 }).loss).toBeNull();
  });

  // suncalc, an independent implementation, must see the sun overhead there.
  it('stands overhead at the subsolar point', () => {
    const moment = fc.date({ min: new Date('2000-01-01'), max: new Date('2049-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(moment, (time) => {
        expect(sunState(time, subsolarPoint(time)).altitude).toBeGreaterThan(89.9);
      }),
    );
  });

  it('refuses what is no date', () => {
    expect(() => sunState(new Date(Number.NaN), london)).toThrow(RangeError);
  });
});

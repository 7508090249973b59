import fc from 'fast-check';
import { expect, it } from 'vitest';
import { isVersionDue, versionsToDrop } from './versions.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

it('a version is due at the first change, after a pause, and after half an hour of work', () => {
  expect(isVersionDue(undefined, 0, MINUTE)).toBe(true);
  expect(isVersionDue(0, 5 * MINUTE, 14 * MINUTE)).toBe(false);
  expect(isVersionDue(0, 5 * MINUTE, 16 * MINUTE)).toBe(true);
  expect(isVersionDue(0, 30 * MINUTE, 31 * MINUTE)).toBe(true);
});

it('thinning keeps the latest, all of six hours, one of each hour of two days, one of each day of thirty', () => {
  const now = 400 * DAY;
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: now - 90 * DAY, max: now }), { minLength: 1, maxLength: 300 }),
      (all) => {
        const times = all.sort((a, b) => a - b);
        const dropped = new Set(versionsToDrop(times, now));
        const kept = times.filter((at) => !dropped.has(at));
        expect(kept.at(-1)).toBe(times.at(-1));
        expect([...dropped].every((at) => now - at > 6 * HOUR)).toBe(true);
        for (const at of times) {
          const each = now - at > 30 * DAY ? 30 * DAY : now - at > 2 * DAY ? DAY : HOUR;
          // Some version of the same spell, or a later one, is there to go back to.
          expect(kept.some((other) => other >= at && other - at < each)).toBe(true);
        }
        expect(versionsToDrop(kept, now)).toEqual([]);
      },
    ),
  );
});

/** A state of a set to go back to. */
export interface SetVersion {
  /** When it was left, ms since 1970. */
  readonly at: number;
  readonly written: unknown;
}

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** A pause so long ends a spell of work; what follows is another version. */
const PAUSE = 10 * MINUTE;
/** A spell so long is more than one version. */
const LONGEST_SPELL = 30 * MINUTE;

/**
 * Whether the state before a change is to be kept as a version.
 * @param lastVersion when the last version was made; undefined: none in this visit
 * @param lastChange when the set was changed before this change
 * @param now when it is changed, all in ms
 */
export const isVersionDue = (lastVersion: number | undefined, lastChange: number, now: number): boolean =>
  lastVersion === undefined || now - lastChange > PAUSE || now - lastVersion > LONGEST_SPELL;

/** Older than `age` (ms): one of each `each` (ms) stays. */
const THINNING = [
  { age: 30 * DAY, each: 30 * DAY },
  { age: 2 * DAY, each: DAY },
  { age: 6 * HOUR, each: HOUR },
] as const;

/**
 * The versions that are not needed any more: all stay for six hours, then the last of each hour, after two days of each
 * day, after thirty days of each thirty days.
 * @param times when versions were made, ms since 1970, oldest first
 */
export function versionsToDrop(times: readonly number[], now: number): readonly number[] {
  const periodOf = (at: number): string | undefined => {
    const rule = THINNING.find(({ age }) => now - at > age);
    return rule && `${rule.each} ${Math.floor(at / rule.each)}`;
  };
  return times.filter((at, i) => {
    const period = periodOf(at);
    return period !== undefined && i + 1 < times.length && periodOf(times[i + 1]) === period;
  });
}

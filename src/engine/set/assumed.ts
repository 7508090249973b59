import { list, words } from '../fields/fields.ts';
import { isRecord } from '../fields/introspect.ts';
import { type Path, samePath } from '../kinds/adjustment.ts';
import { valueAtPath, withValueAt } from './write.ts';

const MOST_ASSUMED = 500;

/** Places of the description that hold typical values which nobody has confirmed: "aerial.height", "place.stations[0]". */
export const assumed = list('set.assumed', 'assumed', words('assumed.place', 120), { max: MOST_ASSUMED });

/**
 * The places that a description as written assumes.
 * @param written whatever stands there
 * @returns as written; empty where there is no such list
 */
export function assumedIn(written: unknown): readonly string[] {
  const entries = valueAtPath(written, ['assumed']);
  return Array.isArray(entries) ? entries.filter((one) => typeof one === 'string') : [];
}

/**
 * Keys and places in lists of an entry of `assumed`.
 * @param text such as "coils[0].wire.size"
 * @returns the path
 */
export const placeOf = (text: string): Path =>
  text
    .split(/[.[\]]+/)
    .filter(Boolean)
    .map((key) => (/^\d+$/.test(key) ? Number(key) : key));

/**
 * How an entry of `assumed` names a place.
 * @param path keys and places in lists
 * @returns such as "coils[0].wire.size"
 */
export const placeText = (path: Path): string =>
  path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : `${text}${text ? '.' : ''}${key}`),
    '',
  );

/**
 * Whether a place is assumed: it or what it lies in is on the list.
 * @param written a description
 * @param path keys and places in lists
 * @returns true until the builder has said otherwise
 */
export const isAssumed = (written: unknown, path: Path): boolean =>
  assumedIn(written).some((text) => {
    const place = placeOf(text);
    return samePath(place, path.slice(0, place.length));
  });

/**
 * A description with these places confirmed: the values stay, and are assumed no more.
 * @param written a description
 * @param places as `assumed` names them; left out: all
 * @returns a copy; without the list where nothing is assumed any more
 */
export function confirmed(written: unknown, places?: readonly string[]): unknown {
  const rest = places ? assumedIn(written).filter((text) => !places.includes(text)) : [];
  return withValueAt(written, ['assumed'], rest.length > 0 ? rest : undefined);
}

/**
 * After a change, what was given another value is assumed no more; of a list that lost or gained rows each place moves
 * along with its row.
 * @param before a description as it was
 * @param after as it is now, with the list of before
 * @returns a copy of `after` whose list holds what is still assumed
 */
export function stillAssumed(before: unknown, after: unknown): unknown {
  const entries = assumedIn(after);
  if (before === after || entries.length === 0 || !isRecord(after)) return after;
  const known = new Set(assumedIn(before));
  const rest = entries.flatMap((text) => {
    if (!known.has(text)) return [text];
    const path = placeOf(text);
    const now = movedWith(before, after, path);
    const value = valueAtPath(now && after, now ?? []);
    if (!now || value === undefined) return [];
    return JSON.stringify(value) === JSON.stringify(valueAtPath(before, path)) ? [placeText(now)] : [];
  });
  if (rest.length === entries.length && rest.every((text, i) => text === entries[i])) return after;
  return withValueAt(after, ['assumed'], rest.length > 0 ? [...new Set(rest)] : undefined);
}

/** Where the rows of the lists on a path are after a change; undefined where one of them is gone. */
function movedWith(before: unknown, after: unknown, path: Path): Path | undefined {
  const now: (string | number)[] = [];
  for (const [depth, key] of path.entries()) {
    const list = valueAtPath(after, now);
    if (typeof key !== 'number' || !Array.isArray(list)) {
      now.push(key);
      continue;
    }
    const rows = valueAtPath(before, path.slice(0, depth));
    if (!Array.isArray(rows)) return undefined;
    const place = list.indexOf(rows[key]);
    // A row that was changed itself stays in its place as long as the list is as long as before.
    if (place < 0 && list.length !== rows.length) return undefined;
    now.push(place < 0 ? key : place);
  }
  return now;
}

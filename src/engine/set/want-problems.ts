import { closest } from '../fields/fields.ts';
import type { SchemaNode } from '../fields/introspect.ts';
import type { Problem } from '../fields/problem.ts';
import { formatQuantity } from '../units/format.ts';
import { parseQuantity } from '../units/parse.ts';
import { givenValue } from '../units/refusal.ts';
import type { SetDescription } from './description.ts';
import { isPlace, KEPT_PARTS, keptPath } from './keep.ts';

/** A carrier written in kHz stands so near the one meant, Hz. */
const SAME_CARRIER = 600;
/** Of more stations than this a problem names only the first. */
const MOST_NAMED = 20;

type Stations = readonly { readonly name: string; readonly frequency: number }[];

/** Capitals, and spaces at the ends, make no other name. */
const folded = (name: string): string => name.trim().toLowerCase();

/**
 * The station that a text names: by its name as in the list, with other capitals, or by its frequency.
 * @param stations of the place
 * @param text such as "Saltmarsh Radio" or "603 kHz"
 * @returns its place in the list, from 0; undefined where none is meant
 */
export function stationNamed(stations: Stations, text: string): number | undefined {
  const byName = stations.findIndex(({ name }) => name === text);
  if (byName >= 0) return byName;
  const byFolded = stations.findIndex(({ name }) => folded(name) === folded(text));
  if (byFolded >= 0) return byFolded;
  const frequency = parseQuantity(text, 'frequency');
  if (!frequency.ok) return undefined;
  const byFrequency = stations.findIndex((one) => Math.abs(one.frequency - frequency.value) < SAME_CARRIER);
  return byFrequency < 0 ? undefined : byFrequency;
}

/**
 * How a station is written so that `stationNamed` finds it.
 * @param stations of the place
 * @param index its place in the list
 * @returns its name; its frequency, such as "603 kHz", where another has the same name
 */
export function stationText(stations: Stations, index: number): string {
  const { name, frequency } = stations[index];
  const isOnly = stations.every((one, i) => i === index || folded(one.name) !== folded(name));
  return isOnly ? name : formatQuantity(frequency, 'frequency', 6);
}

/**
 * A station that is not in the list, as a problem.
 * @param path where it is named
 * @param stations of the place
 * @param text that names none of them
 * @returns the stations that there are, and the one with a similar name
 */
export function noSuchStation(path: string, stations: Stations, text: string): Problem {
  const names = stations.map(({ name }) => name);
  const near = closest(text, names);
  return {
    path,
    expected: { code: 'station-name', names: names.slice(0, MOST_NAMED), more: Math.max(0, names.length - MOST_NAMED) },
    given: givenValue(text),
    hint: near === undefined ? { code: 'station-or-frequency' } : { code: 'did-you-mean', option: near },
  };
}

/** What wants and kept parts cannot see by themselves: stations and places that are not there, a band upside down. */
export function wantProblems(set: Pick<SetDescription, 'place' | 'wants' | 'keep'>, schema: SchemaNode): Problem[] {
  const { stations } = set.place;
  const problems: Problem[] = [];
  const find = (path: string, text: string): number | undefined => {
    const station = stationNamed(stations, text);
    if (station === undefined) problems.push(noSuchStation(path, stations, text));
    return station;
  };
  for (const [i, want] of (set.wants ?? []).entries()) {
    const at = `wants[${i}]`;
    const isOfStation = want.kind === 'loudest' || want.kind === 'clear' || want.kind === 'speech';
    const station = isOfStation ? find(`${at}.station`, want.station) : undefined;
    if (want.kind === 'clear') {
      const from = find(`${at}.from`, want.from);
      if (from !== undefined && from === station)
        problems.push({ path: `${at}.from`, expected: { code: 'another-station' }, given: givenValue(want.from) });
    }
    if (want.kind === 'band' && !(want.to > want.from))
      problems.push({
        path: `${at}.to`,
        expected: { code: 'quantity.above', kind: 'frequency', above: want.from },
        given: { code: 'frequency', value: want.to },
      });
  }
  for (const [i, text] of (set.keep ?? []).entries()) {
    const path = keptPath(text);
    if (path && isPlace(schema, set, path)) continue;
    const near = closest(text, KEPT_PARTS);
    problems.push({
      path: `keep[${i}]`,
      expected: { code: 'part-or-place', parts: KEPT_PARTS },
      given: givenValue(text),
      hint: near === undefined || near === text ? { code: 'places-of-parts' } : { code: 'did-you-mean', option: near },
    });
  }
  return problems;
}

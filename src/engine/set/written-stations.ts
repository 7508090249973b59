import * as v from 'valibot';
import { isRecord } from '../fields/introspect.ts';
import { type Refusal, refusalOf } from '../fields/refusal.ts';
import type { Station } from '../place/stations/station.ts';
import type { Coded } from '../units/coded.ts';
import { PROGRAMMES, type StationDescription, station as schema } from './place.ts';

/** A station as a description holds it: quantities as text. */
export type WrittenStation = Readonly<Record<string, unknown>>;

/** Twelve figures: more than anybody measured, and what a unit's factor leaves behind is gone. */
const text = (value: number, factor: number, unit: string): string =>
  `${Number((value / factor).toPrecision(12))}${unit === '°' || unit === '' ? unit : ` ${unit}`}`;

/** Kind of programme by words people use for it; undefined where none fits. */
function programmeOf(words: string): (typeof PROGRAMMES)[number] | undefined {
  const word = words.toLowerCase();
  const exact = PROGRAMMES.find((kind) => kind === word.trim());
  if (exact) return exact;
  if (/news|talk|speech|spoken|sport|word/.test(word)) return /music/.test(word) ? 'mixed' : 'speech';
  if (/music|pop|rock|jazz|classic|folk|hits|dance|oldies/.test(word)) return 'music';
  if (/mix|general|variety|local|full|public/.test(word)) return 'mixed';
  return undefined;
}

/** What of a station a description does not take. */
export interface WrittenProblem {
  /** Problems of one kind differ only in their stations. */
  readonly kind: string;
  /** Of the station. */
  readonly name: string;
  readonly fact: Coded<{
    /** The programme is taken to be speech. */
    readonly 'programme-not-known': { readonly programme: string };
    readonly 'field-left-out': { readonly field: string; readonly refusal?: Refusal };
    readonly refused: { readonly refusal?: Refusal };
  }>;
}

/** One station as a description writes it. */
export interface StationWritten {
  readonly written: WrittenStation;
  /** As a description reads it; undefined where it would be refused. */
  readonly read?: StationDescription;
  /** What was left out, or why it would be refused. */
  readonly problems: readonly WrittenProblem[];
}

/**
 * A station, as read from a table, to how a description writes it. What a description would refuse (a power of 0 W, a
 * depth of 300 %) is left out and named.
 * @param station SI
 * @returns the station as written, and what was left out
 */
export function writeStation(station: Station): StationWritten {
  const problems: WrittenProblem[] = [];
  const { name } = station;
  const written = inWords(station);
  if (station.programme !== undefined && written.programme === undefined)
    problems.push({
      kind: 'programme',
      name,
      fact: { code: 'programme-not-known', programme: station.programme.slice(0, 40) },
    });
  const first = v.safeParse(schema, written);
  if (first.success) return { written, read: first.output, problems };
  let isChanged = false;
  for (const issue of first.issues) {
    const key = issue.path?.[0]?.key;
    if (typeof key !== 'string' || key === 'frequency' || key === 'name' || !(key in written)) continue;
    delete written[key];
    isChanged = true;
    problems.push({
      kind: `written.${key}`,
      name,
      fact: { code: 'field-left-out', field: key, refusal: refusalOf(issue) },
    });
  }
  const rest = isChanged ? v.safeParse(schema, written) : first;
  if (!rest.success) {
    const [issue] = rest.issues;
    problems.push({
      kind: `refused.${String(issue.path?.[0]?.key)}`,
      name,
      fact: { code: 'refused', refusal: refusalOf(issue) },
    });
  }
  return { written, read: rest.success ? rest.output : undefined, problems };
}

function inWords(s: Station): Record<string, unknown> {
  const optional: Record<string, unknown> = {
    fieldStrength: s.fieldStrength === undefined ? undefined : text(s.fieldStrength, 1e-3, 'mV/m'),
    power: s.power === undefined ? undefined : s.power >= 1000 ? text(s.power, 1e3, 'kW') : text(s.power, 1, 'W'),
    position: s.position && {
      latitude: text(s.position.latitude, 1, '°'),
      longitude: text(s.position.longitude, 1, '°'),
    },
    distance: s.distance === undefined ? undefined : text(s.distance, 1e3, 'km'),
    bearing: s.bearing === undefined ? undefined : text(s.bearing, 1, '°'),
    mastGain: !s.mastGain ? undefined : text(s.mastGain, 1, 'dB'),
    mastHeight: s.mastHeight === undefined ? undefined : text(s.mastHeight, 1, 'm'),
    modulation: s.modulation === undefined ? undefined : text(s.modulation, 0.01, '%'),
    programme: s.programme === undefined ? undefined : programmeOf(s.programme),
    hours: s.hours,
    sections: s.sections?.map(({ length, ground }) => ({ length: text(length, 1e3, 'km'), ground })),
  };
  return {
    name: s.name,
    frequency: text(s.frequency, 1e3, 'kHz'),
    ...Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined)),
  };
}

/**
 * Each of a written list as SI numbers; undefined where it is not right yet.
 * @param list `place.stations` as written
 * @returns one entry for each of the list
 */
export const readStations = (list: unknown): readonly (StationDescription | undefined)[] =>
  (Array.isArray(list) ? list : []).map((item) => {
    const read = v.safeParse(schema, item);
    return read.success ? read.output : undefined;
  });

/**
 * A written list with others joined to it: one of the same name on the same frequency takes the new figures and keeps
 * what they do not say; the rest are put at the end.
 * @param list `place.stations` as written
 * @param added stations as written
 * @returns a new list
 */
export function joinStations(list: unknown, added: readonly WrittenStation[]): unknown[] {
  const joined: unknown[] = Array.isArray(list) ? [...list] : [];
  const read = readStations(joined);
  const fresh = readStations(added);
  for (const [n, station] of added.entries()) {
    const name = String(station.name).trim().toLowerCase();
    const at = read.findIndex(
      (one) =>
        one && fresh[n] && one.name.trim().toLowerCase() === name && Math.abs(one.frequency - fresh[n].frequency) < 500,
    );
    if (at >= 0 && isRecord(joined[at])) joined[at] = { ...joined[at], ...station };
    else joined.push(station);
  }
  return joined;
}

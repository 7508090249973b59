import * as v from 'valibot';
import { isRecord } from '../fields/introspect.ts';
import type { Station } from '../place/stations/station.ts';
import { PROGRAMMES, type StationDescription, station as schema } from './place.ts';

/** A station as a description holds it: quantities as text. */
export type WrittenStation = Readonly<Record<string, unknown>>;

export interface StationsWritten {
  readonly stations: readonly WrittenStation[];
  /** What a description cannot hold and is left out: whole sentences, each with its station's place in the list given. */
  readonly problems: readonly { readonly index: number; readonly message: string }[];
}

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

/**
 * Stations, as read from a table, to how a description writes them. What a description would refuse (a power of 0 W, a
 * depth of 300 %) is left out and told; a station it would still refuse is kept, to be put right by hand.
 */
export function writeStations(stations: readonly Station[]): StationsWritten {
  const problems: { index: number; message: string }[] = [];
  const written = stations.map((station, index) => {
    const made = writeStation(station);
    const say = (message: string) => problems.push({ index, message: `${station.name}: ${message}` });
    if (station.programme !== undefined && made.programme === undefined)
      say(`what "${station.programme.slice(0, 40)}" is on the air is not known here; speech is taken.`);
    for (const issue of v.safeParse(schema, made).issues ?? []) {
      const key = issue.path?.[0]?.key;
      if (typeof key !== 'string' || key === 'frequency' || key === 'name') continue;
      if (!(key in made)) continue;
      delete made[key];
      say(`its ${key} is left out (${issue.message}).`);
    }
    const rest = v.safeParse(schema, made);
    if (!rest.success) say(`${rest.issues[0].message}.`);
    return made;
  });
  return { stations: written, problems };
}

function writeStation(s: Station): Record<string, unknown> {
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

/** Each of a written list as SI numbers; undefined where it is not right yet. */
export const readStations = (list: unknown): readonly (StationDescription | undefined)[] =>
  (Array.isArray(list) ? list : []).map((item) => {
    const read = v.safeParse(schema, item);
    return read.success ? read.output : undefined;
  });

/**
 * A written list with others joined to it: one of the same name on the same frequency takes the new figures and keeps
 * what they do not say; the rest are put at the end.
 */
export function joinStations(list: unknown, added: readonly WrittenStation[]): unknown[] {
  const joined: unknown[] = Array.isArray(list) ? [...list] : [];
  const read = readStations(joined);
  const fresh = readStations(added);
  for (const [n, station] of added.entries()) {
    const name = String(station.name).trim().toLowerCase();
    const there = read.findIndex(
      (one) =>
        one && fresh[n] && one.name.trim().toLowerCase() === name && Math.abs(one.frequency - fresh[n].frequency) < 500,
    );
    if (there >= 0 && isRecord(joined[there])) joined[there] = { ...joined[there], ...station };
    else joined.push(station);
  }
  return joined;
}

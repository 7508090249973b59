import {
  bare,
  type Field,
  fieldsOf,
  isRecord,
  metadataOf,
  objectFor,
  type SchemaNode,
  variantChoices,
} from '../fields/introspect.ts';
import type { Path } from '../kinds/adjustment.ts';
import { isLoopKind } from '../kinds/loops.ts';
import { assumedIn, placeText } from '../set/assumed.ts';
import { description, FORMAT } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { STARTERS } from '../set/starters.ts';
import { valueAtPath, withValueAt } from '../set/write.ts';
import { parseQuantity } from '../units/parse.ts';
import type { Hertz } from '../units/quantities.ts';
import { BANDS, nearestBand } from './bands.ts';
import { rewindFor } from './move-band.ts';

/** What things without a name are called. */
export interface CompletionNames {
  readonly set: string;
  readonly place: string;
  readonly coil: string;
  /** Of one that is known by its frequency only. */
  readonly station: (frequency: Hertz) => string;
  /** Of one that stands in, counted from 1. */
  readonly assumedStation: (number: number) => string;
}

/** The kind that is taken of a part of which nothing tells the kind. */
const USUAL_KINDS: Readonly<Record<string, string>> = {
  aerial: 'inverted-L',
  earth: 'rod',
  coil: 'solenoid',
  tuning: 'variable',
  arrangement: 'tapped',
  detector: 'germanium',
  load: 'phones',
};

/** Stations that stand in where none is known, over the band: 50 kW at 40 km, as a regional station might be. */
const USUAL_STATIONS = ['603 kHz', '999 kHz', '1458 kHz'];
const USUAL_STRENGTH = { power: '50 kW', distance: '40 km' } as const;

/** The share of the coil's turns at which an aerial is tapped where nothing says so. */
const TAP_SHARE = 0.2;
/** The same of the detector on a coil whose arrangement nobody gave. */
const DETECTOR_SHARE = 0.35;

/**
 * A whole description from what is known of one: every part and value that must be there and is not gets a typical
 * one, the turns of a coil that says none are those that tune the band with the capacitor there is, and the list
 * `assumed` names all of them. What is given stays as written, right or wrong.
 * @param value any part of a description as written
 * @param names what things without a name are called
 * @returns a description as written; it may have problems where what is given has
 */
export function completeDescription(value: unknown, names: CompletionNames): unknown {
  const known = isRecord(value) ? value : {};
  const assumed: string[] = [...assumedIn(known)];
  const fill = filling(assumed);
  const schema = description as unknown as SchemaNode;
  const nodeOf = (key: string): SchemaNode => bare(schema).entries![key];
  const filled = (key: string): unknown => fill(known[key], nodeOf(key), [key], key);
  const aerial = filled('aerial');
  const loop = isRecord(aerial) && isLoopKind(aerial.kind) ? aerial.kind : undefined;
  const coils = loop && known.coils === undefined ? [] : coilsOf(known.coils);
  let written: unknown = {
    ...known,
    format: known.format ?? FORMAT,
    name: known.name ?? names.set,
    place: placeWith(known.place, names, assumed),
    aerial,
    earth: filled('earth'),
    coils: coils.map((coil, i) => fill(named(coil, i, names.coil), bare(nodeOf('coils')).item!, ['coils', i], 'coil')),
    tuning: filled('tuning'),
    // A loop has its own arrangement only.
    arrangement: known.arrangement === undefined && loop ? { kind: loop } : known.arrangement,
    detector: filled('detector'),
    load: filled('load'),
  };
  written = withTaps(written, nodeOf('arrangement'), assumed);
  written = woundForBand(written, assumed);
  const list = [...new Set(assumed)];
  return inOrder(list.length > 0 ? withValueAt(written, ['assumed'], list) : written, schema);
}

/** Keys in the order of the schema, others after them. */
function inOrder(written: unknown, schema: SchemaNode): unknown {
  const all = written as Record<string, unknown>;
  const keys = [...Object.keys(bare(schema).entries!), ...Object.keys(all)].filter((key) => all[key] !== undefined);
  return Object.fromEntries(keys.map((key) => [key, all[key]]));
}

const coilsOf = (coils: unknown): readonly unknown[] =>
  Array.isArray(coils) ? (coils.length > 0 ? coils : [{}]) : [coils ?? {}];

const named = (coil: unknown, index: number, name: string): unknown =>
  isRecord(coil) && coil.name === undefined ? { ...coil, name: index === 0 ? name : `${name} ${index + 1}` } : coil;

/** Fills what a part must have; whatever it fills goes to the list. */
function filling(assumed: string[]) {
  return function fill(part: unknown, node: SchemaNode, path: Path, group: string): unknown {
    if (part !== undefined && !isRecord(part)) return part;
    const copy: Record<string, unknown> = { ...part };
    const variant = variantChoices(node);
    if (variant && copy[variant.key] === undefined) {
      copy[variant.key] = kindFor(node, variant, Object.keys(copy), USUAL_KINDS[group]);
      assumed.push(placeText([...path, variant.key]));
    }
    const starter = STARTERS[variant ? `${group}/${copy[variant.key]}` : group] ?? {};
    for (const field of fieldsOf(node, copy)) {
      const at = [...path, field.key];
      const value = copy[field.key];
      if (isRecord(value) && objectFor(field.schema, value)) copy[field.key] = fill(value, field.schema, at, field.key);
      if (value !== undefined || field.optional) continue;
      const start = starter[field.key] ?? STARTERS[field.key] ?? middleOf(field);
      if (start === undefined) continue;
      copy[field.key] = start;
      if (isRecord(start)) for (const key of Object.keys(start)) assumed.push(placeText([...at, key]));
      else assumed.push(placeText(at));
    }
    return copy;
  };
}

/** The usual kind, where it has all that is given; else the first that has. */
function kindFor(node: SchemaNode, variant: { key: string; choices: string[] }, keys: string[], usual: string): string {
  const has = (kind: string): boolean => {
    const known = new Set(fieldsOf(node, { [variant.key]: kind }).map(({ key }) => key));
    return keys.every((key) => known.has(key));
  };
  return has(usual) ? usual : (variant.choices.find(has) ?? usual);
}

/** The first of a choice, or the middle of a number's usual range; undefined for what nobody can guess. */
function middleOf({ schema }: Field): unknown {
  const { choice, number, whole, bounds } = metadataOf(schema);
  const inside = bare(schema);
  if (choice && Array.isArray(inside.options)) return inside.options[0];
  if (!number || !bounds?.typical) return undefined;
  const [low, high] = bounds.typical;
  const middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
  return whole ? Math.max(1, Math.round(middle)) : Number(middle.toPrecision(2));
}

function placeWith(place: unknown, names: CompletionNames, assumed: string[]): unknown {
  if (place !== undefined && !isRecord(place)) return place;
  const copy: Record<string, unknown> = { ...place, name: place?.name ?? names.place };
  const { stations } = copy;
  if (stations !== undefined && !Array.isArray(stations)) return copy;
  if (stations === undefined || stations.length === 0) {
    copy.stations = USUAL_STATIONS.map((frequency, i) => {
      assumed.push(placeText(['place', 'stations', i]));
      return { name: names.assumedStation(i + 1), frequency, ...USUAL_STRENGTH };
    });
    return copy;
  }
  copy.stations = stations.map((station: unknown, i) => {
    if (!isRecord(station)) return station;
    const frequency = frequencyOf(station.frequency);
    const filled: Record<string, unknown> = { ...station };
    if (filled.name === undefined && frequency !== undefined) filled.name = names.station(frequency);
    const isStrengthKnown = station.fieldStrength !== undefined || station.measured !== undefined;
    if (isStrengthKnown) return filled;
    for (const key of ['power', 'distance'] as const) {
      if (filled[key] !== undefined || (key === 'distance' && station.position !== undefined)) continue;
      filled[key] = USUAL_STRENGTH[key];
      assumed.push(placeText(['place', 'stations', i, key]));
    }
    return filled;
  });
  return copy;
}

function frequencyOf(written: unknown): Hertz | undefined {
  const read = parseQuantity(written, 'frequency');
  return read.ok ? read.value : undefined;
}

/** The coil that tunes, and an aerial tapped on part of it. */
function withTaps(written: unknown, node: SchemaNode, assumed: string[]): unknown {
  const arrangement = valueAtPath(written, ['arrangement']);
  const coil = valueAtPath(written, ['coils', 0]);
  if (arrangement !== undefined && !isRecord(arrangement)) return written;
  const known: Record<string, unknown> = { ...arrangement };
  const turnsOf = (share: number): number =>
    Math.max(1, Math.round(Number((isRecord(coil) && coil.turns) || 60) * share)) || 1;
  if (arrangement === undefined && isRecord(coil)) {
    known.detectorTap = turnsOf(DETECTOR_SHARE);
    assumed.push('arrangement.detectorTap');
  }
  if (known.kind === undefined) {
    const variant = variantChoices(node)!;
    known.kind = kindFor(node, variant, Object.keys(known), USUAL_KINDS.arrangement);
    assumed.push('arrangement.kind');
  }
  const needs = fieldsOf(node, known).filter(({ key, optional }) => !optional && known[key] === undefined);
  for (const { key } of needs)
    if (key === 'coil' && isRecord(coil)) known.coil = coil.name;
    else if (key === 'aerialTap' && isRecord(coil)) {
      known.aerialTap = turnsOf(TAP_SHARE);
      assumed.push('arrangement.aerialTap');
    }
  return withValueAt(written, ['arrangement'], filling(assumed)(known, node, ['arrangement'], 'arrangement'));
}

const WINDINGS: readonly Path[] = [
  ['aerial', 'turns'],
  ...['turns', 'turnsPerLayer', 'layers'].map((key) => ['coils', 0, key]),
];

/** Turns that nobody gave are those that tune the band of the stations with the capacitor there is. */
function woundForBand(written: unknown, assumed: readonly string[]): unknown {
  const free = (path: Path): boolean => assumed.includes(placeText(path));
  if (!WINDINGS.some(free)) return written;
  const read = readValue(written);
  if (!read.ok) return written;
  const highest = Math.max(...read.set.place.stations.map(({ frequency }) => frequency));
  const { changes } = rewindFor(read.set, BANDS[nearestBand(highest)]);
  return changes
    .filter(({ path }) => free(path))
    .reduce<unknown>((base, { path, to }) => withValueAt(base, path, to), written);
}

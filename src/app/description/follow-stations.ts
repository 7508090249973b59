import { description, isPlace, isRecord, keptPath, type Path, type SchemaNode } from '../../engine/index.ts';
import { settledWords } from '../../outputs/words/index.ts';
import { listAt } from './lists.ts';
import type { Settled } from './settle-parts.ts';
import { stationKeys, writeList } from './wants.ts';

const STATIONS: Path = ['place', 'stations'];

/**
 * After stations or parts have changed: wants follow a station that has another name, and go with one that is gone; what
 * is kept goes with the part that it is a place of.
 * @param before as it was @param written as it is now
 */
export function followStations(before: unknown, { written, also }: Settled): Settled {
  let now = written;
  const notes = [...also];
  const wants = listAt(now, ['wants']);
  if (wants.length > 0 && wants === listAt(before, ['wants'])) {
    const left = wantsAfter(wants, listAt(before, STATIONS), listAt(now, STATIONS));
    if (left.length < wants.length) notes.push(settledWords.wantsDropped(wants.length - left.length));
    if (left.length < wants.length || JSON.stringify(left) !== JSON.stringify(wants))
      now = writeList(now, 'wants', left);
  }
  const keep = listAt(now, ['keep']);
  if (keep.length > 0 && keep === listAt(before, ['keep'])) {
    const stays = (text: unknown): boolean => isPlaceIn(now, text) || !isPlaceIn(before, text);
    const left = keep.filter(stays);
    if (left.length < keep.length) {
      now = writeList(now, 'keep', left);
      notes.push(settledWords.keptDropped(keep.filter((one) => !stays(one)).map(String)));
    }
  }
  return { written: now, also: notes };
}

/** Wants with the names that their stations have now, without those whose stations are gone. */
function wantsAfter(
  wants: readonly unknown[],
  before: readonly unknown[],
  now: readonly unknown[],
): readonly unknown[] {
  if (now === before) return wants;
  const [old, names] = [namesOf(before), namesOf(now)];
  // A frequency instead of a name is looked for by the reader.
  const isGone = (name: unknown): boolean => old.includes(String(name)) && !names.includes(String(name));
  const followed = (name: unknown): unknown =>
    isGone(name) && names.length === old.length ? names[old.indexOf(String(name))] : name;
  return wants
    .map((want) =>
      isRecord(want)
        ? { ...want, ...Object.fromEntries(stationKeys(want).map((key) => [key, followed(want[key])])) }
        : want,
    )
    .filter((want) => !isRecord(want) || !stationKeys(want).some((key) => isGone(want[key])));
}

const namesOf = (stations: readonly unknown[]): string[] =>
  stations.map((one) => String(isRecord(one) ? one.name : ''));

/** Whether an entry of `keep` names a place of the description. */
function isPlaceIn(written: unknown, text: unknown): boolean {
  const path = keptPath(String(text));
  return path !== undefined && isPlace(description as unknown as SchemaNode, written, path);
}

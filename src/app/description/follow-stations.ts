import {
  description,
  isPlace,
  isRecord,
  keptPath,
  type SchemaNode,
  valueAtPath,
  withValueAt,
} from '../../engine/index.ts';
import { settledWords } from '../../outputs/words/index.ts';
import type { Settled } from './settle-parts.ts';

const listAt = (written: unknown, key: string): readonly unknown[] => {
  const list = valueAtPath(written, [key]);
  return Array.isArray(list) ? list : [];
};
const namesIn = (written: unknown): string[] => {
  const stations = valueAtPath(written, ['place', 'stations']);
  return Array.isArray(stations) ? stations.map((one) => String(isRecord(one) ? one.name : '')) : [];
};

/**
 * After stations or parts have changed: wants follow a station that has another name, and go with one that is gone; what
 * is kept goes with the part that it is a place of.
 * @param before as it was @param written as it is now
 */
export function followStations(before: unknown, { written, also }: Settled): Settled {
  let now = written;
  const notes = [...also];
  const [old, names] = [namesIn(before), namesIn(now)];
  const wants = listAt(now, 'wants');
  if (wants.length > 0 && wants === listAt(before, 'wants') && old.join('\n') !== names.join('\n')) {
    const followed = (name: unknown): unknown => {
      const at = old.indexOf(String(name));
      return at >= 0 && !names.includes(String(name)) && names.length === old.length ? names[at] : name;
    };
    const renamed = wants.map((want) =>
      isRecord(want)
        ? {
            ...want,
            ...('station' in want ? { station: followed(want.station) } : {}),
            ...(want.kind === 'clear' ? { from: followed(want.from) } : {}),
          }
        : want,
    );
    // A frequency instead of a name is looked for by the reader.
    const isGone = (name: unknown): boolean => old.includes(String(name)) && !names.includes(String(name));
    const left = renamed.filter(
      (want) => !isRecord(want) || ![want.station, want.kind === 'clear' ? want.from : undefined].some(isGone),
    );
    if (left.length < wants.length) notes.push(settledWords.wantsDropped(wants.length - left.length));
    if (left.length < wants.length || JSON.stringify(left) !== JSON.stringify(wants))
      now = withValueAt(now, ['wants'], left.length > 0 ? left : undefined);
  }
  const keep = listAt(now, 'keep');
  if (keep.length > 0 && keep === listAt(before, 'keep')) {
    const stays = (text: unknown): boolean => isThere(now, text) || !isThere(before, text);
    const left = keep.filter(stays);
    if (left.length < keep.length) {
      now = withValueAt(now, ['keep'], left.length > 0 ? left : undefined);
      notes.push(settledWords.keptDropped(keep.filter((one) => !stays(one)).map(String)));
    }
  }
  return { written: now, also: notes };
}

function isThere(written: unknown, text: unknown): boolean {
  const path = keptPath(String(text));
  return path !== undefined && isPlace(description as unknown as SchemaNode, written, path);
}

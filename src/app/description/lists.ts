import {
  bare,
  COIL_KEYS,
  isRecord,
  type Path,
  type SchemaNode,
  untakenName,
  valueAtPath,
  withValueAt,
} from '../../engine/index.ts';
import { newPart } from './change-kind.ts';
import { changeEveryBand } from './on-band.ts';
import { schemaAt } from './schema-at.ts';

/** What stands in a list of a description; none where there is no list. */
export const listAt = (written: unknown, path: Path): readonly unknown[] => {
  const list = valueAtPath(written, path);
  return Array.isArray(list) ? list : [];
};

/** Add an item: like the last one where that makes sense (points, rows), fresh where it does not. */
export function addItem(written: unknown, path: Path, kind?: string): unknown {
  const list = listAt(written, path);
  const item = bare(schemaAt(written, path)!).item!;
  const last = list[list.length - 1];
  const made = isPoint(item) && last !== undefined ? last : named(newPart(written, path, item, kind), list);
  return withValueAt(written, path, [...list, made]);
}

export function removeItem(written: unknown, path: Path, index: number): unknown {
  const list = listAt(written, path).filter((_, i) => i !== index);
  return withValueAt(written, path, list);
}

/** Rows of plain figures go on from the row before. */
const isPoint = (item: SchemaNode): boolean =>
  bare(item).type === 'tuple' ||
  (bare(item).type === 'loose_object' && !bare(item).entries?.name && !bare(item).entries?.kind);

/** A name nobody else in the list has. */
function named(value: unknown, list: readonly unknown[]): unknown {
  if (!isRecord(value) || typeof value.name !== 'string') return value;
  const taken = new Set(list.map((item) => (isRecord(item) ? item.name : undefined)));
  const wanted = value.name || String(value.kind ?? value.shape ?? 'new');
  return { ...value, name: untakenName(wanted, (name) => taken.has(name)) };
}

/** Rename a coil and everything that refers to it by name. */
export function renameCoil(written: unknown, index: number, name: string): unknown {
  const before = valueAtPath(written, ['coils', index, 'name']);
  const now = withValueAt(written, ['coils', index, 'name'], name);
  return before === name || name === '' ? now : changeEveryBand(now, (standing) => renamedIn(standing, before, name));
}

/** The coils that the arrangement names, with one of them renamed. */
function renamedIn(written: unknown, before: unknown, name: string): unknown {
  let now = written;
  for (const key of COIL_KEYS)
    if (valueAtPath(now, ['arrangement', key]) === before) now = withValueAt(now, ['arrangement', key], name);
  listAt(now, ['arrangement', 'elements']).forEach((element, i) => {
    if (isRecord(element) && element.kind === 'coil' && element.coil === before)
      now = withValueAt(now, ['arrangement', 'elements', i, 'coil'], name);
  });
  return now;
}

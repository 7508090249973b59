import {
  assumedIn,
  fieldsOf,
  isAssumed,
  isRecord,
  type Path,
  type Problem,
  type ReadResult,
  readValue,
  type SetDescription,
  valueAtPath,
  withValueAt,
} from '../../engine/index.ts';
import { editingWords } from '../../outputs/words/index.ts';
import { startingValue } from './change-kind.ts';
import { keysOf } from './places.ts';
import { editorKind, pathText, schemaAt } from './schema-at.ts';

/** What the figures use where a field is refused. */
export interface StandIn {
  /** As problems name places: "coils[0].turns". */
  readonly path: string;
  /** As written; undefined: the key is left out. */
  readonly value: unknown;
  /** The last good value of this field, a usual one that nobody typed, or none: it is left out of the figures. */
  readonly source: 'last' | 'usual' | 'none';
}

/** A description as read, and what can be calculated of it all the same. */
export interface Reading {
  readonly written: unknown;
  readonly result: ReadResult;
  /** With stand-ins for what is refused; undefined where so little is there that it would be another set. */
  readonly usable?: {
    readonly set: SetDescription;
    readonly written: unknown;
    readonly standIns: readonly StandIn[];
  };
}

/** Each brings at least one refused field further. */
const MOST_ROUNDS = 40;

/**
 * Read a description; where fields are refused, their last good values stand in for them, so that everything else goes on.
 * @param written as parsed
 * @param lastGood a description that was read without problems before; left out where there is none
 * @param result of reading it, where it is read already
 */
export function readWithStandIns(written: unknown, lastGood?: unknown, result = readValue(written)): Reading {
  if (result.ok) return { written, result, usable: { set: result.set, written, standIns: [] } };
  return { written, result, usable: mend(written, result.problems, lastGood) };
}

/**
 * A worker's reading, as one of the object that it was sent and not of the copy that it read.
 * @param written the same description as the reading's
 */
export const readingAsSent = ({ result, usable }: Reading, written: unknown): Reading => ({
  written,
  result,
  usable: usable && result.ok ? { ...usable, written } : usable,
});

/** Whether what is wrong is in fields, none of which is a whole part that is not there. */
export const isWholeSet = (problems: readonly Problem[]): boolean =>
  problems.every(({ path, given }) => path !== '' && path !== 'format' && !(given?.code === 'nothing' && isPart(path)));

const isPart = (path: string): boolean => keysOf(path).length === 1;

function mend(written: unknown, problems: readonly Problem[], lastGood: unknown): Reading['usable'] {
  const standIns = new Map<string, StandIn>();
  const tried = new Map<string, number>();
  let now = written;
  let open = problems;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let isFurther = false;
    // From the end, so that a row taken out moves no other that is still to be seen.
    for (const { path } of open.toReversed()) {
      if (path === '') return undefined;
      for (const way of WAYS.slice(tried.get(path) ?? 0)) {
        tried.set(path, (tried.get(path) ?? 0) + 1);
        const found = way(now, keysOf(path), lastGood);
        if (!found) continue;
        for (const one of found) {
          now = withValueAt(now, one.at ?? keysOf(one.path), one.at ? one.put : one.value);
          standIns.set(one.path, { path: one.path, value: one.value, source: one.source });
        }
        isFurther = true;
        break;
      }
    }
    if (!isFurther) return undefined;
    const read = readValue(now);
    if (read.ok) {
      const marked = withAssumed(now, [...standIns.values()], lastGood);
      const again = marked === now ? read : readValue(marked);
      return { set: (again.ok ? again : read).set, written: marked, standIns: [...standIns.values()] };
    }
    open = read.problems;
  }
  return undefined;
}

/** A usual value that stands in is one that nobody has typed: it is assumed, as one that was assumed before stays. */
function withAssumed(now: unknown, standIns: readonly StandIn[], lastGood: unknown): unknown {
  const usual = standIns.flatMap(({ path, value, source }) =>
    source === 'usual' && value !== undefined ? [path] : [],
  );
  const written = usual.filter((path) => valueAtPath(now, keysOf(path)) !== undefined);
  if (written.length === 0) return now;
  const all = new Set([...assumedIn(now), ...written]);
  // In the order of before, so that the figures need not be made anew.
  const before = assumedIn(lastGood).filter((place) => all.has(place));
  return withValueAt(now, ['assumed'], [...new Set([...before, ...all])]);
}

/** `at`, `put`: what is written in the description in its place, where that is not the value itself. */
type Replacement = StandIn & { readonly at?: Path; readonly put?: unknown };
type Way = (now: unknown, path: Path, lastGood: unknown) => readonly Replacement[] | undefined;

const isSame = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

const isThere = (written: unknown, path: Path): boolean => {
  const holder = valueAtPath(written, path.slice(0, -1));
  const key = path[path.length - 1];
  return Array.isArray(holder) ? Number(key) < holder.length : isRecord(holder);
};

/** So little that nothing of it is heard: places in the list stay as they are. */
const NOT_HEARD = '1 nV/m';
const STRENGTH = ['fieldStrength', 'power', 'distance', 'position'] as const;

/** A station of which nothing tells how strong it is: what told it before, or it is left out of the figures. */
const strengthOfStation: Way = (now, path, lastGood) => {
  const station = valueAtPath(now, path);
  if (path.length !== 3 || path[1] !== 'stations' || !isRecord(station)) return undefined;
  const before = valueAtPath(lastGood, path);
  const known: Record<string, unknown> = isRecord(before) && before.fieldStrength !== NOT_HEARD ? before : {};
  const gone = STRENGTH.filter((key) => known[key] !== undefined && station[key] === undefined);
  if (gone.length > 0)
    return gone.map((key) => ({ path: pathText([...path, key]), value: known[key], source: 'last' }));
  return [{ path: pathText(path), value: undefined, source: 'none', at: [...path, 'fieldStrength'], put: NOT_HEARD }];
};

/** The value that the field had. */
const lastValue: Way = (now, path, lastGood) => {
  if (!isThere(lastGood, path)) return undefined;
  const value = valueAtPath(lastGood, path);
  if (isSame(value, valueAtPath(now, path))) return undefined;
  if (value !== undefined && isAssumed(lastGood, path)) return [{ path: pathText(path), value, source: 'usual' }];
  if (value === NOT_HEARD) return [{ path: pathText(path), value: undefined, source: 'none', at: path, put: value }];
  return [{ path: pathText(path), value, source: 'last' }];
};

/** Where two fields are at odds: the values that the whole part had. */
const lastOfPart: Way = (now, path, lastGood) => {
  const isItem = path[0] === 'coils' || path[0] === 'place';
  const part = path.slice(0, path[0] === 'place' && path[1] === 'stations' ? 3 : isItem ? 2 : 1);
  const changed = changedWithin(valueAtPath(lastGood, part), valueAtPath(now, part), part);
  return changed.length > 0 && isThere(lastGood, part)
    ? changed.map((at) => ({ path: pathText(at), value: valueAtPath(lastGood, at), source: 'last' }))
    : undefined;
};

function changedWithin(before: unknown, after: unknown, at: Path): Path[] {
  if (isSame(before, after)) return [];
  if (!isRecord(before) || !isRecord(after)) return [at];
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...keys].flatMap((key) => changedWithin(before[key], after[key], [...at, key]));
}

const fieldAt = (now: unknown, path: Path) => {
  const part = path.slice(0, -1);
  const node = schemaAt(now, part);
  return node && fieldsOf(node, valueAtPath(now, part)).find(({ key }) => key === path[path.length - 1]);
};

/** What may be left out is, and its default stands in. */
const without: Way = (now, path) => {
  const field = fieldAt(now, path);
  if (!field?.optional || valueAtPath(now, path) === undefined) return undefined;
  return [{ path: pathText(path), value: field.fallback, source: 'usual', at: path, put: undefined }];
};

/** A row of plain figures is left out. */
const withoutRow: Way = (now, path) => {
  const depth = path.findLastIndex((key) => typeof key === 'number');
  const row = path.slice(0, depth + 1);
  const value = valueAtPath(now, row);
  const isPlain = Array.isArray(value) || (isRecord(value) && !('name' in value) && !('kind' in value));
  if (depth < 0 || !isPlain || row[0] === 'coils') return undefined;
  return [{ path: pathText(row), value: undefined, source: 'none', at: row, put: undefined }];
};

/** What may be left out is, where a value that only a person can know is still to be written in it. */
const withoutPart: Way = (now, path) => {
  const part = path.slice(0, -1);
  if (valueAtPath(now, path) !== '' || !fieldAt(now, part)?.optional) return undefined;
  return [{ path: pathText(path), value: undefined, source: 'none', at: part, put: undefined }];
};

/** A value to begin with. */
const usualValue: Way = (now, path) => {
  const field = fieldAt(now, path);
  if (!field || ['list', 'part'].includes(editorKind(field.schema))) return undefined;
  const value = startingValue(now, path, field) || (field.key === 'name' ? editingWords.unnamed : undefined);
  return value === undefined ? undefined : [{ path: pathText(path), value, source: 'usual' }];
};

/** One after the other, until the field is accepted. */
const WAYS: readonly Way[] = [strengthOfStation, lastValue, lastOfPart, without, withoutPart, withoutRow, usualValue];

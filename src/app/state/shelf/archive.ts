import { strFromU8, strToU8, Unzip, UnzipInflate, Zip, ZipDeflate } from 'fflate';
import { description, isRecord, writeText } from '../../../engine/index.ts';
import { writtenName } from '../../description/written-name.ts';
import { fileStem } from '../download.ts';
import { type Kept, keptText } from '../kept.ts';
import { FIRST_ID } from '../open-sets.ts';
import { joinedLogs } from './log-text.ts';
import { nextTurn } from './next-turn.ts';
import type { Shelf } from './shelf.ts';
import { entryOf, type ShelfEntry } from './shelf-entry.ts';

const ARCHIVE_FORMAT = 'faintwave-shelf/1';
const SET_FORMAT = description.entries.format.literal;
const LIST = 'shelf.json';
const MOST_BYTES = 200e6;
const PIECE = 64 * 1024;

/** How the list in an archive names a set. */
interface Listed {
  /** Left out where another browser has the same id for another set. */
  readonly id?: string;
  readonly file: string;
  readonly fileName: string;
  readonly changed: number;
  readonly versions: readonly { readonly at: number; readonly file: string }[];
  /** What was heard with it, a table. */
  readonly log?: string;
}

/** A box or a place, as the list in an archive names it. */
interface ListedBeside {
  readonly file: string;
  readonly fileName?: string;
  readonly changed: number;
}

/** What is kept beside the sets: boxes of parts, and places. */
export interface KeptBeside {
  readonly written: unknown;
  readonly fileName?: string;
  readonly changed: number;
}

/** Where it is kept. */
export interface BesideShelf {
  readonly all: () => readonly KeptBeside[];
  /** What of it could not be read, by its name. */
  readonly unread: () => readonly string[];
  /** One more. @returns whether it could be kept */
  readonly add: (one: KeptBeside) => Promise<boolean>;
}

/** Each sort of it has its own folder. */
const BESIDE = ['boxes', 'places'] as const;
type Beside = { readonly [Sort in (typeof BESIDE)[number]]: BesideShelf };

/** An archive, and what is not in it. */
export interface ArchiveMade {
  readonly blob: Blob;
  /** How many sets are in it. */
  readonly sets: number;
  readonly boxes: number;
  readonly places: number;
  /** Names of what could not be read. */
  readonly leftOut: readonly string[];
  /** Names of sets that are in it without their versions or their log, which could not be read. */
  readonly inPart: readonly string[];
}

/**
 * All sets with their versions, as they are kept, and all boxes and places, in one ZIP archive of descriptions and a list.
 * @param progress is told how many sets are in it
 */
export async function makeArchive(
  shelf: Pick<Shelf, 'kept' | 'versions' | 'log'>,
  entries: readonly ShelfEntry[],
  beside: Beside,
  progress: (done: number) => void = () => {},
): Promise<ArchiveMade> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let failure: Error | undefined;
  const zip = new Zip((error, part) => {
    if (error) failure = error;
    else parts.push(part as Uint8Array<ArrayBuffer>);
  });
  const put = (name: string, text: string): void => {
    const file = new ZipDeflate(name, { level: 6 });
    zip.add(file);
    file.push(strToU8(text), true);
  };
  const list: Listed[] = [];
  const leftOut: string[] = [];
  const inPart: string[] = [];
  for (const [done, entry] of entries.entries()) {
    await nextTurn();
    progress(done + 1);
    const kept = await shelf.kept(entry.id);
    if (!kept) {
      leftOut.push(entry.name);
      continue;
    }
    const file = `sets/${fileStem(entry.name, 'set')}-${entry.id}.json`;
    put(file, writeText(kept.written));
    const nothing = (): undefined => {
      if (inPart.at(-1) !== entry.name) inPart.push(entry.name);
    };
    const versions: Listed['versions'][number][] = [];
    for (const { at, written } of (await shelf.versions(entry.id).catch(nothing)) ?? []) {
      await nextTurn();
      const version = { at, file: `versions/${entry.id}/${at}.json` };
      put(version.file, writeText(written));
      versions.push(version);
    }
    const heard = await shelf.log(entry.id).catch(nothing);
    const log = heard === undefined ? undefined : `logs/${entry.id}.csv`;
    if (log && heard) put(log, heard);
    const id = entry.id === FIRST_ID ? undefined : entry.id;
    list.push({ id, file, log, fileName: entry.fileName, changed: entry.changed, versions });
  }
  const [boxes, places] = BESIDE.map((sort) =>
    beside[sort].all().map(({ written, fileName, changed }, i): ListedBeside => {
      const file = `${sort}/${fileStem(writtenName(written), sort)}-${i + 1}.json`;
      put(file, writeText(written));
      return { file, fileName, changed };
    }),
  );
  for (const sort of BESIDE) leftOut.push(...beside[sort].unread());
  put(LIST, JSON.stringify({ format: ARCHIVE_FORMAT, sets: list, boxes, places }, null, 2));
  zip.end();
  if (failure) throw failure;
  const blob = new Blob(parts, { type: 'application/zip' });
  return { blob, sets: list.length, boxes: boxes.length, places: places.length, leftOut, inPart };
}

/** What became of an archive. */
export interface ArchiveRead {
  readonly added: number;
  /** The set was here and differed: one of the two is now a version of the other. */
  readonly merged: number;
  readonly same: number;
  /** Boxes and places that were added; what is here already in the same state is not. */
  readonly boxes: number;
  readonly places: number;
  /** Files that hold no set, or whose set could not be kept whole. */
  readonly leftOut: readonly string[];
}

/** Why a file is not taken as an archive. */
export type ArchiveRefusal = 'not-an-archive' | 'too-large';

/**
 * Puts the sets of an archive on the shelf. Nothing that is there is lost: a set that is there and differs gets the earlier
 * of the two as a version.
 * @returns what was done, or why nothing was
 */
export async function readArchive(
  shelf: Pick<
    Shelf,
    'entries' | 'kept' | 'versions' | 'put' | 'refresh' | 'isOpen' | 'changedAt' | 'newSetId' | 'now' | 'changeLog'
  >,
  file: Blob,
  beside: Beside,
  progress: (done: number, all: number) => void = () => {},
): Promise<ArchiveRead | { readonly refused: ArchiveRefusal }> {
  const files = await unzipped(file);
  if (typeof files === 'string') return { refused: files };
  const leftOut: string[] = [];
  const read = (name: string): unknown => {
    const written = parsed(files.get(name));
    if (isRecord(written) && written.format === SET_FORMAT) return written;
    leftOut.push(name);
    return undefined;
  };
  const count = { added: 0, merged: 0, same: 0, boxes: 0, places: 0 };
  const listed = listOf(files, shelf.now());
  const takeBeside = async (sort: (typeof BESIDE)[number]): Promise<void> => {
    const here = new Set(beside[sort].all().map(({ written }) => JSON.stringify(written)));
    for (const one of besideOf(files, sort, shelf.now())) {
      await nextTurn();
      const written = parsed(files.get(one.file));
      if (isRecord(written) && here.has(JSON.stringify(written))) continue;
      if (isRecord(written) && (await beside[sort].add({ ...one, written }).catch(() => false))) count[sort]++;
      else leftOut.push(one.file);
    }
  };
  const take = async (one: Listed): Promise<void> => {
    const written = read(one.file);
    if (written === undefined) return;
    const id = one.id ?? (await sameHere(shelf, written)) ?? shelf.newSetId();
    const outcome = await merge(shelf, id, { ...one, written });
    count[outcome]++;
    for (const { at, file: name } of one.versions) {
      await nextTurn();
      const version = read(name);
      if (version !== undefined) await shelf.put(id, { version: { at, written: version } });
    }
    const heard = one.log === undefined ? undefined : files.get(one.log);
    if (heard !== undefined) await shelf.changeLog(id, (here) => joinedLogs(here, heard));
  };
  // What is there is compared with: it must be known.
  await shelf.refresh();
  try {
    for (const [done, one] of listed.entries()) {
      try {
        await take(one);
      } catch {
        // One that cannot be kept keeps no other from its place.
        leftOut.push(one.file);
      }
      progress(done + 1, listed.length);
      await nextTurn();
    }
    for (const sort of BESIDE) await takeBeside(sort);
  } finally {
    await shelf.refresh();
  }
  return { ...count, leftOut };
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** @returns id of a set on the shelf that is the same; undefined: none */
async function sameHere(shelf: Pick<Shelf, 'entries' | 'kept'>, written: unknown): Promise<string | undefined> {
  const { name } = entryOf('', { written, fileName: '' }, 0);
  for (const entry of shelf.entries.peek() ?? []) {
    if (entry.name !== name) continue;
    await nextTurn();
    if (isSame((await shelf.kept(entry.id))?.written, written)) return entry.id;
  }
  return undefined;
}

type Outcome = 'added' | 'merged' | 'same';

async function merge(
  shelf: Pick<Shelf, 'kept' | 'versions' | 'put' | 'isOpen' | 'changedAt' | 'now'>,
  id: string,
  { written, fileName, changed }: Pick<Listed, 'fileName' | 'changed'> & { readonly written: unknown },
): Promise<Outcome> {
  const here = await shelf.kept(id);
  const kept: Kept = { revision: (here?.revision ?? 0) + 1, written, fileName, isSaved: false, tab: 'archive' };
  const whole = { text: keptText(kept), entry: entryOf(id, kept, changed) };
  if (!here) {
    await shelf.put(id, whole);
    return 'added';
  }
  const versions = await shelf.versions(id);
  if ([here, ...versions].some((one) => isSame(one.written, written))) {
    // One that was deleted here is on the shelf again.
    if (shelf.changedAt(id) === 0) await shelf.put(id, { entry: entryOf(id, here, changed) });
    return 'same';
  }
  const isLater = changed > shelf.changedAt(id) && !shelf.isOpen(id);
  if (isLater) await shelf.put(id, { ...whole, version: { at: shelf.now(), written: here.written } });
  else await shelf.put(id, { version: { at: changed, written } });
  return 'merged';
}

/** What the archive lists, or, of an archive without a list, every description in it. */
function listOf(files: ReadonlyMap<string, string>, now: number): readonly Listed[] {
  const list = parsed(files.get(LIST));
  const sets = isRecord(list) && list.format === ARCHIVE_FORMAT && Array.isArray(list.sets) ? list.sets : undefined;
  if (sets) return sets.flatMap((one: unknown) => listedOf(one, now));
  return [...files.keys()]
    .filter((name) => name.endsWith('.json'))
    .map((file) => ({ file, fileName: file.split('/').pop() ?? file, changed: now, versions: [] }));
}

/** Boxes or places that the list of an archive names. */
function besideOf(files: ReadonlyMap<string, string>, sort: (typeof BESIDE)[number], now: number): ListedBeside[] {
  const list = parsed(files.get(LIST));
  const all = isRecord(list) && list.format === ARCHIVE_FORMAT ? list[sort] : undefined;
  return (Array.isArray(all) ? all : []).flatMap((one: unknown): ListedBeside[] =>
    isRecord(one) && typeof one.file === 'string'
      ? [
          {
            file: one.file,
            changed: isTime(one.changed) ? one.changed : now,
            ...(typeof one.fileName === 'string' ? { fileName: one.fileName } : {}),
          },
        ]
      : [],
  );
}

const isTime = (value: unknown): value is number => typeof value === 'number' && value > 0 && Number.isFinite(value);

function listedOf(one: unknown, now: number): readonly Listed[] {
  if (!isRecord(one) || typeof one.file !== 'string') return [];
  const { id, file, fileName, changed, versions, log } = one;
  return [
    {
      file,
      fileName: typeof fileName === 'string' ? fileName : file,
      changed: isTime(changed) ? changed : now,
      ...(typeof log === 'string' ? { log } : {}),
      ...(typeof id === 'string' && /^[\w-]{1,64}$/.test(id) && id !== FIRST_ID ? { id } : {}),
      versions: (Array.isArray(versions) ? versions : []).flatMap((version: unknown) =>
        isRecord(version) && isTime(version.at) && typeof version.file === 'string'
          ? [{ at: version.at, file: version.file }]
          : [],
      ),
    },
  ];
}

function parsed(text: string | undefined): unknown {
  try {
    return text === undefined ? undefined : (JSON.parse(text) as unknown);
  } catch {
    return undefined;
  }
}

/** Texts by name; it ends as soon as more comes out than an archive may hold. */
async function unzipped(file: Blob): Promise<ReadonlyMap<string, string> | ArchiveRefusal> {
  if (file.size > MOST_BYTES) return 'too-large';
  const files = new Map<string, string>();
  let size = 0;
  let isBroken = false;
  const unzip = new Unzip((one) => {
    if (!/\.(json|csv)$/.test(one.name)) return;
    const pieces: Uint8Array[] = [];
    one.ondata = (error, piece, isLast) => {
      if (error) {
        isBroken = true;
        return;
      }
      size += piece.length;
      if (size > MOST_BYTES) {
        one.terminate();
        return;
      }
      pieces.push(piece);
      if (isLast) files.set(one.name, joined(pieces));
    };
    one.start();
  });
  unzip.register(UnzipInflate);
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    for (let from = 0; from < bytes.length && size <= MOST_BYTES; from += PIECE) {
      unzip.push(bytes.subarray(from, from + PIECE), from + PIECE >= bytes.length);
      await nextTurn();
    }
  } catch {
    isBroken = true;
  }
  if (size > MOST_BYTES) return 'too-large';
  return files.size === 0 || isBroken ? 'not-an-archive' : files;
}

function joined(pieces: readonly Uint8Array[]): string {
  const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return strFromU8(bytes);
}

import { randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import * as fsPromises from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { type ContentKind, fileProblems } from '../outputs/words/index.ts';
import { BYTES_INSPECTED, contentKind } from './content-kind.ts';
import { forget, isRemembered, remember, undisturbed } from './temporaries.ts';

export interface NewFile {
  readonly file: string;
  readonly data: string | Uint8Array;
}

/** A regular file, whatever names it has. */
export interface FileIdentity {
  readonly name: string;
  readonly dev: bigint;
  readonly ino: bigint;
}

/** A file that must not be replaced; the message says why and a way out. */
export class WriteRefused extends Error {}

/** An error of the system, with the file that was to be written. */
export class WriteFailed extends Error {
  readonly file: string;
  readonly code: string | undefined;
  constructor(file: string, cause: unknown) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
    this.file = file;
    this.code = (cause as NodeJS.ErrnoException)?.code;
  }
}

/** What is used of the file system, so that a test can make it fail at any step. */
export type Disk = Pick<
  typeof fsPromises,
  'access' | 'lstat' | 'open' | 'readlink' | 'realpath' | 'rename' | 'rm' | 'stat'
>;

export interface WriteOptions {
  /** Files that the command has read: none of them is replaced. */
  readonly inputs?: readonly FileIdentity[];
  readonly disk?: Disk;
}

/** Where a file goes: under `path` by a temporary file beside it, or straight into a device or pipe. */
interface Target extends NewFile {
  readonly path: string;
  readonly isDirect: boolean;
  /** Permission bits of the file that is there. */
  readonly mode?: number;
}

interface Staged {
  readonly target: Target;
  readonly temporary: string;
}

/**
 * Write files so that each is there whole, or what was there before is unchanged: all are written beside their places
 * and brought to the disk before the first takes its place. Links are followed; devices and pipes are written to.
 * @throws WriteRefused for an input of the command or a file of another kind; WriteFailed for an error of the system.
 */
export async function writeWhole(files: readonly NewFile[], options: WriteOptions = {}): Promise<void> {
  const { disk = fsPromises, inputs = [] } = options;
  const targets: Target[] = [];
  for (const { file, data } of files)
    targets.push(await failing(file, () => targetFor(disk, { file, data }, kindOf(data), inputs)));
  const staged: Staged[] = [];
  try {
    for (const target of targets) {
      if (target.isDirect) await failing(target.file, () => writeDirect(disk, target));
      else await failing(target.file, () => stage(disk, target, staged));
    }
    for (const { target, temporary } of staged) {
      await failing(target.file, () => disk.rename(temporary, target.path));
      forget(temporary);
    }
  } finally {
    for (const { temporary } of staged) {
      if (!isRemembered(temporary)) continue;
      await disk.rm(temporary, { force: true }).catch(() => {});
      forget(temporary);
    }
  }
  for (const folder of new Set(staged.map(({ target }) => dirname(target.path)))) await syncFolder(disk, folder);
}

/** The same refusals before long work begins. @param kind what will be written. */
export async function checkTarget(
  file: string,
  kind: ContentKind,
  { disk = fsPromises, inputs = [] }: WriteOptions = {},
): Promise<void> {
  await failing(file, async () => {
    const { path, isDirect } = await targetFor(disk, { file, data: '' }, kind, inputs);
    if (!isDirect) await disk.access(dirname(path), constants.W_OK);
  });
}

/** @returns undefined for what is no regular file: a pipe may be read and written. */
export async function identityOf(
  name: string,
  stat: () => Promise<{ dev: bigint; ino: bigint; isFile(): boolean }>,
): Promise<FileIdentity | undefined> {
  const stats = await stat().catch(() => undefined);
  return stats?.isFile() ? { name, dev: stats.dev, ino: stats.ino } : undefined;
}

const bytesOf = (data: string | Uint8Array): Uint8Array => (typeof data === 'string' ? Buffer.from(data) : data);
const kindOf = (data: string | Uint8Array): ContentKind =>
  contentKind(bytesOf(typeof data === 'string' ? data.slice(0, BYTES_INSPECTED) : data.subarray(0, BYTES_INSPECTED)));

async function failing<T>(file: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof WriteRefused ? error : new WriteFailed(file, error);
  }
}

const errorOf = (code: string): Error => Object.assign(new Error(code), { code });
const MOST_LINKS = 40;

async function targetFor(
  disk: Disk,
  { file, data }: NewFile,
  kind: ContentKind,
  inputs: readonly FileIdentity[],
): Promise<Target> {
  const stats = await disk.stat(file, { bigint: true }).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  });
  if (stats === undefined) {
    if (/[\\/]$/.test(file)) throw errorOf('ENOENT');
    const path = await linkedTo(disk, resolve(file));
    await disk.stat(dirname(path));
    return { file, data, path, isDirect: false };
  }
  if (stats.isDirectory()) throw errorOf('EISDIR');
  if (!stats.isFile()) return { file, data, path: file, isDirect: true };
  const input = inputs.find(({ dev, ino }) => dev === stats.dev && ino === stats.ino);
  if (input) throw new WriteRefused(fileProblems.isInput(file, input.name));
  await disk.access(file, constants.W_OK);
  const before = await beginningOf(disk, file);
  if (before !== 'nothing' && before !== kind) throw new WriteRefused(fileProblems.isOther(file, before, kind));
  return { file, data, path: await disk.realpath(file), isDirect: false, mode: Number(stats.mode & 0o7777n) };
}

/** Where a link that leads to no file yet leads. */
async function linkedTo(disk: Disk, file: string): Promise<string> {
  let path = file;
  for (let k = 0; k < MOST_LINKS; k++) {
    const link = await disk.lstat(path).catch(() => undefined);
    if (!link?.isSymbolicLink()) return path;
    path = resolve(dirname(path), await disk.readlink(path));
  }
  throw errorOf('ELOOP');
}

async function beginningOf(disk: Disk, file: string): Promise<ContentKind> {
  const handle = await disk.open(file, 'r');
  try {
    const bytes = new Uint8Array(BYTES_INSPECTED);
    const { bytesRead } = await handle.read(bytes, 0, bytes.length, 0);
    return contentKind(bytes.subarray(0, bytesRead));
  } finally {
    await handle.close();
  }
}

async function stage(disk: Disk, target: Target, staged: Staged[]): Promise<void> {
  const temporary = join(dirname(target.path), `.faintwave-${randomUUID()}.part`);
  // Known before it is there: an interruption may come while it is being made.
  remember(temporary);
  staged.push({ target, temporary });
  const handle = await undisturbed(() => disk.open(temporary, 'wx'));
  try {
    if (target.mode !== undefined) await handle.chmod(target.mode).catch(() => {});
    await writeAll(handle, bytesOf(target.data));
    await sync(handle);
  } finally {
    await handle.close();
  }
}

async function writeDirect(disk: Disk, { path, data }: Target): Promise<void> {
  const handle = await disk.open(path, 'w');
  try {
    await writeAll(handle, bytesOf(data));
  } finally {
    await handle.close();
  }
}

/** A disk that is nearly full takes a part of what it is given without a word. */
async function writeAll(handle: Pick<fsPromises.FileHandle, 'write'>, bytes: Uint8Array): Promise<void> {
  for (let at = 0; at < bytes.length; ) {
    const { bytesWritten } = await handle.write(bytes, at, bytes.length - at);
    if (!(bytesWritten > 0)) throw errorOf('ENOSPC');
    at += bytesWritten;
  }
}

/** Some file systems have nothing to bring to a disk; every other error means that the bytes may not be there. */
async function sync(handle: Pick<fsPromises.FileHandle, 'sync'>): Promise<void> {
  try {
    await handle.sync();
  } catch (error) {
    if (!['EINVAL', 'ENOSYS', 'ENOTSUP'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
  }
}

/** Brings the new name to the disk where a system can do that; the file is whole either way. */
async function syncFolder(disk: Disk, folder: string): Promise<void> {
  try {
    const handle = await disk.open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {}
}

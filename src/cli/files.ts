import { fstat } from 'node:fs';
import { open, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { encodingOf } from '../engine/index.ts';
import { problemSentence } from '../outputs/words/index.ts';
import { InputError, type Io, type OpenFile } from './command.ts';
import { makeFolder } from './make-folder.ts';
import { checkTarget, type FileIdentity, identityOf, WriteFailed, WriteRefused, writeWhole } from './write-whole.ts';

/** The files of one command: it remembers what was read, so that nothing of it is written over. */
export function processFiles(): Pick<Io, 'read' | 'open' | 'checkTarget' | 'write' | 'writeInto'> {
  const inputs: FileIdentity[] = [];
  const remember = async (file: string): Promise<void> => {
    const identity = await (file === '-'
      ? identityOf('the standard input', () => promisify(fstat)(0, { bigint: true }))
      : identityOf(file, () => stat(file, { bigint: true })));
    if (identity) inputs.push(identity);
  };
  return {
    async read(file) {
      try {
        await remember(file);
        if (file !== '-') return textOf(await readFile(file), file);
        const chunks: Buffer[] = [];
        for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
        return textOf(Buffer.concat(chunks), 'the input');
      } catch (error) {
        if (error instanceof InputError) throw error;
        throw new InputError(`cannot read ${file}: ${readingWords(error as NodeJS.ErrnoException)}`);
      }
    },
    async open(file) {
      try {
        await remember(file);
        return await openFile(file);
      } catch (error) {
        throw new InputError(`cannot read ${file}: ${readingWords(error as NodeJS.ErrnoException)}`);
      }
    },
    checkTarget: (file, kind) => inWords(() => checkTarget(file, kind, { inputs })),
    write: (file, data) => inWords(() => writeWhole([{ file, data }], { inputs })),
    async writeInto(folder, files) {
      let undo: () => Promise<void>;
      try {
        undo = await makeFolder(folder);
      } catch (error) {
        throw new InputError(`cannot make the folder ${folder}: ${folderWords(error as NodeJS.ErrnoException)}`);
      }
      const placed = files.map(({ name, data }) => ({ file: join(folder, name), data }));
      try {
        await inWords(() => writeWhole(placed, { inputs }));
      } catch (error) {
        await undo();
        throw error;
      }
      return placed.map(({ file }) => file);
    },
  };
}

function textOf(bytes: Uint8Array, file: string): string {
  const found = encodingOf(bytes);
  if (found.encoding === undefined) throw new InputError(problemSentence({ ...found.problem, path: file }));
  return new TextDecoder(found.encoding).decode(bytes);
}

async function openFile(file: string): Promise<OpenFile> {
  const handle = await open(file);
  const found = await handle.stat();
  if (!found.isFile()) {
    await handle.close();
    throw Object.assign(new Error('no regular file'), { code: found.isDirectory() ? 'EISDIR' : 'ESPIPE' });
  }
  return {
    size: found.size,
    async read(start, length) {
      const bytes = new Uint8Array(length);
      let done = 0;
      try {
        while (done < length) {
          const { bytesRead } = await handle.read(bytes, done, length - done, start + done);
          if (bytesRead === 0) break;
          done += bytesRead;
        }
      } catch (error) {
        throw new InputError(`cannot read ${file}: ${readingWords(error as NodeJS.ErrnoException)}`);
      }
      return bytes.subarray(0, done);
    },
    close: () => handle.close(),
  };
}

async function inWords(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    if (error instanceof WriteRefused) throw new InputError(error.message);
    if (error instanceof WriteFailed) throw new InputError(`cannot write ${error.file}: ${writingWords(error)}`);
    throw error;
  }
}

type SystemError = { readonly code?: string; readonly message: string };

const READING: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'part of that path is a file, not a folder',
  EISDIR: 'it is a folder, not a file; name a file in it',
  ESPIPE: 'it is a device or a pipe; a file on a disk is needed',
  EACCES: 'permission denied; use a file that you may read',
  EPERM: 'permission denied; use a file that you may read',
  EIO: 'the disk or device reports an error; use a copy on another disk',
  ELOOP: 'its links lead round in a circle',
  ENAMETOOLONG: 'the name is too long',
  ERR_FS_FILE_TOO_LARGE: 'it is larger than 2 GB',
};
const readingWords = ({ code, message }: SystemError): string => READING[code ?? ''] ?? message;

const UNCHANGED = 'nothing was written, and what was there before is unchanged';
const WRITING: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder; make it first, or name another with --out',
  ENOTDIR: 'part of that path is a file, not a folder; name another with --out',
  EISDIR: 'it is a folder, not a file; add a file name',
  EACCES: 'permission denied; name a place where you may write with --out',
  EPERM: 'permission denied; name a place where you may write with --out',
  EROFS: 'that disk is read-only; name another with --out',
  ENOSPC: `the disk is full; ${UNCHANGED}. Free some space, or name another disk with --out`,
  EDQUOT: `your share of the disk is used up; ${UNCHANGED}. Free some space, or name another disk with --out`,
  EFBIG: `the file would be larger than the limit here allows (ulimit -f, or the file system); ${UNCHANGED}. Raise the limit, or name another disk with --out`,
  EIO: `the disk reports an error; ${UNCHANGED}. Name another disk with --out`,
  EPIPE: 'whatever reads it has closed it',
  ELOOP: 'its links lead round in a circle; name another file with --out',
  ENAMETOOLONG: 'the name is too long; name a shorter one with --out',
};
const writingWords = ({ code, message }: SystemError): string =>
  WRITING[code ?? ''] ?? `${message}; name another place with --out`;

const folderWords = ({ code, message }: SystemError): string =>
  code === 'ENOENT'
    ? 'no folder can be made there; name another with --out'
    : code === 'EEXIST'
      ? 'there is a file of that name; name another with --out'
      : (WRITING[code ?? ''] ?? `${message}; name another with --out`);

import { fstat } from 'node:fs';
import { open, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { encodingOf } from '../engine/index.ts';
import { fileProblems, problemSentence } from '../outputs/words/index.ts';
import { InputError, type Io, type OpenFile } from './command.ts';
import { makeFolder } from './make-folder.ts';
import { NoFolder, SeriesThere, writeSeries } from './write-series.ts';
import { checkTarget, type FileIdentity, identityOf, WriteFailed, WriteRefused, writeWhole } from './write-whole.ts';

/** The files of one command: it remembers what was read, so that nothing of it is written over. */
export function processFiles(): Pick<Io, 'read' | 'open' | 'checkTarget' | 'write' | 'writeInto' | 'writeSeries'> {
  const inputs: FileIdentity[] = [];
  const remember = async (file: string): Promise<void> => {
    const identity = await (file === '-'
      ? identityOf(fileProblems.standardInput, () => promisify(fstat)(0, { bigint: true }))
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
        return textOf(Buffer.concat(chunks), fileProblems.input);
      } catch (error) {
        if (error instanceof InputError) throw error;
        throw new InputError(fileProblems.cannotRead(file, error as NodeJS.ErrnoException));
      }
    },
    async open(file) {
      try {
        await remember(file);
        return await openFile(file);
      } catch (error) {
        throw new InputError(fileProblems.cannotRead(file, error as NodeJS.ErrnoException));
      }
    },
    checkTarget: (file, kind) => inWords(() => checkTarget(file, kind, { inputs })),
    write: (file, data) => inWords(() => writeWhole([{ file, data }], { inputs })),
    async writeInto(folder, files) {
      let undo: () => void;
      try {
        undo = await makeFolder(folder);
      } catch (error) {
        throw new InputError(fileProblems.cannotMakeFolder(folder, error as NodeJS.ErrnoException));
      }
      const placed = files.map(({ name, data }) => ({ file: join(folder, name), data }));
      try {
        await inWords(() => writeWhole(placed, { inputs }));
      } catch (error) {
        undo();
        throw error;
      }
      return placed.map(({ file }) => file);
    },
    async writeSeries(folder, option, isOfSeries, files) {
      try {
        await writeSeries(folder, isOfSeries, files);
      } catch (error) {
        if (error instanceof NoFolder)
          throw new InputError(fileProblems.cannotMakeFolder(folder, error.cause as NodeJS.ErrnoException, option));
        if (error instanceof SeriesThere) throw new InputError(fileProblems.seriesThere(folder, error.message, option));
        if (error instanceof WriteFailed) throw new InputError(fileProblems.cannotWrite(error.file, error, option));
        throw error;
      }
    },
  };
}

function textOf(bytes: Uint8Array, file: string): string {
  const content = encodingOf(bytes);
  if (content.encoding === undefined) throw new InputError(problemSentence({ ...content.problem, path: file }));
  return new TextDecoder(content.encoding).decode(bytes);
}

async function openFile(file: string): Promise<OpenFile> {
  const handle = await open(file);
  const stats = await handle.stat();
  if (!stats.isFile()) {
    await handle.close();
    throw Object.assign(new Error('no regular file'), { code: stats.isDirectory() ? 'EISDIR' : 'ESPIPE' });
  }
  return {
    size: stats.size,
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
        throw new InputError(fileProblems.cannotRead(file, error as NodeJS.ErrnoException));
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
    if (error instanceof WriteFailed) throw new InputError(fileProblems.cannotWrite(error.file, error));
    throw error;
  }
}

import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { makeFolder } from './make-folder.ts';
import { forget, remember, undisturbed } from './temporaries.ts';
import { WriteFailed } from './write-whole.ts';

export interface SeriesFile {
  readonly name: string;
  readonly data: string | Uint8Array;
}

/** A folder that cannot be made. */
export class NoFolder extends Error {}
/** A folder that holds a file as those of the series are named. */
export class SeriesThere extends Error {}

/**
 * Write many files, each as soon as it comes, into a folder that is made where it is missing. They stand in a folder of
 * their own within it until all are there. Nothing is drawn before the folder is known to be usable.
 * @param isOfSeries names that must not be there: files of two series would be mixed.
 * @throws NoFolder, SeriesThere with the name of such a file, WriteFailed; what the files throw, as it is.
 */
export async function writeSeries(
  folder: string,
  isOfSeries: (name: string) => boolean,
  files: Iterable<SeriesFile>,
): Promise<void> {
  const undo = await makeFolder(folder).catch((cause: unknown) => {
    throw new NoFolder(folder, { cause });
  });
  const temporary = join(folder, `.faintwave-${randomUUID()}.part`);
  const placed: string[] = [];
  try {
    const before = (await onDisk(folder, () => readdir(folder))).find(isOfSeries);
    if (before !== undefined) throw new SeriesThere(before);
    remember(temporary, () => {
      rmSync(temporary, { recursive: true, force: true });
      undo();
    });
    await onDisk(folder, () => undisturbed(() => mkdir(temporary)));
    const names: string[] = [];
    for (const { name, data } of files) {
      await onDisk(join(folder, name), () => writeFile(join(temporary, name), data));
      names.push(name);
    }
    for (const name of names) {
      const path = join(folder, name);
      await onDisk(path, () => rename(join(temporary, name), path));
      placed.push(path);
    }
    await onDisk(folder, () => rm(temporary, { recursive: true }));
  } catch (error) {
    for (const path of [...placed, temporary]) await rm(path, { recursive: true, force: true }).catch(() => {});
    undo();
    throw error;
  } finally {
    forget(temporary);
  }
}

async function onDisk<T>(file: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw new WriteFailed(file, error);
  }
}

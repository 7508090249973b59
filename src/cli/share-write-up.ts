import { basename, dirname, extname, join } from 'node:path';
import {
  type FieldOptions,
  type Light,
  receiveOnBestBands,
  receiveRanged,
  type SetDescription,
} from '../engine/index.ts';
import { shareAnswer } from '../outputs/words/index.ts';
import {
  barePhoto,
  bestSound,
  type WriteUp,
  type WriteUpFile,
  type WriteUpPhoto,
  writeUp,
  writeUpHtml,
  writeUpMarkdown,
} from '../outputs/write-up/index.ts';
import { InputError, type Io } from './command.ts';
import { logAgainst } from './log-file.ts';

/** Larger files are no pictures for a screen. */
const LARGEST_PHOTO = 20e6;

interface Wanted {
  readonly html?: string;
  readonly markdown?: string;
  readonly photo?: readonly string[];
  readonly log?: string;
  readonly exactPosition: boolean;
  readonly when: FieldOptions;
}

/** Writes a set up for others, as HTML, Markdown or both. @throws InputError for a photo or log that cannot be read. */
export async function writeUpSet(set: SetDescription, written: unknown, options: Wanted, io: Io): Promise<void> {
  const { when, exactPosition } = options;
  const photos: WriteUpPhoto[] = [];
  for (const given of options.photo ?? []) photos.push(await photoOf(given, io));
  const reception = receiveRanged(set, when);
  const at = (time: Light) => receiveOnBestBands(set, { ...when, time }, time === when.time ? reception : undefined);
  const log = options.log === undefined ? undefined : logAgainst(set, await io.read(options.log), at, io).answer;
  const about = writeUp(set, written, reception, {
    photos,
    log,
    exactPosition,
    sound: bestSound(set, reception, { ...when, onProgress: (share) => io.progress('listening', share) }),
  });
  const markdown = options.markdown === undefined ? undefined : await markdownOf(about, options.markdown, io);
  if (options.html !== undefined) await io.write(options.html, writeUpHtml(about));
  const files = options.html === undefined ? [] : [options.html];
  if (markdown) files.push(...(await io.writeInto(markdown.folder, markdown.files)));
  io.out(`${shareAnswer.written(files)}\n`);
}

/** The files of a write-up in Markdown. A description of another set that has the name of this one's is left alone. */
async function markdownOf(about: WriteUp, file: string, io: Io): Promise<{ folder: string; files: WriteUpFile[] }> {
  const folder = dirname(file);
  const stem = basename(file, extname(file));
  const description = Buffer.from(about.description);
  for (let n = 1; ; n++) {
    const name = n === 1 ? 'description.json' : `description-${n}.json`;
    const there = await beginningOf(join(folder, `${stem}-${name}`), description.length + 1, io);
    if (there && !description.equals(there)) continue;
    const { text, files } = writeUpMarkdown(about, stem, name);
    const others = there ? files.filter((one) => one.data !== about.description) : files;
    return { folder, files: [{ name: basename(file), data: text }, ...others] };
  }
}

/** Bytes of a file; undefined where there is none that can be read. */
async function beginningOf(file: string, most: number, io: Io): Promise<Uint8Array | undefined> {
  const source = await io.open(file).catch((error) => {
    if (error instanceof InputError) return undefined;
    throw error;
  });
  try {
    return await source?.read(0, most);
  } finally {
    await source?.close();
  }
}

/** "front.jpg=The set from the front", or the name of the file alone. */
async function photoOf(given: string, io: Io): Promise<WriteUpPhoto> {
  const at = given.indexOf('=');
  const file = at < 0 ? given : given.slice(0, at);
  const caption = at < 0 ? basename(file, extname(file)).replace(/[-_]+/g, ' ') : given.slice(at + 1);
  const source = await io.open(file);
  try {
    if (source.size > LARGEST_PHOTO) throw new InputError(shareAnswer.photoTooLarge(file, LARGEST_PHOTO));
    const photo = barePhoto(await source.read(0, source.size));
    if (!photo) throw new InputError(shareAnswer.photo(file));
    return { ...photo, caption };
  } finally {
    await source.close();
  }
}

import { basename, dirname, extname } from 'node:path';
import {
  type FieldOptions,
  type LogAgainstPrediction,
  logAgainstPrediction,
  readLog,
  receiveRanged,
  type SetDescription,
} from '../engine/index.ts';
import { renderListening, SOUND_RATE, writeWav } from '../outputs/audio/index.ts';
import { shareAnswer } from '../outputs/words/index.ts';
import { barePhoto, type WriteUpPhoto, writeUp, writeUpHtml, writeUpMarkdown } from '../outputs/write-up/index.ts';
import { InputError, type Io } from './command.ts';

/** Larger files are no pictures for a screen. */
const LARGEST_PHOTO = 20e6;
const SOUND_SECONDS = 5;

interface Wanted {
  readonly html?: string;
  readonly markdown?: string;
  readonly photo?: readonly string[];
  readonly log?: string;
  readonly exactPosition: boolean;
  readonly when: FieldOptions;
}

/** Writes a set up for others, as HTML, Markdown or both. @throws InputError for a photo or log that cannot be read. */
export async function writeUpSet(set: SetDescription, written: unknown, wanted: Wanted, io: Io): Promise<void> {
  const { when, exactPosition } = wanted;
  const photos: WriteUpPhoto[] = [];
  for (const given of wanted.photo ?? []) photos.push(await photoOf(given, io));
  const reception = receiveRanged(set, when);
  const log = wanted.log === undefined ? undefined : logOf(set, await io.read(wanted.log), when);
  const about = writeUp(set, written, reception, {
    photos,
    log,
    exactPosition,
    sound: soundOf(set, reception, wanted, io),
  });
  if (wanted.html !== undefined) await io.write(wanted.html, writeUpHtml(about));
  const files = wanted.html === undefined ? [] : [wanted.html];
  if (wanted.markdown !== undefined) {
    const stem = basename(wanted.markdown, extname(wanted.markdown));
    const { text, files: beside } = writeUpMarkdown(about, stem);
    files.push(
      ...(await io.writeInto(dirname(wanted.markdown), [{ name: basename(wanted.markdown), data: text }, ...beside])),
    );
  }
  io.out(`${shareAnswer.written(files)}\n`);
}

function soundOf(
  set: SetDescription,
  { best, stations }: ReturnType<typeof receiveRanged>,
  { when }: Wanted,
  io: Io,
): Uint8Array | undefined {
  const station = stations[best[0]];
  if (!station || station.outOfRange) return undefined;
  const sound = renderListening(set, {
    ...when,
    station: station.index,
    level: station.soundPressureLevel,
    how: 'amplified',
    seconds: SOUND_SECONDS,
    onProgress: (share) => io.progress('listening', share),
  });
  return writeWav([sound], { rate: SOUND_RATE });
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

function logOf(set: SetDescription, text: string, when: FieldOptions): LogAgainstPrediction {
  const [day, night] = (['day', 'night'] as const).map((time) => receiveRanged(set, { ...when, time }));
  return logAgainstPrediction({ day, night }, set.place.position, readLog(text).entries);
}

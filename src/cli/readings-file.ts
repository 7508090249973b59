import { dirname, isAbsolute, join } from 'node:path';
import {
  isReadingsText,
  isRecord,
  MEASUREMENTS,
  type MeasurementKind,
  readReadings,
  readRecord,
  ringingOf,
  wholeFileField,
} from '../engine/index.ts';
import { readWav, SoundFileError } from '../outputs/audio/index.ts';
import { clean } from '../outputs/tables/index.ts';
import { cliNotes, fileProblems, measureAnswer } from '../outputs/words/index.ts';
import { InputError, type Io, type OpenFile } from './command.ts';
import { BYTES_INSPECTED, contentKind } from './content-kind.ts';
import { problemsOfFile } from './problems-of-file.ts';
import { readingsProblem } from './readings-problem.ts';

/** The file's name may hold anything. @throws InputError */
async function opened(file: string, io: Io): Promise<OpenFile> {
  try {
    return await io.open(file);
  } catch (refusal) {
    if (refusal instanceof InputError) throw new InputError(clean(refusal.message));
    throw refusal;
  }
}

/** A ringing in a WAV file, from the sample after its edge on. @throws InputError */
async function ringingIn(file: string, io: Io): Promise<{ sampleRate: number; samples: number[] }> {
  const source = await opened(file, io);
  try {
    const { rate, channels } = await readWav(await source.read(0, source.size));
    return { sampleRate: rate, samples: [...ringingOf(channels[0])] };
  } catch (refusal) {
    if (refusal instanceof SoundFileError) throw new InputError(`${clean(file)}: ${refusal.message}`);
    throw refusal;
  } finally {
    await source.close();
  }
}

/** What a file holds, by its content; undefined for the standard input. @throws InputError */
async function contentOf(file: string, io: Io): Promise<ReturnType<typeof contentKind> | undefined> {
  if (file === '-') return undefined;
  const source = await opened(file, io);
  try {
    return contentKind(await source.read(0, Math.min(source.size, BYTES_INSPECTED)));
  } finally {
    await source.close();
  }
}

/**
 * Readings out of a file that is not plain JSON of them: a WAV of a ringing, cut from its edge on (its first channel), a
 * table that says its kind, a table of time and volts, or JSON that names files of instruments.
 * @returns undefined for the standard input, and for what only the reader of JSON can refuse
 * @throws InputError where the file does not say what it is of, or names files that cannot be read
 */
export async function fitReadings(file: string, io: Io): Promise<unknown> {
  const content = await contentOf(file, io);
  if (content === 'wav') return { kind: 'decay', ...(await ringingIn(file, io)) };
  if (content === undefined || content === 'json' || content === 'description') {
    if (file === '-') return undefined;
    const { text, problems } = await withFilesRead(await io.read(file), file, io);
    if (problems.length > 0) throw new InputError(problems.join('\n'));
    try {
      return JSON.parse(text);
    } catch {
      return undefined;
    }
  }
  const text = await io.read(file);
  if (TOUCHSTONE_NAME.test(file) || TOUCHSTONE.test(text))
    throw new InputError(fileProblems.sweepForFit(clean(file), SWEPT));
  if (isReadingsText(text)) {
    const read = readReadings(text);
    if (!read.ok) throw new InputError(problemsOfFile(clean(file), read.problems.map(readingsProblem)));
    if (read.notRead) io.err(`${cliNotes.note(measureAnswer.columnsNotRead(read.notRead))}\n`);
    return read.measurements[0].written;
  }
  const record = readRecord(text);
  if (record.ok || record.problems.every(({ code }) => code !== 'no-rows' && code !== 'time-not-even'))
    return { kind: 'decay-record', record: text };
  throw new InputError(fileProblems.tableWithoutKind(clean(file), Object.keys(MEASUREMENTS)));
}

/** What an instrument's file does not say itself. */
interface AboutFile {
  readonly kind?: MeasurementKind | 'value';
  readonly coil?: string;
}

const WAV = /\.wav$/i;
const TOUCHSTONE_NAME = /\.s[12]p$/i;
/** Its line of options, or the version of the newer form. */
const TOUCHSTONE = /^\s*(?:!.*\r?\n\s*)*(?:#\s*(?:[kmg]?hz\b|[syzgh]\b|ri\b|ma\b|db\b|r\s)|\[version\])/i;
/** A field may name a file in place of what stands in it. */
const FILE_NAME = /^[^\n\r]+\.(?:s1p|s2p|csv|tsv|txt|wav)$/i;
/** Kinds that a sweep may be of. */
const SWEPT = (Object.keys(MEASUREMENTS) as MeasurementKind[]).filter((kind) => wholeFileField(kind) === 'file');

/**
 * A file of readings as `readReadings` takes it: what an instrument wrote (WAV of a ringing, table of time and volts,
 * Touchstone) becomes a measurement of it, and files that readings name are read into them.
 * @param file its name
 * @param about kind and coil that an instrument's file is of
 * @returns the text, and what is wrong with files that it names
 * @throws InputError where the file itself cannot be read, or its kind has to be said
 */
export async function readingsText(
  file: string,
  about: AboutFile,
  io: Io,
): Promise<{ readonly text: string; readonly problems: readonly string[] }> {
  const measurementOf = (fields: object): string =>
    JSON.stringify({ ...(about.coil !== undefined && { coil: about.coil }), ...fields });
  if (WAV.test(file)) return { text: measurementOf({ kind: 'decay', ...(await ringingIn(file, io)) }), problems: [] };
  const text = await io.read(file);
  if (TOUCHSTONE_NAME.test(file) || TOUCHSTONE.test(text)) {
    const field = about.kind === undefined ? undefined : wholeFileField(about.kind);
    if (about.kind === undefined || field === undefined)
      throw new InputError(fileProblems.sweepWithoutKind(clean(file), SWEPT));
    return { text: measurementOf({ kind: about.kind, [field]: text }), problems: [] };
  }
  if (isReadingsText(text)) return withFilesRead(text, file, io);
  const field = about.kind === undefined ? undefined : wholeFileField(about.kind);
  if (field !== undefined) return { text: measurementOf({ kind: about.kind, [field]: text }), problems: [] };
  return { text, problems: [] };
}

/** JSON whose fields name files of instruments: with what stands in these. */
async function withFilesRead(text: string, from: string, io: Io) {
  const problems: string[] = [];
  const folder = from === '-' ? '.' : dirname(from);
  let written: unknown;
  try {
    written = JSON.parse(text);
  } catch {
    // A table, or what the reader of readings refuses with its place.
    return { text, problems };
  }
  const list = isRecord(written) && Array.isArray(written.measurements) ? written.measurements : [written];
  for (const [i, one] of list.entries()) {
    if (!isRecord(one) || typeof one.kind !== 'string' || !Object.hasOwn(MEASUREMENTS, one.kind)) continue;
    for (const [key, field] of Object.entries(MEASUREMENTS[one.kind as MeasurementKind].fields)) {
      const name = one[key];
      if (typeof name !== 'string' || !FILE_NAME.test(name.trim())) continue;
      const path = isAbsolute(name) ? name : join(folder, name.trim());
      try {
        if (field.type === 'text') one[key] = await io.read(path);
        else if (field.type === 'samples' && WAV.test(name)) Object.assign(one, await ringingIn(path, io));
      } catch (refusal) {
        if (!(refusal instanceof InputError)) throw refusal;
        problems.push(`measurements[${i}].${key}: ${clean(refusal.message)}`);
      }
    }
  }
  return { text: JSON.stringify(written), problems };
}

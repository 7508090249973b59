import {
  isSetLink,
  type ReadResult,
  readText,
  type SetDescription,
  textOfLink,
  type WrittenDescription,
} from '../engine/index.ts';
import { callProblems, cliNotes, problemSentence, readNote } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';

/** Read a description file. @throws InputError with every problem, a line each. */
export const readSet = async (file: string | undefined, io: Io): Promise<SetDescription> =>
  (await readWrittenSet(file, io)).set;

/** A link is longer than anybody reads. */
export const shownSource = (file: string): string =>
  isSetLink(fragmentOf(file))
    ? `${file.slice(0, file.length - fragmentOf(file).length)}${fragmentOf(file).slice(0, 8)}…`
    : file;

const fragmentOf = (file: string): string => file.slice(file.indexOf('#') + 1);

/** Reads a file, or a link, which is told by what follows its "#". @throws InputError for a file that cannot be read. */
export async function readSetText(file: string, io: Io): Promise<ReadResult> {
  const fragment = fragmentOf(file);
  if (!isSetLink(fragment)) return readText(await io.read(file));
  const link = textOfLink(fragment);
  return 'problem' in link ? { ok: false, problems: [link.problem] } : readText(link.text);
}

/** The same with the description as written, for commands that change it. */
export async function readWrittenSet(
  file: string | undefined,
  io: Io,
): Promise<{ set: SetDescription; written: WrittenDescription }> {
  if (file === undefined) throw new InputError(callProblems.nameSet);
  const result = await readSetText(file, io);
  if (!result.ok) {
    const count = result.problems.length;
    throw new InputError(
      `${callProblems.inFile(shownSource(file), count)}\n${result.problems.map((p) => `  ${problemSentence(p)}`).join('\n')}`,
    );
  }
  for (const note of result.notes) io.err(`${cliNotes.note(readNote(note))}\n`);
  return { set: result.set, written: result.written };
}

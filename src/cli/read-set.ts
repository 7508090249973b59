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
import { problemsOfFile } from './problems-of-file.ts';

/** Read a description file. @throws InputError with every problem, a line each. */
export const readSet = async (file: string | undefined, io: Io): Promise<SetDescription> =>
  (await readWrittenSet(file, io)).set;

/** A link is longer than anybody reads. */
export const shownSource = (file: string): string =>
  isSetLink(fragmentOf(file))
    ? `${file.slice(0, file.length - fragmentOf(file).length)}${fragmentOf(file).slice(0, 8)}…`
    : file;

const fragmentOf = (file: string): string => file.slice(file.indexOf('#') + 1);

/** The text of a file, or of a link, which is recognised by what follows its "#". @throws InputError for a file that cannot be read. */
export async function sourceText(file: string, io: Io): Promise<ReturnType<typeof textOfLink>> {
  const fragment = fragmentOf(file);
  return isSetLink(fragment) ? textOfLink(fragment) : { text: await io.read(file) };
}

/** The set of a text from `sourceText`, or all that is wrong with it. */
export const readSource = (source: ReturnType<typeof textOfLink>): ReadResult =>
  'problem' in source ? { ok: false, problems: [source.problem] } : readText(source.text);

/** The same with the description as written, for commands that change it. */
export async function readWrittenSet(
  file: string | undefined,
  io: Io,
): Promise<{ set: SetDescription; written: WrittenDescription }> {
  if (file === undefined) throw new InputError(callProblems.nameSet);
  const result = readSource(await sourceText(file, io));
  if (!result.ok) throw new InputError(problemsOfFile(shownSource(file), result.problems.map(problemSentence)));
  for (const note of result.notes) io.err(`${cliNotes.note(readNote(note))}\n`);
  return { set: result.set, written: result.written };
}

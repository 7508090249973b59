import { readText, type SetDescription, type WrittenDescription } from '../engine/index.ts';
import { callProblems, cliNotes, problemSentence, readNote } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';

/** Read a description file. @throws InputError with every problem, a line each. */
export const readSet = async (file: string | undefined, io: Io): Promise<SetDescription> =>
  (await readWrittenSet(file, io)).set;

/** The same with the description as written, for commands that change it. */
export async function readWrittenSet(
  file: string | undefined,
  io: Io,
): Promise<{ set: SetDescription; written: WrittenDescription }> {
  if (file === undefined) throw new InputError(callProblems.nameSet);
  const result = readText(await io.read(file));
  if (!result.ok) {
    const count = result.problems.length;
    throw new InputError(
      `${callProblems.inFile(file, count)}\n${result.problems.map((p) => `  ${problemSentence(p)}`).join('\n')}`,
    );
  }
  for (const note of result.notes) io.err(`${cliNotes.note(readNote(note))}\n`);
  return { set: result.set, written: result.written };
}

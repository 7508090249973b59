import { cliNotes } from '../outputs/words/index.ts';
import type { Io } from './command.ts';

/** Data to a file that was named, whole, or to the standard output. */
export async function dataOut(io: Io, out: string | undefined, text: string): Promise<void> {
  if (out === undefined) io.data(text);
  else {
    await io.write(out, text);
    io.err(`${cliNotes.written(out)}\n`);
  }
}

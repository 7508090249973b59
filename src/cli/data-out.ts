import type { Io } from './command.ts';

/** Data to a file that was named, whole, or to the standard output. */
export async function dataOut(io: Io, out: string | undefined, text: string): Promise<void> {
  if (out === undefined) io.data(text);
  else {
    await io.write(out, text);
    io.err(`Written to ${out}\n`);
  }
}

/** The option of every command that prints data. */
export const OUT_OPTION = [
  '--out FILE',
  'write the data to a file, whole or not at all, instead of printing it',
] as const;

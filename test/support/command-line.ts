import { spawnSync } from 'node:child_process';
import { inRoot, ROOT } from '../../scripts/support/paths.mjs';
import { processFiles } from '../../src/cli/files.ts';
import { run } from '../../src/cli/main.ts';
import { memoryIo } from './memory-io.ts';

export interface Outcome {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/**
 * Runs the command line as a person does, in a process of its own, in the folder of the project; compiles what has
 * changed first.
 * @param args what stands after its name. @param input what comes through its standard input.
 */
export function spawned(args: readonly string[], input = ''): Outcome {
  const { status, stdout, stderr } = spawnSync(process.execPath, [inRoot('bin/faintwave.mjs'), ...args], {
    input,
    encoding: 'utf8',
    cwd: ROOT,
    maxBuffer: 1e8,
  });
  return { status, stdout, stderr };
}

/** The same in this process, on the real disk: without the second that each start of a process takes. */
export async function ran(args: readonly string[], input = ''): Promise<Outcome> {
  const files = processFiles();
  let stdout = '';
  const add = (text: string): void => {
    stdout += text;
  };
  const io = Object.assign(memoryIo(), files, {
    out: add,
    data: add,
    width: Number.POSITIVE_INFINITY,
    read: async (file: string) => (file === '-' ? input : files.read(file)),
  });
  const status = await run(args, io);
  return { status, stdout, stderr: io.problems };
}

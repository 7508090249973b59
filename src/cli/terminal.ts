import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { isatty } from 'node:tty';
import { cliNotes, type LongTask } from '../outputs/words/index.ts';

/** The standard output takes no more. */
export class OutputFailed extends Error {
  readonly code: string | undefined;
  constructor(cause: unknown) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
    this.code = (cause as NodeJS.ErrnoException)?.code;
  }
}

const OUT = 1;
const ERR = 2;
const RETRY_MS = 5;

/** Everything that goes to the standard output goes through here. @throws OutputFailed once it is full or closed. */
export function writeOut(text: string): void {
  clearProgress();
  try {
    writeFully(OUT, text);
  } catch (error) {
    throw new OutputFailed(error);
  }
}

/** Notes and problems. Where even these cannot be written there is nowhere left to say so. */
export function writeErr(text: string): void {
  clearProgress();
  try {
    writeFully(ERR, text);
  } catch {}
}

/** Write at once, waiting for a reader that is slow: nothing is left behind when the process ends. */
function writeFully(fd: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; ) {
    try {
      at += writeSync(fd, bytes, at);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, RETRY_MS);
    }
  }
}

const IN = 0;
export const isTerminal = { in: isatty(IN), out: isatty(OUT), err: isatty(ERR) };

/** One line typed after a question; undefined at the end of the input. */
export async function askLine(question: string): Promise<string | undefined> {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  try {
    return await new Promise<string | undefined>((resolve) => {
      lines.once('close', () => resolve(undefined));
      lines.question(question, resolve);
    });
  } finally {
    lines.close();
  }
}

let shown = '';

/** How far long work has come, on one line that is written over. @param share 0 to 1. */
export function showProgress(task: LongTask, share: number): void {
  if (!isTerminal.err) return;
  const line = cliNotes.progress(task, Math.min(100, Math.floor(100 * share)));
  if (line === shown) return;
  clearProgress();
  try {
    writeFully(ERR, line);
    shown = line;
  } catch {}
}

function clearProgress(): void {
  if (shown === '') return;
  try {
    writeFully(ERR, '\r\u001b[K');
  } catch {}
  shown = '';
}

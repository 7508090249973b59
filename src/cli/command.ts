import type { CommandName, ContentKind, LongTask } from '../outputs/words/index.ts';

/** A file that is read piece by piece. */
export interface OpenFile {
  /** Bytes. */
  readonly size: number;
  /** Fewer bytes at the end of the file only. @throws InputError when it cannot be read. */
  read(start: number, length: number): Promise<Uint8Array>;
  close(): Promise<void>;
}

/** What a command may touch, so that tests can run it without a process. */
export interface Io {
  /** Words for a person. */
  out(text: string): void;
  /** What a program reads, as it is. */
  data(text: string): void;
  err(text: string): void;
  readonly colour: boolean;
  /** Columns of the terminal; Infinity where there is none. */
  readonly width: number;
  /** Text of a file; "-" is standard input. @throws InputError when it cannot be read. */
  read(file: string): Promise<string>;
  /** For files larger than memory. @throws InputError when it cannot be read. */
  open(file: string): Promise<OpenFile>;
  /** Before long work: would `write` refuse this? @throws InputError */
  checkTarget(file: string, kind: ContentKind): Promise<void>;
  /** Whole, or what was there stays. @throws InputError for a file that was read, for one of another kind, and where it fails. */
  write(file: string, data: string | Uint8Array): Promise<void>;
  /** All of them or none, into a folder that is made where it is missing. @returns their paths. @throws InputError */
  writeInto(
    folder: string,
    files: readonly { readonly name: string; readonly data: string | Uint8Array }[],
  ): Promise<string[]>;
  /**
   * Each as soon as it comes, so that no more than one is in memory; all of them or none.
   * @param option names the folder. @param isOfSeries names that must not be in the folder yet.
   * @throws InputError, before the first file is asked for where the folder is not usable.
   */
  writeSeries(
    folder: string,
    option: string,
    isOfSeries: (name: string) => boolean,
    files: Iterable<{ readonly name: string; readonly data: string | Uint8Array }>,
  ): Promise<void>;
  /** One line that a person types; undefined at the end of the input. Only where both ends are a terminal. */
  readonly ask?: (question: string) => Promise<string | undefined>;
  /** How far long work has come, for whoever waits at a terminal. @param share 0 to 1. */
  progress(task: LongTask, share: number): void;
}

/** What an option takes; its words are in `commandWords`. */
export interface CommandOption {
  readonly type: 'string' | 'boolean';
  readonly multiple?: true;
}

/** A command as it is parsed, helped with and run: ids only, its words are in `commandWords`. */
export interface Command {
  readonly name: CommandName;
  /** By name, without the dashes, in the order of the help. */
  readonly options: Readonly<Record<string, CommandOption>>;
  readonly examples: readonly string[];
  /** @returns the exit status: 0 done, 1 the answer is no (a check that failed), 2 bad input or a file that cannot be read or written. */
  run(args: readonly string[], io: Io): Promise<number>;
}

/** The user's input is at fault: printed without a stack, exit status 2. */
export class InputError extends Error {}

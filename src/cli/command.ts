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
  write(file: string, data: string | Uint8Array): Promise<void>;
}

export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly about: string;
  readonly usage: string;
  /** Options for `--help`: flag, meaning. */
  readonly options?: readonly (readonly [string, string])[];
  readonly examples: readonly string[];
  /** @returns the exit status: 0 done, 1 the answer is no (a check that failed), 2 bad input. */
  run(args: readonly string[], io: Io): Promise<number>;
}

/** The user's input is at fault: printed without a stack, exit status 2. */
export class InputError extends Error {}

import { readFileSync } from 'node:fs';
import { styleText } from 'node:util';
import { safeJson, safeLines, safeText } from '../engine/index.ts';
import { folded } from '../outputs/tables/index.ts';
import { callProblems, errorText, fileProblems } from '../outputs/words/index.ts';
import { type Command, InputError, type Io } from './command.ts';
import { calc } from './commands/calc.ts';
import { check } from './commands/check.ts';
import { compare } from './commands/compare.ts';
import { curves } from './commands/curves.ts';
import { dial } from './commands/dial.ts';
import { fault } from './commands/fault.ts';
import { film } from './commands/film.ts';
import { find } from './commands/find.ts';
import { listen } from './commands/listen.ts';
import { log } from './commands/log.ts';
import { match } from './commands/match.ts';
import { measure } from './commands/measure.ts';
import { move } from './commands/move.ts';
import { path } from './commands/path.ts';
import { rework } from './commands/rework.ts';
import { schema } from './commands/schema.ts';
import { share } from './commands/share.ts';
import { sheets } from './commands/sheets.ts';
import { stations } from './commands/stations.ts';
import { wave } from './commands/wave.ts';
import { processFiles } from './files.ts';
import { commandHelp, help } from './help.ts';
import { askLine, isTerminal, OutputFailed, showProgress, writeErr, writeOut } from './terminal.ts';

export const COMMANDS: readonly Command[] = [
  path,
  dial,
  listen,
  stations,
  compare,
  match,
  measure,
  log,
  fault,
  wave,
  film,
  curves,
  move,
  rework,
  find,
  sheets,
  share,
  check,
  schema,
  calc,
];

const version = (): string => JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')).version;

/** The status of what a closed pipe has ended, as shells have it: 128 + SIGPIPE. */
const CLOSED_PIPE = 141;
const OUTPUT_FAILED = 3;

/**
 * Run the command line.
 * @returns the exit status: 0 done, 1 a check said no, 2 bad input or a file that cannot be read or written, 3 the
 * standard output is full, 141 whoever reads it has closed it.
 */
export async function run(args: readonly string[], io: Io): Promise<number> {
  try {
    return await dispatch(args, io);
  } catch (error) {
    if (!(error instanceof OutputFailed)) throw error;
    // A reader that has seen enough (head, less) wants no words about it.
    if (error.code === 'EPIPE') return CLOSED_PIPE;
    io.err(`faintwave: ${fileProblems.cannotPrint(error)}\n`);
    return OUTPUT_FAILED;
  }
}

async function dispatch(args: readonly string[], io: Io): Promise<number> {
  const [name, ...rest] = args;
  if (name === '--version') {
    io.out(`${version()}\n`);
    return 0;
  }
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    io.out(help(COMMANDS, strong(io)));
    return name === undefined ? 2 : 0;
  }
  const command = COMMANDS.find((c) => c.name === name);
  if (!command) {
    const names = COMMANDS.map((one) => one.name);
    io.err(`faintwave: ${callProblems.noCommand(safeText(name.slice(0, 40)), names)}\n`);
    return 2;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    io.out(commandHelp(command, strong(io)));
    return 0;
  }
  try {
    return await command.run(rest, safeIo(io));
  } catch (error) {
    const { code, message } = error as { code?: string; message: string };
    if (error instanceof InputError || code?.startsWith('ERR_PARSE_ARGS')) {
      io.err(`faintwave ${command.name}: ${safeLines(message)}\n`);
      return 2;
    }
    // The engine refuses values that each are possible and lead nowhere together.
    if (!(error instanceof RangeError)) throw error;
    io.err(`faintwave ${command.name}: ${callProblems.notCalculable(safeLines(errorText(error)))}\n`);
    return 2;
  }
}

/** The one place where what comes from files reaches the terminal: nothing of it may steer it. */
const safeIo = (io: Io): Io => ({
  ...io,
  out: (text) => io.out(safeLines(text)),
  err: (text) => io.err(safeLines(text)),
  // What programs read stays the same value: JSON has escapes; a table has no place for control characters.
  data: (text) => io.data(/^\s*[[{]/.test(text) ? safeJson(text) : text.split('\r\n').map(safeLines).join('\r\n')),
});

const strong = (io: Io) => (text: string) => (io.colour ? styleText('bold', text) : text);

const COLUMNS = isTerminal.out ? Math.max(40, process.stdout.columns || 80) : Infinity;

const processIo: Io = {
  ...processFiles(),
  out: (text) => writeOut(folded(text, COLUMNS)),
  data: writeOut,
  err: writeErr,
  colour: isTerminal.out && !process.env.NO_COLOR,
  width: COLUMNS,
  progress: showProgress,
  ask: isTerminal.in && isTerminal.out ? askLine : undefined,
};

const FAULT = 70;

/** Only when started as a program, not when a test imports it. */
if (process.argv[1] && /faintwave(\.mjs)?$/.test(process.argv[1])) {
  try {
    process.exitCode = await run(process.argv.slice(2), processIo);
  } catch (error) {
    const { message, stack } = error as Error;
    const reason = (process.env.FAINTWAVE_STACK ? stack : undefined) ?? message;
    writeErr(`faintwave: ${callProblems.programFault(reason)}\n`);
    process.exitCode = FAULT;
  }
}

import { readFileSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { styleText } from 'node:util';
import { encodingOf } from '../engine/set/encoding.ts';
import { safeJson, safeLines, safeText } from '../engine/units/safe-text.ts';
import { folded } from '../outputs/tables/fold.ts';
import { type Command, InputError, type Io } from './command.ts';
import { calc } from './commands/calc.ts';
import { check } from './commands/check.ts';
import { compare } from './commands/compare.ts';
import { dial } from './commands/dial.ts';
import { listen } from './commands/listen.ts';
import { match } from './commands/match.ts';
import { move } from './commands/move.ts';
import { path } from './commands/path.ts';
import { schema } from './commands/schema.ts';
import { sheets } from './commands/sheets.ts';
import { stations } from './commands/stations.ts';
import { wave } from './commands/wave.ts';

export const COMMANDS: readonly Command[] = [
  path,
  dial,
  listen,
  stations,
  compare,
  match,
  wave,
  move,
  sheets,
  check,
  schema,
  calc,
];

const version = (): string => JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')).version;

/** Run the command line. @returns the exit status: 0 done, 1 a check said no, 2 bad input. */
export async function run(args: readonly string[], io: Io): Promise<number> {
  const [name, ...rest] = args;
  if (name === '--version') {
    io.out(`${version()}\n`);
    return 0;
  }
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    io.out(help(io));
    return name === undefined ? 2 : 0;
  }
  const command = COMMANDS.find((c) => c.name === name);
  if (!command) {
    io.err(
      `faintwave: there is no command "${safeText(name.slice(0, 40))}". Commands: ${COMMANDS.map((c) => c.name).join(', ')}.\n`,
    );
    return 2;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    io.out(commandHelp(command, io));
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
    io.err(`faintwave ${command.name}: this cannot be worked out as described: ${safeLines(message)}\n`);
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

const strong = (text: string, io: Io) => (io.colour ? styleText('bold', text) : text);

function help(io: Io): string {
  const widest = Math.max(...COMMANDS.map((c) => c.name.length));
  return [
    strong('faintwave', io),
    'Plan, build, hear and explain hand-made AM receivers.',
    '',
    'usage: faintwave COMMAND [options]',
    '',
    ...COMMANDS.map((c) => `  ${c.name.padEnd(widest)}  ${c.about}`),
    '',
    'Start here:',
    '  faintwave path examples/medium-wave-galena.json',
    '',
    '"faintwave COMMAND --help" tells more. A SET is a description file; "-" reads standard input.',
    '',
  ].join('\n');
}

function commandHelp(command: Command, io: Io): string {
  const options = command.options ?? [];
  const widest = Math.max(0, ...options.map(([flag]) => flag.length));
  return [
    `usage: faintwave ${command.usage}`,
    '',
    command.about,
    '',
    ...options.map(([flag, meaning]) => `  ${flag.padEnd(widest)}  ${meaning}`),
    ...(options.length ? [''] : []),
    strong('Examples', io),
    ...command.examples.map((e) => `  ${e}`),
    '',
  ].join('\n');
}

const COLUMNS = process.stdout.isTTY ? Math.max(40, process.stdout.columns || 80) : Infinity;

const processIo: Io = {
  out: (text) => process.stdout.write(folded(text, COLUMNS)),
  data: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  colour: process.stdout.isTTY === true && !process.env.NO_COLOR,
  width: COLUMNS,
  async read(file) {
    try {
      if (file !== '-') return textOf(await readFile(file), file);
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
      return textOf(Buffer.concat(chunks), 'the input');
    } catch (error) {
      if (error instanceof InputError) throw error;
      throw new InputError(`cannot read ${file}: ${inWords(error as NodeJS.ErrnoException)}`);
    }
  },
  async write(file, data) {
    try {
      await writeFile(file, data);
    } catch (error) {
      throw new InputError(`cannot write ${file}: ${inWords(error as NodeJS.ErrnoException)}`);
    }
  },
};

function textOf(bytes: Uint8Array, file: string): string {
  const found = encodingOf(bytes);
  if (found.encoding === undefined)
    throw new InputError(`${file}: expected ${found.expected}, received ${found.received} (${found.hint})`);
  return new TextDecoder(found.encoding).decode(bytes);
}

const SAID: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'part of that path is a file, not a folder',
  EISDIR: 'it is a folder, not a file',
  EACCES: 'it is not allowed to you',
  EPERM: 'it is not allowed to you',
  EROFS: 'that disc can only be read',
  ENOSPC: 'the disc is full',
};
/** What the system says of a file, as a person would. */
function inWords({ code, message }: NodeJS.ErrnoException): string {
  return SAID[code ?? ''] ?? message;
}

/** Only when started as a program, not when a test imports it. */
if (process.argv[1] && /faintwave(\.mjs)?$/.test(process.argv[1])) {
  // A reader that closes early (head, less) is no error.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
  process.exitCode = await run(process.argv.slice(2), processIo);
}

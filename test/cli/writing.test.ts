import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  watch,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { Io } from '../../src/cli/command.ts';
import { processFiles } from '../../src/cli/files.ts';
import { run } from '../../src/cli/main.ts';
import { OutputFailed } from '../../src/cli/terminal.ts';
import { memoryIo } from '../support/memory-io.ts';

const PROGRAM = inRoot('bin/faintwave.mjs');
const EXAMPLE = inRoot('examples/medium-wave-galena.json');
const isLinux = process.platform === 'linux';
const faintwave = (args: readonly string[], uid?: number) =>
  spawnSync(process.execPath, [PROGRAM, ...args], { encoding: 'utf8', uid });
/** In this process, on the real disk. */
async function command(args: readonly string[], failing: Partial<Io> = {}) {
  const io = memoryIo();
  const status = await run(args, Object.assign(io, processFiles(), failing));
  return { status, stderr: io.problems };
}
/** Through a shell, for limits and redirections. "$@" is the program. */
const inShell = (script: string, args: readonly string[]) =>
  spawnSync('bash', ['-c', script, 'bash', process.execPath, PROGRAM, ...args], { encoding: 'utf8', maxBuffer: 1e8 });

const base = mkdtempSync(join(tmpdir(), 'writing-'));
afterAll(() => rmSync(base, { recursive: true }));
let counter = 0;
const freshFolder = (): string => {
  const folder = join(base, String(counter++));
  mkdirSync(folder);
  copyFileSync(EXAMPLE, join(folder, 'own.json'));
  writeFileSync(
    join(folder, 'list.csv'),
    'name,kHz,power kW,distance km\nHeron Radio,612,10,40\nStoat Sound,999,1,20\n',
  );
  writeFileSync(join(folder, 'wire.json'), '{"diameter":"0.4 mm","frequency":"1 MHz"}');
  return folder;
};
const NO_STACK = /^ +at |node:internal|\bE[A-Z]{4,}\b/m;

/** Every way a command writes a file named with --out: its arguments without that, and a name for the file. */
const WRITERS: Readonly<Record<string, readonly [args: readonly string[], name: string]>> = {
  listen: [['listen', './own.json', '--seconds', '0.1'], 'new.wav'],
  move: [['move', './own.json', '--to', 'long-wave'], 'new.json'],
  'wave svg': [['wave', './own.json'], 'new.svg'],
  'wave csv': [['wave', './own.json', '--point', 'detector'], 'new.csv'],
  'wave wav': [['wave', './own.json', '--point', 'phones', '--for', '100ms'], 'new.wav'],
  'wave exact svg': [['wave', './own.json', '--exact', '--for', '50us'], 'new.svg'],
  'wave exact csv': [['wave', './own.json', '--exact', '--for', '50us'], 'new.csv'],
  stations: [['stations', './own.json', '--json'], 'new.json'],
  'stations csv': [['stations', './own.json', '--csv'], 'new.csv'],
  'stations import': [['stations', './own.json', '--import', './list.csv'], 'new.json'],
  match: [['match', './own.json'], 'new.json'],
  calc: [['calc', 'wire', './wire.json'], 'new.json'],
  schema: [['schema'], 'new.json'],
};
const within = (folder: string, args: readonly string[]) =>
  args.map((one) => (one.startsWith('./') ? join(folder, one) : one));
const SHEETS = ['sheets', EXAMPLE, '--only', 'dial', '--svg', '--pdf'];

beforeAll(() => {
  // Compiles what has changed, once.
  expect(faintwave(['--version']).status).toBe(0);
}, 120_000);

describe.each(Object.entries(WRITERS))('%s', (_name, [args, name]) => {
  it('writes whole, again over its own kind, and over nothing else', async () => {
    const folder = freshFolder();
    const before = readdirSync(folder);
    const file = join(folder, name);
    const to = (out: string) => command([...within(folder, args), '--out', out]);
    expect(await to(file)).toMatchObject({ status: 0 });
    const written = readFileSync(file);
    expect(written.length).toBeGreaterThan(10);
    expect((await to(file)).status).toBe(0);
    expect(readFileSync(file)).toEqual(written);

    if (isLinux) {
      symlinkSync('/dev/full', join(folder, `full-${name}`));
      const full = await to(join(folder, `full-${name}`));
      expect([full.status, full.stderr]).toEqual([2, expect.stringMatching(/the disk is full.*Free some space/)]);
      expect(full.stderr).not.toMatch(NO_STACK);
      rmSync(join(folder, `full-${name}`));
    }

    writeFileSync(file, 'dear diary');
    const refused = await to(file);
    expect([refused.status, refused.stderr]).toEqual([2, expect.stringMatching(/holds other text.*name another/)]);
    expect(readFileSync(file, 'utf8')).toBe('dear diary');
    rmSync(file);
    mkdirSync(file);
    const onFolder = await to(file);
    expect([onFolder.status, onFolder.stderr]).toEqual([2, expect.stringMatching(/it is a folder.*add a file name/)]);
    const nowhere = await to(join(folder, 'none', name));
    expect([nowhere.status, nowhere.stderr]).toEqual([2, expect.stringMatching(/no such folder; make it first/)]);
    for (const { stderr } of [refused, onFolder, nowhere]) expect(stderr).not.toMatch(NO_STACK);
    expect(readdirSync(folder).toSorted()).toEqual([...before, name].toSorted());
  });

  it('never writes over what it reads, by whatever name', async () => {
    const folder = freshFolder();
    for (const input of args.filter((one) => one.startsWith('./')))
      for (const [k, link] of [linkSync, symlinkSync].entries()) {
        // Under a name with the ending that the command asks for.
        const alias = join(folder, `${input.slice(2)}-${k}-${name}`);
        link(join(folder, input), alias);
        const before = readFileSync(join(folder, input));
        const { status, stderr } = await command([...within(folder, args), '--out', alias]);
        expect([input, status, stderr]).toEqual([input, 2, expect.stringMatching(/is the same file as .*--out/)]);
        expect(readFileSync(join(folder, input))).toEqual(before);
      }
  });
});

describe.runIf(isLinux)('a limit on the size of files', () => {
  it.each(['listen', 'schema'])('of any height leaves what %s wrote before as it was', async (which) => {
    const [args, name] = WRITERS[which];
    const folder = freshFolder();
    const all = [...within(folder, args), '--out', join(folder, name)];
    expect((await command(all)).status).toBe(0);
    const old = readFileSync(join(folder, name));
    const before = readdirSync(folder);
    const blocks = Math.ceil(old.length / 1024);
    for (const limit of [0, Math.floor(blocks / 2), blocks - 1]) {
      const { status, stderr } = inShell(`ulimit -f ${limit} && "$@"`, all);
      expect([limit, status, stderr]).toEqual([limit, 2, expect.stringMatching(/larger than the limit.*unchanged/)]);
      expect(stderr).not.toMatch(NO_STACK);
      expect(readFileSync(join(folder, name))).toEqual(old);
      expect(readdirSync(folder)).toEqual(before);
    }
  });

  it('leaves no folder of sheets half filled', () => {
    const folder = freshFolder();
    const { status, stderr } = inShell('ulimit -f 1 && "$@"', [...SHEETS, '--out', join(folder, 'c/d')]);
    expect([status, stderr]).toEqual([2, expect.stringMatching(/larger than the limit/)]);
    expect(existsSync(join(folder, 'c'))).toBe(false);
  });
});

describe('faintwave sheets', () => {
  it('makes the folder', async () => {
    const folder = freshFolder();
    expect((await command([...SHEETS, '--out', join(folder, 'a/b')])).status).toBe(0);
    expect(readdirSync(join(folder, 'a/b')).toSorted()).toEqual(['01-dial-1.svg', '01-dial-2.svg', 'sheets.pdf']);
  });

  it.runIf(isLinux)('ends where no folder can be made', async () => {
    for (const [out, words] of [
      ['/proc/nope/sheets', /cannot make the folder \/proc\/nope\/sheets: .*name another with --out/],
      ['/dev/null/sheets', /cannot make the folder .*is a file, not a folder/],
      [join(freshFolder(), 'own.json'), /cannot make the folder .*a file of that name/],
    ] as const) {
      const { status, stderr } = await command([...SHEETS, '--out', out]);
      expect([out, status, stderr]).toEqual([out, 2, expect.stringMatching(words)]);
      expect(stderr).not.toMatch(NO_STACK);
    }
  });
});

describe.runIf(isLinux)('a read-only folder', () => {
  // The superuser may write anywhere: then as somebody else, if that one may read the program.
  const uid = process.getuid?.() === 0 ? 65_534 : undefined;
  it.skipIf(uid !== undefined && faintwave(['--version'], uid).status !== 0)('is left as it is', () => {
    const folder = freshFolder();
    chmodSync(base, 0o755);
    chmodSync(folder, 0o555);
    for (const name of ['new.json', 'own.json']) {
      const { status, stderr } = faintwave(['move', EXAMPLE, '--to', 'long-wave', '--out', join(folder, name)], uid);
      expect([status, stderr]).toEqual([2, expect.stringMatching(/permission denied; name a place where you may/)]);
    }
    chmodSync(folder, 0o755);
    expect(readdirSync(folder).toSorted()).toEqual(['list.csv', 'own.json', 'wire.json']);
    expect(readFileSync(join(folder, 'own.json'))).toEqual(readFileSync(EXAMPLE));
  });
});

describe('the standard output', () => {
  const PRINTERS = [
    ['--version'],
    ['--help'],
    ['path', '--help'],
    ['path', EXAMPLE],
    ['path', EXAMPLE, '--json'],
    ['dial', EXAMPLE],
    ['dial', EXAMPLE, '--json'],
    ['stations', EXAMPLE],
    ['stations', EXAMPLE, '--csv'],
    ['compare', EXAMPLE],
    ['match', EXAMPLE],
    ['wave', EXAMPLE],
    ['wave', EXAMPLE, '--exact'],
    ['move', EXAMPLE, '--to', 'long-wave'],
    ['check', EXAMPLE],
    ['check', EXAMPLE, '--json'],
    ['schema'],
  ];
  it.each(PRINTERS.map((args) => [args]))('full or closed ends %j with a status', async (args) => {
    for (const [code, status, words] of [
      ['ENOSPC', 3, /^faintwave: cannot write to the standard output: the disk is full; [^\n]*\n$/],
      ['EPIPE', 141, /^$/],
    ] as const) {
      const fail = (): never => {
        throw new OutputFailed(Object.assign(new Error(code), { code }));
      };
      const outcome = await command(args, { out: fail, data: fail });
      expect([code, outcome.status]).toEqual([code, status]);
      expect(outcome.stderr.replace(/^note: .*\n/gm, '')).toMatch(words);
    }
  });

  it.runIf(isLinux)('in a shell', () => {
    const full = inShell('"$@" > /dev/full', ['path', EXAMPLE, '--json']);
    expect([full.status, full.stderr]).toEqual([3, expect.stringMatching(/: the disk is full; [^\n]*\n$/)]);
    const closed = inShell('exec 3> >(:); wait $!; "$@" >&3; echo "status $?"', ['path', EXAMPLE]);
    expect([closed.stdout, closed.stderr]).toEqual(['status 141\n', '']);
  });

  it.runIf(isLinux)('gives everything to a slow reader', () => {
    const whole = inShell('"$@"', ['path', EXAMPLE, '--json']).stdout;
    expect(whole.length).toBeGreaterThan(70_000);
    expect(inShell('"$@" | { sleep 0.3; cat; }', ['path', EXAMPLE, '--json']).stdout).toBe(whole);
  });

  it.runIf(isLinux)('problems that cannot be written either change nothing of the status', () => {
    expect(inShell('"$@" 2> /dev/full', ['path', 'none.json']).status).toBe(2);
  });
});

describe.runIf(process.platform !== 'win32')('interruption', () => {
  it('leaves no part of a file, whenever it comes', async () => {
    const cwd = freshFolder();
    const before = readdirSync(cwd).toSorted();
    const started = (seconds: string) => {
      const args = [PROGRAM, 'listen', 'own.json', '--seconds', seconds, '--out', 'new.wav'];
      const child = spawn(process.execPath, args, { cwd, stdio: 'ignore' });
      const ended = new Promise((done) => child.on('exit', (code, signal) => done(signal ?? code)));
      return { child, ended };
    };
    // While it computes, or even before that.
    for (const wait of [300, 2000]) {
      const { child, ended } = started('600');
      await new Promise((done) => setTimeout(done, wait));
      child.kill('SIGINT');
      expect(await ended).toBe('SIGINT');
      expect(readdirSync(cwd).toSorted()).toEqual(before);
    }
    // As soon as anything stands beside the file: it may have been done just before, and is whole then.
    const { child, ended } = started('5');
    const watcher = watch(cwd, () => child.kill('SIGINT'));
    await ended;
    watcher.close();
    const file = join(cwd, 'new.wav');
    expect(readdirSync(cwd).toSorted()).toEqual(existsSync(file) ? [...before, 'new.wav'].toSorted() : before);
    if (existsSync(file)) expect(readFileSync(file).length).toBe(44 + 5 * 48_000 * 2);
  });
});

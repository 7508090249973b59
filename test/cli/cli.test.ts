import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { CALCULATIONS } from '../../src/cli/calc/index.ts';
import { COMMANDS } from '../../src/cli/main.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const faintwave = (args: readonly string[], input = '') => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'bin/faintwave.mjs'), ...args], {
    input,
    encoding: 'utf8',
    cwd: root,
    maxBuffer: 1e8,
  });
  return { status, stdout, stderr };
};
const example = 'examples/medium-wave-galena.json';

beforeAll(() => {
  // Compiles what has changed, once.
  expect(faintwave(['--version']).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
});

describe('the command line', () => {
  it('answers first, in words, then in figures with units', () => {
    const { status, stdout } = faintwave(['path', example]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/You would hear .* kHz: quiet/);
    expect(stdout).toMatch(/Field at the site +\S+ mV\/m/);
    expect(stdout).toMatch(/What would help most\n {2}\S.*: \+\d/);
    expect(stdout).toMatch(/power lines/);
    expect(stdout).toMatch(
      /Limits of the programme after the detector\n {2}Treble loss in the tuned circuit: .*\n[\s\S]*at direct current/,
    );
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colour outside a terminal
    expect(stdout).not.toMatch(/\u001b|NaN|undefined/);
  });

  it('compares detectors: law, loading, best tap and load, and what each is good for', () => {
    const { status, stdout } = faintwave(['compare', example, '--station', '909']);
    expect(status).toBe(0);
    for (const head of ['direct voltage', 'input resistance', 'loading loss', 'linear above', 'best tap', 'best load'])
      expect(stdout).toContain(head);
    expect(stdout).toMatch(/Silicon diode .*: From a faint carrier .*linear detection above [\d.]+ V/);
  });

  it('finds a station by name or frequency, and says which there are', () => {
    expect(faintwave(['path', example, '--station', 'lantern']).stdout).toMatch(/^The Lantern Service, 909 kHz/m);
    expect(faintwave(['path', example, '--station', '603']).stdout).toMatch(/^Saltmarsh Radio, 603 kHz/m);
    const none = faintwave(['path', example, '--station', 'nobody']);
    expect([none.status, none.stderr]).toEqual([
      2,
      expect.stringMatching(/--station: expected .*Saltmarsh.*, got "nobody"/),
    ]);
  });

  it('takes one file: what else is written is not passed over', () => {
    for (const command of ['path', 'dial', 'listen', 'stations', 'compare', 'match', 'wave', 'move', 'sheets']) {
      const needed = command === 'sheets' ? ['--out', '/nowhere'] : command === 'move' ? ['--to', 'long-wave'] : [];
      const more = faintwave([command, example, 'the', 'lantern', ...needed]);
      expect([command, more.status, more.stdout]).toEqual([command, 2, '']);
      expect(more.stderr).toContain(`expected one file, got "${example}", "the", "lantern"`);
    }
  });

  it('gives the dial, and everything as data', () => {
    expect(faintwave(['dial', example]).stdout).toMatch(/The dial covers \d+ to \d+ kHz/);
    const { stations } = JSON.parse(faintwave(['path', example, '--json']).stdout);
    expect(stations[0].path).toHaveLength(7);
  });

  it('checks files: 0 when right, 2 with every problem when not', () => {
    const fine = faintwave(['check', example]);
    expect([fine.status, fine.stderr]).toEqual([0, '']);
    const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
    const file = join(folder, 'bad.json');
    writeFileSync(
      file,
      readFileSync(join(root, example), 'utf8').replace('"turns": 56', '"turns": -3').replace('"500 pF"', '"5 m"'),
    );
    const bad = faintwave(['check', file]);
    expect(bad.status).toBe(2);
    expect(bad.stderr).toMatch(/coils\[0\]\.turns: .*-3/);
    expect(bad.stderr).toMatch(/tuning\.maximum: .*"5 m"/);
    expect(faintwave(['path', file]).status).toBe(2);
    expect(faintwave(['path', join(folder, 'none.json')]).stderr).toMatch(/there is no such file/);
    expect(faintwave(['check', '-'], '{"format":').stderr).toMatch(/cut short/);
  });

  it('says in words what is wrong with a file, and shows no stack', () => {
    const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
    for (const [args, said] of [
      [['path', folder], /cannot read .*it is a folder/],
      [['calc', 'coil', folder], /cannot read .*it is a folder/],
      [['move', example, '--to', 'long-wave', '--out', join(folder, 'none', 'a.json')], /cannot write .*no such/],
      [['wave', example, '--out', join(folder, 'none', 'a.svg')], /cannot write .*no such/],
      [['listen', example, '--seconds', '0.1', '--out', join(folder, 'none', 'a.wav')], /cannot write .*no such/],
    ] as const) {
      const { status, stderr } = faintwave(args);
      expect([args[0], status, stderr]).toEqual([args[0], 2, expect.stringMatching(said)]);
      expect(stderr).not.toMatch(/^ +at |node:|E[A-Z]{4,}/m);
    }
  });

  it('lets no name from a file steer the terminal', () => {
    const hostile = readFileSync(join(root, example), 'utf8')
      .replaceAll('Saltmarsh', String.raw`\u001b[2JSalt`)
      .replace('Breadboard', String.raw`\u001b[31mBoard`);
    for (const args of [
      ['path', '-'],
      ['path', '-', '--station', 'nobody'],
      ['dial', '-'],
      ['check', '-'],
      ['stations', '-'],
    ]) {
      const { stdout, stderr } = faintwave(args, hostile);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: the very thing that must not come through
      expect(`${args}: ${stdout}${stderr}`).not.toMatch(/\u001b/);
      expect(stdout + stderr).toMatch(/Salt|Board/);
    }
  });

  it('prints the published schema', () => {
    expect(JSON.parse(faintwave(['schema']).stdout)).toEqual(
      JSON.parse(readFileSync(join(root, 'schema/faintwave-set-1.schema.json'), 'utf8')),
    );
  });

  it('helps, with examples, and refuses what it does not know', () => {
    for (const command of COMMANDS) {
      const { status, stdout } = faintwave([command.name, '--help']);
      expect(status).toBe(0);
      expect(stdout).toMatch(/^usage: faintwave /);
      expect(stdout).toMatch(/Examples\n {2}\S/);
    }
    expect(faintwave(['--help']).stdout).toMatch(/faintwave path examples\//);
    expect(faintwave(['pathh']).status).toBe(2);
    expect(faintwave(['path', example, '--bogus']).status).toBe(2);
  });
});

describe('calc', () => {
  it('runs every calculation on its own example', () => {
    for (const { name, example: input } of CALCULATIONS) {
      if (name === 'reception') continue;
      const { status, stdout, stderr } = faintwave(['calc', name], JSON.stringify(input));
      expect([name, status, stderr]).toEqual([name, 0, '']);
      expect(Array.isArray(JSON.parse(stdout).warnings), name).toBe(true);
    }
  });

  it('answers an array with an array in order, and reads a file', () => {
    const rows = [20, 40].map((turns) => ({
      shape: 'solenoid',
      turns,
      meanDiameter: '50 mm',
      pitch: '0.5 mm',
      wire: { diameter: '26 SWG' },
    }));
    const answers = JSON.parse(faintwave(['calc', 'coil'], JSON.stringify(rows)).stdout);
    expect(answers).toHaveLength(2);
    expect(answers[1].inductance.value).toBeGreaterThan(answers[0].inductance.value);
    expect(answers[0].inductance.unit).toBe('H');
  });

  it('takes a whole description', () => {
    const answer = JSON.parse(faintwave(['calc', 'reception', example]).stdout);
    expect(answer.stations[0].path[0]).toMatchObject({ id: 'field', unit: 'V/m' });
    expect(answer.warnings).toBeInstanceOf(Array);
  });

  it('names every problem with its path and exits with 2', () => {
    const bad = faintwave(
      ['calc', 'coil'],
      '{"shape":"solenoid","turns":-2,"meanDiameter":"5 pF","pitch":"1 mm","wire":{"diameter":"0.4 mm"}}',
    );
    expect(bad.status).toBe(2);
    expect(bad.stderr).toMatch(/turns/);
    expect(bad.stderr).toMatch(/meanDiameter: .*length/);
    expect(faintwave(['calc', 'nothing'], '{}').stderr).toMatch(/coil, coupling, wire/);
    expect(faintwave(['calc', 'coil'], 'not json').status).toBe(2);
  });
});

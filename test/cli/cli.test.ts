import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { CALCULATIONS } from '../../src/cli/calc/index.ts';
import { COMMANDS } from '../../src/cli/main.ts';
import { ran, spawned } from '../support/command-line.ts';

const example = 'examples/medium-wave-galena.json';

describe('as a program of its own', () => {
  it('says its version', () => {
    expect(spawned(['--version']).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  // So that the tests below may run it in this process.
  it.each<[string, string[], string]>([
    ['words for people', ['path', example], ''],
    ['data, and what comes through its standard input', ['dial', '-', '--json'], readFileSync(inRoot(example), 'utf8')],
    ['help', ['path', '--help'], ''],
    ['a calculation', ['calc', 'coil'], JSON.stringify(CALCULATIONS.find(({ name }) => name === 'coil')!.example)],
    ['a file that is not there', ['check', 'none.json'], ''],
    ['a file that is cut short', ['check', '-'], '{"format":'],
    ['a call that is wrong', ['path', example, '--bogus'], ''],
    ['an answer that is no', ['stations', '--import', '-'], 'nothing here'],
  ])('prints what it does in another, with its exit status: %s', async (_, args, input) => {
    const outcome = spawned(args, input);
    expect(outcome.stdout + outcome.stderr).not.toBe('');
    expect(outcome).toEqual(await ran(args, input));
  });
});

describe('the command line', () => {
  it('answers first, in words, then in figures with units', async () => {
    const { status, stdout } = await ran(['path', example]);
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

  it('compares detectors: law, loading, best tap and load, and what each is good for', async () => {
    const { status, stdout } = await ran(['compare', example, '--station', '909']);
    expect(status).toBe(0);
    for (const head of ['direct voltage', 'input resistance', 'loading loss', 'linear above', 'best tap', 'best load'])
      expect(stdout).toContain(head);
    expect(stdout).toMatch(/Silicon diode .*: From a faint carrier .*linear detection above [\d.]+ V/);
  });

  it('compares sets: what differs in words with its cause, paths, dials and parts; data say the same', async () => {
    const other = JSON.parse(readFileSync(example, 'utf8'));
    other.arrangement.detectorTap = 50;
    other.name = 'Tapped higher';
    const file = join(mkdtempSync(join(tmpdir(), 'faintwave-')), 'other.json');
    writeFileSync(file, JSON.stringify(other));
    const { status, stdout } = await ran(['compare', example, file, '--station', '909']);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^B is .* than A.*, mostly because of the higher detector tap\.$/m);
    expect(stdout).toContain('the higher detector tap (50 turns in place of 18 turns)');
    for (const head of ['A  Breadboard medium-wave set', 'B  Tapped higher', 'Path', 'Stations', 'Parts'])
      expect(stdout).toContain(head);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colour outside a terminal
    expect(stdout).not.toMatch(/\u001b|NaN|undefined/);
    const data = JSON.parse((await ran(['compare', example, file, '--station', '909', '--json'])).stdout);
    expect(stdout).toContain(data.sets[1].difference.sentence);
    const sheet = file.replace('.json', '.svg');
    await ran(['compare', example, file, '--sheet', sheet, '--paper', 'letter']);
    expect(readFileSync(sheet, 'utf8')).toMatch(/^<svg[^>]*width="215\.9mm" height="279\.4mm"/);
    const banded = await ran(['compare', example, 'examples/two-band.json', '--station', '909']);
    expect(banded.stdout).toMatch(/^B {2}Two-band breadboard set, on medium wave$/m);
    const alone = await ran(['compare', example, '--sheet', sheet]);
    expect([alone.status, alone.stderr]).toEqual([2, expect.stringContaining('--sheet goes with two sets or more')]);
    const five = await ran(['compare', ...Array.from({ length: 5 }, () => example)]);
    expect([five.status, five.stderr]).toEqual([2, expect.stringContaining('expected up to 4 sets to compare, got 5')]);
  });

  it('finds a station by name or frequency, and says which there are', async () => {
    expect((await ran(['path', example, '--station', 'lantern'])).stdout).toMatch(/^The Lantern Service, 909 kHz/m);
    expect((await ran(['path', example, '--station', '603'])).stdout).toMatch(/^Saltmarsh Radio, 603 kHz/m);
    const none = await ran(['path', example, '--station', 'nobody']);
    expect([none.status, none.stderr]).toEqual([
      2,
      expect.stringMatching(/--station: expected .*Saltmarsh.*, got "nobody"/),
    ]);
  });

  it('takes one file: what else is written is not passed over', async () => {
    for (const command of ['path', 'dial', 'listen', 'stations', 'match', 'wave', 'move', 'sheets']) {
      const needed = command === 'sheets' ? ['--out', '/nowhere'] : command === 'move' ? ['--to', 'long-wave'] : [];
      const more = await ran([command, example, 'the', 'lantern', ...needed]);
      expect([command, more.status, more.stdout]).toEqual([command, 2, '']);
      expect(more.stderr).toContain(`expected one file, got "${example}", "the", "lantern"`);
    }
  });

  it('gives the dial, and everything as data', async () => {
    expect((await ran(['dial', example])).stdout).toMatch(/The dial covers \d+–\d+\skHz/);
    const { stations } = JSON.parse((await ran(['path', example, '--json'])).stdout);
    expect(stations[0].path).toHaveLength(7);
  });

  it('checks files: 0 when right, 2 with every problem when not', async () => {
    const fine = await ran(['check', example]);
    expect([fine.status, fine.stderr]).toEqual([0, '']);
    const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
    const file = join(folder, 'bad.json');
    writeFileSync(
      file,
      readFileSync(inRoot(example), 'utf8').replace('"turns": 56', '"turns": -3').replace('"500 pF"', '"5 m"'),
    );
    const bad = await ran(['check', file]);
    expect(bad.status).toBe(2);
    expect(bad.stderr).toMatch(/coils\[0\]\.turns: .*-3/);
    expect(bad.stderr).toMatch(/tuning\.maximum: .*"5 m"/);
    expect((await ran(['path', file])).status).toBe(2);
    expect((await ran(['path', join(folder, 'none.json')])).stderr).toMatch(/there is no such file/);
    expect((await ran(['check', '-'], '{"format":')).stderr).toMatch(/cut short/);
  });

  it('says in words what is wrong with a file, and shows no stack', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
    for (const [args, said] of [
      [['path', folder], /cannot read .*it is a folder/],
      [['calc', 'coil', folder], /cannot read .*it is a folder/],
      [['move', example, '--to', 'long-wave', '--out', join(folder, 'none', 'a.json')], /cannot write .*no such/],
      [['wave', example, '--out', join(folder, 'none', 'a.svg')], /cannot write .*no such/],
      [['listen', example, '--seconds', '0.1', '--out', join(folder, 'none', 'a.wav')], /cannot write .*no such/],
    ] as const) {
      const { status, stderr } = await ran(args);
      expect([args[0], status, stderr]).toEqual([args[0], 2, expect.stringMatching(said)]);
      expect(stderr).not.toMatch(/^ +at |node:|E[A-Z]{4,}/m);
    }
  });

  it('lets no name from a file steer the terminal', async () => {
    const hostile = readFileSync(inRoot(example), 'utf8')
      .replaceAll('Saltmarsh', String.raw`\u001b[2JSalt`)
      .replace('Breadboard', String.raw`\u001b[31mBoard`);
    for (const args of [
      ['path', '-'],
      ['path', '-', '--station', 'nobody'],
      ['dial', '-'],
      ['check', '-'],
      ['stations', '-'],
    ]) {
      const { stdout, stderr } = await ran(args, hostile);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: the very thing that must not come through
      expect(`${args}: ${stdout}${stderr}`).not.toMatch(/\u001b/);
      expect(stdout + stderr).toMatch(/Salt|Board/);
    }
  });

  it('prints the published schema', async () => {
    expect(JSON.parse((await ran(['schema'])).stdout)).toEqual(
      JSON.parse(readFileSync(inRoot('schema/faintwave-set-1.schema.json'), 'utf8')),
    );
  });

  it('helps, with examples, and refuses what it does not know', async () => {
    for (const command of COMMANDS) {
      const { status, stdout } = await ran([command.name, '--help']);
      expect(status).toBe(0);
      expect(stdout).toMatch(/^usage: faintwave /);
      expect(stdout).toMatch(/Examples\n {2}\S/);
    }
    expect((await ran(['--help'])).stdout).toMatch(/faintwave path examples\//);
    expect((await ran(['pathh'])).status).toBe(2);
    expect((await ran(['path', example, '--bogus'])).status).toBe(2);
  });
});

describe('calc', () => {
  it('runs every calculation on its own example', async () => {
    for (const { name, example: input } of CALCULATIONS) {
      if (name === 'reception') continue;
      const { status, stdout, stderr } = await ran(['calc', name], JSON.stringify(input));
      expect([name, status, stderr]).toEqual([name, 0, '']);
      expect(Array.isArray(JSON.parse(stdout).warnings), name).toBe(true);
    }
  });

  it('answers an array with an array in order, and reads a file', async () => {
    const rows = [20, 40].map((turns) => ({
      shape: 'solenoid',
      turns,
      meanDiameter: '50 mm',
      pitch: '0.5 mm',
      wire: { diameter: '26 SWG' },
    }));
    const answers = JSON.parse((await ran(['calc', 'coil'], JSON.stringify(rows))).stdout);
    expect(answers).toHaveLength(2);
    expect(answers[1].inductance.value).toBeGreaterThan(answers[0].inductance.value);
    expect(answers[0].inductance.unit).toBe('H');
  });

  it('takes a whole description', async () => {
    const answer = JSON.parse((await ran(['calc', 'reception', example])).stdout);
    expect(answer.stations[0].path[0]).toMatchObject({ id: 'field', unit: 'V/m' });
    expect(answer.warnings).toBeInstanceOf(Array);
  });

  it('names every problem with its path and exits with 2', async () => {
    const bad = await ran(
      ['calc', 'coil'],
      '{"shape":"solenoid","turns":-2,"meanDiameter":"5 pF","pitch":"1 mm","wire":{"diameter":"0.4 mm"}}',
    );
    expect(bad.status).toBe(2);
    expect(bad.stderr).toMatch(/turns/);
    expect(bad.stderr).toMatch(/meanDiameter: .*length/);
    expect((await ran(['calc', 'nothing'], '{}')).stderr).toMatch(/coil, coupling, wire/);
    expect((await ran(['calc', 'coil'], 'not json')).status).toBe(2);
  });
});

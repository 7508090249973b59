import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Io } from '../../src/cli/command.ts';
import { measure } from '../../src/cli/commands/measure.ts';
import { MEASUREMENTS } from '../../src/engine/index.ts';
import { gaussian, uniform } from '../../src/engine/numerics/random.ts';
import { writeWav } from '../../src/outputs/audio/index.ts';
import { memoryIo } from '../support/memory-io.ts';
import { coilOf, frequencies, onePort } from '../support/simulated-sweeps.ts';

const example = 'examples/medium-wave-galena.json';
const readings = 'examples/readings/medium-wave-galena.json';

/** The command run here, and what it printed; files that are not given are read from the folder. */
async function run(args: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const io: Io & { text: string; err_: string; wrote?: string } = {
    text: '',
    err_: '',
    out(text) {
      this.text += text;
    },
    data(text) {
      this.text += text;
    },
    err(text) {
      this.err_ += text;
    },
    colour: false,
    width: Number.POSITIVE_INFINITY,
    read: async (file) => files[file] ?? readFileSync(file, 'utf8'),
    open: () => Promise.reject(new Error('not here')),
    checkTarget: async () => {},
    async write(_, data) {
      this.wrote = String(data);
    },
    writeInto: async () => [],
    writeSeries: async () => {},
    progress() {},
  };
  const status = await measure.run(args, io);
  return { status, text: io.text, wrote: io.wrote };
}

it('gives every figure with its range, the calculated one beside it, and all of them together', async () => {
  const { text } = await run([example, readings]);
  expect(text).toMatch(/Dial readings, main, 2026-11-21\n {2}Inductance of the coil: [\d.]+ µH \([\d.]+–[\d.]+\)/);
  expect(text).toMatch(/calculated .*; measured [\d.]+ % (above|below) the calculated value, [\d.]+ standard errors/);
  expect(text).toMatch(/All readings together/);
  expect(text).toMatch(/What to measure next\n {2}\S/);
  expect(text).not.toMatch(/NaN|undefined/);
});

it('puts them into the description, from which the set is then read with the readings kept', async () => {
  const { wrote } = await run([example, readings, '--use', '--out', 'measured.json']);
  const written = JSON.parse(wrote!);
  expect(written.readings).toHaveLength(5);
  expect(written.coils[0]).toMatchObject({
    turns: 56,
    measured: { inductance: { method: 'dial', date: '2026-11-21' } },
  });
  expect(written.earth.measured.resistance.value).toMatch(/Ω$/);
  const again = await run(['measured.json', '--json'], { 'measured.json': wrote! });
  const { figures, together } = JSON.parse(again.text);
  const inductance = figures.find((one: { property: string }) => one.property === 'coil.inductance');
  expect(inductance.agreement.standardErrors).toBeDefined();
  expect(together.figures.length).toBeGreaterThan(10);
  // The readings are all kept: taken again with nothing new they say the same.
  const whole = together.figures.find((one: { property: string }) => one.property === 'coil.inductance').after.value;
  expect(whole / inductance.measured.value).toBeCloseTo(1, 3);
});

it('says what to measure next as after these readings, used or not', async () => {
  const next = (text: string) => text.slice(text.indexOf('What to measure next'));
  const { wrote } = await run([example, readings, '--use', '--out', 'measured.json']);
  const before = next((await run([example])).text);
  const beside = next((await run([example, readings])).text);
  expect(beside).toBe(next((await run(['measured.json'], { 'measured.json': wrote! })).text));
  expect(beside).not.toBe(before);
});

it('without readings: what is measured already, and what to measure next', async () => {
  const { text, status } = await run([example]);
  expect(status).toBe(0);
  expect(text).toMatch(/Nothing is measured in this description/);
  expect(text).toMatch(/range of the (level at the ear|place on the dial) .* → /);
});

it('names every problem of readings at once: with the line of a table, and where nothing follows', async () => {
  const bad = '# kind: resonance\ncapacitance [pF],frequency [kHz]\n100,l022\n220,704\nx,579\n330,550\n';
  await expect(run([example, 'bad.csv'], { 'bad.csv': bad })).rejects.toThrow(
    /bad\.csv has 2 problems:\n {2}line 3, points\[0\]\.frequency: expected .*\n {2}line 5, points\[2\]\.capacitance: expected/,
  );
});

it('reads the example table', async () => {
  const { text } = await run([example, 'examples/readings/main-coil-resonance.csv']);
  expect(text).toMatch(/Resonance with known capacitors, main, 2026-11-20/);
});

it('says how each kind of measurement is made, with what can hurt', async () => {
  for (const kind of ['value', ...Object.keys(MEASUREMENTS)]) {
    const { status, text } = await run([example, '--how', kind]);
    expect(status).toBe(0);
    expect(text, kind).toMatch(/\n {2}1\. .*\n[\s\S]*\nWrite down .*\.\nTrap: .*\.\n/);
    expect(text).not.toMatch(/NaN|undefined/);
  }
  expect((await run([example, '--how', 'earth-electrodes'])).text).toMatch(/Cautions\n[\s\S]*gas pipe/);
  const card = JSON.parse((await run([example, '--how', 'dial', '--json'])).text);
  expect(card).toMatchObject({ kind: 'dial', equipment: ['set', 'ears', 'station'] });
  expect(card.steps.length).toBeGreaterThan(2);
  await expect(run([example, '--how', 'guess'])).rejects.toThrow(/--how: expected value, .*dial.*got "guess"/);
});

it('readings of a coil name it where a band switch has one for each band', async () => {
  const value = (coil?: string) =>
    JSON.stringify({
      format: 'faintwave-readings/1',
      measurements: [{ kind: 'value', of: 'coil.inductance', value: '2.1 mH', coil }],
    });
  const twoBand = 'examples/two-band.json';
  const nameless = run([twoBand, 'readings.json'], { 'readings.json': value() });
  await expect(nameless).rejects.toThrow(/measurements\[0\]\.coil: expected the name of a coil \("medium", "long"\)/);
  expect((await run([twoBand, 'readings.json'], { 'readings.json': value('long') })).text).toMatch(/, long\n/);
});

/** Run with real files of instruments in a folder. */
async function runOn(files: Readonly<Record<string, string | Uint8Array>>, args: readonly string[]) {
  const folder = mkdtempSync(join(tmpdir(), 'readings-'));
  try {
    for (const [name, data] of Object.entries(files)) writeFileSync(join(folder, name), data);
    const io = memoryIo();
    await measure.run([example, ...args.map((arg) => (arg in files ? join(folder, arg) : arg))], io);
    return io.printed + io.dataPrinted;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const [RING, RING_Q, RATE] = [600e3, 60, 6e6];
const ringing = Array.from({ length: 3000 }, (_, i) => {
  const t = (i - 300) / RATE;
  return t < 0 ? 0 : 0.8 * Math.exp((-Math.PI * RING * t) / RING_Q) * Math.cos(2 * Math.PI * RING * t);
});
const wav = () => writeWav([Float32Array.from(ringing)], { rate: RATE, bits: 24 });
const table = `s,V\n${ringing.map((volts, i) => `${i / RATE},${volts}`).join('\n')}\n`;
const sweep = onePort(coilOf(220e-6, 7e-12, 10), frequencies(150e3, 1.6e6, 61), {
  noise: 1e-4,
  normal: gaussian(uniform(2)),
});

it('reads what an instrument wrote, by the name of its file: WAV, table of an oscilloscope, Touchstone', async () => {
  const q = /Q of the coil at 600 kHz: 60(\.\d+)? \(/;
  expect(await runOn({ 'ring.wav': wav() }, ['ring.wav', '--coil', 'main'])).toMatch(q);
  expect(await runOn({ 'ring.csv': table }, ['ring.csv', '--kind', 'decay-record', '--coil', 'main'])).toMatch(q);
  const coil = /Coil by network analyser, main\n {2}Inductance of the coil: 2[12]\d(\.\d+)? µH/;
  expect(await runOn({ 'coil.s1p': sweep }, ['coil.s1p', '--kind', 'analyser-coil', '--coil', 'main'])).toMatch(coil);
  await expect(runOn({ 'coil.s1p': sweep }, ['coil.s1p'])).rejects.toThrow(
    /by --kind \(analyser-coil, .*analyser-peak/,
  );
  await expect(runOn({ 'coil.s1p': sweep }, ['coil.s1p', '--kind', 'coil'])).rejects.toThrow(
    /--kind: expected value, /,
  );
});

it('reads files that readings name, and names every problem with them and with the rest at once', async () => {
  const readings = (...measurements: object[]) => JSON.stringify({ format: 'faintwave-readings/1', measurements });
  const named = readings(
    { kind: 'analyser-coil', coil: 'main', file: 'coil.s1p' },
    { kind: 'decay', coil: 'main', samples: 'ring.wav' },
    { kind: 'decay-record', coil: 'main', record: 'ring.csv' },
  );
  const files = { 'coil.s1p': sweep, 'ring.wav': wav(), 'ring.csv': table };
  const text = await runOn({ 'readings.json': named, ...files }, ['readings.json']);
  expect(text).toMatch(/Coil by network analyser[\s\S]*Decay of an oscillation[\s\S]*Decay from a recording/);
  const wrong = readings(
    { kind: 'analyser-coil', coil: 'mian', file: 'gone.s1p' },
    { kind: 'audibility', station: 'Nowhere', impedance: '10 kΩ', phase: '50°', trials: [{ shunt: '1 pF' }] },
  );
  const refused = await runOn({ 'wrong.json': wrong }, ['wrong.json']).catch((error: Error) => error.message);
  for (const problem of [
    /measurements\[0\]\.file: cannot read .*gone\.s1p/,
    /measurements\[0\]\.coil: expected the name of a coil \("main"\), got "mian"/,
    /measurements\[1\]\.station: expected/,
    /measurements\[1\]\.trials\[0\]\.shunt: expected/,
  ])
    expect(refused).toMatch(problem);
});

it('tells a sweep from other text, however many marks of a comment stand in it', async () => {
  const marks = '! '.repeat(100_000);
  await expect(run([example, 'marks.txt'], { 'marks.txt': `${marks}x` })).rejects.not.toThrow(/network analyser/);
  const sweep = `${marks}\n\n! a comment\r\n# MHz S RI R 50\n1 0 0\n`;
  await expect(run([example, 'sweep.txt'], { 'sweep.txt': sweep })).rejects.toThrow(/network analyser/);
});

it('a misread station is named with what stands there instead', async () => {
  const { measurements } = JSON.parse(readFileSync(readings, 'utf8'));
  const dial = structuredClone(measurements[0]);
  // Read where 1251 kHz stands.
  dial.readings[2].position = dial.readings[4].position;
  const { text } = await run([example, 'misread.json'], { 'misread.json': JSON.stringify(dial) });
  expect(text).toMatch(/⚠ Reading 3 does not fit .* left out: this fits 1\.2\d+ MHz, \S.*, not 909 kHz\./);
  expect(text).not.toMatch(/readings\[2\]/);
  const { results } = JSON.parse(
    (await run([example, 'misread.json', '--json'], { 'misread.json': JSON.stringify(dial) })).text,
  );
  expect(results[0].suspects).toMatchObject([{ index: 2, read: 909e3 }]);
});

it('the loudness of a station stands beside the predicted one, with agreement', async () => {
  const heard = {
    kind: 'audibility',
    station: 'The Lantern Service',
    impedance: '10 kΩ',
    phase: '50°',
    trials: [{ shunt: '900 Ω' }, { shunt: '1 kΩ' }],
  };
  const { text } = await run([example, 'heard.json'], { 'heard.json': JSON.stringify(heard) });
  expect(text).toMatch(
    /Level above the hearing threshold: .*\n {4}calculated .* dB \(.*\); measured [\d.]+ dB (above|below) the calculated value, [\d.]+ standard errors/,
  );
});

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Io } from '../../src/cli/command.ts';
import { measure } from '../../src/cli/commands/measure.ts';
import { MEASUREMENTS } from '../../src/engine/index.ts';

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
  expect(text).toMatch(
    /Dial readings, main, 2026-11-21\n {2}Inductance of the coil: [\d.]+ µH \([\d.]+ µH to [\d.]+ µH\)/,
  );
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

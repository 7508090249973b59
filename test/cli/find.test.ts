import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { find } from '../../src/cli/commands/find.ts';
import { path } from '../../src/cli/commands/path.ts';
import { memoryIo } from '../support/memory-io.ts';

const example = (file: string) => JSON.parse(readFileSync(inRoot(`examples/${file}.json`), 'utf8'));
const place = {
  name: 'Little Withy',
  stations: [{ name: 'Saltmarsh Radio', frequency: '1251 kHz', fieldStrength: '8 mV/m', programme: 'speech' }],
};
/** Few turns of wire, so that there is little to try. */
const small = {
  ...example('boxes/beginner'),
  wires: [{ wire: { size: '0.5 mm', covering: 'enamel' }, length: '5 m' }],
  limits: { tapEvery: 12, arrangements: ['direct'] },
};
async function run(box: unknown, ...args: string[]) {
  const files: Record<string, string> = { box: JSON.stringify(box), place: JSON.stringify(place) };
  const io = { ...memoryIo(), read: async (file: string) => files[file] ?? readFileSync(inRoot(file), 'utf8') };
  const status = await find.run(['box', '--at', 'place', ...args], io);
  return { status, io };
}

describe('faintwave find', () => {
  it('gives sets whose files have the figures that path has for them', { timeout: 60_000 }, async () => {
    const { status, io } = await run(small, '--want', 'loudest saltmarsh', '--json');
    expect(status).toBe(0);
    const { sets, leftOut } = JSON.parse(io.dataPrinted);
    const [first] = sets;
    expect(first.name).toMatch(/^direct, 1\d turns on a 70 mm tube, germanium, phones$/);
    expect(first.takes).toContainEqual(expect.objectContaining({ list: 'detectors', count: 1, left: 2 }));
    const set = JSON.stringify(first.description);
    const own = { ...memoryIo(), read: async () => set };
    await path.run(['set', '--json'], own);
    expect(JSON.parse(own.dataPrinted).wants[0].figure).toBe(first.wants[0].figure);
    expect(leftOut).toContainEqual(
      expect.objectContaining({ of: 'detector', text: expect.stringMatching(/^Why no galena\?/) }),
    );
  });

  it('says what is missing, and what would do', async () => {
    const { status, io } = await run({ ...small, capacitors: [], detectors: [] });
    expect(status).toBe(1);
    expect(io.printed).toMatch(/no capacitor: with a slider or a variometer.*\n.*no detector/);
  });

  it.each([
    [{ ...small, wires: 'wire' }, [], /box has a problem:\n {2}wires: expected a list of reels/],
    [small, ['--want', 'louder'], /--want: expected "loudest NAME"/],
    [small, ['--threads', '0'], /--threads: expected a number from 1 to 64/],
  ])('refuses what is wrong with a way out', async (box, args, problem) => {
    await expect(run(box, ...args)).rejects.toThrow(problem);
  });
});

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
  const files: Record<string, string> = {
    box: JSON.stringify(box),
    place: JSON.stringify(place),
    'no stations': JSON.stringify({ ...place, stations: [] }),
    'far away': JSON.stringify({ ...place, stations: [{ ...place.stations[0], fieldStrength: '1 µV/m' }] }),
  };
  const io = { ...memoryIo(), read: async (file: string) => files[file] ?? readFileSync(inRoot(file), 'utf8') };
  const at = args.includes('--at') ? [] : ['--at', 'place'];
  const status = await find.run(['box', ...at, ...args], io);
  return { status, io };
}

describe('faintwave find', () => {
  it('gives sets whose files have the figures that path has for them', async () => {
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

  it('says what is missing, and what to add', async () => {
    const { status, io } = await run({ ...small, capacitors: [], detectors: [] });
    expect(status).toBe(1);
    expect(io.printed).toMatch(/no tuning capacitor: add a variable capacitor.*\n.*no detector: add/);
  });

  it('finds no set where no station is in the list, and asks for some', async () => {
    const { status, io } = await run(small, '--at', 'no stations');
    expect(status).toBe(1);
    expect(io.printed).toBe(
      'No set can be found:\n  no station in the list of the place: add those that you want to hear\n',
    );
    const data = await run(small, '--at', 'no stations', '--json');
    expect(data.status).toBe(1);
    expect(JSON.parse(data.io.dataPrinted)).toMatchObject({ sets: [], lacks: [{ code: 'station' }] });
  });

  it('finds no set where none hears a station', async () => {
    const { status, io } = await run(small, '--at', 'far away', '--want', 'most stations', '--want', 'fewest parts');
    expect(status).toBe(1);
    expect(io.printed).toMatch(/\. Estimated, some of them twice: .*\nNo set of this box receives what is wanted\.\n$/);
  });

  const galena = 'examples/medium-wave-galena.json';
  it.each([
    [
      'place',
      'load',
      /^--keep: expected no value, got "load" \(a place by itself has no parts: name a set with --at\)$/,
    ],
    [galena, 'coils[0]', /^--keep: expected aerial, earth, .* or load, got "coils\[0\]" \(coils are wound from/],
    [galena, 'aerial.height', /^--keep: expected aerial, .*got "aerial.height" \(find keeps whole parts/],
    [
      'examples/two-tuned-circuits.json',
      'arrangement',
      /^--keep: expected aerial, earth, tuning, detector or load, got/,
    ],
    [
      'examples/frame-aerial.json',
      'aerial',
      /^--keep: expected earth, .*got "aerial" \(frames and ferrite rods are wound/,
    ],
  ])('at %s refuses to keep %s, and says why and what can be kept', async (at, part, problem) => {
    await expect(run(small, '--at', at, '--keep', part)).rejects.toThrow(problem);
  });

  it('names the file of each want and part that is refused, all at once', async () => {
    const wrong = { ...small, wants: [{ kind: 'loudest', station: 'Nobody' }], keep: ['aerial.height', 'load'] };
    await expect(run(wrong, '--at', galena, '--want', 'band 1602-531', '--keep', 'coils')).rejects.toThrow(
      /^box has 2 problems:\n {2}keep\[0\]: expected .*\n {2}wants\[0\]\.station: expected .*"Nobody".*\n--keep: .*\n--want: expected .*531 kHz/,
    );
  });

  it.each([
    [{ ...small, wires: 'wire' }, [], /box has a problem:\n {2}wires: expected a list of reels/],
    [small, ['--want', 'louder'], /--want: expected "loudest NAME"/],
    [small, ['--threads', '0'], /--threads: expected a number from 1 to 64/],
  ])('refuses what is wrong with a way out', async (box, args, problem) => {
    await expect(run(box, ...args)).rejects.toThrow(problem);
  });
});

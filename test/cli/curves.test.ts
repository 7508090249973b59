import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { run } from '../../src/cli/main.ts';
import { readText } from '../../src/engine/set/read.ts';
import { receiveRanged } from '../../src/engine/uncertainty/receive-ranged.ts';
import { memoryIo } from '../support/memory-io.ts';

const SET = 'examples/medium-wave-galena.json';
const curves = async (...args: string[]) => {
  const io = memoryIo();
  return { status: await run(['curves', SET, ...args], io), io };
};

it('tells the resonance of a station in words, as the path has it', async () => {
  const { status, io } = await curves('--station', '909');
  expect(status).toBe(0);
  const read = readText(readFileSync(inRoot(SET), 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  const { loadedQ, bandwidth } = receiveRanged(read.set).stations.find(({ frequency }) => frequency === 909e3)!;
  expect(io.printed).toMatch(/^The Lantern Service, 909 kHz, in /);
  expect(io.printed).toContain(`Loaded Q ${Math.round(loadedQ)}`);
  const width = Number(/Bandwidth ([\d.]+) kHz/.exec(io.printed)![1]);
  expect(Math.abs((width * 1e3) / bandwidth - 1)).toBeLessThan(0.1);
});

it.each(['resonance', 'band', 'q', 'detector'])(
  'writes %s as numbers with units, as a picture and as data',
  async (curve) => {
    const csv = await curves('--curve', curve, '--out', '/nowhere/a.csv');
    expect(csv.status).toBe(0);
    const [head, ...rows] = String(csv.io.files.get('/nowhere/a.csv')).trim().split('\n');
    const titles = head.match(/"[^"]*"/g)!;
    for (const title of titles) expect(title).toMatch(/\((?:Hz|V|A|ratio|dB re 1 V)\)"$/);
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows) {
      const numbers = row.split(',').map(Number);
      expect(numbers).toHaveLength(titles.length);
      expect(numbers.every(Number.isFinite)).toBe(true);
    }
    const firsts = rows.map((row) => Number(row.split(',')[0]));
    expect(firsts).toEqual(firsts.toSorted((a, b) => a - b));
    const svg = await curves('--curve', curve, '--out', '/nowhere/a.svg', '--size', '900x500');
    expect([svg.status, String(svg.io.files.get('/nowhere/a.svg')).slice(0, 4)]).toEqual([0, '<svg']);
    const json = await curves('--curve', curve, '--json');
    expect(JSON.stringify(JSON.parse(json.io.dataPrinted))).toMatch(/"points":\[\{"(?:frequency|voltage)":/);
  },
);

it('refuses a curve that does not exist, and another ending', async () => {
  const other = await curves('--curve', 'noise');
  expect([other.status, other.io.problems]).toEqual([2, expect.stringMatching(/--curve: expected .*, got "noise"/)]);
  const ending = await curves('--out', 'a.wav');
  expect([ending.status, ending.io.problems]).toEqual([
    2,
    expect.stringMatching(/--out: expected .*\.svg.*got "a.wav"/),
  ]);
});

it('refuses options of a picture where none is written', async () => {
  for (const rest of [['--out', '/nowhere/a.csv'], ['--json'], []])
    for (const [option, value] of [['--width', '900'], ['--size', '900x500'], ['--print']]) {
      const { status, io } = await curves(option, ...(value ? [value] : []), ...rest);
      expect([status, io.problems]).toEqual([2, expect.stringContaining(`${option} goes with --out FILE.`)]);
      expect(io.files.size).toBe(0);
    }
});

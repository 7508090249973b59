import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { wave } from '../../src/cli/commands/wave.ts';
import { readText, receiveRanged } from '../../src/engine/index.ts';
import { memoryIo } from '../support/memory-io.ts';
import { readPng } from '../support/read-png.ts';

async function run(...args: string[]) {
  const io = memoryIo();
  const status = await wave.run(args, io).catch((error: Error) => error.message);
  return { status, out: io.printed, err: io.problems, files: io.files };
}
const GALENA = inRoot('examples/medium-wave-galena.json');

/** The station received best. */
function bestOfGalena() {
  const read = readText(readFileSync(GALENA, 'utf8'));
  if (!read.ok) throw new Error('does not read');
  const { stations, best } = receiveRanged(read.set);
  return stations[best[0]];
}

describe('faintwave wave', () => {
  test('draws one point over two milliseconds', async () => {
    const { status, files } = await run(
      GALENA,
      '--point',
      'detector',
      '--from',
      '0',
      '--for',
      '2ms',
      '--out',
      'fig.svg',
    );
    expect(status).toBe(0);
    const svg = String(files.get('fig.svg'));
    expect(svg).toMatch(/^<svg /);
    expect(svg).toContain('After the detector');
    expect(svg).toContain('Saltmarsh Radio');
    expect(svg).toContain('0.5 ms');
    expect(svg).not.toMatch(/NaN|undefined/);
  });

  test('a PNG has the width asked for, the typeface, and the shares of pixels of the wave itself', async () => {
    const { files, status } = await run(
      ...[GALENA, '--point', 'carrier', '--alone', '--for', '9us', '--size', '600x300', '--width', '900'],
      ...['--out', 'a.png'],
    );
    expect(status).toBe(0);
    const { width, height, data } = readPng(files.get('a.png') as Uint8Array);
    expect([width, height]).toEqual([900, 450]);
    const colour = (x: number, y: number) => [...data.subarray(4 * (y * width + x), 4 * (y * width + x) + 3)];
    // Letters of the name at the upper left, in ink on paper.
    const name = Array.from({ length: 60 * 30 }, (_, i) => colour(10 + (i % 60), Math.floor(i / 60)));
    expect(name.some(([red]) => red < 80)).toBe(true);
    // The trace crosses the middle twice in each cycle.
    const isDrawn = Array.from({ length: width }, (_, x) => colour(x, 205)[2] < 110);
    const crossings = isDrawn.filter((drawn, x) => drawn && !isDrawn[x - 1]).length;
    expect(crossings).toBeGreaterThanOrEqual(2 * Math.floor(603e3 * 9e-6) - 1);
    expect(crossings).toBeLessThanOrEqual(2 * Math.ceil(603e3 * 9e-6) + 1);
  });

  test('a width is refused without a PNG, and a PNG larger than can be drawn', async () => {
    expect((await run(GALENA, '--width', '900', '--out', 'a.svg')).status).toContain('--out FILE.png');
    for (const out of [['--out', 'a.csv'], ['--out', 'a.wav'], []]) {
      expect((await run(GALENA, '--width', '900', ...out)).status).toBe('--width goes with --out FILE.png');
      expect((await run(GALENA, '--size', '900x500', ...out)).status).toContain('FILE.svg or --out FILE.png');
      expect((await run(GALENA, '--print', ...out)).status).toContain('FILE.svg or --out FILE.png');
    }
    expect((await run(GALENA, '--exact', '--width', '900', '--out', 'a.csv')).status).toContain('--out FILE.png');
    expect((await run(GALENA, '--size', '20000x20000', '--out', 'a.png')).status).toContain('50 million px');
    expect((await run(GALENA, '--width', '12', '--out', 'a.png')).status).toContain('100 to 20000');
  });

  test('writes a table that says what is in it, a value for every line', async () => {
    const { files } = await run(GALENA, '--point', 'carrier', '--for', '10us', '--alone', '--out', 'a.csv');
    const lines = String(files.get('a.csv')).trim().split('\n');
    expect(lines[0]).toBe('"time (s)","Carrier (V)"');
    const { emf } = bestOfGalena();
    for (const line of lines.slice(1, 50)) {
      const [t, v] = line.split(',').map(Number);
      // cos(2πft), as strong as on the path.
      expect(v).toBeCloseTo(emf * Math.cos(2 * Math.PI * 603e3 * t), 4);
    }
    const wide = String((await run(GALENA, '--point', 'carrier', '--for', '1s', '--out', 'b.csv')).files.get('b.csv'));
    expect(wide.split('\n')[0]).toBe('"time (s)","Carrier (V), minimum","Carrier (V), maximum"');
  });

  test('writes what an ear would get: silence before the detector, a tone after it', async () => {
    const sound = async (point: string) => {
      const bytes = (await run(GALENA, '--point', point, '--for', '0.1s', '--out', 'a.wav')).files.get(
        'a.wav',
      ) as Uint8Array;
      expect(new TextDecoder().decode(bytes.slice(0, 4))).toBe('RIFF');
      return new Int16Array(bytes.buffer, 44);
    };
    expect((await sound('modulated')).every((v) => v === 0)).toBe(true);
    const heard = await sound('phones');
    expect(heard).toHaveLength(4800);
    let crossings = 0;
    for (let i = 1; i < heard.length; i++) if (heard[i - 1] < 0 && heard[i] >= 0) crossings++;
    expect(crossings).toBeGreaterThanOrEqual(99); // 1 kHz for 0.1 s
    expect(crossings).toBeLessThanOrEqual(101);
  });

  test('without a file it says what would be seen', async () => {
    const { status, out } = await run(GALENA, '--station', '1458', '--detector', 'perfect');
    expect(status).toBe(0);
    expect(out).toContain('Quayside, 1458 kHz');
    expect(out).toContain('The average is zero.');
  });

  test.each([
    [['--point', 'nowhere'], /--point: expected programme, .*, got "nowhere"/],
    [['--for', 'soon'], /--for: expected/],
    [['--for', '1 h'], /--for: expected/],
    [['--detector', 'x'], /--detector: expected perfect, galena-good, .* or valve, got "x"/],
    [['--station', '77'], /--station: expected .*, got "77"/],
    [['--out', 'x.gif'], /--out: expected a name ending/],
    [['--size', '3x', '--out', 'a.svg'], /--size: expected/],
    [['--out', 'a.wav'], /a sound is of one point/],
  ])('%j is refused with what was expected', async (args, message) => {
    expect((await run(GALENA, ...args)).status).toMatch(message);
  });

  test('--exact: true waves at any point, named as a builder would', async () => {
    const told = await run(GALENA, '--exact');
    expect(told.status).toBe(0);
    expect(told.out).toMatch(/Top of the coil: .* carrier 4\d\d mV peak, modulated \d\d %/);
    expect(told.out).toMatch(/Other points: .*tap at turn 18, to the detector/);
    const { status, files } = await run(
      ...[GALENA, '--exact', '--point', 'TOP OF THE COIL', '--point', 'current', '--for', '20us', '--out', 'x.csv'],
    );
    expect(status).toBe(0);
    const lines = String(files.get('x.csv')).trim().split('\n');
    expect(lines[0]).toBe('"time (s)","Top of the coil (V)","Current through the detector (A)"');
    // 32 steps in each of 12 cycles of 603 kHz
    expect(lines.length).toBeGreaterThan(380);
    const picture = await run(GALENA, '--exact', '--coming-on', '--for', '1ms', '--out', 'x.svg');
    expect(String(picture.files.get('x.svg'))).toContain('from switch-on');
    expect((await run(GALENA, '--exact', '--point', 'attic')).status).toMatch(
      /--point: expected one of aerial terminal; .*, got "attic"/,
    );
    expect((await run(GALENA, '--exact', '--spectrum')).status).toMatch(/--spectrum does not go with --exact/);
    expect((await run(GALENA, '--coming-on')).status).toMatch(/goes with --exact/);
  });
});

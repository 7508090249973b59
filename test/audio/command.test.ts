import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { run } from '../../src/cli/main.ts';
import { readWav, writeWav } from '../../src/outputs/audio/index.ts';
import { memoryIo } from '../support/memory-io.ts';

const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
afterAll(() => rmSync(folder, { recursive: true }));
const EXAMPLE = 'examples/medium-wave-galena.json';

async function said(...args: string[]) {
  const io = memoryIo();
  const status = await run(['listen', ...args], io);
  const files = new Map([...io.files].map(([name, data]) => [name, data as Uint8Array]));
  return { status, out: io.printed, err: io.problems, files, shares: io.shares };
}
const power = (x: Float32Array) => x.reduce((s, v) => s + v * v, 0) / x.length;

test('a station becomes a WAV file, the same for the same seed', async () => {
  const args = [EXAMPLE, '--station', 'Lantern', '--seconds', '0.5', '--seed', '3', '--out', 'a.wav'];
  const one = await said(...args);
  expect(one.status).toBe(0);
  expect(one.shares[0]).toBe(0);
  expect(one.shares).toEqual(one.shares.toSorted((a, b) => a - b));
  expect(one.shares.at(-1)).toBeGreaterThan(0.9);
  expect(one.out).toMatch(/a\.wav: 0\.5 s of The Lantern Service, 909 kHz/);
  const { rate, channels } = await readWav(one.files.get('a.wav')!);
  expect([rate, channels.length, channels[0].length]).toEqual([48_000, 1, 24_000]);
  expect(power(channels[0])).toBeGreaterThan(1e-7);
  expect((await said(...args)).files.get('a.wav')).toEqual(one.files.get('a.wav'));
});

test('a recorded band is heard through the set where the dial stands', async () => {
  const rate = 48_000;
  const [re, im] = [new Float32Array(rate / 2), new Float32Array(rate / 2)];
  for (let i = 0; i < re.length; i++) {
    // A carrier 5 kHz above the middle with a 1 kHz tone on it.
    const a = 0.3 * (1 + 0.5 * Math.cos((2 * Math.PI * 1000 * i) / rate));
    re[i] = a * Math.cos((2 * Math.PI * 5000 * i) / rate);
    im[i] = a * Math.sin((2 * Math.PI * 5000 * i) / rate);
  }
  const file = join(folder, 'band_904kHz.wav');
  writeFileSync(file, writeWav([re, im], { rate }));
  const wav = async (...more: string[]) => {
    const { files, status } = await said(EXAMPLE, '--band', file, '--seconds', '0.8', '--out', 'b.wav', ...more);
    expect(status).toBe(0);
    return power((await readWav(files.get('b.wav')!)).channels[0].subarray(19_200));
  };
  const loud = await wav('--station', '909', '--full-scale', '100');
  expect(loud).toBeGreaterThan(1e-6);
  expect(await wav('--station', '1300', '--full-scale', '100')).toBeLessThan(0.1 * loud);
});

test('what cannot be done is said in words', async () => {
  expect((await said(EXAMPLE)).err).toContain('--out');
  expect((await said(EXAMPLE, '--out', 'x.wav', '--seconds', '0')).err).toContain(
    '--seconds: expected a number from 0.1 to 600, got "0"',
  );
  expect((await said(EXAMPLE, '--out', 'x.wav', '--as', 'loud')).err).toContain(
    '--as: expected phones or up, got "loud"',
  );
  expect((await said(EXAMPLE, '--out', 'x.wav', '--band', 'nowhere.wav')).err).toContain(
    'cannot read nowhere.wav: there is no such file',
  );
  const onFolder = await said(EXAMPLE, '--out', 'x.wav', '--band', folder);
  expect([onFolder.status, onFolder.err]).toEqual([2, expect.stringContaining('it is a folder, not a file')]);
  const bad = join(folder, 'bad_909kHz.wav');
  const samples = new Float32Array(48_000).fill(0.1);
  writeFileSync(bad, writeWav([samples, samples.with(700, Number.NaN)], { rate: 48_000, float: true }));
  const refused = await said(EXAMPLE, '--out', 'x.wav', '--band', bad);
  expect([refused.status, refused.files.size]).toEqual([2, 0]);
  expect(refused.err).toContain(`${bad}: Sample 701 of channel 2: expected a number, at full scale −1 to 1, got NaN`);
  const mono = join(folder, 'mono.wav');
  writeFileSync(mono, writeWav([new Float32Array(100)], { rate: 48_000 }));
  expect((await said(EXAMPLE, '--out', 'x.wav', '--band', mono)).err).toContain('ordinary sound');
});

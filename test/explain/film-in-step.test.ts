import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { film } from '../../src/cli/commands/film.ts';
import { memoryIo } from '../support/memory-io.ts';
import { readPng } from '../support/read-png.ts';

const folder = mkdtempSync(join(tmpdir(), 'faintwave-in-step-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The cut then falls on a frame. */
const RATE = 20;
const [WIDTH, HEIGHT] = [240, 136];
/** Sound is faded in over 80 ms: within the first hundredth of that it is still below this share of the whole. */
const HEARD = 0.02;
/** Half a second of zoom between two holds of 1.5 s. */
const CUT = 3.5;

/** A silent scene and one that sounds, each nearly still. */
function twoScenes(): string {
  const still = { from: '0 s', span: '4 ms', to: { from: '0 s', span: '3.99 ms', seconds: 0.5 } };
  const file = join(folder, 'two.json');
  const scenes = [
    { ...still, title: 'Silent', rows: [{ point: 'carrier' }], sound: 'silent' },
    { ...still, title: 'Sounding', rows: [{ point: 'programme' }, { point: 'phones' }], hear: 'programme' },
  ];
  const galena = JSON.parse(readFileSync(inRoot('examples/medium-wave-galena.json'), 'utf8'));
  writeFileSync(file, JSON.stringify({ ...galena, scenes }));
  return file;
}

async function made(...args: string[]) {
  const io = memoryIo();
  await film.run([twoScenes(), '--size', `${WIDTH}x${HEIGHT}`, '--rate', `${RATE}`, ...args], io);
  return io.files;
}

/** When the picture changes most from one frame to the next, s. */
function cutOf(frames: readonly ArrayLike<number>[]): number {
  let [most, at] = [-1, 0];
  for (let k = 1; k < frames.length; k++) {
    let change = 0;
    for (let i = 0; i < frames[k].length; i++) change += Math.abs(frames[k][i] - frames[k - 1][i]);
    if (change > most) [most, at] = [change, k];
  }
  return at / RATE;
}

/** When sound begins, s. @param samples 16 bits at 48 kHz. */
function onsetOf(samples: Int16Array): number {
  const loudest = samples.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  expect(loudest).toBeGreaterThan(1000);
  return samples.findIndex((v) => Math.abs(v) > HEARD * loudest) / 48_000;
}
const int16 = (bytes: Uint8Array): Int16Array => new Int16Array(bytes.slice().buffer);

test('frames and sound for a video editor are in step', async () => {
  const files = await made('--frames', 'f');
  const names = [...files.keys()].filter((name) => name.endsWith('.png')).sort();
  expect(names).toHaveLength(2 * CUT * RATE);
  const frames = names.map((name) => readPng(files.get(name) as Uint8Array).data);
  const sound = files.get([...files.keys()].find((name) => name.endsWith('.wav'))!) as Uint8Array;
  expect(cutOf(frames)).toBe(CUT);
  expect(Math.abs(onsetOf(int16(sound.slice(44))) - CUT)).toBeLessThan(0.04);
});

const hasFfmpeg = spawnSync('ffmpeg', ['-version']).status === 0;

describe.skipIf(!hasFfmpeg)('made and decoded by ffmpeg', () => {
  const decoded = (file: string, ...args: string[]): Uint8Array => {
    const { stdout, status, stderr } = spawnSync('ffmpeg', ['-v', 'error', '-i', file, ...args, '-'], {
      maxBuffer: 2 ** 28,
    });
    expect(`${stderr}`).toBe('');
    expect(status).toBe(0);
    return new Uint8Array(stdout);
  };

  test.each(['mp4', 'webm'])('a film as %s decodes without a fault, with sound and picture in step', async (format) => {
    const files = await made('--out', `talk.${format}`);
    const file = join(folder, `talk.${format}`);
    writeFileSync(file, files.get(`talk.${format}`) as Uint8Array);
    const grey = decoded(file, '-f', 'rawvideo', '-pix_fmt', 'gray');
    const size = WIDTH * HEIGHT;
    const count = 2 * CUT * RATE;
    expect(grey.length).toBe(count * size);
    const frames = Array.from({ length: count }, (_, k) => grey.subarray(k * size, (k + 1) * size));
    const samples = int16(decoded(file, '-f', 's16le', '-ac', '1', '-ar', '48000'));
    expect(Math.abs(samples.length / 48_000 - 2 * CUT)).toBeLessThan(0.1);
    expect(cutOf(frames)).toBe(CUT);
    expect(Math.abs(onsetOf(samples) - CUT)).toBeLessThan(0.04);
  });
});

import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { film } from '../../src/cli/commands/film.ts';
import { encodeFilm, findEncoder } from '../../src/cli/ffmpeg.ts';
import { processFiles } from '../../src/cli/files.ts';
import { type DrawnFilm, drawnFrames } from '../../src/cli/film-drawing.ts';
import { rasteriser } from '../../src/cli/rasteriser.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { memoryIo } from '../support/memory-io.ts';
import { readGif } from '../support/read-gif.ts';
import { readPng } from '../support/read-png.ts';

const folder = mkdtempSync(join(tmpdir(), 'faintwave-film-test-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function run(...args: string[]) {
  const io = memoryIo();
  const status = await film.run(args, io).catch((error: Error) => error.message);
  return { status, out: io.printed, files: io.files, shares: io.shares };
}
const GALENA = inRoot('examples/medium-wave-galena.json');

/** The example with scenes of its own, in a file. */
function withScenes(name: string, scenes: readonly object[]): string {
  const file = join(folder, name);
  writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(GALENA, 'utf8')), scenes }));
  return file;
}
/** Half a second of zoom between two holds of 1.5 s. */
const ZOOM = withScenes('zoom.json', [
  {
    title: 'Close up',
    caption: 'One cycle of {carrier}.',
    rows: [{ point: 'carrier' }],
    from: '0 s',
    span: '1 ms',
    to: { from: '0.1 ms', span: '10 us', seconds: 0.5 },
    settings: { neighbours: false },
    hear: 'programme',
  },
]);

/** A program that says it has these encoders, counts what it is piped and writes that as the film. */
function fakeFfmpeg(name: string, encoders: readonly string[], fails = false): string {
  const file = join(folder, name);
  const list = encoders.map((one) => ` V....D ${one}   words about it`).join('\n');
  writeFileSync(
    file,
    `#!${process.execPath}
const { statSync, writeFileSync } = require('node:fs');
const args = process.argv.slice(2);
if (args.includes('-encoders')) { console.log(${JSON.stringify(list)}); process.exit(0); }
if (${fails}) { console.error('no room'); process.exit(1); }
let bytes = 0;
process.stdin.on('data', (chunk) => { bytes += chunk.length; });
process.stdin.on('end', () => {
  const sound = args.find((one) => one.endsWith('.wav'));
  writeFileSync(args.at(-1), JSON.stringify({ args, bytes, sound: sound && statSync(sound).size }));
});
`,
  );
  chmodSync(file, 0o755);
  return file;
}

describe('faintwave film', () => {
  test('without a file it lists every scene with its length, to the end of the moving picture', async () => {
    const { out } = await run(GALENA);
    expect(out).toMatch(/^ {2}1 +12\.0 s {2}The carrier is too fast to see$/m);
    // The heater is switched on, run low and switched off.
    expect(out).toMatch(/^ 17 +60\.0 s {2}A valve as detector$/m);
    const seconds = [...out.matchAll(/^ *\d+ +([\d.]+) s {2}/gm)].reduce((sum, [, s]) => sum + Number(s), 0);
    expect(out).toContain(`${seconds.toFixed(1)} s  in all`);
  });

  test('an animated picture: its frames last as long as the scene and show what the stills show', async () => {
    const [size, rate] = ['480x270', 10];
    const [gif, stills] = await Promise.all([
      run(ZOOM, '--out', 'a.gif', '--size', size, '--rate', String(rate)),
      run(ZOOM, '--frames', 'stills', '--size', size, '--rate', String(rate), '--silent'),
    ]);
    expect(gif.status).toBe(0);
    expect(gif.out).toContain('3.5 s, 480 × 270, 10 frames a second, without sound');
    const { width, height, frames } = readGif(gif.files.get('a.gif') as Uint8Array);
    expect([width, height]).toEqual([480, 270]);
    expect(frames.reduce((sum, { seconds }) => sum + seconds, 0)).toBeCloseTo(3.5, 6);
    // The zoom moves; before and after it nothing does, and that is one frame.
    expect(frames.length).toBeGreaterThan(4);
    expect(frames.length).toBeLessThan(9);
    expect([...stills.files.keys()].filter((name) => name.endsWith('.png'))).toHaveLength(35);
    for (const [frame, still] of [
      [frames[0], 'frame-01.png'],
      [frames.at(-1)!, 'frame-35.png'],
    ] as const) {
      const { data } = readPng(stills.files.get(join('stills', still)) as Uint8Array);
      let [sum, far] = [0, 0];
      for (let i = 0; i < width * height; i++)
        for (let k = 0; k < 3; k++) {
          const apart = Math.abs(frame.data[3 * i + k] - data[4 * i + k]);
          sum += apart;
          if (apart > 24) far++;
        }
      expect(sum / (3 * width * height)).toBeLessThan(0.5);
      expect(far).toBe(0);
    }
  }, 60_000);

  test('frames come with sound and captions, as long as they are', async () => {
    const { files, status } = await run(ZOOM, '--frames', 'f', '--size', '240x160', '--rate', '4', '--dark');
    expect(status).toBe(0);
    const wav = files.get(join('f', 'sound.wav')) as Uint8Array;
    expect((wav.length - 44) / 2 / 48_000).toBeCloseTo(3.5, 6);
    expect(String(files.get(join('f', 'captions.vtt')))).toContain(
      '00:00:00.000 --> 00:00:03.500\nOne cycle of 603 kHz.',
    );
    const { data } = readPng(files.get(join('f', 'frame-01.png')) as Uint8Array);
    expect([...data.subarray(0, 4)]).toEqual([0x12, 0x10, 0x0e, 255]);
  }, 60_000);

  test('shares of pixels come out as they are, at any place on the grid of pixels', async () => {
    const shares = Uint8Array.from({ length: 256 }, (_, i) => i);
    const item = { kind: 'shares', x: 3, y: 2, w: 16, h: 16, columns: 16, rows: 16, shares, fill: 'copper' } as const;
    const scene = { unit: 'px', width: 24, height: 20, title: '', description: '', items: [item] } as const;
    const svg = sceneToSvg(scene, { colours: 'print', size: 'true', paper: true });
    const { bytes } = (await rasteriser()).pixels(svg);
    const at = (x: number, y: number) => bytes[4 * (24 * y + x)];
    const fill = at(3 + 15, 2 + 15);
    expect(fill).toBeLessThan(200);
    expect(at(0, 0)).toBe(255);
    for (let i = 0; i < 256; i++)
      expect(Math.abs(at(3 + (i % 16), 2 + (i >> 4)) - (255 + ((fill - 255) * i) / 255))).toBeLessThanOrEqual(1);
  });

  test('every frame and the sound go through ffmpeg, as H.264 in limited range with AAC', async () => {
    const program = fakeFfmpeg('ffmpeg-whole', ['libx264', 'aac']);
    const { files, status, shares } = await run(
      ...[ZOOM, '--size', '240x160', '--rate', '4', '--out', 'a.mp4', '--ffmpeg', program],
    );
    expect(status).toBe(0);
    const { args, bytes, sound } = JSON.parse(Buffer.from(files.get('a.mp4') as Uint8Array).toString());
    expect(bytes).toBe(240 * 160 * 4 * 14);
    expect(sound).toBe(44 + 2 * 48_000 * 3.5);
    expect(args.join(' ')).toContain('-c:v libx264');
    expect(args.join(' ')).toContain('-color_range tv');
    expect(args.join(' ')).toContain('-c:a aac');
    expect(shares.at(-1)).toBe(1);
    const silent = await run(
      ...[ZOOM, '--size', '240x160', '--rate', '4', '--out', 'a.mp4', '--silent', '--ffmpeg', program],
    );
    expect(JSON.parse(Buffer.from(silent.files.get('a.mp4') as Uint8Array).toString()).sound).toBeUndefined();
  }, 60_000);

  test('without ffmpeg, without its encoders, or when it fails, it says so and what else can be done', async () => {
    const missing = await run(ZOOM, '--out', 'a.mp4', '--ffmpeg', join(folder, 'nowhere'));
    expect(missing.status).toMatch(/could not be started.*Install ffmpeg.*--out FILE\.gif.*--frames FOLDER/);
    expect(missing.shares).toEqual([]);
    const other = await run(ZOOM, '--out', 'a.webm', '--ffmpeg', fakeFfmpeg('ffmpeg-few', ['libx264', 'aac']));
    expect(other.status).toMatch(/none of the encoders libvpx-vp9, libsvtav1/);
    const fails = fakeFfmpeg('ffmpeg-fails', ['libx264', 'aac'], true);
    const failed = await run(ZOOM, '--size', '240x160', '--rate', '2', '--out', 'a.mp4', '--ffmpeg', fails);
    expect(failed.status).toBe('ffmpeg could not make the film: no room');
    expect(failed.files.size).toBe(0);
  }, 60_000);

  test('a film without sound needs no encoder of sound, and one with it says that --silent is a way out', async () => {
    const program = fakeFfmpeg('ffmpeg-mute', ['libx264']);
    const args = [ZOOM, '--size', '240x160', '--rate', '2', '--out', 'a.mp4', '--ffmpeg', program];
    expect((await run(...args)).status).toMatch(/none of the encoders aac, aac_at .*--silent/);
    const silent = await run(...args, '--silent');
    expect(silent.status).toBe(0);
    expect(silent.files.has('a.mp4')).toBe(true);
  }, 60_000);

  test('a program without a name, or one that does not end, is no ffmpeg', async () => {
    expect((await run(ZOOM, '--out', 'a.mp4', '--ffmpeg', '')).status).toMatch(/^"" could not be started/);
    const endless = join(folder, 'endless');
    writeFileSync(endless, `#!${process.execPath}\nsetInterval(() => {}, 1000);\n`);
    chmodSync(endless, 0o755);
    expect(() => findEncoder(endless, 'mp4', { sound: true, patience: 300 })).toThrow(/could not be started/);
  });

  test.runIf(process.platform !== 'win32')(
    'an interruption, or frames that cannot be drawn, ends ffmpeg and leaves no temporary files',
    async () => {
      const temporary = join(folder, 'temporary');
      mkdirSync(temporary);
      // Reads nothing and does not end: the film waits for it.
      const stuck = join(folder, 'stuck');
      writeFileSync(
        stuck,
        `#!${process.execPath}
if (process.argv.includes('-encoders')) { console.log(' V....D libx264  words'); process.exit(0); }
require('node:fs').writeFileSync(${JSON.stringify(join(folder, 'stuck.pid'))}, String(process.pid));
setInterval(() => {}, 1000);
`,
      );
      chmodSync(stuck, 0o755);
      const args = [ZOOM, '--size', '640x360', '--rate', '4', '--silent', '--out', join(folder, 'a.mp4')];
      const child = spawn(process.execPath, [inRoot('bin/faintwave.mjs'), 'film', ...args, '--ffmpeg', stuck], {
        env: { ...process.env, TMPDIR: temporary },
        stdio: 'ignore',
      });
      const ended = new Promise((done) => child.on('exit', (code, signal) => done(signal ?? code)));
      const pidFile = join(folder, 'stuck.pid');
      await vi.waitFor(() => expect(existsSync(pidFile) && readFileSync(pidFile, 'utf8')).toBeTruthy(), 60_000);
      expect(readdirSync(temporary).some((name) => name.startsWith('faintwave-film-'))).toBe(true);
      child.kill('SIGTERM');
      expect(await ended).toBe('SIGTERM');
      expect(readdirSync(temporary).filter((name) => name.startsWith('faintwave-film-'))).toEqual([]);
      const pid = Number(readFileSync(pidFile, 'utf8'));
      await vi.waitFor(() => expect(() => process.kill(pid, 0)).toThrow('ESRCH'), 10_000);

      rmSync(pidFile);
      const before = readdirSync(tmpdir());
      const frames = (function* () {
        yield { width: 2, height: 2, bytes: new Uint8Array(16) };
        throw new RangeError('cannot be drawn');
      })();
      const form = { ending: 'mp4', width: 2, height: 2, rate: 4, frames } as const;
      await expect(encodeFilm({ program: stuck, picture: 'libx264' }, form)).rejects.toThrow(
        new RangeError('cannot be drawn'),
      );
      const isNew = (name: string) => name.startsWith('faintwave-film-') && !name.includes('test');
      expect(readdirSync(tmpdir()).filter((name) => isNew(name) && !before.includes(name))).toEqual([]);
    },
    120_000,
  );

  test('frames go into a folder that holds none, as they come, and nothing is drawn for another', async () => {
    const io = () => Object.assign(memoryIo(), processFiles());
    const target = join(folder, 'new', 'frames');
    const args = [ZOOM, '--size', '240x160', '--rate', '2', '--silent', '--frames'];
    expect(await film.run([...args, target], io())).toBe(0);
    const names = readdirSync(target);
    expect(names.toSorted()).toEqual(['captions.vtt', ...Array.from({ length: 7 }, (_, i) => `frame-${i + 1}.png`)]);
    for (const [where, expected] of [
      [target, /holds (frame-\d|captions).*name another folder with --frames/],
      [ZOOM, /there is a file of that name; name another with --frames/],
      [join(ZOOM, 'in'), /part of that path is a file.*--frames/],
    ] as const) {
      const one = io();
      await expect(film.run([...args, where], one)).rejects.toThrow(expected);
      expect(one.shares).toEqual([]);
    }
    expect(readdirSync(target)).toEqual(names);
  }, 60_000);

  test('frames that cannot all be written leave neither a part of them nor the folder', async () => {
    const target = join(folder, 'broken', 'frames');
    let seen: string[] = [];
    const frames = (function* () {
      yield { name: 'frame-1.png', data: 'a' };
      // The first is on the disk before the second is drawn.
      seen = readdirSync(target, { recursive: true }).map(String);
      throw new RangeError('cannot be drawn');
    })();
    await expect(processFiles().writeSeries(target, '--frames', () => false, frames)).rejects.toThrow(RangeError);
    expect(seen.some((name) => name.endsWith('frame-1.png'))).toBe(true);
    expect(existsSync(join(folder, 'broken'))).toBe(false);
  });

  test.runIf(process.platform !== 'win32')(
    'an interruption leaves neither frames nor the folder made for them',
    async () => {
      const target = join(folder, 'interrupted', 'frames');
      const args = [inRoot('bin/faintwave.mjs'), 'film', ZOOM, '--rate', '60', '--frames', target];
      const child = spawn(process.execPath, args, { stdio: 'ignore' });
      const ended = new Promise((done) => child.on('exit', (code, signal) => done(signal ?? code)));
      const names = () => readdirSync(target, { recursive: true }).map(String);
      await vi.waitFor(() => expect(names().some((name) => name.endsWith('.png'))).toBe(true), 60_000);
      child.kill('SIGINT');
      expect(await ended).toBe('SIGINT');
      expect(existsSync(join(folder, 'interrupted'))).toBe(false);
    },
    90_000,
  );

  test('what stands still is drawn once', () => {
    const drawn: string[] = [];
    const still = { frames: 5, svg: (frame: number) => (frame < 3 ? 'a' : 'b') } as DrawnFilm;
    const frames = drawnFrames(
      still,
      (svg) => {
        drawn.push(svg);
        return svg;
      },
      () => {},
    );
    expect([...frames]).toEqual(['a', 'a', 'a', 'b', 'b']);
    expect(drawn).toEqual(['a', 'b']);
  });

  test('scenes of one title keep their own numbers in the list', async () => {
    const scene = { title: 'Twice', rows: [{ point: 'carrier' }], from: '0 s', span: '1 ms' };
    const { out } = await run(withScenes('twice.json', [scene, { ...scene, span: '2 ms' }]));
    expect([...out.matchAll(/^ *(\d+) .*Twice$/gm)].map(([, number]) => number)).toEqual(['1', '2']);
  });

  test.each([
    [['--out', 'a.gif'], 'name one with --scene'],
    [['--scene', '40', '--out', 'a.gif'], '--scene: expected 1 to 19'],
    [['--scene', 'detector', '--out', 'a.gif'], 'a title that fits only one of'],
    [['--size', '641x360', '--out', 'a.mp4'], 'an even width and an even height'],
    [['--out', 'a.avi'], '.gif, .mp4, .webm'],
    [['--out', 'a.wav', '--frames', 'b'], 'give one of them'],
    [['--rate', '90', '--out', 'a.mp4'], '1 to 60'],
    [['--size', '20000x20000', '--out', 'a.mp4'], '50 million px'],
    [['--size', '20000x20000', '--frames', 'f'], '50 million px'],
    [['--silent', '--out', 'a.wav'], '--silent goes with --out FILE.mp4, --out FILE.webm or --frames FOLDER'],
    [['--silent'], '--silent goes with'],
    [['--size', '640x360', '--out', 'a.wav'], '--size goes with'],
    [['--rate', '10', '--out', 'a.vtt'], '--rate goes with'],
    [['--dark'], '--dark goes with'],
    [['--ffmpeg', 'ffmpeg', '--out', 'a.gif'], '--ffmpeg goes with --out FILE.mp4 or --out FILE.webm'],
    [['--ffmpeg', 'ffmpeg', '--frames', 'f'], '--ffmpeg goes with'],
  ])('%j is refused with what was expected', async (args, expected) => {
    expect((await run(GALENA, ...args)).status).toContain(expected);
  });
});

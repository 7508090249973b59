import {
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import * as fsPromises from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { checkTarget, type Disk, identityOf, WriteFailed, WriteRefused, writeWhole } from './write-whole.ts';

const folder = realpathSync(mkdtempSync(join(tmpdir(), 'whole-')));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string): string => join(folder, name);
const OLD = '{"format":"faintwave-set/1","name":"old"}';
const NEW = `{"format":"faintwave-set/1","name":"${'n'.repeat(5000)}"}`;

beforeEach(() => {
  rmSync(folder, { recursive: true });
  mkdirSync(folder);
});

const failure = (code: string): Error => Object.assign(new Error(code), { code });

/** A disk that fails in its nth step, and never gives more than a few bytes of room to one write. */
function failingDisk(nth: number): { disk: Disk; steps: () => number } {
  let steps = 0;
  const step = (): void => {
    if (steps++ === nth) throw failure('EIO');
  };
  const wrapped =
    <A extends unknown[], R>(work: (...args: A) => Promise<R>) =>
    async (...args: A): Promise<R> => {
      step();
      return work(...args);
    };
  const disk = {
    ...fsPromises,
    ...Object.fromEntries(
      Object.entries({ access, lstat, readlink, realpath, rename, stat }).map(([name, work]) => [
        name,
        wrapped(work as (...args: never[]) => Promise<unknown>),
      ]),
    ),
    async open(path: string, flags: string) {
      step();
      const handle = await fsPromises.open(path, flags);
      return {
        read: wrapped(handle.read.bind(handle) as (...args: unknown[]) => Promise<unknown>),
        write: wrapped(async (bytes: Uint8Array, from: number, length: number) =>
          handle.write(bytes, from, Math.min(length, 1024)),
        ),
        sync: wrapped(() => handle.sync()),
        chmod: wrapped((mode: number) => handle.chmod(mode)),
        close: () => handle.close(),
      };
    },
  } as unknown as Disk;
  return { disk, steps: () => steps };
}

const { access, lstat, readlink, realpath, rename, stat } = fsPromises;

describe('a file is there whole, or what was there before is', () => {
  it('whichever step of the disk fails, and with short writes', async () => {
    let failed = 0;
    for (let nth = 0; ; nth++) {
      rmSync(at('set.json'), { force: true });
      writeFileSync(at('set.json'), OLD, { mode: 0o640 });
      const { disk, steps } = failingDisk(nth);
      const outcome = await writeWhole([{ file: at('set.json'), data: NEW }], { disk }).then(
        () => 'written',
        (error: unknown) => {
          expect(error).toBeInstanceOf(WriteFailed);
          return 'failed';
        },
      );
      const held = readFileSync(at('set.json'), 'utf8');
      expect([nth, readdirSync(folder)]).toEqual([nth, ['set.json']]);
      expect([nth, held]).toEqual([nth, outcome === 'failed' ? OLD : NEW]);
      if (outcome === 'failed') failed++;
      if (steps() <= nth) break;
      expect(nth).toBeLessThan(100);
    }
    // stat, access, open, read, realpath, open, five short writes, sync, rename
    expect(failed).toBeGreaterThanOrEqual(12);
    expect(statSync(at('set.json')).mode & 0o777).toBe(0o640);
  });

  it('several files take their places only when all are written', async () => {
    writeFileSync(at('a.json'), OLD);
    await expect(
      writeWhole([
        { file: at('a.json'), data: NEW },
        { file: at('none/b.json'), data: NEW },
      ]),
    ).rejects.toMatchObject({ file: at('none/b.json'), code: 'ENOENT' });
    expect(readFileSync(at('a.json'), 'utf8')).toBe(OLD);
    expect(readdirSync(folder)).toEqual(['a.json']);
  });
});

describe('what is not replaced', () => {
  const wav = Buffer.from('RIFF\0\0\0\0WAVEfmt ', 'latin1');
  const kinds: Record<string, string | Uint8Array> = {
    'a description': OLD,
    'other JSON': '[1, 2]',
    'a WAV sound': wav,
    'an SVG picture': '<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg"/>',
    'a PDF': '%PDF-1.7 …',
    'a CSV table': '"time (s)","volts"\n0,1\n1,2\n',
    'other text': 'dear diary',
    'something else': new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0]),
  };

  it('a file of another kind, whatever its name; one of the same kind is', async () => {
    for (const [old, before] of Object.entries(kinds))
      for (const [kind, data] of Object.entries(kinds)) {
        writeFileSync(at('f'), before);
        const outcome = await writeWhole([{ file: at('f'), data }]).catch((error: Error) => error);
        if (old === kind) expect(outcome).toBeUndefined();
        else {
          expect(outcome).toBeInstanceOf(WriteRefused);
          expect((outcome as Error).message).toBe(
            `${at('f')} holds ${old}, and would be replaced by ${kind}: name another file with --out, or delete that one first`,
          );
          expect(readFileSync(at('f'))).toEqual(Buffer.from(before));
        }
      }
    writeFileSync(at('f'), '');
    await writeWhole([{ file: at('f'), data: wav }]);
    expect(readFileSync(at('f'))).toEqual(wav);
  });

  it('a file that was read, by any of its names', async () => {
    writeFileSync(at('own.json'), OLD);
    linkSync(at('own.json'), at('hard.json'));
    symlinkSync('own.json', at('soft.json'));
    symlinkSync(folder, at('round'));
    const inputs = [(await identityOf('own.json', () => fsPromises.stat(at('own.json'), { bigint: true })))!];
    for (const name of ['own.json', 'hard.json', 'soft.json', 'round/own.json', './round/../own.json']) {
      await expect(writeWhole([{ file: at(name), data: NEW }], { inputs })).rejects.toThrow('is the same file as');
      await expect(checkTarget(at(name), 'description', { inputs })).rejects.toBeInstanceOf(WriteRefused);
    }
    expect(readFileSync(at('own.json'), 'utf8')).toBe(OLD);
  });
});

it('a link stays a link, and the file it leads to is written, there already or not', async () => {
  symlinkSync('far.json', at('near.json'));
  for (const data of [OLD, NEW]) {
    await writeWhole([{ file: at('near.json'), data }]);
    expect(readFileSync(at('far.json'), 'utf8')).toBe(data);
    expect(readdirSync(folder).toSorted()).toEqual(['far.json', 'near.json']);
  }
  symlinkSync('b', at('a'));
  symlinkSync('a', at('b'));
  await expect(writeWhole([{ file: at('a'), data: OLD }])).rejects.toMatchObject({ code: 'ELOOP' });
});

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { receive } from '../../engine/reception/path/receive.ts';
import { readText } from '../../engine/set/read.ts';
import { type WriteUp, writeUp, writeUpHtml, writeUpMarkdown } from './index.ts';
import { barePhoto } from './photo.ts';
import { sha256 } from './sha256.ts';
import { carriedWave } from './wave.ts';

describe('digest', () => {
  it('is that of Node for any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(Buffer.from(sha256(bytes)).toString('hex')).toBe(createHash('sha256').update(bytes).digest('hex'));
      }),
    );
  });
});

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));
const segment = (marker: number, body: readonly number[]): number[] => [
  0xff,
  marker,
  (body.length + 2) >> 8,
  (body.length + 2) & 255,
  ...body,
];
const chunk = (type: string, body: readonly number[]): number[] => [
  0,
  0,
  0,
  body.length,
  ...ascii(type),
  ...body,
  0,
  0,
  0,
  0,
];

describe('photos', () => {
  // Little-endian TIFF: orientation 6, then a pointer to a GPS directory (Exif 2.3, section 4.6.3).
  const exif = [
    ...ascii('Exif\0\0II'),
    ...[42, 0, 8, 0, 0, 0, 2, 0],
    ...[0x12, 0x01, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0],
    ...[0x25, 0x88, 4, 0, 1, 0, 0, 0, 38, 0, 0, 0],
    ...ascii('HOME 51.5 N'),
  ];
  const scan = [0xff, 0xda, 0, 4, 1, 2, 7, 8, 9, 0xff, 0xd9];
  const tables = segment(0xdb, [1, 2, 3]);

  it('of a JPEG keep the picture and how the camera was held, and nothing else that it noted', () => {
    const bytes = Uint8Array.from([
      0xff,
      0xd8,
      ...segment(0xe1, exif),
      ...segment(0xfe, ascii('HOME')),
      ...tables,
      ...scan,
    ]);
    const photo = barePhoto(bytes)!;
    const kept = Buffer.from(photo.bytes);
    expect(photo.type).toBe('image/jpeg');
    expect(kept.includes('HOME')).toBe(false);
    expect(kept.includes(Buffer.from([...tables, ...scan]))).toBe(true);
    // Tag 0112, a short, one of it, 6.
    expect(kept.includes(Buffer.from([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6]))).toBe(true);
    expect(Buffer.from(barePhoto(photo.bytes)!.bytes)).toEqual(kept);
  });

  it('of a JPEG end where the picture ends: nothing that follows it is kept', () => {
    // Scan data with a stuffed 0 and a restart, a second scan with a note before it (T.81, B.1.1.5 and B.2.1).
    const first = [0xff, 0xda, 0, 4, 1, 2, 7, 0xff, 0, 0xff, 0xd0, 8, 9];
    const picture = [...tables, ...first, ...tables, ...scan];
    const noted = [...tables, ...first, ...segment(0xfe, ascii('HOME')), ...tables, ...scan];
    const second = [0xff, 0xd8, ...segment(0xe1, exif), ...tables, ...scan];
    for (const whole of [picture, noted])
      for (const behind of [[], second, ascii('ftypmp42 HOME')])
        expect([...barePhoto(Uint8Array.from([0xff, 0xd8, ...whole, ...behind]))!.bytes]).toEqual([
          0xff,
          0xd8,
          ...picture,
        ]);
    expect(barePhoto(Uint8Array.from([0xff, 0xd8, ...picture.slice(0, -2)]))).toBeUndefined();
  });

  it('of a PNG keep what is drawn', () => {
    const head = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
    const drawn = [chunk('IHDR', [1]), chunk('IDAT', [2, 3]), chunk('IEND', [])];
    const [header, data, end] = drawn;
    const bytes = Uint8Array.from([
      ...head,
      ...header,
      ...chunk('eXIf', ascii('HOME')),
      ...chunk('tEXt', ascii('HOME')),
      ...data,
      ...end,
      99,
    ]);
    expect([...barePhoto(bytes)!.bytes]).toEqual([...head, ...drawn.flat()]);
  });

  it('of other kinds, cut short or damaged, are refused, and nothing is thrown', () => {
    expect(barePhoto(Uint8Array.from(ascii('<svg onload="alert(1)"/>')))).toBeUndefined();
    const whole = Uint8Array.from([0xff, 0xd8, ...segment(0xe1, exif), ...tables, ...scan]);
    expect(barePhoto(whole.subarray(0, 30))).toBeUndefined();
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (tail) => {
        barePhoto(Uint8Array.from([0xff, 0xd8, 0xff, ...tail]));
        barePhoto(Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, ...tail]));
      }),
    );
  });
});

describe('write-up', () => {
  const HOSTILE = '</script><img src=x onerror=alert(1)>"\u202e [x](javascript:1) |';
  let about: WriteUp;
  beforeAll(() => {
    const written = JSON.parse(readFileSync(inRoot('examples/coast-by-night.json'), 'utf8'));
    written.name = HOSTILE;
    written.notes = HOSTILE;
    const read = readText(JSON.stringify(written));
    if (!read.ok) throw new Error('the example does not read');
    about = writeUp(read.set, read.written, receive(read.set), { sound: Uint8Array.of(1, 2, 3) });
  });

  it('as HTML: one file that asks for nothing, its scripts and styles as its policy says them', () => {
    const html = writeUpHtml(about);
    expect(html).not.toContain('<img src=x');
    expect(html.match(/(?:src|href)="(?!data:)[^"]*"/g)).toBeNull();
    // Samples of sound and wave in base64 can spell anything.
    const text = html.replace(/[A-Za-z0-9+/]{80,}=*/g, '');
    expect(text).not.toMatch(/\sstyle="|\son\w+="|undefined|NaN/);
    const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
    const [, policy] = /Content-Security-Policy" content="([^"]*)"/.exec(html)!;
    const [, style] = /<style>([\s\S]*?)<\/style>/.exec(html)!;
    const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, code]) => code);
    expect(scripts).toHaveLength(1);
    expect(policy).toContain(`style-src ${hash(style)};`);
    expect(policy).toContain(`script-src ${hash(scripts[0])};`);
    expect(policy).toMatch(/^default-src 'none'/);
    expect(policy).not.toContain('unsafe');
  });

  it('has the position of the place to 0.1° in what it carries, unless asked otherwise', () => {
    const { position } = JSON.parse(about.description).place;
    expect(about.position).toBe('coarse');
    for (const angle of Object.values(position)) expect(angle).toMatch(/^-?\d+(\.\d)?°$/);
    // Nor how far a station is, which is a circle round it.
    expect(JSON.stringify(about.tables)).not.toMatch(/\d km\b/);
  });

  it('goes without the maker’s recording', () => {
    const written = JSON.parse(readFileSync(inRoot('examples/coast-by-night.json'), 'utf8'));
    const read = readText(JSON.stringify({ ...written, recording: { name: 'me', rate: 8000, samples: 'AAAA' } }));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.written).toHaveProperty('recording');
    for (const exactPosition of [true, false]) {
      const carried = JSON.parse(writeUp(read.set, read.written, receive(read.set), { exactPosition }).description);
      expect(Object.keys(carried)).toEqual(Object.keys(written));
    }
  });

  it('carries a wave with a dozen samples for each cycle, at 9 MHz too', () => {
    const written = JSON.parse(readFileSync(inRoot('examples/medium-wave-galena.json'), 'utf8'));
    const read = readText(JSON.stringify(written));
    if (!read.ok) throw new Error('the example does not read');
    const reception = receive(read.set);
    for (const factor of [1, 15]) {
      const stations = reception.stations.map((one) => ({ ...one, frequency: one.frequency * factor }));
      const wave = carriedWave(read.set, { ...reception, stations }, reception.best[0])!;
      const perCycle = wave.rows[0].samples.length / (wave.span * wave.carrier);
      expect(wave.carrier).toBe(stations[reception.best[0]].frequency);
      expect(perCycle).toBeGreaterThan(11.9);
    }
  });

  it('as Markdown: names are words, and every file that it names is beside it', () => {
    const { text, files } = writeUpMarkdown(about, 'my set (#1?)');
    expect(text).not.toMatch(/(?<!\\)<img|(?<!\\)\]\(javascript/);
    const named = [...text.matchAll(/(?<!\\)\]\(([^)]*)\)/g)].map(([, address]) => decodeURIComponent(address));
    expect(text).not.toMatch(/\]\([^)]*[#?]/);
    expect(named.toSorted()).toEqual(files.map(({ name }) => name).toSorted());
    expect(text).toMatch(/^\| part \| what it is \|$/m);
  });
});

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { readText } from '../../src/engine/set/read.ts';
import { pageSvg, type Sheet, sheetsFor, sheetsPdf } from '../../src/outputs/sheets/index.ts';
import { rendered, withoutPoppler } from '../support/rendered-pdf.ts';
import { placedOn } from './on-paper.ts';

const font = (name: string): Uint8Array =>
  readFileSync(createRequire(import.meta.url).resolve(`source-sans/TTF/${name}.ttf`));
const fonts = { regular: font('SourceSans3-Regular'), bold: font('SourceSans3-Semibold') };

function sheetsOf(file: string, paper: 'a4' | 'letter' = 'a4'): Sheet[] {
  const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
  if (!read.ok) throw new Error('does not read');
  return sheetsFor(read.written, read.set, receive(read.set, {}), { paper });
}

describe('a PDF of sheets', () => {
  const folder = mkdtempSync(join(tmpdir(), 'sheets-'));
  const sheets = sheetsOf('medium-wave-galena.json');
  const file = join(folder, 'sheets.pdf');
  let reason: string | undefined;
  beforeAll(async () => {
    writeFileSync(file, await sheetsPdf(sheets, { title: 'A set', fonts }));
    reason = withoutPoppler();
    if (reason && process.env.CI) throw new Error(reason);
    if (reason) console.warn(reason);
  });

  test('is the same, byte for byte, every time, and under 2 MB for every example', async () => {
    expect(Buffer.compare(Buffer.from(await sheetsPdf(sheets, { title: 'A set', fonts })), readFileSync(file))).toBe(0);
    for (const example of readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'))) {
      const bytes = await sheetsPdf(sheetsOf(example, 'letter'), { title: example, fonts });
      expect(bytes.length, example).toBeLessThan(2e6);
      expect(bytes.length).toBeGreaterThan(5e4);
    }
    expect(statSync(file).size).toBeLessThan(2e6);
  });

  test('has a title, bookmarks, tags and embedded fonts', ({ skip }) => {
    if (reason) skip(reason);
    const info = spawnSync('pdfinfo', [file], { encoding: 'utf8' }).stdout;
    expect(info).toMatch(/Title: +A set/);
    expect(info).toMatch(/Tagged: +yes/);
    expect(info).toMatch(/Page size: +595\.\d+ x 841\.\d+ pts \(A4\)/);
    const list = spawnSync('pdffonts', [file], { encoding: 'utf8' }).stdout.split('\n').slice(2).filter(Boolean);
    expect(list.length).toBeGreaterThan(0);
    for (const row of list) expect(row).toMatch(/SourceSans3-.* yes yes yes/);
    const structure = spawnSync('pdfinfo', ['-struct-text', file], { encoding: 'utf8' }).stdout;
    expect(structure).toMatch(/H1/);
    expect(structure).toMatch(/Wiring list/);
    const raw = readFileSync(file, 'latin1');
    expect(raw).toMatch(/\/Outlines/);
  });

  test('its words can be taken out, with Greek and signs', ({ skip }) => {
    if (reason) skip(reason);
    const words = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).stdout;
    for (const some of [
      'The set at a glance',
      'Breadboard medium-wave set',
      'Saltmarsh Radio',
      'µH',
      'kΩ',
      'E → C1 moving vanes',
      '±',
      '100 %',
      'faintwave-set/1',
    ])
      expect(words).toContain(some);
  });

  test('the ruler is 100.0 ± 0.2 mm and the square 20.0 ± 0.2 mm, rendered', ({ skip }) => {
    if (reason) skip(reason);
    const dpi = 600;
    const pages = sheets.flatMap((s) => s.pages.map((page) => ({ s, page })));
    const at = pages.findIndex(({ s }) => s.id === 'dial');
    const placed = placedOn(pages[at].page.scene.items);
    const ruler = placed.find((p) => p.item.title === 'test ruler')!;
    const square = placed.find((p) => p.item.title === 'test square')!;
    if (ruler.item.kind !== 'line' || square.item.kind !== 'rect') throw new Error('no ruler');
    const [x, y] = ruler.put(ruler.item.from);
    const strip = rendered(file, at + 1, dpi, { x: x - 5, y: y - 0.5, w: 110, h: 1 });
    const columns = Array.from({ length: strip.width }, (_, i) => i).filter((i) =>
      Array.from({ length: strip.height }, (_, j) => j).some((j) => strip.dark(i, j)),
    );
    const length = ((columns[columns.length - 1] - columns[0] + 1) * 25.4) / dpi;
    // The outermost divisions stand half their own width beyond the ends.
    expect(Math.abs(length - 0.15 - 100)).toBeLessThan(0.2);
    const [sx, sy] = square.put([square.item.x, square.item.y]);
    const box = rendered(file, at + 1, dpi, { x: sx - 2, y: sy + 8, w: 24, h: 2 });
    const across = Array.from({ length: box.width }, (_, i) => i).filter((i) => box.dark(i, 5));
    expect(Math.abs(((across[across.length - 1] - across[0] + 1) * 25.4) / dpi - 0.25 - 20)).toBeLessThan(0.2);
  });

  test('a station’s mark stands at its angle, rendered', ({ skip }) => {
    if (reason) skip(reason);
    const dpi = 600;
    const pages = sheets.flatMap((s) => s.pages.map((page) => ({ s, page })));
    const at = pages.findIndex(({ s }) => s.id === 'dial');
    const placed = placedOn(pages[at].page.scene.items);
    const spindle = placed.find((p) => p.item.title === 'drill for the spindle')!;
    const mark = placed.find((p) => p.item.title === 'station Saltmarsh Radio')!;
    if (spindle.item.kind !== 'circle' || mark.item.kind !== 'line') throw new Error('no dial');
    const centre = spindle.put(spindle.item.centre);
    const outer = mark.put(mark.item.to);
    // Just inside the mark's outer end, beyond the degrees' own divisions: only the mark is there.
    const r = Math.hypot(outer[0] - centre[0], outer[1] - centre[1]) - 0.5;
    const a = Math.atan2(outer[1] - centre[1], outer[0] - centre[0]);
    const [px, py] = [centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a)];
    const patch = rendered(file, at + 1, dpi, { x: px - 1.5, y: py - 1.5, w: 3, h: 3 });
    const angles: number[] = [];
    const [ox, oy] = [Math.round(((px - 1.5) * dpi) / 25.4), Math.round(((py - 1.5) * dpi) / 25.4)];
    for (let j = 0; j < patch.height; j++)
      for (let i = 0; i < patch.width; i++) {
        const u = ((ox + i + 0.5) * 25.4) / dpi - centre[0];
        const v = ((oy + j + 0.5) * 25.4) / dpi - centre[1];
        if (patch.dark(i, j) && Math.abs(Math.hypot(u, v) - r) < 0.1) angles.push((Math.atan2(v, u) * 180) / Math.PI);
      }
    const mean = angles.reduce((sum, x) => sum + x, 0) / angles.length;
    const read = readText(readFileSync(inRoot('examples', 'medium-wave-galena.json'), 'utf8'));
    if (!read.ok) throw new Error('does not read');
    const station = receive(read.set, {}).stations.find((s) => s.name === 'Saltmarsh Radio')!;
    // A half circle of scale, 0° to the left: −180° as the page has angles.
    expect(Math.abs(mean + 180 - station.dial!.scale)).toBeLessThan(0.1);
  });
});

test('a page as SVG has its true size and no colour', () => {
  for (const sheet of sheetsOf('spider-coil-earpiece.json'))
    for (const page of sheet.pages) {
      const svg = pageSvg(page);
      expect(svg).toMatch(/^<svg [^>]*width="210mm" height="297mm"/);
      for (const [, r, g, b] of svg.matchAll(/#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})\b/g))
        expect([g, b]).toEqual([r, r]);
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    }
});

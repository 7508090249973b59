import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { Io } from '../../src/cli/command.ts';
import { sheets } from '../../src/cli/commands/sheets.ts';

const example = inRoot('examples/medium-wave-galena.json');

function io(): Io & { said: string; files: Map<string, string | Uint8Array> } {
  const files = new Map<string, string | Uint8Array>();
  return {
    said: '',
    files,
    out(text) {
      this.said += text;
    },
    data: () => {},
    err: () => {},
    colour: false,
    width: 100,
    read: async (file) => readFileSync(file, 'utf8'),
    write: async (file, data) => void files.set(file, data),
  };
}

const folder = (): string => join(mkdtempSync(join(tmpdir(), 'sheets-')), 'new');

test('a PDF of all, in a folder that it makes', async () => {
  const paper = io();
  const out = folder();
  expect(await sheets.run([example, '--out', out], paper)).toBe(0);
  expect([...paper.files.keys()]).toEqual([join(out, 'sheets.pdf')]);
  expect(Buffer.from(paper.files.get(join(out, 'sheets.pdf')) as Uint8Array).toString('latin1', 0, 5)).toBe('%PDF-');
  expect(paper.said).toMatch(/Wiring list/);
  expect(readdirSync(out)).toEqual([]);
});

test('an SVG for every page of the sheets asked for, on Letter', async () => {
  const paper = io();
  const out = folder();
  expect(await sheets.run([example, '--out', out, '--svg', '--only', 'coil,dial', '--paper', 'letter'], paper)).toBe(0);
  const names = [...paper.files.keys()].map((f) => f.slice(out.length + 1));
  expect(names.every((n) => /^0[12]-(coil-main|dial)(-\d)?\.svg$/.test(n))).toBe(true);
  for (const svg of paper.files.values()) expect(svg).toMatch(/width="215\.9mm" height="279\.4mm"/);
});

test('a board of one’s own size', async () => {
  const paper = io();
  expect(
    await sheets.run([example, '--out', folder(), '--svg', '--only', 'board', '--board', '250mm x 350mm'], paper),
  ).toBe(0);
  expect([...paper.files.values()].join('')).toContain('250 × 350 mm');
});

test.each([
  [[example], /--out/],
  [[example, '--out', 'x', '--paper', 'a0'], /a4 or letter/],
  [[example, '--out', 'x', '--paper', 'constructor'], /a4 or letter/],
  [[example, '--out', 'x', '--only', 'hat'], /no sheet "hat"; there are glance/],
  [[example, '--out', 'x', '--board', 'large'], /200mmx300mm/],
  [['--out', 'x'], /name a description file/],
])('what cannot be done is said: %j', async (args, words) => {
  await expect(sheets.run(args, io())).rejects.toThrow(words);
});

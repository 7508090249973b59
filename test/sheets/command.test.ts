import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { sheets } from '../../src/cli/commands/sheets.ts';
import { memoryIo } from '../support/memory-io.ts';

const example = inRoot('examples/medium-wave-galena.json');

const folder = (): string => join(mkdtempSync(join(tmpdir(), 'sheets-')), 'new');

test('a PDF of all', async () => {
  const paper = memoryIo();
  const out = folder();
  expect(await sheets.run([example, '--out', out], paper)).toBe(0);
  expect([...paper.files.keys()]).toEqual([join(out, 'sheets.pdf')]);
  expect(Buffer.from(paper.files.get(join(out, 'sheets.pdf')) as Uint8Array).toString('latin1', 0, 5)).toBe('%PDF-');
  expect(paper.printed).toMatch(/Wiring list/);
});

test('an SVG for every page of the sheets asked for, on Letter', async () => {
  const paper = memoryIo();
  const out = folder();
  expect(await sheets.run([example, '--out', out, '--svg', '--only', 'coil,dial', '--paper', 'letter'], paper)).toBe(0);
  const names = [...paper.files.keys()].map((f) => f.slice(out.length + 1));
  expect(names.every((n) => /^0[12]-(coil-main|dial)(-\d)?\.svg$/.test(n))).toBe(true);
  for (const svg of paper.files.values()) expect(svg).toMatch(/width="215\.9mm" height="279\.4mm"/);
});

test('a board of one’s own size', async () => {
  const paper = memoryIo();
  expect(
    await sheets.run([example, '--out', folder(), '--svg', '--only', 'board', '--board', '250mm x 350mm'], paper),
  ).toBe(0);
  expect([...paper.files.values()].join('')).toContain('250 × 350 mm');
});

test.each([
  [[example], /--out/],
  [[example, '--out', 'x', '--paper', 'a0'], /a4 or letter/],
  [[example, '--out', 'x', '--paper', 'constructor'], /a4 or letter/],
  [[example, '--out', 'x', '--only', 'hat'], /--only: expected glance, .*, got "hat"/],
  [[example, '--out', 'x', '--board', 'large'], /200mmx300mm/],
  [['--out', 'x'], /name a description file/],
])('what cannot be done is said: %j', async (args, words) => {
  await expect(sheets.run(args, memoryIo())).rejects.toThrow(words);
});

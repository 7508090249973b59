import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { benchCautions } from '../../src/engine/set/cautions.ts';
import { readText } from '../../src/engine/set/read.ts';
import { type PaperName, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { cautionTexts } from '../../src/outputs/words/index.ts';
import { wordsOn } from './on-paper.ts';

const files = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));
const cases = files.flatMap((file) => (['a4', 'letter'] as const).map((paper): [string, PaperName] => [file, paper]));

test.each(cases)('every caution of %s stands on the first page, before what is heard (%s)', (file, paper) => {
  const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
  if (!read.ok) throw new Error('does not read');
  const reception = receive(read.set);
  const [first] = sheetsFor(read.written, read.set, reception, { paper, only: ['glance'] });
  const words = wordsOn(first.pages[0].scene)
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/\s+/g, ' ');
  const heard = words.indexOf('What should be heard');
  for (const { code } of [...reception.cautions, ...benchCautions(read.set)]) {
    const at = words.indexOf(cautionTexts[code]);
    expect(at, code).toBeGreaterThan(0);
    if (heard >= 0) expect(at, code).toBeLessThan(heard);
  }
});

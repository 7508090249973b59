import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { comparedCurves, compareSets, readText, type SetDescription } from '../../src/engine/index.ts';
import { comparisonSheet, PAPERS, type PaperName, pageSvg } from '../../src/outputs/sheets/index.ts';
import { comparedParts, comparedPath } from '../../src/outputs/tables/index.ts';
import { expectPicture } from '../support/picture.ts';
import { untidy, wordsOn } from './on-paper.ts';

const example = (name: string): SetDescription => {
  const read = readText(readFileSync(inRoot('examples', `${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(name);
  return read.set;
};
const NAMES = ['medium-wave-galena', 'two-tuned-circuits', 'ferrite-rod-valve-diode', 'slider-set'];

test.each([2, 3, 4])('%i sets stand on one page of either paper, whole and tidy', async (count) => {
  const compared = compareSets(NAMES.slice(0, count).map(example), 2);
  const curves = comparedCurves(compared);
  for (const paper of Object.keys(PAPERS) as PaperName[]) {
    const { pages } = comparisonSheet(compared, curves, paper);
    expect(pages).toHaveLength(1);
    const [page] = pages;
    expect(untidy(page.scene)).toEqual([]);
    const words = wordsOn(page.scene)
      .map(({ text }) => text)
      .join(' ')
      .replace(/\s+/g, ' ');
    for (const { name } of [...comparedPath(compared), ...comparedParts(compared)]) expect(words).toContain(name);
    for (const { set } of compared.sets) expect(words).toContain(set.name.slice(0, 8));
    if (count === 3 && paper === 'a4') await expectPicture(pageSvg(page), 'sheets/comparison');
  }
});

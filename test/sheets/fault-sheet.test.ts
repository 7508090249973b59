import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { builtSet } from '../../src/engine/built/built-set.ts';
import { faultModel } from '../../src/engine/faults/fault-model.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import type { PaperName, Sheet } from '../../src/outputs/sheets/index.ts';
import { faultSheet } from '../../src/outputs/sheets/pages/fault-sheet.ts';
import { faultAnswer, faultCautionTexts } from '../../src/outputs/words/index.ts';
import { BASE, SETS } from '../support/every-arrangement.ts';
import { placedOn, untidy, wordsOn } from './on-paper.ts';

const STATIONS = [
  { name: 'Saltmarsh Radio', frequency: '603 kHz', power: '50 kW', distance: '38 km' },
  { name: 'The Lantern Service of the Outer Islands', frequency: '909 kHz', power: '140 kW', distance: '64 km' },
  { name: 'Quayside', frequency: '1458 kHz', power: '2 kW', distance: '14 km' },
];
const PAPERS: readonly PaperName[] = ['a4', 'letter'];
const examples = readdirSync(inRoot('examples')).filter((name) => name.endsWith('.json'));
const NAMES = [...examples, ...Object.keys(SETS)];

interface Made {
  readonly set: SetDescription;
  readonly sheets: readonly Sheet[];
}
const cases = new Map<string, Made>();

beforeAll(() => {
  for (const name of NAMES) {
    const read = examples.includes(name)
      ? readText(readFileSync(inRoot('examples', name), 'utf8'))
      : readValue({ ...BASE, place: { name: 'Little Withy', stations: STATIONS }, ...SETS[name] });
    if (!read.ok) throw new Error(`${name} does not read`);
    cases.set(name, { set: read.set, sheets: PAPERS.map((paper) => faultSheet(read.set, {}, paper)) });
  }
});

const textOf = ({ pages }: Sheet): string => pages.flatMap(({ scene }) => wordsOn(scene).map((w) => w.text)).join(' ');
/** Numbers at the left edge, bold: of steps and cautions; "F3": of faults. */
const marksOf = ({ pages }: Sheet): string[] =>
  pages.flatMap(({ blocks }) =>
    blocks.flatMap(({ tag, items }) => {
      const [first] = items;
      return tag === 'P' && first?.kind === 'text' && first.bold && items.length > 1 ? [first.text] : [];
    }),
  );

describe.each(NAMES)('%s', (name) => {
  test('two pages at most, on either paper, nothing cut off or over another', () => {
    for (const { pages } of cases.get(name)!.sheets) {
      expect(pages.length).toBeLessThanOrEqual(2);
      for (const { scene } of pages) {
        expect(untidy(scene), scene.title).toEqual([]);
        for (const { item, put } of placedOn(scene.items)) {
          if (item.kind !== 'circle' && item.kind !== 'rect') continue;
          const [x, y] = put(item.kind === 'circle' ? item.centre : [item.x, item.y]);
          expect(x > 8 && x < scene.width - 8 && y > 8 && y < scene.height - 8).toBe(true);
        }
      }
    }
  });

  test('every step and fault that an answer leads to is on the sheet, and none is never led to', () => {
    for (const sheet of cases.get(name)!.sheets) {
      const text = textOf(sheet);
      const marks = marksOf(sheet);
      const faults = marks.filter((mark) => mark.startsWith('F'));
      expect(faults).toEqual(faults.map((_, i) => `F${i + 1}`));
      const arrows = new Set([...text.matchAll(/→ (?:step (\d+)|F(\d+))/g)].map(([, step]) => Number(step ?? 0)));
      const steps = [...arrows].filter((step) => step > 0).sort((a, b) => a - b);
      expect(steps).toEqual(steps.map((_, i) => i + 2));
      expect(steps.length).toBeGreaterThanOrEqual(6);
      for (const step of steps) expect(marks).toContain(`${step}`);
      const named = new Set([...text.matchAll(/\bF(\d+)\b/g)].map(([, number]) => Number(number)));
      expect(Math.max(...named)).toBe(faults.length);
    }
  });

  test('leads go to terminals of the wiring list, and each reading with nothing wrong is the engine’s', () => {
    const { set, sheets } = cases.get(name)!;
    const terminals = boardParts(set).parts.flatMap((part) => part.terminals);
    const { sound } = faultModel(builtSet(set), { cases: 1 });
    for (const sheet of sheets) {
      const text = textOf(sheet);
      const leads = [...text.matchAll(/Leads: \+ (.*?), − (.*?)\. Good/g)].flatMap(([, a, b]) => [a, b]);
      expect(leads.length).toBeGreaterThan(2);
      for (const one of leads) expect(terminals).toContain(one);
      for (const R of sound.ohms) expect(text).toContain(faultAnswer.ohms(R));
      expect(text).toContain('Disconnect aerial, earth, phones and every supply first.');
    }
  });
});

test('a crystal’s sheet warns of the meter’s highest range; a sheet without that contact does not', () => {
  const warning = faultCautionTexts['no-high-ohm-range'].slice(0, 40);
  const has = (name: string) => textOf(cases.get(name)!.sheets[0]).includes(warning);
  expect(has('medium-wave-galena.json')).toBe(true);
  expect(has('medium-wave-germanium-amplifier.json')).toBe(false);
});

test('a set without stations has its tree of readings alone', () => {
  const { set } = cases.get('medium-wave-galena.json')!;
  const [sheet] = PAPERS.map((paper) => faultSheet({ ...set, place: { ...set.place, stations: [] } }, {}, paper));
  expect(textOf(sheet)).not.toMatch(/NaN|undefined|Infinity/);
  expect(sheet.pages.length).toBeLessThanOrEqual(2);
});

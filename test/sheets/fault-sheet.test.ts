import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { builtSet } from '../../src/engine/built/built-set.ts';
import { faultModel } from '../../src/engine/faults/fault-model.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { type PaperName, type Sheet, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { faultSheet } from '../../src/outputs/sheets/pages/fault-sheet.ts';
import { faultAnswer, faultCautionTexts, namedOnBand } from '../../src/outputs/words/index.ts';
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

/** Where the answers of the steps lead: what stands in the column of the arrows. */
const goalsOf = ({ pages }: Sheet): string =>
  pages
    .flatMap(({ blocks }) =>
      blocks.flatMap(({ tag, items }) => {
        const words = items.flatMap((item) => (item.kind === 'text' ? [item] : []));
        const arrow = words.find((word) => word.text.startsWith('→'));
        return tag === 'P' && arrow ? words.filter(({ at }) => at[0] === arrow.at[0]).map((word) => word.text) : [];
      }),
    )
    .join(' ');

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
      const ledTo = new Set([...goalsOf(sheet).matchAll(/\bF\d+\b/g)].map(([one]) => one));
      expect([...ledTo].sort()).toEqual([...faults].sort());
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

/** Rows of the table of readings: cells from left to right, folded lines joined. */
const readingRowsOf = ({ pages }: Sheet): string[][] =>
  pages.flatMap(({ blocks }) =>
    blocks.flatMap(({ tag, items }) => {
      const words = items.flatMap((item) => (item.kind === 'text' ? [item] : []));
      const columns = [...new Set(words.map(({ at }) => at[0]))].sort((a, b) => a - b);
      const cells = columns.map((x) =>
        words
          .filter(({ at }) => at[0] === x)
          .map((word) => word.text)
          .join(' '),
      );
      return tag === 'P' && cells.length === 5 ? [cells] : [];
    }),
  );

test('phones and the leads of aerial and earth are measured off the set, not between terminals of it', () => {
  for (const sheet of cases.get('medium-wave-galena.json')!.sheets) {
    const rows = new Map(readingRowsOf(sheet).map(([name, ...cells]) => [name, cells.slice(0, 2)]));
    expect(rows.get('Across the plugs of the phones by themselves')).toEqual(['one plug', 'the other plug']);
    expect(rows.get('From the aerial lead to the earth lead, both off the set: the mean of both polarities')).toEqual([
      'aerial lead',
      'earth lead',
    ]);
    const text = textOf(sheet);
    expect(text).toContain('Leads: at the plugs.');
    expect(text).not.toMatch(/(plugs of the phones by themselves|mean of both polarities)\. Leads: \+/);
  }
});

test('each reading names the cautions of its check, numbered as on the sheet', () => {
  const { set, sheets } = cases.get('medium-wave-galena.json')!;
  const { checks } = faultModel(builtSet(set), { cases: 1 });
  const expected = checks.filter(({ check }) => check.kind === 'ohms');
  for (const sheet of sheets) {
    const rows = readingRowsOf(sheet).slice(1);
    expect(rows.length).toBe(expected.length + 1);
    const blocks = sheet.pages.flatMap((page) => page.blocks);
    /** By its number, as the list of cautions has it. */
    const cautionText = (number: string): string =>
      blocks
        .flatMap(({ items }) => {
          const [mark, ...lines] = items.flatMap((item) => (item.kind === 'text' ? [item] : []));
          return mark?.bold && mark.text === number && lines.length > 0 && !lines[0].bold
            ? [lines.map((one) => one.text).join(' ')]
            : [];
        })
        .find((text) => Object.values(faultCautionTexts).includes(text)) ?? '';
    expected.forEach(({ cautions }, i) => {
      expect(rows[i][4].split(', ').map(cautionText)).toEqual(cautions.map((caution) => faultCautionTexts[caution]));
    });
    expect(rows.filter(([, , , , cautions]) => cautions.split(', ').length > 1).length).toBeGreaterThan(2);
  }
});

test('a slider stands in the middle for every reading that depends on it, and the sheet says so', () => {
  const text = textOf(cases.get('slider-set.json')!.sheets[0]);
  expect(text).toContain('earth terminal, with the slider in the middle');
  expect(textOf(cases.get('medium-wave-galena.json')!.sheets[0])).not.toContain('slider');
});

test('low readings are in tenths of an ohm, and the meter’s leads are to be subtracted', () => {
  const [sheet] = cases.get('medium-wave-galena.json')!.sheets;
  expect(textOf(sheet)).not.toContain('mΩ');
  expect(textOf(sheet)).toMatch(/Good: \d\.\d Ω/);
  expect(textOf(sheet)).toContain(faultCautionTexts['subtract-meter-leads'].slice(0, 40));
});

test('the sheet of a set with a band switch says its band, alone as among all sheets', () => {
  const { set, sheets } = cases.get('two-band.json')!;
  expect(textOf(sheets[0])).toContain(namedOnBand(set).name);
  expect(namedOnBand(set).name).not.toBe(set.name);
  const [among] = sheetsFor({}, set, receive(set), { only: ['faults'] });
  expect(textOf(among)).toBe(textOf(sheets[0]));
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

import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { labelsIn, proseIn } from '../support/prose.ts';

/** Properties and functions whose texts no person is shown. */
const NOT_SHOWN = new Map([
  ['none', 'why a kind has no entry in a table, for whoever reads the table'],
  ['source', 'a citation'],
]);

/** Files with texts of two words and more that are no prose for people. */
const VOCABULARY: Readonly<Record<string, string>> = {
  'parts/aerial/touchstone.ts': 'keywords of the Touchstone format',
  'parts/aerial/surroundings.ts': 'citations, and an id of the file format',
  'set/starters.ts': 'the text of a Touchstone file',
  'parts/earth/soil.ts': 'citations',
  'parts/detector/library.ts': 'citations',
  'place/stations/export.ts': 'headings of a table of stations, which the import reads back',
  'units/typed.ts': 'units, a space between them',
  'uncertainty/field-draws.ts': 'citations',
  'uncertainty/hearing-spreads.ts': 'citations',
  'uncertainty/coil-spreads.ts': 'citations',
  'uncertainty/load-spreads.ts': 'citations',
  'uncertainty/measured-together.ts': 'ids of inputs',
  'uncertainty/outdoor-spreads.ts': 'citations',
  'uncertainty/spread.ts': 'citations',
  'uncertainty/tuning-spreads.ts': 'citations',
};

/** Ids of three words, of the file format and of facts. */
const IDS: ReadonlySet<string> = new Set([
  'as its resistivity',
  'as the place',
  'out of range',
  'out of doors',
  'one at a time',
  'enamel and cotton',
  'enamel and silk',
  'faster than square',
  'off the air',
  'North America',
  'distance of the coils',
  'coupling of the coils',
]);

const files = readdirSync(inRoot('src/engine'), { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /\.ts$/.test(name) && !/\.test\.ts$/.test(name));

const proseOf = (file: string): string[] => {
  const source = readFileSync(inRoot(`src/engine/${file}`), 'utf8');
  return [
    ...proseIn(source, file, new Set(NOT_SHOWN.keys())).filter(({ text }) => !IDS.has(text)),
    ...labelsIn(source, file),
  ].map(({ line, text }) => `${file}:${line}: ${text}`);
};

test('the engine makes no sentence and no label: it gives facts, and outputs/words says them', () => {
  expect(files.filter((file) => !(file in VOCABULARY)).flatMap(proseOf)).toEqual([]);
});

test('what is excused is there, and has something to be excused for', () => {
  for (const file of Object.keys(VOCABULARY)) expect(proseOf(file), file).not.toEqual([]);
});

test('a label is found however short it is, where it is given and where it is the default', () => {
  const labels = (source: string) => labelsIn(source, 'source.ts').map(({ text }) => text);
  expect(labels("const load = { label: 'amplifier' };")).toEqual(['amplifier']);
  expect(labels("const { temperature = 300, label = 'Diode' } = options;")).toEqual(['Diode']);
  // biome-ignore lint/suspicious/noTemplateCurlyInString: a source
  expect(labels('f({ title: slides ? "At the slider" : `${titleOf(node)}` });')).toEqual(['At the slider']);
  expect(labels("interface A { label: 'a' | 'b' } const b = { label: detector.label, title };")).toEqual([]);
});

test('prose is found wherever it stands, and ids, types, keys and errors are not prose', () => {
  const prose = (source: string) => proseIn(source, 'source.ts').map(({ text }) => text);
  expect(prose("const a = { label: 'Wire diameter' };")).toEqual(['Wire diameter']);
  // biome-ignore lint/suspicious/noTemplateCurlyInString: a source
  expect(prose('const f = (n: number) => `Turns spaced ${n} overlap.`;')).toEqual(['Turns spaced {} overlap.']);
  expect(prose("const why = ok ? '' : 'the coil is too large';")).toEqual(['the coil is too large']);
  expect(prose("warnings.push('not to be trusted');")).toEqual(['not to be trusted']);
  expect(prose("const kind = 'two circuits'; const id: 'not so short a type' = x;")).toEqual([]);
  expect(prose("throw new RangeError('the coil is too large');")).toEqual([]);
  expect(prose("import { a } from './a b c d.ts'; const t = { 'as its resistivity of soil': 1 };")).toEqual([]);
  expect(
    proseIn("f({ source: 'a book of tables' }); must(x, 'it must be so');", 'a.ts', new Set(['source', 'must'])),
  ).toEqual([]);
});

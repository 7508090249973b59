import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { COMMANDS } from '../../src/cli/main.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import {
  drawAerial,
  drawCapacitor,
  drawCircuit,
  drawCoil,
  drawDetector,
  drawLoad,
  tapsOf,
} from '../../src/outputs/drawings/index.ts';
import { filled, PICTURE_IDS, PICTURES, preparer, shownWords } from '../../src/outputs/explain/index.ts';
import { story } from '../../src/outputs/explain/story/story.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { pageSvg, SHEET_IDS, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { problemSentence } from '../../src/outputs/words/index.ts';
import { arbitrarySet } from '../support/arbitrary-set.ts';
import { CALLED_WITH, FOR_PROGRAMS, OF_A_BOX, REFUSED_CALLS, said } from '../support/calls.ts';
import { textsIn } from '../support/svg-texts.ts';

// What is read on the command line and on paper, kept whole, so that a change of words or of who gets which of them is
// seen. Renewed by `npm test -- test/words/texts -u`.
const kept = (name: string): string => inRoot(`test/output/texts/${name}.txt`);
const EXAMPLES = readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json'));

const drawn = fc.sample(arbitrarySet(), { numRuns: 40, seed: 11 }).flatMap((value) => {
  const read = readValue(JSON.parse(JSON.stringify(value)));
  return read.ok ? [read] : [];
});

/** Every line once, whatever its figures: what is said at all. */
function sentences(texts: readonly string[]): string {
  const lines = texts.flatMap((text) => text.split('\n')).map((line) => line.trim());
  const kinds = new Map<string, string>();
  for (const line of lines) {
    const kind = line.replaceAll(/\d+(?:[.,\u202f ]\d+)*/g, '#');
    if (line !== '' && !kinds.has(kind)) kinds.set(kind, line);
  }
  return `${[...kinds.values()].sort().join('\n')}\n`;
}

/** Every value of a description once replaced by each of some others. */
function* spoilt(value: unknown, by: readonly unknown[]): Generator<unknown> {
  if (typeof value !== 'object' || value === null) {
    for (const other of by) if (other !== value) yield other;
    return;
  }
  for (const [key, inner] of Object.entries(value))
    for (const other of spoilt(inner, by)) {
      const copy: unknown[] | Record<string, unknown> = Array.isArray(value) ? [...value] : { ...value };
      (copy as Record<string, unknown>)[key] = other;
      yield copy;
    }
  if (Array.isArray(value)) yield [];
  yield { ...value, wings: 2 };
}
const SPOILT: readonly unknown[] = [
  '',
  'twelve',
  -3,
  1e9,
  1e-9,
  '7 furlongs',
  '1,250 kHz',
  '40 pF',
  null,
  'x'.repeat(900),
];

/** Calls with what each says, as somebody would see them one below the other. */
async function session(calls: readonly (readonly string[])[]): Promise<string> {
  const lines: string[] = [];
  for (const call of calls) lines.push(`$ faintwave ${call.join(' ')}`, (await said(call)).trimEnd(), '');
  return lines.join('\n');
}

describe('texts as they are read', () => {
  test('help', async () => {
    const calls = [['--help'], ...COMMANDS.map(({ name }) => [name, '--help'])];
    await expect(await session(calls)).toMatchFileSnapshot(kept('help'));
  });

  test('calls that are refused', async () => {
    const set = `examples/${EXAMPLES[0]}`;
    const calls = REFUSED_CALLS.map((call) => call.map((one) => (one === 'SET' ? set : one)));
    await expect(await session(calls)).toMatchFileSnapshot(kept('refused'));
  });

  test.each(COMMANDS.map(({ name }) => name).filter((name) => !FOR_PROGRAMS.has(name) && !OF_A_BOX.has(name)))(
    'faintwave %s',
    async (name) => {
      const sets = ['medium-wave-galena', 'ferrite-rod-valve-diode', 'two-band'];
      const calls = sets.flatMap((set) =>
        (CALLED_WITH[name] ?? [[]]).map((more) => [name, `examples/${set}.json`, ...more]),
      );
      await expect(await session(calls)).toMatchFileSnapshot(kept(name));
    },
  );

  test.each(SHEET_IDS)('sheet %s', async (id) => {
    const texts = EXAMPLES.flatMap((file) => {
      const read = readText(readFileSync(inRoot(`examples/${file}`), 'utf8'));
      if (!read.ok) throw new Error(`${file} does not read`);
      const sheets = sheetsFor(read.written, read.set, receive(read.set), { only: [id] });
      return [`== ${file}`, ...sheets.flatMap(({ pages }) => pages.map((page) => textsIn(pageSvg(page))))];
    });
    await expect(`${texts.join('\n')}\n`).toMatchFileSnapshot(kept(`sheet-${id}`));
  });

  test('what is wrong with a description', async () => {
    const found: string[] = [];
    for (const file of ['medium-wave-galena.json', 'two-band.json', 'frame-aerial.json']) {
      for (const value of spoilt(JSON.parse(readFileSync(inRoot(`examples/${file}`), 'utf8')), SPOILT)) {
        const read = readValue(value);
        if (!read.ok) found.push(...read.problems.map(problemSentence));
      }
    }
    await expect(sentences(found)).toMatchFileSnapshot(kept('problems'));
  });

  test('sets of any kind: what is said of their path and dial', async () => {
    const texts: string[] = [];
    for (const { written } of drawn)
      for (const call of [['path', '--all'], ['dial'], ['stations']])
        texts.push(await said([call[0], 'set.json', ...call.slice(1)], { 'set.json': JSON.stringify(written) }));
    await expect(sentences(texts)).toMatchFileSnapshot(kept('drawn-answers'));
  });

  test('sets of any kind: what their sheets say', async () => {
    const texts = drawn.flatMap(({ written, set }) =>
      sheetsFor(written, set, receive(set), {
        only: SHEET_IDS.filter((id) => id !== 'text' && id !== 'faults'),
      }).flatMap(({ pages }) => pages.map((page) => textsIn(pageSvg(page)))),
    );
    await expect(sentences(texts)).toMatchFileSnapshot(kept('drawn-sheets'));
  });

  test('sets of any kind: what drawings say', async () => {
    const texts = drawn.flatMap(({ set }) => [
      drawAerial(set.aerial, set.earth),
      drawCapacitor(set.tuning),
      drawDetector(set.detector),
      drawLoad(set.load),
      drawCircuit(set),
      ...set.coils.map((coil, i) => drawCoil(coil, { taps: tapsOf(set, i) })),
    ]);
    await expect(sentences(texts.map((scene) => textsIn(sceneToSvg(scene))))).toMatchFileSnapshot(
      kept('drawn-drawings'),
    );
  });

  test.each(['medium-wave-galena', 'ferrite-rod-valve-diode', 'long-wave-foil', 'spider-coil-earpiece'])(
    'scenes and moving pictures of %s',
    async (name) => {
      const read = readText(readFileSync(inRoot(`examples/${name}.json`), 'utf8'));
      if (!read.ok) throw new Error(`${name} does not read`);
      const prepare = preparer(read.set, receive(read.set));
      const told = story().flatMap((scene) => {
        const { figures, rows } = prepare(scene);
        return [
          ...[scene.title, scene.caption, scene.note].map((text) => filled(text, figures)),
          ...rows.map((row) => shownWords(row, { ...scene.show, average: true, cover: true })),
          '',
        ];
      });
      const { facts, figures } = prepare({ rows: [] });
      const pictures = PICTURE_IDS.flatMap((id) => {
        const { title, about, description, speed } = PICTURES[id];
        return [title(), about(facts), description(facts), speed(facts), ''];
      });
      const named = Object.entries(figures).map(([figure, text]) => `${figure}: ${text}`);
      await expect(`${[...told, ...named, '', ...pictures].join('\n')}\n`).toMatchFileSnapshot(kept(`explain-${name}`));
    },
  );

  test('readings, and what is wrong with them', async () => {
    const set = 'examples/medium-wave-galena.json';
    const readings = 'examples/readings/medium-wave-galena.json';
    const whole = JSON.parse(readFileSync(inRoot(readings), 'utf8'));
    const texts = [
      await said(['measure', set, readings]),
      await said(['measure', set, 'examples/readings/main-coil-resonance.csv']),
    ];
    for (const value of spoilt(whole, ['', 'twelve', -3, 1e9, '7 furlongs']))
      texts.push(await said(['measure', set, 'readings.json'], { 'readings.json': JSON.stringify(value) }));
    await expect(sentences(texts)).toMatchFileSnapshot(kept('readings'));
  });
});

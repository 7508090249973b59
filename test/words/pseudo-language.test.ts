import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { CALCULATIONS } from '../../src/cli/calc/index.ts';
import type { Io } from '../../src/cli/command.ts';
import { COMMANDS, run } from '../../src/cli/main.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import type { Reception } from '../../src/engine/reception/path/types.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';
import { readWav, writeWav } from '../../src/outputs/audio/index.ts';
import {
  drawAerial,
  drawCapacitor,
  drawCircuit,
  drawCoil,
  drawDetector,
  drawLoad,
  tapsOf,
} from '../../src/outputs/drawings/index.ts';
import {
  captionsOf,
  filled,
  filmPlan,
  PICTURE_IDS,
  PICTURES,
  POINTS,
  preparer,
  scenePen,
  shownWords,
  waveScene,
} from '../../src/outputs/explain/index.ts';
import { story } from '../../src/outputs/explain/story/story.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { pageSvg, SHEET_IDS, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { CALLED_WITH, FOR_PROGRAMS, OF_A_BOX, REFUSED_CALLS, said } from '../support/calls.ts';
import { memoryIo } from '../support/memory-io.ts';
import { bareWords, gluedSentences } from '../support/pseudo-language.ts';
import { textsIn } from '../support/svg-texts.ts';

vi.mock('../../src/outputs/words/en/index.ts', async (original) => {
  const { bracketed } = await import('../support/pseudo-language.ts');
  return bracketed(await original<object>());
});

/** What an example gives at its place: the same figures for every sheet and view of it. */
const receptions = new Map<string, Reception>();
function receptionOf(example: string, set: SetDescription): Reception {
  let reception = receptions.get(example);
  if (reception === undefined) receptions.set(example, (reception = receive(set)));
  return reception;
}

const EXAMPLES = ['medium-wave-galena', 'ferrite-rod-valve-diode', 'long-wave-foil'];
const textOf = (example: string): string => readFileSync(inRoot(`examples/${example}.json`), 'utf8');

/** Every text that a description holds: names, notes, values as they were written. */
function written(value: unknown): string[] {
  if (typeof value === 'string') return [value, ...value.split(/[,;.]\s+/)];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === 'kind' ? [] : written(inner)));
}

/** The keys and kinds of a description: ids of the file format, the same in every language. */
function idsOf(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap(idsOf);
  return Object.entries(value).flatMap(([key, inner]) => [
    key,
    ...(key === 'kind' && typeof inner === 'string' ? [inner] : idsOf(inner)),
  ]);
}

/** Places in a description, as a change names them: `coils[0].turns`. */
function placesIn(value: unknown, at = ''): string[] {
  if (typeof value !== 'object' || value === null) return [at];
  return Object.entries(value).flatMap(([key, inner]) =>
    placesIn(inner, Array.isArray(value) ? `${at}[${key}]` : at === '' ? key : `${at}.${key}`),
  );
}

function judge(output: string, text: string, names: readonly string[]): void {
  expect(bareWords(text, names), output).toEqual([]);
  expect(gluedSentences(text), output).toEqual([]);
}

describe('no visible sentence is made outside outputs/words', () => {
  test('command line: lists and help', async () => {
    judge('faintwave --help', await said(['--help']), [
      'faintwave path examples/medium-wave-galena.json',
      'faintwave',
      ...COMMANDS.map(({ name }) => name),
    ]);
    for (const { name, examples, options } of COMMANDS) {
      const flags = Object.keys(options).map((option) => `--${option}`);
      const ids = name === 'calc' ? CALCULATIONS.map((one) => one.name) : [];
      judge(`faintwave ${name} --help`, await said([name, '--help']), [
        'faintwave',
        name,
        ...examples,
        ...flags,
        ...ids,
      ]);
    }
  });

  test.each(COMMANDS.filter(({ name }) => !FOR_PROGRAMS.has(name) && !OF_A_BOX.has(name)).map(({ name }) => name))(
    'faintwave %s',
    async (name) => {
      const example = EXAMPLES[0];
      const description: unknown = JSON.parse(textOf(example));
      const names = [...written(description), ...placesIn(description)];
      for (const more of CALLED_WITH[name] ?? [[]]) {
        // Ids of points and names of files are what was asked for.
        const given = [...names, ...more.filter((one) => one.startsWith('/')), ...POINTS];
        const text = await said([name, `examples/${example}.json`, ...more]);
        judge(`faintwave ${name}`, text.replaceAll(/\/nowhere\/\S+/g, ''), given);
      }
    },
  );

  test('faintwave find', async () => {
    const box = {
      ...(JSON.parse(readFileSync(inRoot('examples/boxes/beginner.json'), 'utf8')) as Record<string, unknown>),
      wires: [{ wire: { size: '0.5 mm' }, length: '5 m' }],
      limits: { tapEvery: 12, arrangements: ['direct'] },
    };
    const place = {
      name: 'Little Withy',
      stations: [{ name: 'Saltmarsh Radio', frequency: '1251 kHz', fieldStrength: '8 mV/m' }],
    };
    const names = [...written(box), ...written(place), 'box', 'place'];
    let text = '';
    const take = (more: string) => {
      text += more;
    };
    const io: Io = {
      ...memoryIo(),
      out: take,
      err: take,
      width: Number.POSITIVE_INFINITY,
      read: async (file) => JSON.stringify(file === 'box' ? box : file === 'place' ? place : { ...box, wires: [] }),
    };
    await run(['find', 'box', '--at', 'place', '--want', 'loudest Saltmarsh Radio'], io);
    await run(['find', 'no wire', '--at', 'place'], io);
    judge('faintwave find', text, names);
  });

  test.each(REFUSED_CALLS.map((call) => [call.join(' '), call] as const))(
    'what is wrong with: faintwave %s',
    async (_, call) => {
      const example = `examples/${EXAMPLES[0]}.json`;
      const text = await said(call.map((one) => (one === 'SET' ? example : one)));
      expect(text).not.toBe('');
      judge(`problems of ${call[0]}`, text, ['faintwave', ...call]);
    },
  );

  test.each(SHEET_IDS)('sheet %s', (id) => {
    const texts = EXAMPLES.flatMap((example) => {
      const read = readText(textOf(example));
      if (!read.ok) throw new Error(`${example} does not read`);
      // The sheet of text prints the file itself.
      const names = [...written(read.written), ...(id === 'text' ? idsOf(read.written) : [])];
      return sheetsFor(read.written, read.set, receptionOf(example, read.set), { only: [id] })
        .flatMap((sheet) => sheet.pages.map((page) => pageSvg(page)))
        .map((svg) => ({ text: textsIn(svg), names }));
    });
    judge(`sheet ${id}`, texts.map(({ text }) => text).join('\n'), [
      'Faintwave',
      ...texts.flatMap(({ names }) => names),
    ]);
  });

  test.each(EXAMPLES)('drawings of the parts of %s', (name) => {
    const read = readText(textOf(name));
    if (!read.ok) throw new Error(`${name} does not read`);
    const { set } = read;
    const drawings = {
      aerial: drawAerial(set.aerial, set.earth),
      capacitor: drawCapacitor(set.tuning),
      detector: drawDetector(set.detector),
      load: drawLoad(set.load),
      circuit: drawCircuit(set),
      ...Object.fromEntries(set.coils.map((coil, i) => [coil.name, drawCoil(coil, { taps: tapsOf(set, i) })])),
    };
    for (const [part, scene] of Object.entries(drawings))
      judge(`drawing ${part}`, textsIn(sceneToSvg(scene)), written(read.written));
  });

  test.each(EXAMPLES)(
    'explain %s: titles, captions, notes, figures, traces and moving pictures of every scene',
    (name) => {
      const read = readText(textOf(name));
      if (!read.ok) throw new Error(`${name} does not read`);
      const names = [...written(read.written), 'WEBVTT'];
      const prepare = preparer(read.set, receptionOf(name, read.set));
      const drawn = (svg: string) => [...svg.matchAll(/>([^<]+)</g)].map(([, inner]) => inner);
      const judgeAll = (output: string, texts: readonly string[]) => {
        for (const text of texts) judge(`explain ${output}`, text, names);
      };
      for (const scene of story()) {
        const { figures, rows } = prepare(scene);
        judgeAll(
          scene.title,
          [scene.title, scene.caption, scene.note].map((text) => filled(text, figures)),
        );
        const show = { ...scene.show, average: true };
        judgeAll(
          scene.title,
          rows.map((row) => shownWords(row, { ...show, cover: true })),
        );
        const view = { from: scene.from, span: scene.span };
        if (rows.length > 0)
          judgeAll(
            scene.title,
            drawn(sceneToSvg(waveScene({ width: 1600, height: 240 * rows.length, rows, view, show }))),
          );
      }
      const { rows } = prepare({ rows: POINTS.map((point) => ({ point })), settings: { neighbours: false } });
      const view = { from: 0, span: 2e-3 };
      judgeAll(
        'spectra',
        drawn(sceneToSvg(waveScene({ width: 1600, height: 1400, rows, view, show: { spectrum: true } }))),
      );
      judgeAll('captions', [
        captionsOf(
          filmPlan(story(), (s) => prepare(s).facts),
          (s) => prepare(s).figures,
        ),
      ]);
      const { facts, figures } = prepare({ rows: [] });
      // A figure that has nothing to say for this set is empty.
      judgeAll('figures', Object.values(figures));
      for (const id of PICTURE_IDS) {
        const picture = PICTURES[id];
        judgeAll(id, [picture.title(), picture.about(facts), picture.description(facts), picture.speed(facts)]);
        for (const share of [0, 0.3, 0.6]) {
          const { pen, items } = scenePen();
          picture.paint(pen, facts, share * picture.seconds(facts), { x: 0, y: 0, w: 900, h: 500 }, 13);
          const scene = { unit: 'px', width: 900, height: 500, title: '', description: '', items: items() } as const;
          judgeAll(id, drawn(sceneToSvg(scene)));
        }
      }
    },
  );

  test('what is wrong with a sound file', async () => {
    const good = writeWav([new Float32Array(40)], { rate: 8000 });
    const changed = (at: number, value: number) => good.map((byte, i) => (i === at ? value : byte));
    for (const bytes of [new Uint8Array(0), good.subarray(4), good.subarray(0, 44), changed(20, 85), changed(34, 12)]) {
      const message = await readWav(bytes).then(
        () => 'it was read',
        (error: Error) => error.message,
      );
      judge('sound files', message, []);
    }
  });
});

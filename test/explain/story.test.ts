import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { heaterRun } from '../../src/engine/reception/detection/heater.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { readText } from '../../src/engine/set/read.ts';
import { formatQuantity } from '../../src/engine/units/format.ts';
import {
  captionsOf,
  createWaves,
  filled,
  filmPlan,
  meaningsOfFigures,
  PICTURE_IDS,
  PICTURES,
  preparer,
  scenePen,
  scenesOf,
  shownWords,
  viewAt,
  waveScene,
  wavesOfSet,
  withScenes,
  withSettings,
} from '../../src/outputs/explain/index.ts';
import { pictureFacts } from '../../src/outputs/explain/model/from-set.ts';
import { heaterHistory } from '../../src/outputs/explain/pictures/heater.ts';
import { swingAmplitude } from '../../src/outputs/explain/pictures/swing.ts';
import { namesOver } from '../../src/outputs/explain/pictures/vanes.ts';
import { figuresOf } from '../../src/outputs/explain/story/figures.ts';
import { readScene } from '../../src/outputs/explain/story/read-scenes.ts';
import { story } from '../../src/outputs/explain/story/story.ts';
import { overlap, textBox } from '../../src/outputs/scene/boxes.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { heaterSentences, problemSentence } from '../../src/outputs/words/index.ts';
import { expectPicture } from '../support/picture.ts';

const read = (file: string, surroundings?: 'nothing') => {
  const text = readFileSync(inRoot('examples', file), 'utf8');
  const written = JSON.parse(text);
  const result = readText(
    surroundings ? JSON.stringify({ ...written, aerial: { ...written.aerial, surroundings } }) : text,
  );
  if (!result.ok) throw new Error(`${file} has problems`);
  const reception = receive(result.set, {});
  return { ...result, reception, base: wavesOfSet(result.set, reception)! };
};
const STORY = story();
const EXAMPLES = ['medium-wave-galena.json', 'long-wave-foil.json', 'medium-wave-germanium-amplifier.json'];
const sets = EXAMPLES.map((file) => [file, read(file)] as const);
const [[, galena]] = sets;

describe('the waves of a set', () => {
  // The path's own figures are the outside here: two ways to the same voltages, made apart.
  test.each(
    EXAMPLES.flatMap((file) => [
      [file, 'in its garden', read(file)] as const,
      [file, 'with nothing round the aerial', read(file, 'nothing')] as const,
    ]),
  )('%s, %s: direct and audio voltage as on the path, within 1.5 dB', (_, _where, { base, reception }) => {
    const waves = createWaves(base);
    const station = reception.stations[reception.best[0]];
    const crest = waves.meanAt('phones', 0);
    const trough = waves.meanAt('phones', 0.5e-3);
    const decibels = (a: number, b: number) => Math.abs(20 * Math.log10(a / b));
    expect(decibels((crest - trough) / 2, station.audioVoltage)).toBeLessThan(1.5);
    expect(waves.spec.atTuned).toBe(station.tunedCircuitVoltage);
    // The path's direct voltage is the carrier's alone: a programme on it raises the mean, most in square law.
    const carrierAlone = createWaves({ ...base, depth: 0, neighbours: [] });
    expect(decibels(carrierAlone.meanAt('phones', 0), station.directVoltage)).toBeLessThan(1);
    const told = figuresOf(waves, undefined, reception);
    expect(told.directVoltage).toBe(formatQuantity(carrierAlone.meanAt('phones', 0), 'voltage', 2));
  });

  test('a long-wave carrier zoomed out is a solid band (common practice, no source)', () => {
    const waves = createWaves({ ...galena.base, carrier: 200e3, neighbours: [] });
    const min = new Float64Array(1000);
    const max = new Float64Array(1000);
    waves.extent('carrier', 0, 1, 1000, min, max);
    const { atAerial } = waves.spec;
    expect(min.every((v) => Math.abs(v + atAerial) < 1e-9)).toBe(true);
    expect(max.every((v) => Math.abs(v - atAerial) < 1e-9)).toBe(true);
  });
});

describe('the story', () => {
  test('has about a dozen scenes or more, each with a caption and something to say', () => {
    expect(STORY.length).toBeGreaterThanOrEqual(12);
    for (const scene of STORY) {
      expect(scene.caption.length, scene.title).toBeGreaterThan(20);
      expect(scene.caption.length, scene.title).toBeLessThan(150);
      expect(scene.note.length, scene.title).toBeGreaterThan(100);
    }
  });

  test('every figure it names is one of the set’s, and all are filled in', () => {
    for (const [file, { base, set, reception }] of sets) {
      const figures = figuresOf(createWaves(base), set, reception);
      for (const scene of STORY) {
        expect(Object.keys(figures).sort()).toEqual(
          meaningsOfFigures()
            .map(([name]) => name)
            .sort(),
        );
        for (const words of [scene.title, scene.caption, scene.note]) {
          const text = filled(words, figures);
          expect(text, `${file}: ${scene.title}`).not.toMatch(/[{}]|NaN|undefined|Infinity|∞/);
        }
      }
    }
  });

  test('every scene can be drawn at its beginning and its end', () => {
    for (const [, { base }] of sets.slice(0, 1)) {
      for (const scene of STORY) {
        const own = withSettings(base, scene.settings ?? {});
        const rows = scene.rows.map((row) => ({ ...row, waves: createWaves(withSettings(own, row.with ?? {})) }));
        if (rows.length === 0) continue;
        for (const seconds of [0, 100]) {
          const view = viewAt(scene, seconds);
          const picture = waveScene({ width: 300, height: 200, rows, view, show: scene.show ?? {} });
          expect(sceneToSvg(picture), scene.title).not.toMatch(/NaN|undefined|Infinity/);
        }
      }
    }
  });

  test('is kept in the description under its own key and comes back as it was', () => {
    const edited = STORY.map((s, i) => ({ ...s, title: `${i + 1} ${s.title}` })).reverse();
    const written = withScenes(galena.written, edited);
    const back = JSON.parse(JSON.stringify(written));
    expect(readText(JSON.stringify(written)).ok).toBe(true);
    const { scenes, own } = scenesOf(back);
    expect(own).toBe(true);
    expect(scenes.map((s) => s.title)).toEqual(edited.map((s) => s.title));
    for (const [i, scene] of scenes.entries()) {
      const { from, span, ...rest } = edited[i];
      expect(scene).toMatchObject(rest);
      expect(scene.span).toBeCloseTo(span, 12);
      expect(scene.from).toBeCloseTo(from, 12);
    }
    expect(withScenes(back, undefined)).toEqual(JSON.parse(JSON.stringify(galena.written)));
  });

  test('a bad scene is named with its place and a way out; keys of one’s own in a good one survive', () => {
    const own = { ...STORY[0], colour: 'of the wall', rows: [{ point: 'carrier', mine: 1 }], span: '20 ms' };
    const bad = {
      title: 'x',
      rows: [{ point: 'phone' }],
      settings: { capacitance: '3 m', programme: { kind: 'tune' } },
    };
    const read = (scenes: unknown) => readText(JSON.stringify({ ...galena.written, scenes }));
    const good = read([own]);
    expect(good.ok && (good.written as unknown as { scenes: unknown }).scenes).toEqual([own]);
    expect(good.ok && good.set.scenes?.[0]).toMatchObject({ span: 0.02 });
    const { scenes } = scenesOf({ scenes: [own] });
    expect(scenes[0].span).toBe(0.02);
    expect(scenes[0]).toMatchObject({ colour: 'of the wall', rows: [{ point: 'carrier', mine: 1 }] });
    // What cannot be read is not lost when others are edited.
    expect(withScenes({ scenes: [own, bad] }, scenes)).toEqual({ scenes: [...scenes, bad] });
    const problems = read([own, bad, { title: 'nothing' }]);
    const said = problems.ok ? '' : problems.problems.map(problemSentence).join('\n');
    expect(said).toMatch(/scenes\[1\]\.rows\[0\]\.point.*"phones"/);
    expect(said).toMatch(/scenes\[1\]\.settings\.capacitance.*capacitance/);
    expect(said).toMatch(/scenes\[1\]\.settings\.programme.*"tone"/);
    expect(said).toMatch(/scenes\[2\].*something to see/);
  });

  test('captions written with the names that figures had before are filled in too', () => {
    const figures = figuresOf(createWaves(galena.base), galena.set, galena.reception);
    const former = ['quarter', 'toneQuarter', 'aerialSays', 'loopSays', 'tuner', 'lift', 'broad', 'buildUp', 'tapSays'];
    const more = ['detectorOut', 'direct', 'audio', 'drain', 'drains', 'below'];
    for (const name of [...former, ...more]) expect(filled(`{${name}}`, figures), name).not.toContain('{');
    expect(filled('{direct} {constructor} {mine}', figures)).toBe(`${figures.directVoltage} {constructor} {mine}`);
  });

  test('what is no scene is left out without harm', () => {
    for (const wrong of [null, 3, 'x', [], {}, { title: 'x' }, { title: 'x', rows: [{ point: 'nowhere' }] }])
      expect(readScene(wrong)).toBeUndefined();
    expect(scenesOf({ scenes: 'none' }).own).toBe(false);
    const scene = readScene({
      title: 'x',
      rows: [{ point: 'phones' }],
      from: 'soon',
      span: -1,
      settings: { depth: 99 },
    });
    expect(scene).toMatchObject({ from: 0, span: 2e-3 });
    expect(scene?.settings).toBeUndefined();
  });
});

test('covered, the average is said to follow the programme', () => {
  const scene = STORY.find((s) => s.show?.cover)!;
  const waves = createWaves(withSettings(galena.base, scene.settings ?? {}));
  expect(shownWords({ waves, point: 'tuned' }, scene.show!)).toMatch(
    /the average follows the programme, from .*V to .*V/,
  );
  expect(shownWords({ waves, point: 'tuned' }, {})).toContain('The average is zero.');
});

describe('moving pictures', () => {
  test('draw themselves at any moment, for every example', () => {
    for (const [, { base, set, reception }] of sets) {
      const facts = pictureFacts(createWaves(base), set, reception);
      for (const id of PICTURE_IDS) {
        const picture = PICTURES[id];
        expect(picture.about(facts)).not.toMatch(/NaN|undefined|Infinity/);
        for (let k = 0; k < 7; k++) {
          const { pen, items } = scenePen();
          picture.paint(pen, facts, (k / 6) * picture.seconds(facts), { x: 0, y: 0, w: 600, h: 340 }, 13);
          const scene = { unit: 'px', width: 600, height: 340, title: id, description: '', items: items() } as const;
          expect(sceneToSvg(scene), id).not.toMatch(/NaN|undefined|Infinity/);
        }
      }
    }
  });

  test('each says in words what moves, with figures', () => {
    for (const [, { base, set, reception }] of sets) {
      const facts = pictureFacts(createWaves(base), set, reception);
      for (const id of PICTURE_IDS) {
        const words = PICTURES[id].description(facts);
        expect(words.length, id).toBeGreaterThan(250);
        expect(words, id).toMatch(/\d/);
        expect(words, id).not.toMatch(/NaN|undefined|Infinity|[{}]/);
      }
    }
  });

  test('tuning: no name lies on another or on another’s line, and most find room', () => {
    const facts = pictureFacts(createWaves(galena.base), galena.set, galena.reception);
    const names = facts.stations.map((s, i) => ({ name: s.name, x: 380 + 65 * i }));
    const placed = namesOver(names, { x: 360, y: 40, w: 540, h: 80 }, 13).flatMap((item) => (item ? [item] : []));
    expect(placed.length).toBeGreaterThanOrEqual(names.length - 1);
    const boxes = placed.map(textBox);
    for (const [i, a] of boxes.entries())
      for (const [j, b] of boxes.entries()) {
        if (i === j) continue;
        expect(overlap(a, b), `${placed[i].text} on ${placed[j].text}`).toBe(false);
        const line = { x: placed[j].at[0] - 0.5, y: b.y + b.h, w: 1, h: 120 - b.y - b.h };
        expect(overlap(a, line), `${placed[i].text} on the line of ${placed[j].text}`).toBe(false);
      }
  });

  test('the heater’s picture and its words tell one temperature', () => {
    const facts = pictureFacts(createWaves(galena.base), galena.set, galena.reception);
    const { pen, items } = scenePen();
    PICTURES.heater.paint(pen, facts, 14, { x: 0, y: 0, w: 600, h: 340 }, 13);
    const drawn = JSON.stringify(items()).match(/cathode, up to (\d+ °C)/)?.[1];
    expect(PICTURES.heater.about(facts)).toContain(`reaches ${drawn} in`);
  });

  test('the heater’s times are the same in the picture and on the workbench', () => {
    const valve = read('ferrite-rod-valve-diode.json');
    const facts = pictureFacts(createWaves(valve.base), valve.set, valve.reception);
    const [about, [, times]] = [PICTURES.heater.about(facts), heaterSentences(heaterRun(valve.set, 0)!)[0].split('. ')];
    expect(times).toMatch(/\d s \(90 % range \d+–\d+ s\) after the heater is switched on/);
    expect(about.includes(times), `${about} has not: ${times}`).toBe(true);
  });

  test('energy builds up and rings down by 2π/Q a cycle', () => {
    const q = 50;
    const energy = (n: number) => swingAmplitude(q, n) ** 2;
    expect(energy(61) / energy(60)).toBeCloseTo(Math.exp((-2 * Math.PI) / q), 12);
    expect(swingAmplitude(q, q / Math.PI)).toBeCloseTo(1 - Math.exp(-1), 9);
  });

  test.each([3, 11, 40, 75, 300, 1500])(
    'at a Q of %d the swing is shown whole, in 10 to 20 s, no faster than an eye follows',
    (loadedQ) => {
      const waves = createWaves({ ...galena.base, loadedQ });
      const facts = pictureFacts(waves, galena.set, galena.reception);
      const seconds = PICTURES.swing.seconds(facts);
      expect(seconds).toBeGreaterThanOrEqual(10);
      expect(seconds).toBeLessThanOrEqual(20);
      const drawn = (t: number): string => {
        const { pen, items } = scenePen();
        PICTURES.swing.paint(pen, facts, t, { x: 0, y: 0, w: 600, h: 340 }, 13);
        return JSON.stringify(items());
      };
      // When the pushing stops, at half time, nearly all that there can be is reached.
      const cycle = Number(drawn(seconds / 2 - 1e-6).match(/cycle (\d+),/)![1]);
      expect(swingAmplitude(waves.spec.loadedQ, cycle)).toBeGreaterThan(0.9);
      const pushes = Array.from({ length: 400 }, (_, k) => drawn((seconds * k) / 800).split('"accent"').length);
      const begun = pushes.filter((count, k) => k > 0 && count > pushes[k - 1]).length;
      expect(begun).toBeGreaterThanOrEqual(5);
      expect(begun).toBeLessThanOrEqual(9);
    },
  );

  test('a valve takes a while to warm, and goes on for a while after switching off (common practice, no source)', () => {
    const { emission } = heaterHistory(pictureFacts(createWaves(galena.base), galena.set, galena.reception));
    const most = Math.max(...emission);
    expect(emission[8]).toBeLessThan(0.01 * most); // 2 s
    expect(emission[124]).toBeGreaterThan(0.3 * most); // 1 s after switching off
    expect(emission.at(-1)).toBeLessThan(0.01 * most);
  });
});

describe('film', () => {
  const facts = pictureFacts(createWaves(galena.base), galena.set, galena.reception);
  const parts = filmPlan(STORY, () => facts);

  test('scenes follow one another without a gap, and captions with them', () => {
    for (let i = 1; i < parts.length; i++)
      expect(parts[i].start).toBeCloseTo(parts[i - 1].start + parts[i - 1].seconds, 9);
    const figures = figuresOf(facts.waves, galena.set, galena.reception);
    const vtt = captionsOf(parts, () => figures);
    expect(vtt.startsWith('WEBVTT\n\n1\n00:00:00.000 --> ')).toBe(true);
    expect(vtt.match(/ --> /g)).toHaveLength(STORY.length);
    expect(vtt).toContain('603 kHz');
  });

  test.each(readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json')))(
    '%s: every scene lasts to its last event',
    (file) => {
      const { set, reception } = read(file);
      const prepare = preparer(set, reception);
      for (const { scene, seconds } of filmPlan(STORY, (one) => prepare(one).facts)) {
        if (scene.to) expect(viewAt(scene, seconds).span).toBeCloseTo(scene.to.span, 12);
        else if (scene.picture)
          expect(seconds, scene.title).toBeGreaterThanOrEqual(PICTURES[scene.picture].seconds(prepare(scene).facts));
      }
    },
  );

  test('a zoom begins and ends where the scene says, at an even pace in between', () => {
    const scene = STORY[0];
    expect(viewAt(scene, 0)).toEqual({ from: scene.from, span: scene.span });
    const end = viewAt(scene, 100);
    expect(end.span).toBeCloseTo(scene.to!.span, 12);
    expect(end.from).toBeCloseTo(scene.to!.from, 12);
    const middle = viewAt(scene, 1.5 + scene.to!.seconds / 2);
    expect(middle.span).toBeCloseTo(Math.sqrt(scene.span * scene.to!.span), 12);
  });
});

test('the wave window of the example, zoomed out', async () => {
  const waves = createWaves(galena.base);
  const rows = (['programme', 'modulated', 'detector', 'phones'] as const).map((point) => ({ waves, point }));
  const picture = waveScene({
    width: 480,
    height: 420,
    rows,
    view: { from: 0, span: 2e-3 },
    show: { average: true },
    density: 0.5,
  });
  await expectPicture(sceneToSvg(picture, { colours: 'day', id: 'w' }), 'explain/wave-window');
});

test('the operating point on the example’s curve', async () => {
  const { pen, items } = scenePen();
  const facts = pictureFacts(createWaves(galena.base), galena.set, galena.reception);
  PICTURES.curve.paint(pen, facts, 4.9, { x: 10, y: 10, w: 600, h: 340 }, 13);
  const scene = {
    unit: 'px',
    width: 620,
    height: 360,
    title: PICTURES.curve.title(),
    description: PICTURES.curve.about(facts),
    items: items(),
  } as const;
  await expectPicture(sceneToSvg(scene, { colours: 'day', id: 'c' }), 'explain/operating-point');
});

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { receive } from '../../../engine/reception/path/receive.ts';
import { readText } from '../../../engine/set/read.ts';
import { buffersOf } from '../model/parts.ts';
import { POINTS } from '../model/points.ts';
import type { WaveProgramme } from '../model/wave-programme.ts';
import type { Waves } from '../model/waves.ts';
import { preparer } from './prepared.ts';
import { packed, type SceneDrawn, sceneKey, unpacked } from './sent.ts';
import { story } from './story.ts';

const read = readText(readFileSync(new URL('../../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
if (!read.ok) throw new Error('the example has problems');
const { set } = read;
const reception = receive(set, {});
const recording: WaveProgramme = {
  kind: 'recording',
  name: 'a hum',
  samples: Float32Array.from({ length: 4000 }, (_, i) => Math.sin((2 * Math.PI * 300 * i) / 8000)),
  rate: 8000,
};

const columns = (waves: Waves, draw: 'extent' | 'mean', point: (typeof POINTS)[number], from: number, span: number) => {
  const min = new Float64Array(60);
  const max = new Float64Array(60);
  waves[draw](point, from, from + span, 60, min, max);
  return [...min, ...max];
};

describe('a scene worked out in one place and drawn in another', () => {
  const whole: SceneDrawn = { rows: POINTS.map((point) => ({ point })), show: { spectrum: true } };
  const scenes: [string, SceneDrawn][] = [
    ['the whole way', whole],
    [
      'two tones, no neighbours',
      { ...whole, settings: { neighbours: false, programme: { kind: 'two tones', first: 400, second: 1300 } } },
    ],
    ['a recording', { ...whole, settings: { programme: { kind: 'recording' } } }],
    ['a perfect path', { ...whole, settings: { detector: 'perfect', depth: 1.2 } }],
    ...story()
      .filter((s) => s.rows.length > 2)
      .map((s): [string, SceneDrawn] => [s.title, s]),
  ];
  test.each(scenes)('%s: the same to the last bit, and nothing is worked out twice', (_, scene) => {
    const prepare = preparer(set, reception, recording);
    const here = prepare(scene);
    const wanted = here.rows.map(({ waves, point }) => [
      ...columns(waves, 'extent', point, 0, 2e-3),
      ...columns(waves, 'mean', point, 1e-4, 1e-5),
      ...Object.values(waves.scale(point)),
      ...(scene.show?.spectrum ? waves.lines(point).map((l) => l.amplitude) : []),
    ]);
    const { sent, memory } = packed(preparer(set, reception, recording), scene);
    // As a worker would send it: plain data, its memory handed over.
    const arrived = structuredClone(sent, { transfer: memory });
    expect(memory.every((m) => m.byteLength === 0)).toBe(true);
    const before = Object.values(arrived.parts).flatMap(buffersOf).length;
    const there = unpacked(arrived, scene, set, recording);
    const got = there.rows.map(({ waves, point }) => [
      ...columns(waves, 'extent', point, 0, 2e-3),
      ...columns(waves, 'mean', point, 1e-4, 1e-5),
      ...Object.values(waves.scale(point)),
      ...(scene.show?.spectrum ? waves.lines(point).map((l) => l.amplitude) : []),
    ]);
    expect(got).toEqual(wanted);
    expect(Object.values(arrived.parts).flatMap(buffersOf).length).toBe(before);
    expect(there.figures).toEqual(here.figures);
  });

  test('what changes the waves changes the key, and what does not, does not', () => {
    const key = sceneKey(whole);
    expect(sceneKey({ ...whole, show: { spectrum: true, average: true } })).toBe(key);
    expect(sceneKey({ ...whole, settings: { depth: 0.5 } })).not.toBe(key);
    expect(sceneKey({ ...whole, rows: whole.rows.slice(1) })).not.toBe(key);
    expect(sceneKey({ ...whole, show: {} })).not.toBe(key);
  });

  test('by night a station’s waves are those of the night’s reception', () => {
    const night = receive(set, { time: 'night' });
    const at = (now: typeof night, time: 'day' | 'night') => preparer(set, now, undefined, { time })(whole).base;
    const station = night.stations[night.best[0]];
    const base = at(night, 'night');
    expect(base.atDetector).toBe(station.detectorVoltage);
    expect(base.deepening).toBeGreaterThan(0.3);
    expect(at(reception, 'day').atDetector).toBe(reception.stations[reception.best[0]].detectorVoltage);
  });
});

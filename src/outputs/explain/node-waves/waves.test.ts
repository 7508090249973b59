import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { NodeWaves } from '../../../engine/waves/node-waves.ts';
import { nodeWaveTexts } from '../../words/index.ts';
import { drawnExtremes } from '../model/drawn-extremes.ts';
import { closer, nodeWaveScene, nodeWavesCsv, shownWaves, viewWithin } from './index.ts';
import { columnsOf, keptWave, traceOf } from './trace.ts';

const run = (n: number): NodeWaves => ({
  station: 'Saltmarsh Radio',
  carrier: 1e6,
  tone: 1000,
  start: 0.02,
  interval: 1 / 32e6,
  duration: n / 32e6,
  neighbours: ['Quayside'],
  warnings: [],
  waves: [
    {
      id: 'top',
      point: { code: 'node', node: { code: 'top' }, id: 'top', joins: undefined },
      measure: 'voltage',
      probe: { kind: 'voltage', node: 'top' },
      samples: Float32Array.from({ length: n }, (_, i) => Math.sin(i / 5) * (1 + 0.5 * Math.sin(i / 3000))),
      reading: { least: -1.5, greatest: 1.5, mean: 0, carrier: 1, audio: 0, secondHarmonic: 0, depth: 0.5 },
    },
  ],
});

it('columns hold the true least and greatest, whatever the stretch', () => {
  const samples = run(40_000).waves[0].samples;
  const wave = keptWave(samples);
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 39_000, noNaN: true }),
      fc.double({ min: 3, max: 40_000, noNaN: true }),
      fc.integer({ min: 1, max: 400 }),
      (from, span, count) => {
        const to = Math.min(39_999, from + span);
        const min = new Float64Array(count);
        const max = new Float64Array(count);
        columnsOf(wave, from, to, count, min, max);
        const within_ = samples.subarray(Math.ceil(from), Math.floor(to) + 1);
        if (within_.length === 0) return;
        const least = within_.reduce((a, b) => Math.min(a, b), 9);
        const greatest = within_.reduce((a, b) => Math.max(a, b), -9);
        expect(Math.min(...min)).toBeLessThanOrEqual(least);
        expect(Math.max(...max)).toBeGreaterThanOrEqual(greatest);
        expect(Math.min(...min)).toBeGreaterThanOrEqual(wave.least);
        expect(Math.max(...max)).toBeLessThanOrEqual(wave.greatest);
        for (let c = 1; c < count; c++) expect(max[c] >= min[c - 1] && max[c - 1] >= min[c]).toBe(true);
      },
    ),
    { numRuns: 60, seed: 5 },
  );
});

it('a steady carrier has straight edges at every span that shows no single cycles', () => {
  const [carrier, interval, columns] = [1e6, 1 / 32e6, 700];
  const samples = Float32Array.from({ length: 200_000 }, (_, i) => Math.sin(2 * Math.PI * carrier * interval * i));
  const trace = traceOf(keptWave(samples), interval);
  const min = new Float64Array(columns);
  const max = new Float64Array(columns);
  for (let cycles = 1 / 3 + 1e-6; cycles < 8; cycles *= 1.03) {
    drawnExtremes(trace, 1 / carrier, true, 1e-5, 1e-5 + (cycles * columns) / carrier, columns, min, max);
    for (const edge of [min, max])
      expect(Math.max(...edge) - Math.min(...edge), `${cycles} cycles a column`).toBeLessThan(0.02);
  }
});

it('zooms from the whole run to a single cycle and never beyond', () => {
  const waves = shownWaves(run(64_000));
  let view = { from: 0, span: waves.duration };
  for (let i = 0; i < 60; i++) view = closer(view, 0.5, 0.7, waves);
  expect(view.span).toBeCloseTo(1e-6, 12);
  expect(view.from).toBeGreaterThan(0);
  for (let i = 0; i < 60; i++) view = closer(view, 2, 0.2, waves);
  expect(view).toEqual({ from: 0, span: waves.duration });
  expect(viewWithin({ from: 9, span: 1e-5 }, waves).from).toBeCloseTo(waves.duration - 1e-5, 12);
});

it('says what is there, and writes every sample of what is shown', () => {
  const waves = shownWaves(run(64_000));
  expect(nodeWaveTexts.reading(waves.waves[0])).toBe(
    'Top of the coil: −1.5 V to 1.5 V, mean 0, carrier 1 V peak, modulated 50 %.',
  );
  const lines = nodeWavesCsv(waves, { from: 0, span: 1e-5 }).trim().split('\n');
  expect(lines[0]).toBe('"time (s)","Top of the coil (V)"');
  expect(lines.length).toBe(1 + 321);
  expect(Number(lines[1].split(',')[0])).toBeCloseTo(0.02, 9);
  const scene = nodeWaveScene(waves, { width: 800, height: 300, view: { from: 0, span: waves.duration } });
  expect(scene.description).toContain('1 other station is on the air (Quayside)');
  expect(scene.items.length).toBeGreaterThan(4);
});

it('says what over-modulation means where the depth is over 100 %, and only there', () => {
  const [wave] = shownWaves(run(64_000)).waves;
  const words = (depth: number) => nodeWaveTexts.reading({ ...wave, reading: { ...wave.reading, depth } });
  expect(words(1.12)).toMatch(/modulated 112 % \(.*over-modulation.*negative-peak clipping/);
  for (const depth of [0.3, 0.99, 1, 1.004]) expect(words(depth)).not.toMatch(/over-modulation|clipping/);
});

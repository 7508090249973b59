import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { receive } from '../../src/engine/reception/path/receive.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';
import { formatQuantity } from '../../src/engine/units/format.ts';
import { type BandName, nearestBand } from '../../src/engine/vary/bands.ts';
import { moveBand } from '../../src/engine/vary/move-band.ts';
import {
  FILM_SOUND_RATE,
  filled,
  filmPlan,
  filmSound,
  packed,
  preparer,
  type StoryScene,
  scenesOf,
  stationOf,
  unpacked,
} from '../../src/outputs/explain/index.ts';
import { storyTexts } from '../../src/outputs/words/index.ts';

const scene = scenesOf(undefined).scenes.find(({ title }) => title === storyTexts['old coil'].title)!;

function read(written: object) {
  const result = readText(JSON.stringify(written));
  if (!result.ok) throw new Error('has problems');
  const reception = receive(result.set, {});
  return { set: result.set, reception, prepare: preparer(result.set, reception) };
}
const example = (file: string) => JSON.parse(readFileSync(inRoot('examples', file), 'utf8'));
const files = readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json'));

/** The set with a station as it is and once more on another carrier, as the last of the list. */
const withCarrier = (set: SetDescription, index: number, frequency: number): SetDescription => ({
  ...set,
  place: { ...set.place, stations: [...set.place.stations, { ...set.place.stations[index], frequency }] },
});
const receivedOn = (set: SetDescription, index: number, frequency: number) =>
  receive(withCarrier(set, index, frequency), {}).stations.find((s) => s.index === set.place.stations.length)!;
const OTHER: Readonly<Record<BandName, BandName>> = { 'long wave': 'medium wave', 'medium wave': 'long wave' };
const decibels = (a: number, b: number): number => 20 * Math.log10(a / b);

describe.each(files)('%s on the other band with its coil unchanged', (file) => {
  const { set, reception, prepare } = read(example(file));
  const station = stationOf(reception, undefined)!;
  const prepared = prepare(scene);
  const [changed, kept] = prepared.rows.map((row) => row.waves.spec);
  const { carrier } = kept;
  const own = nearestBand(station.frequency);

  test('is on the band that its station is not on, in both rows', () => {
    expect(nearestBand(carrier)).toBe(OTHER[own]);
    expect(changed.carrier).toBe(carrier);
  });

  test('the levels with the old coil are those of a reception of that carrier', () => {
    const there = receivedOn(set, station.index, carrier);
    const here = receivedOn(set, station.index, station.frequency);
    const drawn = decibels(kept.atDetector, prepared.base.atDetector);
    expect(drawn).toBeCloseTo(decibels(there.detectorVoltage, here.detectorVoltage), 1);
    expect(prepared.figures.oldCoilNote.includes(', not ')).toBe(there.verdict === 'out of range');
  });

  test('the caption has the set’s own range and both voltages', () => {
    const frequencies = reception.dial.points.map((point) => point.frequency);
    const caption = filled(scene.caption, prepared.figures);
    expect(caption).toContain(`${Math.round(Math.min(...frequencies) / 1e3)}–`);
    for (const { atDetector } of [kept, changed]) expect(caption).toContain(formatQuantity(atDetector, 'voltage', 2));
    expect(caption.length).toBeLessThan(170);
    expect(filled(scene.note, prepared.figures)).not.toMatch(/[{}]|NaN|undefined|Infinity/);
  });

  test('is the same put together again in another thread', () => {
    const { sent } = packed(preparer(set, reception), scene);
    const again = unpacked(structuredClone(sent), scene, set);
    expect(again.rows.map(({ waves }) => waves.spec.atDetector)).toEqual([changed.atDetector, kept.atDetector]);
    expect(again.figures).toEqual(prepared.figures);
  });
});

test('the row with a coil for the band is the set moved to that band', () => {
  const { set, reception, prepare } = read(example('long-wave-foil.json'));
  const prepared = prepare(scene);
  const [changed] = prepared.rows.map((row) => row.waves.spec);
  const { moved } = moveBand(set, { to: 'medium wave' });
  const index = stationOf(reception, undefined)!.index;
  const there = receivedOn(moved, index, changed.carrier);
  const here = receivedOn(set, index, set.place.stations[index].frequency);
  expect(decibels(changed.atDetector, prepared.base.atDetector)).toBeCloseTo(
    decibels(there.detectorVoltage, here.detectorVoltage),
    1,
  );
});

test('everything is calculated anew when the set changes', () => {
  const written = example('medium-wave-galena.json');
  const captionFor = (one: object) => filled(scene.caption, read(one).prepare(scene).figures);
  const [coil, ...others] = written.coils;
  const more = { ...written, coils: [{ ...coil, turns: Math.round(coil.turns * 1.2) }, ...others] };
  expect(captionFor(more)).not.toBe(captionFor(written));
});

test('another detector of the scene loads both rows', () => {
  const { prepare } = read(example('medium-wave-galena.json'));
  const silicon: StoryScene = { ...scene, settings: { ...scene.settings, detector: 'silicon' } };
  const { rows, figures } = prepare(silicon);
  const own = prepare(scene);
  expect(rows[0].waves.spec.loadedQ).not.toBeCloseTo(own.rows[0].waves.spec.loadedQ, 1);
  expect(figures.oldCoilNote).not.toBe(own.figures.oldCoilNote);
});

test('a carrier that the old coil reaches is said to be within its range', () => {
  const { prepare } = read(example('medium-wave-galena.json'));
  const within: StoryScene = { ...scene, settings: { ...scene.settings, carrier: 900e3 } };
  const { figures, rows } = prepare(within);
  expect(figures.oldCoilNote).toContain('and so 900 kHz too');
  expect(figures.oldCoilCause).toContain('resonates at 900 kHz with either coil');
  const [changed, kept] = rows.map((row) => row.waves.spec.atDetector);
  expect(decibels(kept, changed)).toBeCloseTo(0, 6);
});

test('without a set an ordinary one shows the same', () => {
  const { rows, figures } = preparer()(scene);
  const [changed, kept] = rows.map((row) => row.waves.spec.atDetector);
  // Resonance far below: 1/(Q (f0/f − f/f0)), textbook.
  const detuned = 45 * (452.5 / 200 - 200 / 452.5);
  expect(decibels(kept, changed)).toBeCloseTo(decibels(1, detuned), 0);
  expect(figures.oldCoilNote).toContain('453–1600\u00a0kHz, not 200 kHz');
});

test('captions of scenes without another coil say nothing of it', () => {
  const { prepare } = read(example('medium-wave-galena.json'));
  const { figures } = prepare({ rows: [{ point: 'tuned' }] });
  expect([figures.oldCoilNote, figures.oldCoilCause]).toEqual(['', '']);
});

test('is heard as loud as it is against the row with the other coil', () => {
  const { prepare } = read(example('medium-wave-galena.json'));
  const loudest = (one: StoryScene): number => {
    const prepared = prepare(one);
    const [part] = filmPlan([one], () => prepared.facts);
    return filmSound(prepared, part, FILM_SOUND_RATE, 1).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  };
  const { keepsCoil: _, ...settings } = scene.settings!;
  const whole = loudest({ ...scene, settings });
  const old = loudest(scene);
  expect(whole).toBeGreaterThan(0.15);
  expect(old).toBeLessThan(0.01 * whole);
  // To scales of their own, rows are heard as loud as can be.
  expect(loudest({ ...scene, show: { average: true } })).toBeCloseTo(whole, 2);
});

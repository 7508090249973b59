import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { receive } from '../../src/engine/reception/path/receive.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readValue } from '../../src/engine/set/read.ts';
import { receiveRanged } from '../../src/engine/uncertainty/receive-ranged.ts';
import { BLOCK, type ListeningOptions, openListening, renderListening } from '../../src/outputs/audio/index.ts';
import { madeProgramme } from '../../src/outputs/audio/programme.ts';

const exampleNamed = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'));
const example = exampleNamed('medium-wave-galena');
/** The example with these stations instead of its own. */
function setWith(stations: object[], changes: object = {}, from = example): SetDescription {
  const read = readValue({ ...from, ...changes, place: { ...from.place, stations } });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const station = (kHz: number, field: string, more: object = {}) => ({
  name: `Test ${kHz}`,
  frequency: `${kHz} kHz`,
  fieldStrength: field,
  programme: 'tone',
  modulation: '50 %',
  ...more,
});

/** Sound pressure, Pa, of a while after everything has settled. */
function pressure(set: SetDescription, options: ListeningOptions, seconds = 0.5): Float32Array {
  const listening = openListening(set, { noise: false, room: false, ...options });
  const skip = Math.ceil(9600 / BLOCK);
  const blocks = Math.round((seconds * 48_000) / BLOCK);
  const out = new Float32Array(BLOCK);
  const all = new Float32Array(blocks * BLOCK);
  for (let b = 0; b < skip + blocks; b++) {
    listening.process(out, BLOCK);
    if (b >= skip) all.set(listening.pressure, (b - skip) * BLOCK);
  }
  expect(listening.meters.lost).toBe(0);
  return all;
}
/** dB SPL of a tone. */
function toneLevel(x: Float32Array, f: number): number {
  let re = 0;
  let im = 0;
  let sum = 0;
  for (let i = 0; i < x.length; i++) {
    const w = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / x.length);
    re += w * x[i] * Math.cos((2 * Math.PI * f * i) / 48_000);
    im += w * x[i] * Math.sin((2 * Math.PI * f * i) / 48_000);
    sum += w;
  }
  return 20 * Math.log10((Math.SQRT2 * Math.hypot(re, im)) / sum / 20e-6);
}

describe('what is heard', () => {
  it.each([
    [909, '5 mV/m'],
    [909, '50 mV/m'],
    [1458, '10 mV/m'],
    [603, '20 mV/m'],
  ])('a tone on %i kHz at %s is as loud as reception says, within 0.6 dB', (kHz, field) => {
    const set = setWith([station(kHz, field)]);
    const said = receive(set).stations[0];
    expect(said.dial).toBeDefined();
    expect(Math.abs(toneLevel(pressure(set, {}), 1000) - said.soundPressureLevel!)).toBeLessThan(0.6);
  });

  it('a station whose level is stated, such as a median, is that loud, and amplified as loud as ever', () => {
    const set = setWith([station(909, '20 mV/m')]);
    const { soundPressureLevel } = receiveRanged(set).stations[0];
    const usual = pressure(set, { station: 0 });
    const stated = pressure(set, { station: 0, level: soundPressureLevel });
    expect(Math.abs(toneLevel(stated, 1000) - soundPressureLevel!)).toBeLessThan(0.6);
    const shift = soundPressureLevel! - receive(set).stations[0].soundPressureLevel!;
    expect(toneLevel(stated, 1000) - toneLevel(usual, 1000)).toBeCloseTo(shift, 2);
    const played = (level?: number) =>
      renderListening(set, { seconds: 0.2, station: 0, level, noise: false, fadeIn: 0 }).reduce(
        (sum, x) => sum + x * x,
        0,
      );
    expect(played(soundPressureLevel) / played()).toBeCloseTo(1, 3);
  });

  it('a neighbour 9 kHz away whistles at 9 kHz, and only then', () => {
    const alone = pressure(setWith([station(909, '10 mV/m')]), {});
    const both = pressure(setWith([station(909, '10 mV/m'), station(918, '10 mV/m')]), { station: 0 });
    expect(toneLevel(both, 9000)).toBeGreaterThan(toneLevel(alone, 9000) + 40);
    expect(toneLevel(both, 9000)).toBeGreaterThan(toneLevel(both, 8500) + 30);
  });

  it('there is silence with the detector taken out', () => {
    const set = setWith([station(909, '50 mV/m')]);
    const power = pressure(set, { lifted: true }).reduce((s, x) => s + x * x, 0);
    expect(power).toBeLessThan(1e-8 * pressure(set, {}).reduce((s, x) => s + x * x, 0));
  });

  describe('through a frame', () => {
    const frame = exampleNamed('frame-aerial');
    const heard = (stations: object[], direction?: string) =>
      toneLevel(pressure(setWith(stations, { aerial: { ...frame.aerial, direction } }, frame), { station: 0 }), 1000);
    const wanted = station(909, '30 mV/m', { bearing: '40°' });

    it.each(['40°', '100°', '130°'])('pointed to %s, a station at 40° is as loud as reception says', (direction) => {
      const set = setWith([wanted], { aerial: { ...frame.aerial, direction } }, frame);
      const said = receive(set).stations[0].soundPressureLevel;
      expect(Math.abs(heard([wanted], direction) - said!)).toBeLessThan(0.6);
    });

    it('without a direction it is turned to the station by the pointer', () => {
      expect(heard([wanted])).toBeCloseTo(heard([wanted], '40°'), 2);
      const other = station(1200, '30 mV/m', { bearing: '130°' });
      expect(heard([wanted, other])).toBeCloseTo(heard([wanted, other], '40°'), 2);
    });
  });

  it('off tune it is fainter, and a distant strong station alone is nearly silent', () => {
    const set = setWith([station(603, '10 mV/m'), station(1458, '10 mV/m')]);
    const places = receive(set).stations.map((s) => s.dial!.position);
    const on = toneLevel(pressure(set, { station: 0 }), 1000);
    const between = toneLevel(pressure(set, { station: 0, position: (places[0] + places[1]) / 2 }), 1000);
    expect(between).toBeLessThan(on - 15);
  });

  it('the same seed gives the same sound bit for bit, another seed another', () => {
    const set = setWith(example.place.stations);
    const once = renderListening(set, { seconds: 0.4, seed: 5, fadeIn: 0 });
    expect(renderListening(set, { seconds: 0.4, seed: 5, fadeIn: 0 })).toEqual(once);
    expect(renderListening(set, { seconds: 0.4, seed: 6, fadeIn: 0 })).not.toEqual(once);
  });

  const loose = {
    coils: [
      { ...example.coils[0], name: 'aerial' },
      { ...example.coils[0], name: 'main' },
    ],
    arrangement: { kind: 'coupled', aerialCoil: 'aerial', coil: 'main', distance: '120 mm', detectorTap: 18 },
  };
  const far = { name: 'Far', frequency: '909 kHz', power: '200 kW', distance: '500 km', programme: 'tone' };
  it.each([
    [
      'another spot of the crystal',
      setWith([station(909, '20 mV/m')]),
      { detector: { kind: 'galena', spot: 'good' } },
      'day',
    ],
    [
      'coils slid together',
      setWith([station(909, '20 mV/m')], loose),
      { ...loose, arrangement: { ...loose.arrangement, distance: '80 mm' } },
      'day',
    ],
    ['dusk', setWith([far]), { stations: [far] }, 'night'],
  ] as const)('turning the dial and %s make no click', (_, set, changes, time) => {
    const { stations = [station(909, '20 mV/m')], ...more } = changes as { stations?: object[] };
    const other = setWith(stations, more);
    const listening = openListening(set, { noise: false, fadeIn: 0 });
    const out = new Float32Array(BLOCK);
    let jump = 0;
    let before = 0;
    let size = 0;
    for (let b = 0; b < 200; b++) {
      if (b > 60) listening.tune(Math.min(1, listening.position + 0.0005));
      if (b === 120) listening.change(other, { time });
      listening.process(out, BLOCK);
      for (const x of out) {
        if (b > 40) {
          jump = Math.max(jump, Math.abs(x - before));
          size = Math.max(size, Math.abs(x));
        }
        before = x;
      }
    }
    // A full-size tone of 1 kHz moves by 2π·1000/48000 of its size from sample to sample.
    expect(size).toBeGreaterThan(1e-3);
    expect(jump).toBeLessThan(0.3 * size);
  });

  it('at night a far station comes and goes', () => {
    const far = { name: 'Far', frequency: '909 kHz', power: '200 kW', distance: '700 km', programme: 'tone' };
    const set = setWith([far]);
    const listening = openListening(set, { noise: false, time: 'night' });
    const out = new Float32Array(BLOCK);
    let [least, most] = [Infinity, 0];
    for (let b = 0; b < 3000; b++) {
      listening.process(out, BLOCK);
      if (b < 60) continue;
      least = Math.min(least, listening.meters.carrier);
      most = Math.max(most, listening.meters.carrier);
    }
    expect(20 * Math.log10(most / least)).toBeGreaterThan(6);
  });
});

describe('programmes', () => {
  it('no two stations have the same, all stay within 1 and within what a transmitter sends', () => {
    for (const kind of ['speech', 'music', 'mixed'] as const) {
      const [a, b] = [madeProgramme(kind, 1), madeProgramme(kind, 2)];
      expect(a).not.toEqual(b);
      for (const loop of [a, b]) {
        let most = 0;
        for (const x of loop) most = Math.max(most, Math.abs(x));
        expect(most).toBeLessThanOrEqual(1);
        expect(most).toBeGreaterThan(0.5);
      }
    }
  });
});

import { describe, expect, test } from 'vitest';
import { HEARD, listeningCalendar } from '../../src/engine/index.ts';
import * as plots from '../../src/outputs/plots/index.ts';
import { overlap, textBox } from '../../src/outputs/scene/boxes.ts';
import { type Scene, sceneToSvg } from '../../src/outputs/scene/index.ts';
import { boxesAlong } from '../../src/outputs/scene/labels.ts';
import { expectPicture } from '../support/picture.ts';
import { expectTidy } from '../support/tidy.ts';

/** A single tuned circuit's response, for something to draw. */
const circuitLevel = (f: number, f0: number, Q: number) => -10 * Math.log10(1 + (Q * (f / f0 - f0 / f)) ** 2);
const range = (n: number, from: number, to: number) =>
  Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1));

const STATIONS = [
  { name: 'Fellside Voice', frequency: 603e3, field: 18e-3 },
  { name: 'Radio Corvale', frequency: 693e3, field: 9e-3 },
  { name: 'The Lantern Service', frequency: 909e3, field: 22e-3 },
  { name: 'Tollgate Community', frequency: 999e3, field: 30e-3 },
  { name: 'Northmoor Calling', frequency: 1053e3, field: 5e-3 },
  { name: 'Harbour Light', frequency: 1089e3, field: 8e-3 },
  { name: 'Ferryman’s Hour', frequency: 1251e3, field: 6e-3 },
  { name: 'Quayside', frequency: 1458e3, field: 12e-3 },
];
/** Mostly by evening, in each month. */
const HEARD_ENTRIES = Array.from({ length: 60 }, (_, i) => ({
  entry: {
    cells: {},
    row: i + 1,
    time: new Date(Date.UTC(2025, i % 12, 1 + ((i * 7) % 27), (17 + ((i * 5) % 9)) % 24, (i * 13) % 60)),
    localHour: 0,
    heard: HEARD[(i * 7) % HEARD.length],
  },
  light: 'night' as const,
}));
const Q = 62;
const wanted = STATIONS[2];

const bandOf = (tunedTo: number) => {
  const level = (f: number) => circuitLevel(f, STATIONS[tunedTo].frequency, Q);
  return {
    points: range(400, 520e3, 1620e3).map((frequency) => ({ frequency, level: level(frequency) })),
    stations: STATIONS.map((s) => ({ ...s, level: 20 * Math.log10(s.field) + level(s.frequency) })),
  };
};

const scenes: Record<string, (width: number) => Scene> = {
  resonance: (width) =>
    plots.resonanceCurve(
      {
        station: wanted,
        points: range(241, 789e3, 1029e3).map((frequency) => ({
          frequency,
          level: circuitLevel(frequency, 909e3, Q) - 31,
        })),
        loadedQ: Q,
        neighbours: [...STATIONS.filter((s) => s !== wanted), { name: 'Sluice Lane', frequency: 918e3 }],
      },
      { width },
    ),
  band: (width) => plots.bandResponse({ ...bandOf(2), wanted: 2 }, { width }),
  heard: (width) => plots.heardWhen(listeningCalendar(HEARD_ENTRIES, { latitude: 51, longitude: -2 }), { width }),
  coverage: (width) =>
    plots.coverage(
      {
        bands: [
          {
            label: 'long-wave coil',
            lowest: 148e3,
            highest: 302e3,
            lowestRange: [142e3, 155e3],
            highestRange: [280e3, 320e3],
          },
          {
            label: 'medium-wave coil',
            lowest: 545e3,
            highest: 1390e3,
            lowestRange: [530e3, 560e3],
            highestRange: [1300e3, 1490e3],
          },
        ],
        stations: [
          ...STATIONS,
          { name: 'Continental Tower', frequency: 234e3 },
          { name: 'Skerry Shore', frequency: 252e3 },
        ],
      },
      { width },
    ),
  q: (width) =>
    plots.qAgainstFrequency(
      {
        coils: [
          {
            name: 'main',
            points: range(60, 300e3, 1700e3).map((frequency) => {
              const q = 210 / (0.6 * Math.sqrt(1e6 / frequency) + 0.5 * (frequency / 1.2e6) ** 1.5);
              return { frequency, q, low: q * 0.75, high: q * 1.2 };
            }),
          },
        ],
        covered: [540e3, 1600e3],
        measured: [{ frequency: 1e6, q: 178 }],
      },
      { width },
    ),
  detector: (width) =>
    plots.detectorCurve(
      {
        curves: [
          {
            name: 'galena, fair spot',
            points: range(241, -0.3, 0.3).map((voltage) => ({ voltage, current: 2e-6 * Math.expm1(voltage / 0.045) })),
          },
          {
            name: 'germanium',
            points: range(241, -0.3, 0.3).map((voltage) => ({ voltage, current: 1e-6 * Math.expm1(voltage / 0.031) })),
          },
          {
            name: 'silicon',
            points: range(241, -0.3, 0.3).map((voltage) => ({ voltage, current: 5e-9 * Math.expm1(voltage / 0.05) })),
          },
        ],
        operating: { voltage: -0.018, amplitude: 0.085, current: 2.4e-6 },
      },
      { width },
    ),
  profile: (width) =>
    plots.fieldProfile(
      {
        station: wanted,
        points: range(200, 1e3, 105e3).map((distance) => ({
          distance,
          field:
            ((0.3 * Math.sqrt(140)) / (distance / 1e3)) *
            Math.exp(-distance / (distance > 38e3 && distance < 80e3 ? 1.2e5 : 4e4)),
        })),
        ground: [
          { from: 0, to: 38e3, name: 'land', sea: false },
          { from: 38e3, to: 80e3, name: 'sea', sea: true },
          { from: 80e3, to: 105e3, name: 'land', sea: false },
        ],
        site: { distance: 105e3, field: ((0.3 * Math.sqrt(140)) / 105) * Math.exp(-105 / 40), name: 'Over Staithe' },
        noise: 4e-5,
      },
      { width },
    ),
};

describe.each(Object.keys(scenes))('%s', (name) => {
  test.each([360, 1000])('at %i px: nothing overlaps, nothing is clipped', async (width) => {
    const scene = scenes[name](width);
    expectTidy(scene);
    await expectPicture(sceneToSvg(scene, { colours: 'day' }), `plots/${name}-${width}`);
  });
});

test('a notch in the band is named, and only where there is one', () => {
  const hump = (frequency: number) => -20 * Math.abs(Math.log2(frequency / 603e3));
  const points = range(161, 500e3, 1600e3).map((frequency) => ({ frequency, level: hump(frequency) }));
  const notched = points.map((p) => ({ ...p, level: p.level - 30 * Math.exp(-(((p.frequency - 900e3) / 20e3) ** 2)) }));
  const said = (of: typeof points) => JSON.stringify(plots.bandResponse({ points: of, stations: [] }, { width: 500 }));
  expect(said(notched)).toMatch(/a notch near (89\d|90\d) kHz/);
  expect(said(notched)).toContain('notch: series resonance');
  expect(said(points)).not.toMatch(/notch/);
});

/** A diode whose curve is known from −5 to 5 V only. */
const steep = (
  name: string,
  shorter: readonly string[],
  volts: number,
  operating: plots.ComparedCurve['operating'],
): plots.ComparedCurve => ({
  name,
  shorter,
  points: range(121, -5, 5).map((voltage) => ({ voltage, current: Math.max(-1e-6, 1e-3 * (voltage - volts)) })),
  operating,
});
const compared = [
  steep('Carborundum under a steel plate, 0.8 V bias', ['Carborundum'], 0.8, {
    voltage: -1.1,
    amplitude: 8.2,
    current: 4.7e-4,
  }),
  steep('Germanium diode (OA90, OA91, 1N34A kind)', ['Germanium diode', 'Germanium'], 0.1, {
    voltage: -1.9,
    amplitude: 2.3,
    current: 4.7e-4,
  }),
];
const textsOf = (scene: Scene): string[] => scene.items.flatMap((i) => (i.kind === 'text' ? [i.text] : []));

test.each([280, 360, 700])(
  'detectors compared at %i px: no further than the curves are known, all of them named',
  (width) => {
    const scene = plots.detectorsCompared(compared, { width });
    expectTidy(scene);
    const texts = textsOf(scene);
    expect(texts).toContain('voltage, V');
    expect(texts.filter((t) => /^−?\d+$/.test(t)).every((t) => Math.abs(Number(t.replace('−', '-'))) <= 5)).toBe(true);
    expect(texts.some((t) => t.startsWith('Carborundum'))).toBe(true);
    expect(texts.some((t) => t.startsWith('Germanium'))).toBe(true);
    expect(scene.title).not.toContain('near zero');
    // A curve that ends with what is known of it does not go on level.
    for (const item of scene.items)
      if (item.kind === 'polyline' && !item.closed) {
        const [a, b] = item.points.slice(-2);
        expect(b[0] - a[0] > 1 && b[1] === a[1] && b[0] > width / 2).toBe(false);
      }
    expect(plots.isNearZero(compared)).toBe(false);
  },
);

test.each([280, 360, 700])('a long name beside a detector’s curve at %i px is whole or honestly shorter', (width) => {
  const [, { name, shorter, points }] = compared;
  const scene = plots.detectorCurve(
    { curves: [{ name, shorter, points }], operating: { voltage: -0.04, amplitude: 0.19, current: 2e-5 } },
    { width },
  );
  expectTidy(scene);
  expect(textsOf(scene).some((t) => /^Germanium( diode( \(.*\))?)?$/.test(t))).toBe(true);
});

test('in the band every station keeps its whole name where there is room above, and the chosen one in any case', () => {
  for (const { name } of STATIONS) expect(textsOf(scenes.band(1000))).toContain(name);
  for (const width of [280, 360, 500]) expect(textsOf(scenes.band(width))).toContain(wanted.name);
});

test.each([280, 360, 500, 1000])(
  'in the band at %i px no name lies on a curve, a stem or the way to another',
  (width) => {
    for (const chosen of STATIONS.keys()) {
      const { items } = plots.bandResponse({ ...bandOf(chosen), wanted: chosen }, { width });
      const names = items.flatMap((item) =>
        item.kind === 'text' && STATIONS.some(({ name }) => name === item.text) ? [textBox(item)] : [],
      );
      expect(names.length).toBeGreaterThan(1);
      const lines = items.flatMap((item) =>
        item.kind === 'polyline'
          ? boxesAlong(item.points, 1)
          : item.kind === 'line'
            ? boxesAlong([item.from, item.to], 0.5)
            : [],
      );
      for (const name of names)
        for (const one of lines)
          expect(overlap({ ...name, h: name.h - 0.5 }, one), JSON.stringify({ name, one })).toBe(false);
    }
  },
);

test('nothing to show is no reason to fail', () => {
  const points = range(5, 500e3, 1600e3).map((frequency) => ({ frequency, level: 0 }));
  for (const width of [100, 360, 2000]) {
    const empty = [
      plots.resonanceCurve({ station: wanted, points }, { width }),
      plots.bandResponse({ points, stations: [] }, { width }),
      plots.resonanceCurve(
        { station: wanted, points: points.map((p) => ({ ...p, level: Number.NEGATIVE_INFINITY })) },
        { width },
      ),
      plots.bandResponse({ points, stations: [{ ...wanted, level: Number.NEGATIVE_INFINITY }], wanted: 0 }, { width }),
      plots.coverage({ bands: [], stations: [] }, { width }),
      plots.coverage({ bands: [{ label: 'as it is', lowest: 1e6, highest: 1e6 }], stations: [] }, { width }),
    ];
    for (const scene of empty) expect(sceneToSvg(scene)).toMatch(/^<svg/);
  }
});

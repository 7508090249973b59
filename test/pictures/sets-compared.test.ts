import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { comparedCurves, compareSets, readText, type SetDescription } from '../../src/engine/index.ts';
import {
  dialsCompared,
  dialsOf,
  dialsReadout,
  resonancesCompared,
  resonancesOf,
  resonancesReadout,
} from '../../src/outputs/plots/index.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { expectPicture } from '../support/picture.ts';
import { expectTidy } from '../support/tidy.ts';

const example = (name: string): SetDescription => {
  const read = readText(readFileSync(inRoot('examples', `${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(name);
  return read.set;
};
const compared = compareSets(
  ['medium-wave-galena', 'two-tuned-circuits', 'ferrite-rod-valve-diode', 'slider-set'].map(example),
  2,
);
const curves = comparedCurves(compared);
const [first] = compared.sets;
const { stations } = first.set.place;

const resonances = (width: number) =>
  resonancesCompared(
    {
      station: first.station,
      sets: compared.sets.map(({ set, station }, i) => ({
        name: set.name,
        bandwidth: station.bandwidth,
        points: curves[i]?.points,
      })),
      neighbours: stations,
    },
    { width },
  );
const dials = (width: number) =>
  dialsCompared(
    { sets: compared.sets.map(({ set, dial }) => ({ name: set.name, dial })), stations, chosen: 2 },
    { width },
  );

test.each([320, 640, 1000])(
  'plots of four sets at %i px: every set is named, no words lie over others',
  async (width) => {
    for (const [name, scene] of [
      ['resonances', resonances(width)],
      ['dials', dials(width)],
    ] as const) {
      expectTidy(scene);
      const svg = sceneToSvg(scene);
      for (const letter of 'ABCD') expect(svg).toMatch(new RegExp(`>${letter}(<|\\s)`));
      if (width === 640) await expectPicture(svg, `plots/sets-${name}`);
    }
  },
);

test('a set that does not tune so far has no curve, and the words say so', () => {
  const scene = resonancesCompared({
    station: first.station,
    sets: [
      { name: 'Near', bandwidth: 1e4, points: curves[0]?.points },
      { name: 'Far', bandwidth: 1e4 },
    ],
  });
  expect(scene.items.filter((item) => item.kind === 'polyline')).toHaveLength(1);
  expect(scene.description).toContain('Far, does not tune');
});

const rising = (places: readonly number[]): boolean => places.every((place, i) => i === 0 || place > places[i - 1]);

test('curves and dials are read off at every pixel, at a station with its name, each set with its own value', () => {
  const size = { width: 640 };
  const read = resonancesReadout(resonancesOf(compared, curves), size)!;
  expect(rising(read.places)).toBe(true);
  const texts = read.places.map((_, i) => read.at(i));
  const tuned = texts.filter((text) => text.includes(first.station.name));
  expect(tuned).toHaveLength(1);
  // Relative to its own maximum each set is within its first decibels at the station that it is tuned to.
  for (const letter of 'ABCD') expect(tuned[0]).toMatch(new RegExp(`${letter} (0|−?[0-3][.\\d]*) dB`));
  const scales = dialsReadout(dialsOf(compared), size)!;
  const { lowest, highest, stations: on } = compared.sets[0].dial;
  expect(scales.places).toHaveLength(new Set(scales.places).size);
  expect(scales.at(0)).toMatch(/^\d+ kHz: /);
  const heard = on.findIndex(
    ({ place }, i) => place && stations[i].frequency > lowest && stations[i].frequency < highest,
  );
  const at = scales.places.map((_, i) => scales.at(i)).find((text) => text.endsWith(stations[heard].name))!;
  expect(at).toContain(`A ${Math.round(on[heard].place!.scale)}°`);
});

test('nothing is read off curves of which no set tunes to the station', () => {
  const sets = [{ name: 'Far', bandwidth: 1e4 }];
  expect(resonancesReadout({ station: first.station, sets })).toBeUndefined();
});
